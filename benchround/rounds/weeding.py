"""Weed between rows sown where they grow."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from benchround.core.dates import say_day
from benchround.core.lifecycle import SEEDLING, Stage
from benchround.core.record import Kind
from benchround.core.task import Family, Harm, Why
from benchround.rounds.proposal import Proposal, draft, window
from benchround.rounds.view import BatchView

EVERY_DAYS = 21
GRACE_DAYS = 7


def propose(view: BatchView) -> Iterator[Proposal]:
    """Weeding of a young row; thinning counts as weeding."""
    if not view.in_row or view.stage not in SEEDLING | {Stage.GROWING_ON} or not view.first_up:
        return
    last = view.since(Kind.WEEDED, Kind.THINNED) or view.first_up
    yield Proposal(
        Family.WEED,
        window(last + timedelta(days=EVERY_DAYS), grace=GRACE_DAYS),
        Harm.GETS_LATE,
        "Weed between the rows",
        Why("weeds outgrow a young row", (f"last {say_day(last)}",)),
        (draft(view, Kind.WEEDED),),
    )
