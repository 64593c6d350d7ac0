"""What befell a sowing before it was up, by its records, and when it was first seen up."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from benchround.core.dates import say_day
from benchround.core.lifecycle import SEEDLINGS_SEEN, nothing_up
from benchround.core.record import Cause, Kind, Record
from benchround.core.seed.looks_reading import TAKEN_OUT

TEACH_NOTHING = frozenset(
    {
        Cause.MOUSE,
        Cause.BIRD,
        Cause.SLUG,
        Cause.DRIED_OUT,
        Cause.WASHED_OUT,
        Cause.DROWNED,
        Cause.COOKED,
        Cause.FROSTED,
        Cause.FORGOTTEN,
        Cause.WRONG_LABEL,
    }
)
"""Losses before or at emergence that say nothing of the seed (our proposal)."""

SHOWS_UP = frozenset({*SEEDLINGS_SEEN, Kind.SEED_LEAVES, Kind.TRUE_LEAVES}) | TAKEN_OUT - {
    Kind.COMPOSTED
}
"""Kinds that show that something is up, unless none was counted."""
MISHAPS = frozenset({Kind.STALLED, Kind.WASHED_OUT, Kind.RESOWN, Kind.LOST})


def told(story: Iterable[Record]) -> tuple[date | None, str, str]:
    """The day something was first seen up, and what befell the sowing.

    Returns:
        The day, None where nothing was seen; what befell it before emergence was over; and the
        same up to the day it was up. Empty where nothing did.
    """
    up_on: date | None = None
    mishap = before_up = ""
    for record in story:
        kind = record.kind
        if up_on is None and kind in SHOWS_UP and not nothing_up(kind, record.count()):
            up_on = record.day
        if kind in MISHAPS:
            mishap = mishap or _mishap(record)
        if up_on is None or record.day <= up_on:
            before_up = mishap
        if kind in TAKEN_OUT or record.figures.get("final") is True:
            break
    return up_on, mishap, before_up


def _mishap(record: Record) -> str:
    match record.kind:
        case Kind.STALLED:
            return f"stalled by {record.text('cause') or 'heat or cold'}"
        case Kind.WASHED_OUT:
            return "washed out"
        case Kind.RESOWN:
            return f"sown again on {say_day(record.day)}"
        case Kind.LOST if record.text("cause") in TEACH_NOTHING:
            return f"lost: {record.text('cause')}"
        case _:
            return ""
