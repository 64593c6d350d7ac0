"""What a start needs: a collector that does not look over and over at what is only just read."""

from __future__ import annotations

import gc

OBJECTS_OF_A_START = 50_000
"""New objects before the collector looks for cycles: more than a season and a first screen make."""


def collect_less() -> None:
    """Let more objects come before cycles are looked for; for every start of the program."""
    gc.set_threshold(OBJECTS_OF_A_START, *gc.get_threshold()[1:])
