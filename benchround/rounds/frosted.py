"""The frost that ends tender plants in the open: after it nothing is deadheaded any more."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.crop.crop import Hardiness, PlantClass
from benchround.core.dates import say_day
from benchround.core.lifecycle import Stage
from benchround.core.record import Kind
from benchround.core.task import Family, Harm, Why
from benchround.rounds.proposal import Proposal, draft, window
from benchround.rounds.view import BatchView

STAGES = (Stage.ESTABLISHING, Stage.GROWING_ON, Stage.FLOWERING, Stage.CROPPING)
KILLED_AT_C = {Hardiness.HALF_HARDY: -3.0, Hardiness.TENDER: 0.0, Hardiness.VERY_TENDER: 0.0}
"""Night that ends established plants (common practice, no source)."""
BEFORE_USUAL_DAYS, AFTER_USUAL_DAYS = 45, 14
GRACE_DAYS = 14


def propose(view: BatchView) -> Iterator[Proposal]:
    """Clear what the frost has ended; lift what can be kept."""
    ended = frosted_on(view)
    if ended is None:
        return
    seen = view.season.weather.on(ended)
    figure = (
        f"{seen.min_c:g} C on {say_day(ended)}"
        if seen is not None and seen.min_c is not None
        else f"two weeks past the usual first frost on {say_day(ended)}; look first"
    )
    lifts = view.crop.plant_class is PlantClass.TENDER_PERENNIAL
    yield Proposal(
        Family.CLEAR,
        window(ended, grace=GRACE_DAYS),
        Harm.GETS_LATE,
        "Frost ends it: lift and store what is worth keeping, clear the rest"
        if lifts
        else "Frost ends it: clear it",
        Why("tender plants do not outlive the first killing frost", (figure,)),
        (draft(view, Kind.COMPOSTED),),
    )


def frosted_on(view: BatchView) -> date | None:
    """The day frost ended a tender part in the open; None while it may live."""
    limit = KILLED_AT_C.get(view.crop.hardiness)
    planted = view.since(Kind.PLANTED_OUT)
    if limit is None or planted is None or view.stage not in STAGES:
        return None
    if view.place is None or not view.place.outdoors:
        return None
    usual = _first_frost_after(view, planted)
    day = max(planted, usual - timedelta(days=BEFORE_USUAL_DAYS))
    while day <= view.day and day < usual + timedelta(days=AFTER_USUAL_DAYS):
        known = view.season.weather.on(day)
        read = known is not None and known.basis == "reading"
        if known is not None and read and known.min_c is not None and known.min_c <= limit:
            return day
        day += timedelta(days=1)
    return day if day <= view.day else None


def _first_frost_after(view: BatchView, planted: date) -> date:
    month, day = view.season.site.first_frost
    found = date(planted.year, month, day)
    return found if found > planted else date(planted.year + 1, month, day)
