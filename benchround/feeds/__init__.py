"""Reading weather and sheets; writing what leaves the program."""
