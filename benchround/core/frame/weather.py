"""The day a frame's lid is advised for, drawn from what is known of the weather and the sun."""

from __future__ import annotations

from datetime import date, timedelta
from functools import lru_cache

from benchround.core.errors import OutOfRangeError, UnknownNameError
from benchround.core.frame.build import LidPosition
from benchround.core.frame.day import HourWeather
from benchround.core.frame.hours import frame_hours, hours_of
from benchround.core.frame.lid_words import HalfYear, LidDay
from benchround.core.site import Site
from benchround.core.sky import sun
from benchround.core.sky.hourly import LONGEST_DAY_H, hour_temp_two_harmonics_c
from benchround.core.sky.known_day import KnownDay, damp_days, known_day, tonight_min_c, warm_season
from benchround.core.sky.sunclock import SunDay
from benchround.core.sky.weather import Weather

SUN_TIME = "clock times are sun time: the site has no time zone"
SKY_GUESSED = "hours of sun not known: guessed from the day's range (FAO-56 eq. 50)"
LOWEST_M, HIGHEST_M = -500.0, 6000.0
"""Altitudes the clear-sky formula is made for."""

Where = tuple[float, float, float, str]
"""Latitude, longitude, altitude and time zone."""


def lid_day(
    weather: Weather, site: Site, day: date, standing: LidPosition = LidPosition.SHUT
) -> tuple[LidDay, tuple[str, ...]]:
    """What the day holds for a lid, and what was assumed where little is known.

    Args:
        weather: readings and outlook.
        site: latitude, clock and usual temperatures.
        day: the day of the advice.
        standing: where the lid stands in the morning.
    """
    known = known_day(weather, site, day)
    tomorrow = weather.on(day + timedelta(days=1))
    next_min = tomorrow.min_c if tomorrow is not None else None
    where = where_of(site)
    clock = clock_day(where, day)
    tonight, how = tonight_min_c(weather, day)
    asked = LidDay(
        hours=outside_hours(where, known, next_min),
        sunrise=clock.sunrise,
        sunset=clock.sunset,
        season=HalfYear.WARM if warm_season(site, day) else HalfYear.COOL,
        gust_kmh=known.gust_kmh,
        rain_mm=known.rain_mm,
        rain_in_hour_mm=known.rain_hour_mm,
        storm_from=known.storm_from,
        tonight_min_c=tonight,
        damp_days=damp_days(weather, day),
        standing=standing,
    )
    said = [*known.assumed, how]
    said.append(SKY_GUESSED if known.sun_h is None else "")
    said.append(SUN_TIME if not has_clock(site.timezone) else "")
    return asked, tuple(words for words in said if words)


def where_of(site: Site) -> Where:
    """Latitude, longitude and altitude held to what formulas are made for, and the clock."""
    return (
        max(-90.0, min(90.0, site.lat_deg)),
        max(-180.0, min(180.0, site.lon_deg)),
        max(LOWEST_M, min(HIGHEST_M, site.altitude_m)),
        site.timezone,
    )


@lru_cache(maxsize=64)
def has_clock(timezone: str) -> bool:
    """Whether the time zone is one the computer knows."""
    if not timezone:
        return False
    try:
        sun.sun_day(date(2025, 6, 21), 0.0, 0.0, timezone)
    except UnknownNameError:
        return False
    return True


def _zone(where: Where) -> str | float:
    _, lon_deg, _, timezone = where
    return timezone if has_clock(timezone) else lon_deg / 15.0


@lru_cache(maxsize=1024)
def clock_day(where: Where, day: date) -> SunDay:
    """Sunrise and sunset by the clock of the site; by the sun's own where it has none.

    Without a time zone noon is taken at 12:00 as the longitude gives it (15 degrees an hour).
    """
    lat_deg, lon_deg, _, _ = where
    found = sun.sun_day(day, lat_deg, lon_deg, _zone(where))
    if _plain(found):
        return found
    return SunDay(None, None, found.day_length_h)


def _plain(found: SunDay) -> bool:
    """Whether the sun rises and sets once between two midnights, with a night between."""
    if found.sunrise is None or found.sunset is None:
        return False
    up_h = hours_of(found.sunset) - hours_of(found.sunrise)
    return 0.0 < up_h <= LONGEST_DAY_H


def outside_hours(
    where: Where, known: KnownDay, next_min_c: float | None
) -> tuple[HourWeather, ...]:
    """Twenty-four hours of outside weather through a day's extremes and its sun."""
    return _hours(where, known.day, known.min_c, known.max_c, known.sun_h, next_min_c)


@lru_cache(maxsize=1024)
def _hours(
    where: Where,
    day: date,
    min_c: float,
    max_c: float,
    sun_h: float | None,
    next_min_c: float | None,
) -> tuple[HourWeather, ...]:
    lat_deg, _, _, _ = where
    daily_mj = radiation_mj(where, day, min_c, max_c, sun_h)
    clock, number = clock_day(where, day), day.timetuple().tm_yday
    if clock.sunrise is not None and clock.sunset is not None:
        ahead = None if next_min_c is None else max(-60.0, min(60.0, next_min_c))
        return frame_hours(
            min_c,
            max_c,
            daily_mj,
            lat_deg,
            number,
            clock.sunrise,
            clock.sunset,
            next_tmin_c=ahead,
        )
    noon_h = _noon_h(where, day)
    by_sun = [(hour + 12.5 - noon_h) % 24.0 for hour in range(24)]
    air = [hour_temp_two_harmonics_c(min_c, max_c, hour) for hour in by_sun]
    light = sun.hourly_radiation_wm2(lat_deg, number, daily_mj, noon_h)
    return tuple(HourWeather(c, wm2) for c, wm2 in zip(air, light, strict=True))


def _noon_h(where: Where, day: date) -> float:
    """Noon by the clock; 12:00 where clock and longitude do not belong together."""
    try:
        return sun.solar_noon_h(day, where[1], _zone(where))
    except OutOfRangeError:
        return 12.0


def radiation_mj(where: Where, day: date, min_c: float, max_c: float, sun_h: float | None) -> float:
    """The day's radiation on level ground, MJ/m2: from hours of sun, else from the range.

    Allen et al. 1998, FAO-56, eqs. 35 and 50, the latter held to a clear sky (eq. 37).
    """
    lat_deg, _, altitude_m, _ = where
    number = day.timetuple().tm_yday
    above = sun.extraterrestrial_mj(lat_deg, number)
    longest_h = sun.daylight_hours_fao(lat_deg, number)
    if sun_h is not None:
        return sun.radiation_from_sunshine_mj(above, min(sun_h, longest_h), longest_h)
    guessed = sun.radiation_from_range_mj(above, max_c, min_c)
    return min(guessed, sun.clear_sky_mj(above, altitude_m))
