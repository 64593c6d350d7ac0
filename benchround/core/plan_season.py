"""Frost, the crop's sowing windows and its own flowering time, held against a plan."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.crop import Crop, Raising, SowingWindow
from benchround.core.dates import Span, say_day
from benchround.core.site import Site

HALF_YEAR_DAYS = 180
TWO_YEARS = timedelta(days=2 * 366)


def say(day: date) -> str:
    """A day with its year, as the reasons of a plan give it."""
    return f"{say_day(day)} {day.year}"


def span_words(span: Span) -> str:
    """A span in words."""
    return f"{say(span.opens)} to {say(span.closes)}"


def after_frost(crop: Crop, site: Site, day: date) -> date:
    """The day itself, or the site's safe last-frost day where a tender crop must wait for it."""
    safe = date(day.year, *site.last_frost_safe)
    waits = crop.planting.least_night_c is not None and crop.raising is not Raising.DRILL
    return safe if waits and 0 < (safe - day).days < HALF_YEAR_DAYS else day


def frost_remark(crop: Crop, site: Site, day: date) -> str:
    """What frost says to planting a tender crop on a day; empty where it says nothing."""
    if crop.planting.least_night_c is None:
        return ""
    safe = after_frost(crop, site, day)
    if safe > day:
        return (
            f"{say(day)} is before the site's safe last-frost day, {say(safe)}: tender plants "
            "wait under cover until then"
        )
    first = date(day.year, *site.first_frost)
    if 0 <= (day - first).days < HALF_YEAR_DAYS:
        return f"{say(day)} is after the site's first frost, {say(first)}: tender plants die of it"
    return ""


def window_remark(crop: Crop, site: Site, sowing: Span) -> str:
    """What the crop's usual sowing windows say to a span; empty where one of them meets it."""
    spans = [(w.name, site.year.span(w, sowing.opens)) for w in crop.windows]
    known = [(name, span) for name, span in spans if span is not None]
    if not known or any(span.opens <= sowing.closes for _, span in known):
        return ""
    name, span = min(known, key=lambda pair: pair[1].opens)
    return f"outside its usual sowing time; the next is {span_words(span)} ({name})"


def nearest(site: Site, window: SowingWindow, day: date) -> Span | None:
    """The occurrence of a window that holds a day, else the one nearest to it."""
    found = list(occurrences(site, window, day - TWO_YEARS, day + TWO_YEARS))
    if not found:
        return None
    return min(found, key=lambda s: max((s.opens - day).days, (day - s.closes).days, 0))


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
