"""Sun, frost, heat and the air: what the sky does over the site, and what of it counts."""
