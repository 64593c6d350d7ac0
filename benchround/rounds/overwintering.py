"""Stand hardy young plants for the winter when the days get too short to grow."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from benchround.core.crop.crop import Hardiness
from benchround.core.dates import say_day
from benchround.core.lifecycle import SEEDLING, YOUNG
from benchround.core.record import Kind
from benchround.core.site import PlaceKind
from benchround.core.task import Family, Harm, Why, Window
from benchround.rounds.proposal import Proposal, draft
from benchround.rounds.view import BatchView

GRACE_DAYS = 14
SHELTERS = (PlaceKind.FRAME, PlaceKind.TUNNEL, PlaceKind.GREENHOUSE)
SOURCE = "UC Santa Cruz, greenhouse management supplement (air before warmth); days under 10.5 h"


def propose(view: BatchView) -> Iterator[Proposal]:
    """Hardy stock still under cover at the start of the winter rest stands there until spring."""
    if view.stage not in YOUNG | SEEDLING or view.crop.hardiness is not Hardiness.HARDY:
        return
    if view.place is None or view.place.kind not in SHELTERS:
        return
    rest = view.season.site.rest_around(view.day)
    if rest is None:
        return
    begins, ends = rest
    if view.batch.begun > begins - timedelta(days=GRACE_DAYS):
        return  # sown in the dark days: it comes on with the spring
    yield Proposal(
        Family.OVERWINTER,
        Window(begins, begins, begins + timedelta(days=GRACE_DAYS)),
        Harm.GETS_LATE,
        "Stand for the winter: air on mild days, hardly any water, mouse trap",
        Why(
            "days are too short to grow in: it stands still and wants air before warmth",
            (f"short days from {say_day(begins)} to {say_day(ends)}",),
            SOURCE,
        ),
        (draft(view, Kind.OVERWINTERING),),
    )
