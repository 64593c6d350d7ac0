"""Which spring a day belongs to: stock that waits for the end of frost waits for that one.

A growing season runs from spring to the first frost of autumn. From then on what is tender waits
for the coming spring, before New Year as after it (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta

from benchround.core.crop.crop import Crop, Hardiness
from benchround.core.dates import Year
from benchround.core.planning.last_sowing import first_frost_from

AUTUMN_AHEAD_DAYS = 150
"""Further than this before the safe last-frost day it is autumn or winter, not spring."""
LEAVES_SETTLED = timedelta(days=4)
"""A seedling has its true leaves for so long before it is hardened; common practice, no source."""


def spring_of(year: Year, day: date, in_year: Callable[[int], date]) -> date:
    """A spring day of the growing season that holds `day`, or of the one that comes next.

    Args:
        year: the site's frost days.
        day: any day.
        in_year: the spring day of a calendar year.
    """
    number = day.year - 1
    while day >= first_frost_from(year, in_year(number)):
        number += 1
    return in_year(number)


def safe_from(year: Year, day: date) -> date:
    """The safe last-frost day of the growing season: one year in ten has a frost after it."""
    return spring_of(year, day, lambda number: date(number, *year.last_frost_safe))


def hardening_opens(crop: Crop, year: Year, day: date) -> date | None:
    """The day hardening may begin in the growing season; hardy stock's since midwinter.

    What is hardy and ready in autumn need not wait. None where the crop's rules set no day.

    Raises:
        OutOfRangeError: the day never comes at this site.
    """
    starts = crop.hardening.starts if crop.hardening is not None else None
    if starts is None:
        return None
    if crop.hardiness is Hardiness.HARDY:
        years = (day.year - 1, day.year, day.year + 1)
        winter = max(w for w in map(year.midwinter, years) if w <= day)
        return min(e for number in years if (e := year.edge(starts, number)) > winter)
    return spring_of(year, day, lambda number: year.edge(starts, number))
