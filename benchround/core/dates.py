"""Days: the grower's local days, and the anchors of a site's year."""
