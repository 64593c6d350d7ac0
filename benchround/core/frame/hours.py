"""Outside weather by the hour for a frame, drawn from two temperatures and the sun."""

from datetime import time

from benchround.core.frame.day import HourWeather
from benchround.core.sky.hourly import day_temps_c
from benchround.core.sky.sun import hourly_radiation_wm2


def hours_of(clock: time) -> float:
    """Return a clock time in hours."""
    return clock.hour + clock.minute / 60.0 + clock.second / 3600.0


def frame_hours(
    tmin_c: float,
    tmax_c: float,
    daily_mj: float,
    lat_deg: float,
    day_of_year: int,
    sunrise: time,
    sunset: time,
    wind_ms: float | None = None,
    next_tmin_c: float | None = None,
) -> tuple[HourWeather, ...]:
    """Return 24 hours of weather through a day's extremes and its radiation, by the clock.

    Temperatures after Parton & Logan (`hourly`), each hour the mean of its two ends; radiation
    spread as the sun's height (`sun`) about the middle of sunrise and sunset.

    Args:
        tmin_c: the day's minimum, degC.
        tmax_c: the day's maximum, degC.
        daily_mj: radiation of the day on level ground, 0 to 50 MJ/m2.
        lat_deg: latitude, -90 to 90 deg.
        day_of_year: 1 to 366.
        sunrise: clock time of sunrise.
        sunset: clock time of sunset, the same day.
        wind_ms: wind at about 2 m, m/s; None where not known.
        next_tmin_c: the next night's minimum, degC, where known.

    Raises:
        OutOfRangeError: a figure is outside its range, or the sun does not set that day.
    """
    rise_h, set_h = hours_of(sunrise), hours_of(sunset)
    ends = day_temps_c(tmin_c, tmax_c, rise_h, set_h, next_tmin_c=next_tmin_c)
    sun = hourly_radiation_wm2(lat_deg, day_of_year, daily_mj, (rise_h + set_h) / 2.0)
    means = [(ends[h] + ends[min(h + 1, 23)]) / 2.0 for h in range(24)]
    return tuple(HourWeather(air_c, wm2, wind_ms) for air_c, wm2 in zip(means, sun, strict=True))
