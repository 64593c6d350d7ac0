"""Fleece over tender stock that stands in the open on the evening before a cold night."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from benchround.core.crop.crop import Hardiness
from benchround.core.dates import say_day
from benchround.core.lifecycle import Stage
from benchround.core.record import Kind
from benchround.core.site import PlaceKind
from benchround.core.sky.frost import frost_severity, is_air_frost
from benchround.core.task import Family, Harm, Slot, Why, Window
from benchround.rounds.proposal import Proposal, draft
from benchround.rounds.view import BatchView

OPEN_PLACES = (PlaceKind.BED, PlaceKind.BENCH)
YOUNG_OUT_DAYS = 28
SOURCE = (
    "Colorado State University GardenNotes 722 (fleece is worth 1 to 2 C); the night's limit: "
    "our proposal"
)
STAGES = (Stage.ESTABLISHING, Stage.GROWING_ON, Stage.POTTED_ON, Stage.HARDENING, Stage.READY)


def propose(view: BatchView) -> Iterator[Proposal]:
    """Tender plants outdoors and not yet established are covered before a night at their limit."""
    if view.stage not in STAGES or view.crop.hardiness is Hardiness.HARDY:
        return
    if view.place is None or view.place.kind not in OPEN_PLACES or view.did_today(Kind.COVERED):
        return
    planted = view.since(Kind.PLANTED_OUT)
    if planted is not None and (view.day - planted).days > YOUNG_OUT_DAYS:
        return
    limit = view.crop.hardening.limit_c if view.crop.hardening else 4.0
    weather = view.season.weather
    known = (weather.on(view.day), weather.on(view.day + timedelta(days=1)))
    cold = [w for w in known if w is not None and w.min_c is not None and w.min_c <= limit]
    cold = [w for w in cold if w.basis != "reading"]
    if not cold:
        return
    worst = min(cold, key=lambda w: w.min_c or 0.0)
    yield Proposal(
        Family.FLEECE,
        Window(view.day, view.day, view.day),
        Harm.DIES_TODAY,
        f"Fleece over {view.alive or 'the plants'} this evening: {worst.min_c:g} C may come",
        Why(
            "tender plants in the open are covered before a cold night",
            (f"{worst.min_c:g} C on {say_day(worst.day)}{_word(worst.min_c)}, limit {limit:g} C",),
            SOURCE,
        ),
        (draft(view, Kind.COVERED),),
        slot=Slot.EVENING,
    )


def _word(min_c: float | None) -> str:
    """How hard a frost it is; empty above freezing."""
    return f" ({frost_severity(min_c)})" if min_c is not None and is_air_frost(min_c) else ""
