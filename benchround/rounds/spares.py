"""Spares: plants left after planting out are not kept for ever."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from benchround.core.dates import number_of_days, say_day
from benchround.core.lifecycle import OUTWARD, SEEDLING, YOUNG
from benchround.core.record import Kind
from benchround.core.task import Ask, Family, Harm, Why, Window
from benchround.rounds.proposal import Proposal, draft
from benchround.rounds.view import BatchView

HELD_AT_MOST_DAYS = 10
"""Ready stock may wait 0 / 3 / 10 days (from memory)."""


def propose(view: BatchView) -> Iterator[Proposal]:
    """The decision about what was left over: gap up, pot on, give away or compost."""
    if not view.is_spare or view.stage not in SEEDLING | YOUNG | OUTWARD:
        return
    begun = view.since(Kind.PLANTED_OUT, Kind.HARDENING_BEGUN)
    settled = view.since(Kind.SPARES_SETTLED)
    if begun is None or (settled is not None and settled >= begun):
        return
    best = begun + timedelta(days=HELD_AT_MOST_DAYS)
    held = (view.day - begun).days
    yield Proposal(
        Family.SPARES,
        Window(begun, best, best),
        Harm.GETS_LATE,
        f"Decide by {say_day(best)}: {view.alive or 'the'} spares held "
        f"{number_of_days(held)} - "
        "gap up, pot on, give away or compost",
        Why(
            "spares are kept to fill gaps in the second week, then let go",
            (f"left over on {say_day(begun)}",),
        ),
        (draft(view, Kind.COMPOSTED),),
        asks=(Ask("count", "composted or given away", str(view.alive or ""), most=view.alive),),
    )
