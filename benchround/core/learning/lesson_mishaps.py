"""What befell a sowing before it was up, by its records, and when it was first seen up."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from benchround.core.dates import say_day
from benchround.core.record import Cause, Kind, Record
from benchround.core.seed.looks_reading import SEEDLINGS_SEEN, TAKEN_OUT

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

LEAVES = (Kind.SEED_LEAVES, Kind.TRUE_LEAVES)


def told(story: Iterable[Record]) -> tuple[date | None, str, str]:
    """The day something was first seen up, and what befell the sowing.

    Returns:
        The day, None where nothing was seen; what befell it before emergence was over; and the
        same up to the day it was up. Empty where nothing did.
    """
    up_on: date | None = None
    mishap = before_up = ""
    for record in story:
        if up_on is None:
            up_on = _up_on(record)
        mishap = mishap or _mishap(record)
        if up_on is None or record.day <= up_on:
            before_up = mishap
        if record.kind in TAKEN_OUT or record.flag("final"):
            break
    return up_on, mishap, before_up


def _up_on(record: Record) -> date | None:
    """The day of a record that shows that something is up."""
    kind = record.kind
    if kind in SEEDLINGS_SEEN:
        return record.day if record.count() != 0 else None
    shows = kind in LEAVES or (kind in TAKEN_OUT and kind is not Kind.COMPOSTED)
    return record.day if shows else None


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
