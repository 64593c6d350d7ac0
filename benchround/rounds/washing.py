"""Wash the tray of a batch that died of something the next one could catch."""

from __future__ import annotations

from collections.abc import Iterator

from benchround.core.dates import say_day
from benchround.core.lifecycle import Stage
from benchround.core.record import Cause, Kind
from benchround.core.task import Family, Harm, Why
from benchround.rounds.proposal import Proposal, draft, window
from benchround.rounds.view import BatchView

CATCHING = (Cause.DAMPING_OFF, Cause.DISEASE, Cause.DROWNED)
GRACE_DAYS = 7


def propose(view: BatchView) -> Iterator[Proposal]:
    """Clean trays after damping off and disease."""
    if view.stage not in (Stage.LOST, Stage.COMPOSTED):
        return
    lost = view.part.last.get(Kind.LOST)
    if lost is None or lost.text("cause") not in set(CATCHING):
        return
    ended = view.part.since
    if view.done_since(Kind.WASHED, ended):
        return
    yield Proposal(
        Family.WASH,
        window(ended, grace=GRACE_DAYS),
        Harm.GETS_LATE,
        f"Wash the tray of {view.name}: lost to {lost.text('cause')}",
        Why(
            "a dirty tray passes damping off to the next sowing",
            (f"ended {say_day(ended)}",),
            "Michigan State University, damping off (sanitation)",
        ),
        (draft(view, Kind.WASHED),),
        cause=lost.text("cause"),
    )
