"""The later steps of a batch by the crop's usual days: potting on, hardening, planting, flower."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.batch.batch import NEW_GROWTH, Part
from benchround.core.crop.crop import Crop, Raising, SowingWindow
from benchround.core.dates import number_of_days
from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.planning.growing_season import LEAVES_SETTLED, hardening_opens, safe_from
from benchround.core.planning.schedule_step import Expected, Step
from benchround.core.record import Kind
from benchround.core.site import Site
from benchround.core.water.tray_holder import in_its_pot


@dataclass(frozen=True, slots=True)
class Young:
    """What is known of a batch up to its first true leaves.

    Attributes:
        up: first seedling, seen or expected; None where nothing tells.
        leaves: first true leaves, seen or expected.
    """

    site: Site
    crop: Crop
    part: Part
    raising: str
    sown: date
    up: date | None
    leaves: date | None


def later_steps(young: Young) -> Iterator[Expected]:
    """Every step after the seedling that can be reckoned, done or not."""
    pricked = _pricked(young)
    potted = _potting(young, pricked)
    if potted is not None and not _in_its_pot(young):
        yield potted
    hardened = _hardening(young, pricked, potted.day if potted else None)
    if hardened is not None:
        yield hardened
    planted = _planting(young, hardened.day if hardened else None)
    if planted is not None:
        yield planted
    yield from _reward(young, planted.day if planted else None)


def _pricked(young: Young) -> date | None:
    done = young.part.last_day(Kind.PRICKED_OUT)
    tray = young.raising == Raising.TRAY and young.crop.growing.prick_out
    return done or (young.leaves if tray else None)


def _potting(young: Young, pricked: date | None) -> Expected | None:
    growing = young.crop.growing
    done = young.part.last_day(Kind.POTTED_ON)
    if done is not None:
        return Expected(Step.POT_ON, done, None, "done")
    if not growing.pot_on:
        return None
    if pricked is not None:
        days, since, what = growing.pot_on_days, pricked, "pricking out"
    elif young.up is not None and young.raising != Raising.TRAY:
        days, since, what = growing.pot_on_days_from_up, young.up, "first up"
    else:
        return None
    pot = f"{growing.pot_cm:g} cm pots, {days} days from {what}"
    return Expected(Step.POT_ON, since + timedelta(days=days), None, pot)


def _in_its_pot(young: Young) -> bool:
    done = young.part.last_day(Kind.POTTED_ON)
    return done is None and in_its_pot(young.part, young.crop, {})


def _hardening(young: Young, pricked: date | None, potted: date | None) -> Expected | None:
    course = young.crop.hardening
    begun = young.part.last_day(Kind.HARDENING_BEGUN)
    if begun is not None:
        return Expected(Step.HARDEN, begun, None, "done")
    if course is None or young.raising == Raising.DRILL:
        return None
    settle = timedelta(days=course.after_potting_days)
    if potted is not None:
        day, why = potted + settle, f"{number_of_days(settle.days)} after potting on"
    else:
        found = _from_sowing(young, pricked, course.days, settle)
        if found is None:
            return None
        day, why = found
    opens = _starts(young, day)
    if opens is not None and opens > day:
        day, why = opens, "not before the site's year allows it"
    return Expected(Step.HARDEN, day, None, why)


def _from_sowing(
    young: Young, pricked: date | None, course_days: int, settle: timedelta
) -> tuple[date, str] | None:
    span = young.crop.planting.from_sowing_days
    if young.crop.growing.pot_on or span is None:
        return None
    day = young.sown + timedelta(days=max(0, span[0] - course_days))
    if pricked is not None and pricked + settle > day:
        return pricked + settle, f"{number_of_days(settle.days)} after pricking out"
    if young.leaves is not None and young.leaves + LEAVES_SETTLED > day:
        settled = number_of_days(LEAVES_SETTLED.days)
        return young.leaves + LEAVES_SETTLED, f"{settled} after the first true leaves"
    return day, f"to be out {span[0]} days from sowing, after {course_days} days of hardening"


def _starts(young: Young, day: date) -> date | None:
    try:
        return hardening_opens(young.crop, young.site.year, day)
    except OutOfRangeError:
        return None


def _planting(young: Young, hardening: date | None) -> Expected | None:
    done = young.part.last_day(Kind.PLANTED_OUT, Kind.PLANTED_BULBS)
    if done is not None:
        return Expected(Step.PLANT_OUT, done, None, "done")
    planting, course = young.crop.planting, young.crop.hardening
    if young.raising in (Raising.DRILL, Raising.BULB):
        return None
    done = hardening + timedelta(days=course.days) if hardening and course else None
    if planting.window is not None:
        ready = done or young.leaves or young.sown
        span = young.site.year.span(planting.window, ready)
        if span is None:
            return None
        when = max(span.opens, ready)
        return Expected(Step.PLANT_OUT, when, span.closes, planting.window.name)
    if done is not None and course is not None:
        return _after_frost(young, done, None, f"{number_of_days(course.days)} of hardening")
    if course is None and planting.from_sowing_days is not None:
        first, last = planting.from_sowing_days
        return _after_frost(
            young,
            young.sown + timedelta(days=first),
            young.sown + timedelta(days=last),
            f"{first} to {last} days from sowing",
        )
    return None


def _after_frost(young: Young, day: date, until: date | None, why: str) -> Expected:
    safe = safe_from(young.site.year, day)
    if young.crop.planting.least_night_c is not None and safe > day:
        latest = max(safe, until) if until else None
        return Expected(Step.PLANT_OUT, safe, latest, "the safe last-frost day")
    return Expected(Step.PLANT_OUT, day, until, why)


def _reward(young: Young, planted: date | None) -> Iterator[Expected]:
    """In flower, and picked; what was cut back or rested since is not counted from planting."""
    flowering, cropping = young.crop.flowering, young.crop.cropping
    regrown = young.part.last_day(*NEW_GROWTH)
    if flowering is not None and flowering.window is not None:
        yield from _in_window(young.site, flowering.window, regrown or planted or young.sown)
    elif flowering is not None and regrown is None:
        spans = flowering.from_planting_days, flowering.from_sowing_days
        yield from _after(Step.FLOWER, young.sown, planted, *spans)
    if cropping is not None and regrown is None:
        spans = cropping.from_planting_days, cropping.from_sowing_days
        yield from _after(Step.CROP, young.sown, planted, *spans)


def _in_window(site: Site, window: SowingWindow, since: date) -> Iterator[Expected]:
    span = site.year.span(window, since)
    if span is not None and span.opens <= since:
        span = site.year.span(window, span.closes + timedelta(days=1))
    if span is not None:
        yield Expected(Step.FLOWER, span.opens, span.closes, "its time of the year")


def _after(
    step: Step,
    sown: date,
    planted: date | None,
    from_planting: tuple[int, int] | None,
    from_sowing: tuple[int, int] | None,
) -> Iterator[Expected]:
    if planted is not None and from_planting is not None:
        since, days, what = planted, from_planting, "planting out"
    elif from_sowing is not None:
        since, days, what = sown, from_sowing, "sowing"
    else:
        return
    first, last = (since + timedelta(days=number) for number in days)
    yield Expected(step, first, last, f"{days[0]} to {days[1]} days from {what}")
