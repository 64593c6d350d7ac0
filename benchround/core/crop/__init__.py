"""A crop's rules, and the tables they are read from."""
