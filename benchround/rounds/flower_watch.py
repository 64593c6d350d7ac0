"""Look for the first flower or picking when its time has come, and whether it is over."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.batch.batch import NEW_GROWTH
from benchround.core.crop.crop import PlantClass, SowingWindow
from benchround.core.dates import say_day
from benchround.core.lifecycle import SEEDLING, Stage
from benchround.core.record import Kind
from benchround.core.task import Ask, Family, Harm, Why, Window
from benchround.rounds.frosted import frosted_on
from benchround.rounds.proposal import Proposal, draft, in_sight
from benchround.rounds.view import BatchView

EVERY_DAYS = 4
OVER_EVERY_DAYS = 7
A_YEAR = timedelta(days=365)
NO_SOURCE = "common practice, no source"
STAGES = (Stage.ESTABLISHING, Stage.GROWING_ON)
IN_ITS_TIME = (Stage.OVERWINTERING, Stage.DORMANT)
"""Stages from which only what flowers at its own time of the year comes into flower."""
GIVEN_UP = timedelta(days=28)
"""So long after its time a flower is no longer looked for that year (our proposal)."""


def propose(view: BatchView) -> Iterator[Proposal]:
    """A look every few days from the earliest day; each week once it has had its time."""
    if view.stage in (Stage.FLOWERING, Stage.CROPPING):
        yield from _over(view)
        return
    drilled = view.in_row and view.stage in SEEDLING
    waits = view.stage in IN_ITS_TIME and _own_time(view) is not None
    if not (view.stage in STAGES or drilled or waits) or frosted_on(view) is not None:
        return
    day = first_day(view)
    if day is None:
        return
    from_day, looked = day, view.since(Kind.LOOKED, Kind.BUDS)
    if looked is not None and looked >= from_day:
        from_day = looked + timedelta(days=EVERY_DAYS)
    if not in_sight(view, Family.LOOK, from_day):
        return
    crops = view.crop.flowering is None
    yield Proposal(
        Family.LOOK,
        Window(from_day, from_day, max(from_day + timedelta(days=EVERY_DAYS), view.day)),
        Harm.GETS_LATE,
        "Look whether the first is ready to pick" if crops else "Look for the first flower",
        Why(
            "deadheading, picking and seed are counted from the first flower or picking",
            (f"{_whose_day(view)} {say_day(day)}",),
            _source(view, "cropping" if crops else "flowering"),
        ),
        (draft(view, Kind.LOOKED),),
        asks=(
            Ask(
                "picked" if crops else "flowered",
                "first one seen",
                "no",
                whole=False,
                choices=("yes", "no"),
            ),
        ),
    )


def _over(view: BatchView) -> Iterator[Proposal]:
    """Once it has flowered or cropped as long as its kind does: is it over?"""
    from_day = over_from(view)
    if from_day is None or frosted_on(view) is not None:
        return
    what = "cropping" if view.stage is Stage.CROPPING else "flowering"
    begun, lasts_days = _lasting(view) or (from_day, 0)
    looked = view.since(Kind.LOOKED)
    if looked is not None and looked >= from_day:
        from_day = looked + timedelta(days=OVER_EVERY_DAYS)
    if not in_sight(view, Family.LOOK, from_day):
        return
    yield Proposal(
        Family.LOOK,
        Window(from_day, from_day, max(from_day + timedelta(days=OVER_EVERY_DAYS), view.day)),
        Harm.GETS_LATE,
        f"Look whether the {what} is over",
        Why(
            "what is over is cleared, cut back or left for seed, and not gone round any more",
            (f"{what} since {say_day(begun)}, usually {lasts_days} days",),
            view.crop.source(f"{what}.lasts_days"),
        ),
        (draft(view, Kind.LOOKED),),
        asks=(Ask("over", "over", "no", whole=False, choices=("yes", "no")),),
    )


def over_from(view: BatchView) -> date | None:
    """The day flowering or cropping has lasted as long as its kind does; None if it is in none."""
    lasting = _lasting(view)
    return None if lasting is None else lasting[0] + timedelta(days=lasting[1])


def _lasting(view: BatchView) -> tuple[date, int] | None:
    """Since when it flowers or crops, and how many days its kind does."""
    if view.stage not in (Stage.FLOWERING, Stage.CROPPING):
        return None
    crops = view.stage is Stage.CROPPING
    lasts = view.crop.cropping if crops else view.crop.flowering
    begun = view.first(Kind.CROPPED if crops else Kind.FIRST_FLOWER)
    if lasts is None or begun is None:
        return None
    return max(begun, view.part.since), lasts.lasts_days


def first_day(view: BatchView) -> date | None:
    """The earliest day of first flower or picking; None where nothing tells it.

    What flowers at its own time of the year is looked for from the day that opens.

    What was cut back or rested since has flowered before: a year after that first flower (common
    practice, no source), and not so many days from a planting of other years.
    """
    due = view.crop.flowering or view.crop.cropping
    if due is None:
        return None
    regrown = view.since(*NEW_GROWTH)
    if regrown is not None:
        return _a_year_on(view, regrown)
    if _own_time(view) is not None:
        return _own_day(view)
    planted, sowing = view.since(Kind.PLANTED_OUT), view.batch.sowing
    if planted is not None and due.from_planting_days is not None:
        return planted + timedelta(days=due.from_planting_days[0])
    if sowing is not None and due.from_sowing_days is not None:
        return sowing.day + timedelta(days=due.from_sowing_days[0])
    return None


def _own_time(view: BatchView) -> SowingWindow | None:
    """The time of the year a crop flowers in; None where its flower is counted in days."""
    return view.crop.flowering.window if view.crop.flowering is not None else None


def _own_day(view: BatchView) -> date | None:
    """The day its time of the year opens, the first after it was planted or sown.

    A biennial flowers after a winter only; a time that went by without a flower is given up, and
    the next one is waited for.
    """
    own, sowing, year = _own_time(view), view.batch.sowing, view.season.site.year
    planted = view.since(Kind.PLANTED_OUT, Kind.PLANTED_BULBS)
    since = planted or (sowing.day if sowing is not None else None)
    if own is None or since is None:
        return None
    if view.crop.plant_class is PlantClass.BIENNIAL and sowing is not None:
        this = year.midwinter(sowing.day.year)
        winter = this if this > sowing.day else year.midwinter(sowing.day.year + 1)
        since = max(since, winter)
    span = year.span(own, max(since, view.day - GIVEN_UP))
    if span is not None and span.opens <= since:
        span = year.span(own, span.closes + timedelta(days=1))
    return None if span is None else span.opens


def _a_year_on(view: BatchView, regrown: date) -> date | None:
    """A year after the first flower or picking before it was cut back; None if none was noted.

    Where none came in a year, it is looked for a year on.
    """
    kind = Kind.CROPPED if view.crop.flowering is None else Kind.FIRST_FLOWER
    before = view.since(kind)
    lasts = view.crop.flowering or view.crop.cropping
    if before is None or lasts is None:
        return None
    day, seen_for = max(before + A_YEAR, regrown), timedelta(days=lasts.lasts_days) + GIVEN_UP
    while view.day > day + seen_for:
        day += A_YEAR
    return day


def _whose_day(view: BatchView) -> str:
    """What the earliest day rests on, in words."""
    if view.since(*NEW_GROWTH) is not None:
        return "a year after its last first flower or picking,"
    return "the crop's earliest day" if _own_time(view) is None else "its time of the year opens"


def _source(view: BatchView, section: str) -> str:
    """The crop's source of its days; a year on has none."""
    return view.crop.source(section) if view.since(*NEW_GROWTH) is None else NO_SOURCE
