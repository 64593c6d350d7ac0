"""What a start needs, and what it can do without."""

from __future__ import annotations

import gc
import sys
from collections.abc import Mapping

OBJECTS_OF_A_START = 400_000
"""New objects before cycles are first looked for: more than a nursery's season and a first screen
make. Looking costs ten milliseconds, and a start makes no cycles worth it."""
OBJECTS_OF_A_SITTING = 50_000
"""New objects between two looks from then on, so that none holds up a key for long."""


def collect_less() -> None:
    """Let more objects come before cycles are looked for; for every start of the program."""
    gc.set_threshold(OBJECTS_OF_A_START, *gc.get_threshold()[1:])
    if _as_in_a_sitting not in gc.callbacks:
        gc.callbacks.append(_as_in_a_sitting)


def _as_in_a_sitting(phase: str, _: Mapping[str, int]) -> None:
    """Called by the collector before and after it looked."""
    if phase == "stop":
        gc.callbacks.remove(_as_in_a_sitting)
        gc.set_threshold(OBJECTS_OF_A_SITTING, *gc.get_threshold()[1:])


def begin_without_ssl() -> None:
    """Read asyncio as Pythons without the ssl module read it; for the screens.

    They open no connection, and ssl takes as long to read as thirty files of this program. Whoever
    imports it later, as fetching a forecast does, gets it as ever.
    """
    if "asyncio" in sys.modules or "ssl" in sys.modules:
        return
    sys.modules["ssl"] = None  # type: ignore[assignment]  # how Python marks what is not there
    try:
        import asyncio  # noqa: F401 - read here so that Textual finds it read
    finally:
        del sys.modules["ssl"]
