"""The day's course of temperature, drawn hour by hour through a minimum and a maximum."""

from math import exp, pi, sin

from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import require_air_temp, require_min_max, within


@dataclass(frozen=True, slots=True)
class CurveShape:
    """How the temperature of one kind of place lags behind the sun and cools at night.

    `lag_max_h` a delays the maximum, `cooling` b steepens the night, `lag_min_h` c is the time
    from sunrise to the minimum. Parton & Logan 1981, Agricultural Meteorology 23:205.
    """

    lag_max_h: float
    cooling: float
    lag_min_h: float


AIR_AT_EYE_HEIGHT = CurveShape(1.86, 2.20, -0.17)
"""Air 150 cm above the ground; Parton & Logan 1981."""
LONGEST_DAY_H = 23.5
"""With less night than this leaves, the night branch has no time to decay in."""


def hour_temp_c(
    tmin_c: float,
    tmax_c: float,
    hour: float,
    sunrise_h: float,
    sunset_h: float,
    shape: CurveShape = AIR_AT_EYE_HEIGHT,
) -> float:
    """Return the temperature at an hour: a sine by day, decaying cold by night.

    Parton & Logan 1981, Agricultural Meteorology 23:205. With day length Y, m hours since the
    minimum and n hours since sunset: Tmin + (Tmax - Tmin) sin(pi m / (Y + 2a)) by day, and
    Tmin + (Tset - Tmin) exp(-b n / (24 - Y + c)) by night. The night before dawn is taken like
    the night to come. The night ends a little above Tmin: the published curve does.

    Args:
        tmin_c: the day's minimum, degC.
        tmax_c: the day's maximum, degC; not below the minimum.
        hour: hour of the day, 0 to 24, on the same clock as the sun's times.
        sunrise_h: hour of sunrise.
        sunset_h: hour of sunset, after the minimum and at most 23.5 h after sunrise.
        shape: the lags of the place.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    require_min_max(tmin_c, tmax_c)
    within("the hour", hour, 0.0, 24.0, "h")
    within("sunrise", sunrise_h, 0.0, 24.0, "h")
    coldest_h = sunrise_h + shape.lag_min_h
    earliest_h, latest_h = max(sunrise_h, coldest_h), min(24.0, sunrise_h + LONGEST_DAY_H)
    within("sunset", sunset_h, earliest_h, latest_h, "h")
    if coldest_h < hour <= sunset_h:
        return _by_day(tmin_c, tmax_c, hour - coldest_h, sunset_h - sunrise_h, shape)
    day_h = sunset_h - sunrise_h
    at_sunset = _by_day(tmin_c, tmax_c, sunset_h - coldest_h, day_h, shape)
    dark_h = hour - sunset_h if hour > sunset_h else hour + 24.0 - sunset_h
    fading = exp(-shape.cooling * dark_h / (24.0 - day_h + shape.lag_min_h))
    return tmin_c + (at_sunset - tmin_c) * fading


def _by_day(
    tmin_c: float, tmax_c: float, since_coldest_h: float, day_h: float, shape: CurveShape
) -> float:
    span_h = day_h + 2.0 * shape.lag_max_h
    return tmin_c + (tmax_c - tmin_c) * sin(pi * since_coldest_h / span_h)


def day_temps_c(
    tmin_c: float,
    tmax_c: float,
    sunrise_h: float,
    sunset_h: float,
    *,
    next_tmin_c: float | None = None,
    shape: CurveShape = AIR_AT_EYE_HEIGHT,
) -> tuple[float, ...]:
    """Return the temperatures at 0:00, 1:00 ... 23:00 of one day.

    `hour_temp_c` for each; after sunset toward the next night's minimum where that is known.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    daily = [hour_temp_c(tmin_c, tmax_c, hour, sunrise_h, sunset_h, shape) for hour in range(24)]
    if next_tmin_c is None:
        return tuple(daily)
    require_air_temp("the next minimum", next_tmin_c)
    at_sunset = hour_temp_c(tmin_c, tmax_c, sunset_h, sunrise_h, sunset_h, shape)
    night_h = 24.0 - (sunset_h - sunrise_h) + shape.lag_min_h
    for hour in range(24):
        if hour > sunset_h:
            fading = exp(-shape.cooling * (hour - sunset_h) / night_h)
            daily[hour] = next_tmin_c + (at_sunset - next_tmin_c) * fading
    return tuple(daily)


def hour_temp_two_harmonics_c(tmin_c: float, tmax_c: float, solar_hour: float) -> float:
    """Return the temperature at an hour by the sun, from two harmonics; no sunrise is needed.

    Campbell & Norman 1998, An introduction to environmental biophysics, eqs. 2.2 and 2.3: with
    w = pi/12, G = 0.44 - 0.46 sin(0.9 + w t) + 0.11 sin(0.9 + 2 w t) and T = Tmax G +
    Tmin (1 - G). One day's readings serve for the whole day.

    Args:
        tmin_c: the day's minimum, degC.
        tmax_c: the day's maximum, degC; not below the minimum.
        solar_hour: hour t by the sun, 0 to 24.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    require_min_max(tmin_c, tmax_c)
    turn = pi / 12.0 * within("the hour", solar_hour, 0.0, 24.0, "h")
    warm = 0.44 - 0.46 * sin(0.9 + turn) + 0.11 * sin(0.9 + 2.0 * turn)
    return tmax_c * warm + tmin_c * (1.0 - warm)
