"""`benchround reckon sun`: sunrise, sunset, day length and radiation of a day."""

from __future__ import annotations

import argparse
from datetime import time

from benchround.core.sky.sun import (
    clear_sky_mj,
    daylight_hours_fao,
    elevation_deg,
    extraterrestrial_mj,
    radiation_from_sunshine_mj,
    sun_day,
)
from benchround.core.sky.sunclock import solar_noon_h
from benchround.reckoning.answer import Answer, minute, rounded
from benchround.reckoning.figures import day, number, sun_hours_within, within_sky, zone

HELP = "sunrise, sunset, day length and radiation"
EXAMPLE = "benchround reckon sun --lat 52.5 --lon -1 --on 2026-05-27 --tz Europe/London"
CLOCK = "NOAA solar calculator series as astral computes it, zenith 90.833 deg"
RADIATION = "Allen et al. 1998, FAO Irrigation and Drainage Paper 56, eqs. 21, 34, 35 and 37"


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument("--lat", type=number, required=True, metavar="L", help="south negative")
    parser.add_argument("--lon", type=number, required=True, metavar="L", help="west negative")
    parser.add_argument("--on", type=day, required=True, metavar="DATE", help="as 2026-05-27")
    parser.add_argument(
        "--tz",
        type=zone,
        default=0.0,
        metavar="ZONE",
        help="time zone, as Europe/London or hours ahead of UTC (UTC)",
    )
    parser.add_argument(
        "--altitude", type=number, default=0.0, metavar="M", help="metres above the sea (0)"
    )
    parser.add_argument(
        "--sun-hours", type=number, metavar="H", help="hours of sunshine, for the radiation"
    )


def reckon(given: argparse.Namespace) -> Answer:
    """The day's sun, and what it brings on level ground."""
    within_sky(given.lat, given.lon)
    found = sun_day(given.on, given.lat, given.lon, given.tz)
    number_of_day = given.on.timetuple().tm_yday
    above = extraterrestrial_mj(given.lat, number_of_day)
    longest = daylight_hours_fao(given.lat, number_of_day)
    clear = clear_sky_mj(above, given.altitude)
    radiation = clear
    if given.sun_hours is not None:
        hours = sun_hours_within(given.sun_hours, max(longest, found.day_length_h))
        radiation = radiation_from_sunshine_mj(above, min(hours, longest), longest)
    noon_h = solar_noon_h(given.on, given.lon, given.tz)
    highest = elevation_deg(given.lat, number_of_day, 12.0)
    clock = given.tz if isinstance(given.tz, str) else f"UTC{given.tz:+g}"
    sky = "under a clear sky" if given.sun_hours is None else f"with {given.sun_hours:g} h of sun"
    return Answer(
        value={
            "on": given.on.isoformat(),
            "clock": clock,
            "sunrise": minute(found.sunrise),
            "sunset": minute(found.sunset),
            "day_length_h": rounded(found.day_length_h, 3),
            "noon": _clock(noon_h),
            "highest_deg": rounded(highest, 2),
            "reason": _reason(found.sunrise, found.sunset, found.day_length_h),
            "radiation_mj": rounded(radiation, 3),
            "clear_sky_mj": rounded(clear, 3),
            "above_air_mj": rounded(above, 3),
            "sun_hours": given.sun_hours,
            "longest_sun_hours": rounded(longest, 3),
            "source": f"{CLOCK}; {RADIATION}",
        },
        lines=(
            f"{given.on.isoformat()} at {given.lat:g}, {given.lon:g}, clock {clock}",
            f"  sunrise {minute(found.sunrise) or 'none'}, "
            f"sunset {minute(found.sunset) or 'none'}, day {found.day_length_h:.2f} h",
            f"  highest at {_clock(noon_h)}, {highest:.0f} deg above the horizon",
            f"  radiation {radiation:.1f} MJ/m2 {sky}; {above:.1f} above the air",
            f"  formulas: {CLOCK}; {RADIATION}",
        ),
    )


def _clock(hours: float) -> str:
    """Hours of a clock to the nearest minute."""
    whole = round(hours * 60.0) % (24 * 60)
    return f"{whole // 60:02d}:{whole % 60:02d}"


def _reason(rise: time | None, fall: time | None, length_h: float) -> str | None:
    if rise is not None and fall is not None:
        return None
    if length_h >= 24.0:
        return "the sun stays up all day"
    if length_h <= 0.0:
        return "the sun stays down all day"
    return "the sun crosses the horizon only once between two midnights of this clock"
