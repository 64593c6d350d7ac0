"""Ten, fifty and ninety percent dates out of one frost date for each year."""

from collections.abc import Sequence
from datetime import date, timedelta
from math import floor
from statistics import NormalDist, fmean, stdev

from benchround.core.frozen import dataclass

MonthDay = tuple[int, int]

LEAST_SHARE_OF_YEARS = 0.10
"""Dates are given only if the threshold is reached in this share of years; NCEI, Normals
Calculation Methodology 2020."""

_SHARES = (0.1, 0.5, 0.9)
_Z_VALUES = tuple(NormalDist().inv_cdf(share) for share in _SHARES)
_PLAIN_YEAR = 2001  # any year without 29 February: days are counted as if every year were so


@dataclass(frozen=True, slots=True)
class FrostLine:
    """How one frost has fallen over the years, as (month, day).

    p10 is early, p90 late: the event came on or before the date in 1, 5, 9 years of 10. The
    `normal_` dates are those of a normal distribution with the same mean and spread, the steadier
    figure when the years are few (Thom & Shaw 1958, from memory); None with fewer than two years.
    `years` were read well enough, `frost_years` of them had the frost.
    """

    p10: MonthDay
    p50: MonthDay
    p90: MonthDay
    normal_p10: MonthDay | None
    normal_p50: MonthDay | None
    normal_p90: MonthDay | None
    years: int
    frost_years: int


def frost_line(frosts: Sequence[date | None], start: MonthDay) -> FrostLine | None:
    """Sum up one of the two frosts over all years that were not void.

    Args:
        frosts: one entry for each year, None where the frost never came.
        start: first day of the growing year, from which days are counted.

    Returns:
        The dates, or None where the frost came in less than a tenth of the years.
    """
    found = sorted(_days_since(start, day) for day in frosts if day is not None)
    if not found or len(found) < LEAST_SHARE_OF_YEARS * len(frosts):
        return None
    p10, p50, p90 = (_month_day(start, quantile(found, share)) for share in _SHARES)
    normal: tuple[MonthDay | None, ...] = (None, None, None)
    if len(found) > 1:
        mean, spread = fmean(found), stdev(found)
        normal = tuple(_month_day(start, mean + z * spread) for z in _Z_VALUES)
    return FrostLine(p10, p50, p90, normal[0], normal[1], normal[2], len(frosts), len(found))


def quantile(ordered: Sequence[float], share: float) -> float:
    """Return the value below which a share of the ordered values lies, straight between two.

    Hyndman & Fan 1996, The American Statistician 50:361, definition 7.
    """
    position = share * (len(ordered) - 1)
    low = floor(position)
    high = min(low + 1, len(ordered) - 1)
    return ordered[low] + (position - low) * (ordered[high] - ordered[low])


def _days_since(start: MonthDay, day: date) -> int:
    """Return days since the growing year began, 29 February counting as the 28th."""
    day_number = min(day.day, 28) if day.month == 2 else day.day
    return (date(_PLAIN_YEAR, day.month, day_number) - date(_PLAIN_YEAR, *start)).days % 365


def _month_day(start: MonthDay, days: float) -> MonthDay:
    """Return the calendar day nearest to a count of days since the growing year began."""
    whole = floor(days + 0.5) % 365
    ordinal = (date(_PLAIN_YEAR, *start).timetuple().tm_yday - 1 + whole) % 365
    day = date(_PLAIN_YEAR, 1, 1) + timedelta(days=ordinal)
    return day.month, day.day
