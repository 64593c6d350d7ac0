"""What a grower types: days, figures, places, and whole lines of a diary."""
