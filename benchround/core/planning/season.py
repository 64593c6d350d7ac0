"""Frost, the crop's sowing windows and its own flowering time, held against a plan."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.crop.crop import Crop, Raising, SowingWindow
from benchround.core.dates import Span, say_day
from benchround.core.planning.growing_season import AUTUMN_AHEAD_DAYS, safe_from
from benchround.core.planning.last_sowing import (
    WORTH_DAYS,
    counted_back_days,
    first_frost_from,
    last_sowing,
)
from benchround.core.site import Site

LOOSE_DAYS = 28
"""A sowing this near to a window of the crop is still of its season; our proposal."""
TWO_YEARS = timedelta(days=2 * 366)


def say(day: date) -> str:
    """A day with its year, as the reasons of a plan give it."""
    return f"{say_day(day)} {day.year}"


def span_words(span: Span) -> str:
    """A span in words."""
    return f"{say(span.opens)} to {say(span.closes)}"


def after_frost(crop: Crop, site: Site, day: date) -> date:
    """The day itself, or the site's safe last-frost day where a tender crop must wait for it."""
    waits = crop.planting.least_night_c is not None and crop.raising is not Raising.DRILL
    return max(day, safe_from(site.year, day)) if waits else day


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


def window_remark(crop: Crop, site: Site, sowing: Span) -> str:
    """What the crop's usual sowing windows say to a span; empty where one of them is near it."""
    found = [(w.name, nearest(site, w, sowing.opens, sowing.closes)) for w in crop.windows]
    known = [(name, span) for name, span in found if span is not None]
    if not known:
        return ""
    name, span = min(known, key=lambda pair: gap_days(pair[1], sowing))
    if gap_days(span, sowing) <= LOOSE_DAYS:
        return ""
    return f"far from its usual sowing times; the nearest is {span_words(span)} ({name})"


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
    """The sowing window that leads to one flowering: the last that is over before its winter."""
    winter = winter_before(site, flowering.opens)
    found = [
        (window.name, span)
        for window in crop.windows
        for span in occurrences(site, window, winter - timedelta(days=366), winter)
        if span.closes < winter
    ]
    return max(found, key=lambda pair: pair[1].closes, default=None)
