"""The names in a season folder."""

HEADING = "benchround.json"
"""The season's own file: format number, name, day it was begun."""

RECORDS = "records"
"""Folder of the pages, and name of the TinyDB table in each."""

KEEP = "keep"
"""Folder of the copies of the whole season."""

ASIDE = "aside"
"""Folder of damaged files that were moved out of the way."""
