"""Radiation frost at this very site: a rule fitted to its own frost nights, and the fall by hours.

Both after Snyder & de Melo-Abreu 2005, Frost protection: fundamentals, practice and economics,
vol. 1 (FAO), for nights without cloud, fog or rain and with wind below 2 m/s.
"""

from collections.abc import Sequence
from math import sqrt
from statistics import fmean, linear_regression

from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import require_air_temp, within

FEWEST_NIGHTS = 3
"""Two constants in each of two steps, and one night more so that the error can be seen."""
TREND_STARTS_H = 2.0
"""Hours after sunset from which the square-root fall holds."""


@dataclass(frozen=True, slots=True)
class FrostNight:
    """A radiation night gone by: two hours after sunset, and its minimum, degC."""

    temp_c: float
    dew_point_c: float
    tmin_c: float


@dataclass(frozen=True, slots=True)
class FrostRule:
    """The site's own rule: Tmin = a T0 + b Td + c, with its root mean square error, degC."""

    per_temp: float
    per_dew_point: float
    constant_c: float
    nights: int
    error_c: float

    def tmin_c(self, temp_c: float, dew_point_c: float) -> float:
        """Return tonight's minimum from two hours after sunset, degC.

        Raises:
            OutOfRangeError: a temperature is outside -60 to 60 degC.
        """
        require_air_temp("the temperature after sunset", temp_c)
        require_air_temp("the dew point", dew_point_c)
        return self.per_temp * temp_c + self.per_dew_point * dew_point_c + self.constant_c


def fit_frost_rule(nights: Sequence[FrostNight]) -> FrostRule:
    """Fit the site's rule in two steps: minimum on temperature, then what is left on dew point.

    Snyder & de Melo-Abreu 2005, ch. 5. It is not a regression on both at once, which would give
    other figures.

    Args:
        nights: radiation nights of this site; ten or so give a steady rule.

    Raises:
        OutOfRangeError: fewer than three nights, nights all alike, or a temperature outside -60
            to 60 degC.
    """
    if len(nights) < FEWEST_NIGHTS:
        raise OutOfRangeError(
            f"{len(nights)} frost nights are too few for a rule: record {FEWEST_NIGHTS} or more"
        )
    temps = [require_air_temp("the temperature after sunset", night.temp_c) for night in nights]
    dew_points = [require_air_temp("the dew point", night.dew_point_c) for night in nights]
    minima = [require_air_temp("the minimum", night.tmin_c) for night in nights]
    if len(set(temps)) == 1 or len(set(dew_points)) == 1:
        raise OutOfRangeError(
            "the frost nights are all alike in temperature or dew point, so no rule can be drawn"
            " from them: record nights that differ"
        )
    by_temp = linear_regression(temps, minima)
    left = [
        tmin - by_temp.slope * temp - by_temp.intercept
        for temp, tmin in zip(temps, minima, strict=True)
    ]
    by_dew_point = linear_regression(dew_points, left)
    errors = [
        rest - by_dew_point.slope * dew_point - by_dew_point.intercept
        for dew_point, rest in zip(dew_points, left, strict=True)
    ]
    return FrostRule(
        per_temp=by_temp.slope,
        per_dew_point=by_dew_point.slope,
        constant_c=by_temp.intercept + by_dew_point.intercept,
        nights=len(nights),
        error_c=sqrt(fmean(error * error for error in errors)),
    )


def night_trend_c(
    after_sunset_c: float, tmin_c: float, hours_since_sunset: float, night_h: float
) -> float:
    """Return the temperature of a frost night at an hour: it falls with the root of time.

    Snyder & de Melo-Abreu 2005, ch. 5: T2 + (Tmin - T2) sqrt((t - 2)/(n - 2)).

    Args:
        after_sunset_c: temperature T2 two hours after sunset, degC.
        tmin_c: the minimum expected at sunrise, degC; not above T2.
        hours_since_sunset: t, from 2 h to the end of the night.
        night_h: hours n from sunset to sunrise, 3 to 24.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    require_air_temp("the temperature after sunset", after_sunset_c)
    within("the minimum", tmin_c, -60.0, after_sunset_c, "degC")
    within("the length of the night", night_h, 3.0, 24.0, "h")
    within("the hours since sunset", hours_since_sunset, TREND_STARTS_H, night_h, "h")
    share = sqrt((hours_since_sunset - TREND_STARTS_H) / (night_h - TREND_STARTS_H))
    return after_sunset_c + (tmin_c - after_sunset_c) * share
