"""Water in trays and places: what is left, what a day takes, when to water next."""
