"""The cold frame: its heat by the hour, and what to do with the lid."""
