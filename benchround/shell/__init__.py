"""What the commands share: opening a season, reading words, printing answers."""
