"""The morning walk: the order of the places, changed one step at a time."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from benchround.core.record import Draft, Figure, Kind

ORDER, REMOVED = "order", "removed"
Figures = Mapping[str, Figure]


def moved(walk: Sequence[str], code: str, by: int) -> tuple[str, ...]:
    """The walk with one place moved; it stays where it is at the ends.

    Args:
        walk: codes in walking order.
        code: the place to move; one of them.
        by: steps, later if positive.
    """
    at = walk.index(code)
    rest = [*walk[:at], *walk[at + 1 :]]
    to = max(0, min(len(rest), at + by))
    return (*rest[:to], code, *rest[to:])


def put_in(walk: Sequence[str], code: str, after: str) -> tuple[str, ...]:
    """The walk with a new place behind another; at its end where that one is not on it."""
    at = walk.index(after) + 1 if after in walk else len(walk)
    return (*walk[:at], code, *walk[at:])


def walk_drafts(walk: Sequence[str], said: Mapping[str, Figures]) -> tuple[Draft, ...]:
    """The records that number the places in this order; only those whose number changes.

    Args:
        walk: codes in the order wanted.
        said: what each place's latest record says, by code; new places are left out.
    """
    return tuple(
        Draft(Kind.PLACE, code, {**said[code], ORDER: number})
        for number, code in enumerate(walk, start=1)
        if code in said and said[code].get(ORDER) != number
    )
