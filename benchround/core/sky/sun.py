"""The sun over the site: its height, and how much radiation a day and an hour bring.

The closed forms here are keyed to the day of the year and serve radiation and evapotranspiration
only (Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56, "FAO-56" below).
As clock times they would be off by up to half an hour at 60 degrees: sunrise, sunset and the day
a plant sees come from `sunclock`, whose names can be had from here too.
"""

from collections.abc import Iterator
from math import acos, asin, ceil, cos, degrees, floor, pi, radians, sin, sqrt, tan

from benchround.core.numbers.ranges import require_min_max, within
from benchround.core.sky.sunclock import SunDay as SunDay
from benchround.core.sky.sunclock import solar_noon_h as solar_noon_h
from benchround.core.sky.sunclock import sun_day as sun_day

SOLAR_CONSTANT_MJ_PER_MIN = 0.0820
"""Solar constant, MJ m-2 min-1, FAO-56 eq. 21."""
ANGSTROM_A = 0.25
"""Share of Ra that arrives under full cloud, FAO-56 eq. 35."""
ANGSTROM_B = 0.50
"""Further share of Ra that arrives under a clear sky, FAO-56 eq. 35."""
RANGE_COEFFICIENT_INLAND = 0.16
RANGE_COEFFICIENT_COAST = 0.19
"""Adjustment kRs of the temperature-range method, degC^-0.5, FAO-56 eq. 50."""

_MJ_PER_WH = 0.0036


def _latitude(lat_deg: float) -> float:
    return radians(within("the latitude", lat_deg, -90.0, 90.0, "deg"))


def _year_angle(day_of_year: int) -> float:
    return 2.0 * pi * within("the day of the year", day_of_year, 1, 366, "") / 365.0


def relative_distance(day_of_year: int) -> float:
    """Return the inverse relative distance of the sun, dr (no unit).

    Allen et al. 1998, FAO-56, eq. 23: 1 + 0.033 cos(2 pi J / 365); J from 1 to 366.
    """
    return 1.0 + 0.033 * cos(_year_angle(day_of_year))


def declination_rad(day_of_year: int) -> float:
    """Return the sun's declination in radians, for radiation only.

    Allen et al. 1998, FAO-56, eq. 24: 0.409 sin(2 pi J / 365 - 1.39); J from 1 to 366.
    """
    return 0.409 * sin(_year_angle(day_of_year) - 1.39)


def sunset_angle_rad(lat_deg: float, day_of_year: int) -> float:
    """Return the sunset hour angle in radians, from 0 (polar night) to pi (midnight sun).

    Allen et al. 1998, FAO-56, eq. 25: arccos(-tan(lat) tan(declination)), the argument held
    within -1 and 1. Latitude -90 to 90 deg, J from 1 to 366.
    """
    cosine = -tan(_latitude(lat_deg)) * tan(declination_rad(day_of_year))
    return acos(max(-1.0, min(1.0, cosine)))


def extraterrestrial_mj(lat_deg: float, day_of_year: int) -> float:
    """Return the day's radiation above the air, Ra, in MJ m-2 d-1.

    Allen et al. 1998, FAO-56, eq. 21. Latitude -90 to 90 deg, J from 1 to 366; daily sums only.
    """
    half = sunset_angle_rad(lat_deg, day_of_year)
    return _between_angles_mj(lat_deg, day_of_year, -half, half)


def _between_angles_mj(lat_deg: float, day_of_year: int, start: float, end: float) -> float:
    """Return Ra between two hour angles in radians, MJ m-2: FAO-56 eq. 28."""
    lat, dec = _latitude(lat_deg), declination_rad(day_of_year)
    height = (end - start) * sin(lat) * sin(dec) + cos(lat) * cos(dec) * (sin(end) - sin(start))
    scale = 12.0 * 60.0 / pi * SOLAR_CONSTANT_MJ_PER_MIN * relative_distance(day_of_year)
    return max(0.0, scale * height)


def daylight_hours_fao(lat_deg: float, day_of_year: int) -> float:
    """Return the greatest possible sunshine hours, N, for radiation formulas only.

    Allen et al. 1998, FAO-56, eq. 34: 24 ws / pi. Leaves out refraction and the sun's width, so
    it is 8 to 28 minutes short of the day a plant sees; photoperiod comes from `sun_day`.
    """
    return 24.0 / pi * sunset_angle_rad(lat_deg, day_of_year)


def elevation_deg(lat_deg: float, day_of_year: int, solar_hour: float) -> float:
    """Return the height of the sun's centre above the horizon in degrees, below it negative.

    Spherical triangle of latitude, declination (FAO-56 eq. 24) and hour angle; no refraction.

    Args:
        lat_deg: latitude, -90 to 90 deg.
        day_of_year: 1 to 366.
        solar_hour: hours by the sun, 0 to 24; 12 is when the sun stands highest.
    """
    within("the solar hour", solar_hour, 0.0, 24.0, "h")
    lat, dec = _latitude(lat_deg), declination_rad(day_of_year)
    angle = pi / 12.0 * (solar_hour - 12.0)
    return degrees(asin(sin(lat) * sin(dec) + cos(lat) * cos(dec) * cos(angle)))


def radiation_from_sunshine_mj(ra: float, sun_hours: float, daylight_hours: float) -> float:
    """Return the radiation on level ground, Rs, from hours of bright sunshine, MJ m-2 d-1.

    Allen et al. 1998, FAO-56, eq. 35 (Angstrom): (0.25 + 0.50 n/N) Ra.

    Args:
        ra: radiation above the air, MJ m-2 d-1.
        sun_hours: hours of sunshine n, 0 to N.
        daylight_hours: greatest possible hours N, up to 24; with N = 0 nothing arrives.
    """
    _radiation(ra)
    within("the length of the day", daylight_hours, 0.0, 24.0, "h")
    within("the hours of sunshine", sun_hours, 0.0, daylight_hours, "h")
    if daylight_hours == 0.0:
        return 0.0
    return radiation_from_sky_word_mj(ra, sun_hours / daylight_hours)


def radiation_from_sky_word_mj(ra: float, share_of_sun: float) -> float:
    """Return the radiation Rs of a sky described by its share of sun, MJ m-2 d-1.

    Allen et al. 1998, FAO-56, eq. 35, the share standing for n/N: 1 clear, about 0.5 part cloud,
    0 to 0.1 overcast.
    """
    within("the share of sun", share_of_sun, 0.0, 1.0, "")
    return (ANGSTROM_A + ANGSTROM_B * share_of_sun) * _radiation(ra)


def radiation_from_range_mj(ra: float, tmax: float, tmin: float, coastal: bool = False) -> float:
    """Return the radiation Rs guessed from the day's range of temperature, MJ m-2 d-1.

    Allen et al. 1998, FAO-56, eq. 50 (Hargreaves): kRs sqrt(Tmax - Tmin) Ra, kRs 0.16 inland and
    0.19 on a coast. Callers hold it to `clear_sky_mj`.

    Args:
        ra: radiation above the air, MJ m-2 d-1.
        tmax: the day's maximum, degC.
        tmin: the day's minimum, degC; not above the maximum.
        coastal: whether a large water body governs the air.
    """
    require_min_max(tmin, tmax)
    coefficient = RANGE_COEFFICIENT_COAST if coastal else RANGE_COEFFICIENT_INLAND
    return coefficient * sqrt(tmax - tmin) * _radiation(ra)


def clear_sky_mj(ra: float, altitude_m: float) -> float:
    """Return the radiation under a cloudless sky, Rso, MJ m-2 d-1.

    Allen et al. 1998, FAO-56, eq. 37: (0.75 + 0.00002 z) Ra; z in m, -500 to 6000.
    """
    within("the altitude", altitude_m, -500.0, 6000.0, "m")
    return (0.75 + 2e-5 * altitude_m) * _radiation(ra)


def _radiation(mj: float) -> float:
    return within("the radiation", mj, 0.0, 50.0, "MJ/m2 a day")


def hourly_radiation_wm2(
    lat_deg: float, day_of_year: int, daily_mj: float, noon_h: float = 12.0
) -> tuple[float, ...]:
    """Spread a day's radiation over its 24 hours as the sun's height would, mean W/m2 each.

    Each hour gets the share that FAO-56 eq. 28 gives it above the air, so the 24 figures add up
    to the daily sum again (W/m2 for an hour is 0.0036 MJ/m2).

    Args:
        lat_deg: latitude, -90 to 90 deg.
        day_of_year: 1 to 366.
        daily_mj: radiation of the day on level ground, MJ m-2 d-1, 0 to 50.
        noon_h: clock time at which the sun stands highest, in hours; 12 gives hours by the sun.

    Raises:
        OutOfRangeError: a figure is outside its range, or radiation is claimed for a day on which
            the sun stays down.
    """
    within("the hour of solar noon", noon_h, 0.0, 24.0, "h")
    total = extraterrestrial_mj(lat_deg, day_of_year)
    if total <= 0.0:
        within("the radiation of a day without sun", daily_mj, 0.0, 0.0, "MJ/m2")
        return (0.0,) * 24
    scale = _radiation(daily_mj) / total / _MJ_PER_WH
    hours = [0.0] * 24
    half_h = 12.0 / pi * sunset_angle_rad(lat_deg, day_of_year)
    for hour, start, end in _hour_slices(noon_h - half_h, noon_h + half_h):
        angles = (pi / 12.0 * (start - noon_h), pi / 12.0 * (end - noon_h))
        hours[hour % 24] += scale * _between_angles_mj(lat_deg, day_of_year, *angles)
    return tuple(hours)


def _hour_slices(rise_h: float, set_h: float) -> Iterator[tuple[int, float, float]]:
    """Cut the time between rise and set at the full hours: (hour, start, end)."""
    for hour in range(floor(rise_h), ceil(set_h)):
        yield hour, max(rise_h, float(hour)), min(set_h, hour + 1.0)
