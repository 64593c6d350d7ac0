"""Turn trays that get their light from one side."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from benchround.core.dates import say_day
from benchround.core.lifecycle import SEEDLING, YOUNG
from benchround.core.record import Kind
from benchround.core.task import Family, Harm, Slot, Why
from benchround.rounds.proposal import Proposal, draft, in_sight, window
from benchround.rounds.view import BatchView

EVERY_DAYS = 3
GRACE_DAYS = 1
FORGOTTEN_DAYS = 21
"""Let go for so long it is no habit here, and is not asked for any more; our proposal."""
SOURCE = "UC Santa Cruz, greenhouse management supplement (once or twice a week)"


def propose(view: BatchView) -> Iterator[Proposal]:
    """Seedlings lean: they are turned twice a week; older plants only where it is the habit."""
    if view.place is None or not view.place.one_sided:
        return
    turned = view.since(Kind.TURNED)
    if view.stage in YOUNG and turned is not None and turned >= view.part.since:
        begun = turned
    elif view.stage in SEEDLING and view.first_up is not None:
        begun = turned or view.first_up
    else:
        return
    best = begun + timedelta(days=EVERY_DAYS)
    if not in_sight(view, Family.TURN, best) or (view.day - best).days > FORGOTTEN_DAYS:
        return
    said = "last turned" if turned else "up since"
    yield Proposal(
        Family.TURN,
        window(best, grace=GRACE_DAYS),
        Harm.GETS_LATE,
        "Turn the tray half round",
        Why("light comes from one side here", (f"{said} {say_day(begun)}",), SOURCE),
        (draft(view, Kind.TURNED),),
        slot=Slot.MIDDAY,
    )
