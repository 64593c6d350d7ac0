"""The last sowing that still flowers or crops, counted back from the first autumn frost.

Rule: the weeks a crop takes to flower and two more, counted back from the first frost, are the
last useful sowing of a late annual (common practice, no source). The longest days of the crop give
the day until which a sowing is sure to pay; the shortest give the day after which none can.
"""

from __future__ import annotations

from datetime import date, timedelta

from benchround.core.crop.crop import Crop, Hardiness, PlantClass, SowingWindow
from benchround.core.dates import Span, Year

WORTH_DAYS = 14
"""Flower or crop that leaves less time before frost is none (common practice, no source)."""
ONE_SEASON_DAYS = 250
"""What takes longer from sowing to its reward is not raised for one summer (our proposal)."""
ONE_SUMMER = (
    PlantClass.HARDY_ANNUAL,
    PlantClass.HALF_HARDY_ANNUAL,
    PlantClass.VEGETABLE,
    PlantClass.HERB,
)
"""Classes that give their flower or crop in the year they are sown, if at all."""
OCCURRENCES = 3


def days_to_reward(crop: Crop) -> tuple[int, int] | None:
    """Least and most days from sowing to first flower or picking; None where they are not known.

    None as well for what flowers at its own time of the year.
    """
    gives = crop.cropping if crop.edible else crop.flowering
    if gives is None or (crop.flowering is not None and crop.flowering.window is not None):
        return None
    if gives.from_sowing_days is not None:
        return gives.from_sowing_days
    raised, after = crop.planting.from_sowing_days, gives.from_planting_days
    if raised is None or after is None:
        return None
    return raised[0] + after[0], raised[1] + after[1]


def counted_back_days(crop: Crop) -> tuple[int, int] | None:
    """Least and most days before the first frost that a sowing must be made.

    None where frost ends nothing: hardy crops, vegetables that stand a light frost, those raised
    for more than a summer, and those of which the days are not known.
    """
    if crop.plant_class not in ONE_SUMMER or not _frost_ends(crop):
        return None
    days = days_to_reward(crop)
    if days is None or days[0] > ONE_SEASON_DAYS:
        return None
    return days[0] + WORTH_DAYS, days[1] + WORTH_DAYS


def _frost_ends(crop: Crop) -> bool:
    if crop.edible:
        return crop.hardiness in (Hardiness.TENDER, Hardiness.VERY_TENDER)
    return crop.hardiness is not Hardiness.HARDY


def first_frost_from(year: Year, day: date) -> date:
    """The first autumn frost on or after a day, as half the years have it."""
    this = date(day.year, *year.first_frost)
    return this if this >= day else date(day.year + 1, *year.first_frost)


def last_sowing(crop: Crop, year: Year, day: date) -> date | None:
    """The last sure sowing before the frost that follows a day; it may lie before that day.

    None where frost sets no end.
    """
    days = counted_back_days(crop)
    return None if days is None else first_frost_from(year, day) - timedelta(days=days[1])


def window_span(crop: Crop, year: Year, window: SowingWindow, day: date) -> Span | None:
    """The occurrence of a crop's sowing window that holds a day, else the next one.

    Days from which not even the quickest plant would flower or crop before frost are left off its
    end. A window that would have no day left stands as it is: under glass it may be meant. None
    where the window never comes at this site.
    """
    since = day
    for _ in range(OCCURRENCES):
        span = year.span(window, since)
        if span is None:
            return None
        cut = _before_frost(crop, year, span)
        if cut.closes >= day:
            return cut
        since = span.closes + timedelta(days=1)
    return None


def _before_frost(crop: Crop, year: Year, span: Span) -> Span:
    days = counted_back_days(crop)
    if days is None:
        return span
    last = first_frost_from(year, span.opens) - timedelta(days=days[0])
    return span if last >= span.closes or last < span.opens else Span(span.opens, last)
