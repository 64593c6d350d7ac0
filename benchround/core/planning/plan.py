"""Planning ahead: when to sow for a day on which plants, flowers or a harvest are wanted.

Everything is counted back from the wanted day. A flowering or picking day first becomes the span of
planting days that lead to it; a planting day becomes the span of sowing days by the weeks published
for the crop, moved where the trays stand colder, or by its own steps added up. Rule of counting
back: Iowa State University Extension, germination requirements for annuals and vegetables (read).

The parts live in `course` (days from sowing), `back` (counting back), `season`
(frost and windows), `own_time` (crops that flower when the year says so), `again`
(succession) and `overlap`.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

from benchround.core.crop.crop import Crop, Raising
from benchround.core.dates import Span
from benchround.core.errors import InputError, OutOfRangeError
from benchround.core.planning.again import Succession, sow_again, sow_in_turn
from benchround.core.planning.back import CountedBack
from benchround.core.planning.course import (
    AS_GIVEN,
    OWN_STEPS,
    Course,
    RaisedAt,
    steady,
    usual_in,
)
from benchround.core.planning.nouns import Goal, PlanStep, SowPlan
from benchround.core.planning.overlap import Overlap, flowering_overlap, flowerless
from benchround.core.planning.own_time import own_time_plan
from benchround.core.planning.season import after_frost, say, waits_for
from benchround.core.seed.needed import seeds_needed, sharing
from benchround.core.seed.quantity import WANTED_CHANCE, Quantity, shares_kept
from benchround.core.site import Site

__all__ = [
    "AS_GIVEN",
    "Goal",
    "Overlap",
    "PlanStep",
    "RaisedAt",
    "SowPlan",
    "Succession",
    "cells_for",
    "flowering_overlap",
    "flowerless",
    "sow_again",
    "sow_in_turn",
    "sow_plan",
    "steady",
    "usual_in",
]


def cells_for(
    crop: Crop,
    want: int,
    *,
    germination: float | None = None,
    tested: float | None = None,
    survival: Sequence[float] | None = None,
    chance: float = WANTED_CHANCE,
) -> Quantity | None:
    """Cells and seeds for the plants wanted, by `seeds_needed`; None where germination is unknown.

    Without shares that survive the usual ones are taken.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    share = germination
    if share is None and crop.germination is not None:
        share = crop.germination.share
    if share is None:
        return None
    way = str(crop.raising)
    each, left = sharing(crop, way, crop.growing.per_cell)
    kept = shares_kept(way) if survival is None else tuple(survival)
    amount, fault = seeds_needed(want, share, tested, each, kept, chance, left)
    if fault:
        raise OutOfRangeError(fault)
    return amount


def sow_plan(
    crop: Crop,
    goal: Goal,
    wanted: date,
    site: Site,
    raised: RaisedAt = AS_GIVEN,
    today: date | None = None,
) -> SowPlan:
    """When to sow so that the goal is reached on the wanted day.

    Args:
        crop: its rules.
        goal: planting out, in flower or first picking.
        wanted: the day.
        site: frost dates, day length and usual temperatures.
        raised: how warm the trays stand until planted.
        today: the day of asking; days to sow that are over are then not possible any more.

    Raises:
        InputError: the crop's figures do not reach to this goal; the message says which lack.
    """
    if goal is Goal.FLOWERING and crop.flowering is not None and crop.flowering.window is not None:
        return own_time_plan(crop, wanted, site, today)
    if crop.raising is Raising.BULB:
        raise InputError(f"{crop.name} is planted as bulbs, not sown: there is no day to sow.")
    if goal is Goal.PLANTING:
        return _to_planting(crop, wanted, site, raised, today)
    after_planting, after_sowing = _rewards(crop, goal)
    if after_planting is not None:
        return _through_planting(crop, goal, wanted, site, raised, today, after_planting)
    if after_sowing is None:
        raise InputError(f"{crop.name} has no days to '{goal}': ask for another goal.")
    section = "flowering" if goal is Goal.FLOWERING else "cropping"
    source = crop.source(f"{section}.from_sowing_days")
    course = Course(crop, raised, after_sowing, source)
    return CountedBack(course, goal, wanted, site, today).plan(Span(wanted, wanted), (0, 0))


def _rewards(crop: Crop, goal: Goal) -> tuple[tuple[int, int] | None, tuple[int, int] | None]:
    """Days to flower or harvest from planting, and from sowing."""
    has = crop.flowering if goal is Goal.FLOWERING else crop.cropping
    if has is None:
        return None, None
    return has.from_planting_days, has.from_sowing_days


def _planting_course(crop: Crop, raised: RaisedAt) -> Course:
    span = crop.planting.from_sowing_days
    source = crop.source("planting.from_sowing_days") if span is not None else OWN_STEPS
    if span is None and crop.germination is None:
        raise InputError(
            f"{crop.name} has neither weeks to planting nor germination figures: "
            "give the crop planting.from_sowing_days."
        )
    return Course(crop, raised, span, source)


def _to_planting(
    crop: Crop, wanted: date, site: Site, raised: RaisedAt, today: date | None
) -> SowPlan:
    if crop.raising is Raising.DRILL:
        raise InputError(
            f"{crop.name} is sown where it grows and never planted out: ask for the day it "
            "flowers or is picked."
        )
    course = _planting_course(crop, raised)
    return CountedBack(course, Goal.PLANTING, wanted, site, today).plan(
        Span(wanted, wanted), (0, 0)
    )


def _through_planting(
    crop: Crop,
    goal: Goal,
    wanted: date,
    site: Site,
    raised: RaisedAt,
    today: date | None,
    reward: tuple[int, int],
) -> SowPlan:
    course = _planting_course(crop, raised)
    last = wanted - timedelta(days=reward[0])
    first = after_frost(crop, site, wanted - timedelta(days=reward[1]))
    if first > last:
        back = CountedBack(course, goal, wanted, site, today)
        frost = back.frost_on_the_way(last)
        if frost is not None:
            return back.frosted(frost, reward)
        earliest = first + timedelta(days=reward[0])
        reason = (
            f"not possible: {crop.name} is planted {waits_for(crop, site, first)}; "
            f"earliest {goal} is {say(earliest)}"
        )
        return SowPlan(goal, wanted, False, reason, earliest=earliest, source=course.source)
    return CountedBack(course, goal, wanted, site, today).plan(Span(first, last), reward)
