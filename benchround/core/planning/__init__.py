"""Counting back from a wanted day, sowing again, what flowers together, and the schedule ahead."""
