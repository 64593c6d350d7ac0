"""The sun by the clock of the place: sunrise, sunset, noon and the day a plant sees.

The Julian-date series of the NOAA solar calculator, as the astral library computes it, solved for
the moment the sun's upper edge meets a flat horizon. astral is imported when first needed, so
that starting the program does not pay for it.
"""

from datetime import UTC, date, datetime, time, timedelta, timezone, tzinfo
from math import acos, cos, degrees, radians, sin

from benchround.core.errors import OutOfRangeError, UnknownNameError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import within

RISE_ZENITH_DEG = 90.833
"""Zenith angle of the sun's centre as its upper edge meets the horizon: 34' of refraction and 16'
of radius (NOAA solar calculator)."""

_PASSES = 3  # the sun moves little in half a day: the third pass changes nothing to the second


@dataclass(frozen=True, slots=True)
class SunDay:
    """One day's sun at a place, in the clock time of that place.

    A missing time means the sun does not cross the horizon that way on that day; the day length
    then says whether it stayed up (24 h) or down (0 h).
    """

    sunrise: time | None
    sunset: time | None
    day_length_h: float


def sun_day(day: date, lat_deg: float, lon_deg: float, zone: str | float = 0.0) -> SunDay:
    """Return sunrise, sunset and the length of the day, by the clock of the place.

    The NOAA solar-calculator series as astral 3 computes it, solved for a zenith of 90.833 deg;
    within a minute of the almanac up to about 65 deg.

    Args:
        day: the local day.
        lat_deg: latitude, north positive, -90 to 90.
        lon_deg: longitude, east positive, -180 to 180.
        zone: the clock: hours ahead of UTC (-14 to 14), or a time zone name such as
            "Europe/Dublin".

    Raises:
        OutOfRangeError: a figure is outside its range.
        UnknownNameError: no such time zone.
    """
    within("the latitude", lat_deg, -90.0, 90.0, "deg")
    within("the longitude", lon_deg, -180.0, 180.0, "deg")
    clock = _clock(zone)
    rise = _crossing(day, lat_deg, lon_deg, clock, rising=True)
    fall = _crossing(day, lat_deg, lon_deg, clock, rising=False)
    length_h = _day_length_h(day, lat_deg, lon_deg, rise, fall)
    return SunDay(_time_of(rise), _time_of(fall), length_h)


def _clock(zone: str | float) -> tzinfo:
    if isinstance(zone, str):
        from zoneinfo import ZoneInfo

        try:
            return ZoneInfo(zone)
        except (KeyError, ValueError, OSError) as fault:
            raise UnknownNameError(
                f"no time zone is called {zone!r}: write one like Europe/Dublin, or the hours"
                " ahead of UTC"
            ) from fault
    return timezone(timedelta(hours=within("the UTC offset", zone, -14.0, 14.0, "h")))


def _crossing(
    day: date, lat_deg: float, lon_deg: float, clock: tzinfo, *, rising: bool
) -> datetime | None:
    """Return when the sun crosses the horizon on the local day, or None if it does not.

    Solar days are tried around the local one, since clock and longitude may differ by hours.
    (astral's own search folds an event into 0 to 24 h UTC and so loses one a year near 90 deg E.)
    """
    for shift in (0, -1, 1):
        solar_day = day + timedelta(days=shift)
        moment = _crossing_of_solar_day(solar_day, lat_deg, lon_deg, rising=rising)
        if moment is not None and moment.astimezone(clock).date() == day:
            return moment.astimezone(clock)
    return None


def _crossing_of_solar_day(
    day: date, lat_deg: float, lon_deg: float, *, rising: bool
) -> datetime | None:
    """Return noon of the solar day less or plus half its length, the sun taken at that moment."""
    moment = _noon_utc(day, lon_deg)
    for _ in range(_PASSES):
        cosine = _cosine_of_half_day(moment, lat_deg)
        if not -1.0 <= cosine <= 1.0:
            return None
        half_day = timedelta(hours=degrees(acos(cosine)) / 15.0)
        moment = _noon_utc(day, lon_deg, at=moment) + (-half_day if rising else half_day)
    return moment


def _cosine_of_half_day(moment: datetime, lat_deg: float) -> float:
    """Return the cosine of the hour angle of sunset: below -1 never sets, above 1 never rises."""
    from astral.sun import sun_declination

    dec, lat = radians(sun_declination(_julian_century(moment))), radians(lat_deg)
    return (cos(radians(RISE_ZENITH_DEG)) - sin(lat) * sin(dec)) / (cos(lat) * cos(dec))


def _noon_utc(day: date, lon_deg: float, at: datetime | None = None) -> datetime:
    """Return solar noon of a day, by the equation of time at a moment, else at mean noon."""
    from astral.sun import eq_of_time

    mean_noon = datetime(day.year, day.month, day.day, 12, tzinfo=UTC)
    mean_noon -= timedelta(hours=lon_deg / 15.0)
    return mean_noon - timedelta(minutes=eq_of_time(_julian_century(at or mean_noon)))


def _julian_century(moment: datetime) -> float:
    from astral.julian import julianday, julianday_to_juliancentury

    return julianday_to_juliancentury(julianday(moment))


def _time_of(moment: datetime | None) -> time | None:
    return None if moment is None else moment.time().replace(microsecond=0)


def _day_length_h(
    day: date, lat_deg: float, lon_deg: float, rise: datetime | None, fall: datetime | None
) -> float:
    """Return the hours of the local day with the sun up, polar days included."""
    if rise is not None and fall is not None:
        up_h = (fall.astimezone(UTC) - rise.astimezone(UTC)) / timedelta(hours=1)
        return up_h if up_h >= 0.0 else 24.0 + up_h
    if rise is not None:
        return 24.0 - _hours_of(rise)
    if fall is not None:
        return _hours_of(fall)
    return 24.0 if _cosine_of_half_day(_noon_utc(day, lon_deg), lat_deg) < 0.0 else 0.0


def _hours_of(moment: datetime) -> float:
    return moment.hour + moment.minute / 60.0 + moment.second / 3600.0


def solar_noon_h(day: date, lon_deg: float, zone: str | float = 0.0) -> float:
    """Return the clock time, in hours, at which the sun stands highest on the local day.

    The equation of time as astral 3 computes it (NOAA solar calculator).

    Args:
        day: the local day.
        lon_deg: longitude, east positive, -180 to 180.
        zone: hours ahead of UTC, or a time zone name.
    """
    within("the longitude", lon_deg, -180.0, 180.0, "deg")
    for shift in (0, -1, 1):
        moment = _noon_utc(day + timedelta(days=shift), lon_deg).astimezone(_clock(zone))
        if moment.date() == day:
            return _hours_of(moment)
    raise OutOfRangeError(
        f"the clock set to {zone} has no solar noon at longitude {lon_deg:g} deg on {day}: check"
        " that longitude and clock belong together"
    )
