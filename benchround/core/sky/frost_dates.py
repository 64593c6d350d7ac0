"""When the site's last spring frost and first autumn frost fall, from its own daily minima.

Each year is cut in two at midsummer: the last day at or below the threshold before the cut is the
year's last spring frost, the first such day after it the first autumn frost. A half year with more
than ten days missing says nothing and is left out (Utah Climate Center). Over the years, p10, p50
and p90 are the days by which the event has happened in 1, 5 and 9 years out of 10; 10th is early
and 90th late (Midwestern Regional Climate Center).

Beware the words. Spring p90 is the late date: only 1 year in 10 has a frost after it. That is what
a grower calls the 10 % date, and what `planting_date(10)` gives; older US tables call the *early*
date "90 %", since 9 years in 10 have a frost after it.
"""

from collections.abc import Iterable, Sequence
from datetime import date, timedelta

from benchround.core.errors import InputError, OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import require_air_temp, within
from benchround.core.sky.frost_line import FrostLine, MonthDay, frost_line

MOST_MISSING_DAYS = 10
"""A half year with more days missing than this is void; Utah Climate Center."""

_NORTH_START, _NORTH_SPLIT = (1, 1), (7, 24)
_SOUTH_START, _SOUTH_SPLIT = (7, 1), (1, 24)


@dataclass(frozen=True, slots=True)
class DailyMinimum:
    """The minimum temperature of one day; None where it was not read."""

    day: date
    tmin_c: float | None


@dataclass(frozen=True, slots=True)
class YearFrosts:
    """One growing year, named by the year its spring belongs to.

    A missing date means no frost in a half year that was read, or a half year that is void.
    """

    year: int
    last_spring: date | None
    first_autumn: date | None
    spring_void: bool
    autumn_void: bool

    @property
    def frost_free_days(self) -> int | None:
        """Days strictly between the two frosts; None where one of them is missing."""
        if self.last_spring is None or self.first_autumn is None:
            return None
        return (self.first_autumn - self.last_spring).days - 1


@dataclass(frozen=True, slots=True)
class FrostDates:
    """A site's frost dates for one threshold, with the years they rest on.

    `years` counts the years with at least one half that could be used; `void_years` names those
    with a half that could not. A line is None where the threshold is hardly ever reached.
    """

    threshold_c: float
    last_spring: FrostLine | None
    first_autumn: FrostLine | None
    years: int
    void_years: tuple[int, ...]
    per_year: tuple[YearFrosts, ...]

    def planting_date(self, risk_pct: int) -> MonthDay | None:
        """Return the day after which frost still comes in this percentage of years.

        Args:
            risk_pct: 10, 50 or 90; 10 is the cautious, late date.

        Raises:
            OutOfRangeError: another percentage was asked for.
        """
        if risk_pct not in (10, 50, 90):
            raise OutOfRangeError(f"the frost risk is {risk_pct} %: ask for 10, 50 or 90 %")
        if self.last_spring is None:
            return None
        line = self.last_spring
        return {10: line.p90, 50: line.p50, 90: line.p10}[risk_pct]


def frost_dates(
    observations: Iterable[DailyMinimum], lat_deg: float, threshold_c: float = 0.0
) -> FrostDates:
    """Return the site's frost dates, years as they were and 10, 50 and 90 percent dates.

    Halves as Utah Climate Center and MRCC describe them: cut on 24 July in the north, 24 January
    in the south, more than ten missing days void a half year; linear quantiles over the day of a
    year without leap day.

    Args:
        observations: daily minima in any order; days not given count as missing.
        lat_deg: latitude, north positive; its sign alone decides where the year is cut.
        threshold_c: a day at or below this counts as frost, -60 to 60 degC.

    Raises:
        OutOfRangeError: a figure is outside its range.
        InputError: two readings are given for one day.
    """
    within("the latitude", lat_deg, -90.0, 90.0, "deg")
    require_air_temp("the frost threshold", threshold_c)
    minima = _by_day(observations)
    south = lat_deg < 0.0
    years = _growing_years(minima, south)
    per_year = tuple(_year_frosts(minima, year, south, threshold_c) for year in years)
    start = _SOUTH_START if south else _NORTH_START
    springs = [frosts.last_spring for frosts in per_year if not frosts.spring_void]
    autumns = [frosts.first_autumn for frosts in per_year if not frosts.autumn_void]
    return FrostDates(
        threshold_c=threshold_c,
        last_spring=frost_line(springs, start),
        first_autumn=frost_line(autumns, start),
        years=sum(not (frosts.spring_void and frosts.autumn_void) for frosts in per_year),
        void_years=tuple(f.year for f in per_year if f.spring_void or f.autumn_void),
        per_year=per_year,
    )


def _by_day(observations: Iterable[DailyMinimum]) -> dict[date, float]:
    minima: dict[date, float] = {}
    for reading in observations:
        if reading.tmin_c is None:
            continue
        if reading.day in minima:
            raise InputError(
                f"{reading.day} has two minima, {minima[reading.day]:g} and {reading.tmin_c:g}"
                " degC: remove one of them"
            )
        minima[reading.day] = require_air_temp(f"the minimum of {reading.day}", reading.tmin_c)
    return minima


def _growing_years(minima: dict[date, float], south: bool) -> Sequence[int]:
    """Return every growing year the readings touch, gaps included."""
    if not minima:
        return ()
    ends = (min(minima), max(minima))
    first, last = (day.year - 1 if south and day.month < 7 else day.year for day in ends)
    return range(first, last + 1)


def _year_frosts(
    minima: dict[date, float], year: int, south: bool, threshold_c: float
) -> YearFrosts:
    start = date(year, *(_SOUTH_START if south else _NORTH_START))
    cut = date(year + 1, *_SOUTH_SPLIT) if south else date(year, *_NORTH_SPLIT)
    spring, spring_void = _frosts_between(minima, start, cut, threshold_c)
    end = date(year + 1, start.month, start.day)
    autumn, autumn_void = _frosts_between(minima, cut, end, threshold_c)
    return YearFrosts(
        year,
        max(spring, default=None),
        min(autumn, default=None),
        spring_void,
        autumn_void,
    )


def _frosts_between(
    minima: dict[date, float], start: date, end: date, threshold_c: float
) -> tuple[list[date], bool]:
    """Return the frosty days from start up to, not including, end; and whether that is void."""
    days = [start + timedelta(days=offset) for offset in range((end - start).days)]
    read = [day for day in days if day in minima]
    if len(days) - len(read) > MOST_MISSING_DAYS:
        return [], True
    return [day for day in read if minima[day] <= threshold_c], False
