"""The program in a terminal of its own, driven and read as a grower would."""
