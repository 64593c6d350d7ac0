"""Frost, the crop's sowing windows and its own flowering time, held against a plan."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date, timedelta

from benchround.core.crop.crop import Crop, Raising, SowingWindow
from benchround.core.dates import Span, say_day
from benchround.core.errors import OutOfRangeError
from benchround.core.planning.growing_season import AUTUMN_AHEAD_DAYS, hardening_opens, safe_from
from benchround.core.planning.last_sowing import (
    WORTH_DAYS,
    counted_back_days,
    first_frost_from,
    last_sowing,
)
from benchround.core.site import Site

LOOSE_DAYS = 28
"""A sowing this near to a window of the crop is still of its season; our proposal."""
SPRING_DAYS = 56
"""Hardy stock is planted from so long before the last frost on (common practice, no source)."""
A_YEAR = timedelta(days=366)
TWO_YEARS = timedelta(days=2 * 366)


def say(day: date) -> str:
    """A day with its year, as the reasons of a plan give it."""
    return f"{say_day(day)} {day.year}"


def span_words(span: Span) -> str:
    """A span in words."""
    return f"{say(span.opens)} to {say(span.closes)}"


def after_frost(crop: Crop, site: Site, day: date) -> date:
    """The day itself, or the later one a tender crop waits for.

    That is the site's safe last-frost day, and the end of a course of hardening that may not begin
    sooner than the site's year lets it.
    """
    if crop.planting.least_night_c is None or crop.raising is Raising.DRILL:
        return day
    hardened = _hardened_from(crop, site, day)
    return max(day, safe_from(site.year, day), day if hardened is None else hardened)


def waits_for(crop: Crop, site: Site, day: date) -> str:
    """In words, what a tender crop waits for that is planted on `day`, by `after_frost`."""
    course = crop.hardening
    if course is not None and _hardened_from(crop, site, day) == day:
        begun = say(day - timedelta(days=course.days))
        return f"hardened for {course.days} days from {begun}, not before {say(day)}"
    return f"after the safe last-frost day, {say(day)}"


def _hardened_from(crop: Crop, site: Site, day: date) -> date | None:
    """The first day of the growing season on which a course of hardening can be over."""
    try:
        opens = hardening_opens(crop, site.year, day)
    except OutOfRangeError:
        return None
    if opens is None or crop.hardening is None:
        return None
    return opens + timedelta(days=crop.hardening.days)


def frost_before(crop: Crop, site: Site, day: date) -> date | None:
    """The first autumn frost a tender crop meets if it is planted on a day; None where none."""
    if crop.planting.least_night_c is None:
        return None
    safe = safe_from(site.year, day)
    return _last_first_frost(site, day) if (safe - day).days > AUTUMN_AHEAD_DAYS else None


def frost_between(crop: Crop, site: Site, planted: date, ready: date) -> date | None:
    """The autumn frost that ends a tender crop before it is ready; None where none does."""
    if crop.planting.least_night_c is None:
        return None
    frost = first_frost_from(site.year, planted)
    return frost if frost < ready else None


def frost_remark(crop: Crop, site: Site, day: date) -> str:
    """What spring frost says to planting a tender crop on a day; empty where it says nothing."""
    if crop.planting.least_night_c is None:
        return ""
    safe = safe_from(site.year, day)
    if safe > day and crop.raising is not Raising.DRILL:
        return (
            f"{say(day)} is before the site's safe last-frost day, {say(safe)}: tender plants "
            "wait under cover until then"
        )
    return ""


def _last_first_frost(site: Site, day: date) -> date:
    this = date(day.year, *site.first_frost)
    return this if this <= day else date(day.year - 1, *site.first_frost)


def last_sowing_remark(crop: Crop, site: Site, sown: date, until: date) -> str:
    """What the first autumn frost says to sowing from one day to another; empty where nothing."""
    last = last_sowing(crop, site.year, sown)
    days = counted_back_days(crop)
    if last is None or days is None or until <= last:
        return ""
    frost = first_frost_from(site.year, sown)
    late = "" if sown <= last else "too late: "
    return (
        f"{late}its last useful sowing is {say(last)}, {days[1] - WORTH_DAYS} days to its flower "
        f"or crop and two weeks more before the first frost, {say(frost)}"
    )


def usual_days(crop: Crop, site: Site, days: Iterable[date]) -> tuple[date, ...]:
    """Of these days, those that lie in one of the crop's usual sowing windows, in order.

    Windows in heat are counted back from the last frost, as plants for another day are from that:
    they hold some weeks either way.
    """
    asked = sorted(days)
    if not asked:
        return ()
    loose = timedelta(days=LOOSE_DAYS)
    spans: list[Span] = []
    for window in crop.windows:
        more = loose if window.where == "heat" else timedelta()
        for span in occurrences(site, window, asked[0] - more, asked[-1] + more):
            spans.append(Span(span.opens - more, span.closes + more))
    return tuple(day for day in asked if any(day in span for span in spans))


def window_remark(crop: Crop, site: Site, sowing: Span, usual: Sequence[date]) -> str:
    """What the crop's usual sowing windows say to a span; empty where they have nothing to say.

    Args:
        crop: its rules.
        site: where.
        sowing: the days to sow.
        usual: those of them that lie in a usual window.
    """
    if not crop.windows or len(usual) > (sowing.closes - sowing.opens).days:
        return ""
    if usual:
        return f"of these days only {_runs(usual)} lie in its usual sowing times"
    found = [(w, nearest(site, w, sowing.opens, sowing.closes)) for w in crop.windows]
    known = [(window, span) for window, span in found if span is not None]
    if not known:
        return ""
    window, span = min(known, key=lambda pair: gap_days(pair[1], sowing))
    gap = gap_days(span, sowing)
    near = f"the nearest is {span_words(span)} ({window.name})"
    if gap > LOOSE_DAYS:
        return f"far from its usual sowing times; {near}"
    return f"outside its usual sowing times; {near}"


def _runs(days: Sequence[date]) -> str:
    """Days in order as spans in words."""
    runs: list[Span] = []
    for day in days:
        if runs and day == runs[-1].closes + timedelta(days=1):
            runs[-1] = Span(runs[-1].opens, day)
        else:
            runs.append(Span(day, day))
    return " and ".join(
        span_words(run) if run.opens != run.closes else say(run.opens) for run in runs
    )


def planting_remark(crop: Crop, site: Site, wanted: date) -> str:
    """What the crop's own planting time says to a day; empty where it is in it or has none."""
    own = crop.planting.window
    span = nearest(site, own, wanted) if own is not None else None
    if own is None or span is None or wanted in span:
        return ""
    return f"its usual planting time is {own.name}, here {span_words(span)}"


def gap_days(one: Span, other: Span) -> int:
    """Days between two spans, 0 where they touch or meet."""
    return max(0, (max(one.opens, other.opens) - min(one.closes, other.closes)).days)


def nearest(site: Site, window: SowingWindow, day: date, until: date | None = None) -> Span | None:
    """The occurrence of a window nearest to a day, or to the days from it until another."""
    asked = Span(day, until or day)
    found = list(occurrences(site, window, asked.opens - TWO_YEARS, asked.closes + TWO_YEARS))
    return min(found, key=lambda span: gap_days(span, asked), default=None)


def occurrences(site: Site, window: SowingWindow, since: date, until: date) -> Iterator[Span]:
    """The occurrences of a window that end on or after `since` and open by `until`, in order."""
    span = site.year.span(window, since)
    while span is not None and span.opens <= until:
        yield span
        span = site.year.span(window, span.closes + timedelta(days=1))


def winter_before(site: Site, day: date) -> date:
    """The last midwinter before a day."""
    this_year = site.year.midwinter(day.year)
    return this_year if this_year < day else site.year.midwinter(day.year - 1)


def sowing_for(crop: Crop, site: Site, flowering: Span) -> tuple[str, Span] | None:
    """The sowing window that leads to one flowering: the last that begins before its winter.

    Bulbs may still be planted in that winter. A perennial without a planting time of its own must
    be planted out before it flowers, by its longest days from sowing (common practice, no source).
    """
    winter = winter_before(site, flowering.opens)
    bulb = crop.raising is Raising.BULB
    over_by = flowering.opens if bulb else winter
    own = crop.planting.window is not None
    days = None if own else crop.planting.from_sowing_days
    raised_by = flowering.opens - timedelta(days=days[1] if days else 0)
    found = [
        (window.name, span)
        for window in crop.windows
        for span in occurrences(site, window, winter - 2 * A_YEAR, winter)
        if span.closes < over_by and span.opens <= raised_by
    ]
    return max(found, key=lambda pair: pair[1].closes, default=None)


def winters_between(site: Site, sown: date, day: date) -> int:
    """Midwinters between a sowing and a later day."""
    return sum(sown < site.year.midwinter(n) < day for n in range(sown.year - 1, day.year + 1))


def out_of_winter(site: Site, ready: Span) -> Span:
    """Days to plant hardy stock out that is ready in a span: not from first frost until spring.

    In autumn until the first frost, else from eight weeks before the last frost (common practice,
    no source).
    """
    frost = first_frost_from(site.year, ready.opens)
    last_year = date(frost.year - 1, *site.first_frost)
    spring = spring_after(site, last_year)
    if ready.opens < spring:
        return Span(spring, max(ready.closes, spring + timedelta(days=SPRING_DAYS)))
    if ready.closes <= frost:
        return ready
    return Span(ready.opens, frost)


def spring_after(site: Site, frost: date) -> date:
    """The first day hardy stock is planted after the winter that begins with a first frost."""
    last = date(frost.year, *site.last_frost)
    last = last if last > frost else date(frost.year + 1, *site.last_frost)
    return last - timedelta(days=SPRING_DAYS)


def winter_remark(crop: Crop, site: Site, day: date) -> str:
    """What winter says to planting hardy stock on a day; empty where it says nothing."""
    if crop.planting.window is not None or crop.planting.least_night_c is not None:
        return ""
    spring = out_of_winter(site, Span(day, day)).opens
    if spring <= day:
        return ""
    return (
        f"{say(day)} is in winter: hardy plants wait in a cold frame and are planted from "
        f"{say(spring)}"
    )
