"""A day's weather made fit to reckon with: gaps filled, contradictions settled, both said."""

from __future__ import annotations

from datetime import date, time
from functools import lru_cache

from benchround.core.by_identity import Same
from benchround.core.dates import say_day
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import COLDEST_AIR_C, WARMEST_AIR_C
from benchround.core.site import Site
from benchround.core.sky.weather import DayWeather, Weather, in_agreement
from benchround.core.units import degrees

MOST_RAIN_MM, MOST_RAIN_HOUR_MM, MOST_GUST_KMH = 500.0, 300.0, 300.0
"""Beyond these a figure is a slip of the pen and is left out (common practice, no source)."""
DAMP_MM = 0.2
"""Rain from which a day counts as damp: the least a gauge is read to."""
LONGEST_DAMP_DAYS = 14
WARM_DAY_LENGTH_H = 12.0
"""From equinox to equinox it is the warm half of the year; our proposal."""


@dataclass(frozen=True, slots=True)
class KnownDay:
    """One day outside, with a minimum not above its maximum and every figure in its range.

    Attributes:
        basis: "reading", "outlook" or "usual".
        assumed: what was not known or could not be, and what was taken instead.
    """

    day: date
    min_c: float
    max_c: float
    sun_h: float | None
    rain_mm: float | None
    rain_hour_mm: float | None
    gust_kmh: float | None
    storm_from: time | None
    basis: str
    assumed: tuple[str, ...]


class _Sky(Same):
    """Weather and site; both are replaced when a record changes them."""

    def __init__(self, weather: Weather, site: Site) -> None:
        super().__init__(weather, site)
        self.weather, self.site = weather, site


def known_day(weather: Weather, site: Site, day: date) -> KnownDay:
    """The outside weather of a day, the site's usual figures where nothing better is known."""
    return _known(_Sky(weather, site), day)


@lru_cache(maxsize=2048)
def _known(sky: _Sky, day: date) -> KnownDay:
    weather, site = sky.weather, sky.site
    raw = weather.on(day) or DayWeather(day)
    taken = weather.on_or_usual(day, site)
    low, high, assumed = _extremes(raw, taken)
    return KnownDay(
        day=day,
        min_c=low,
        max_c=high,
        sun_h=_within(raw.sun_h, 24.0),
        rain_mm=_within(raw.rain_mm, MOST_RAIN_MM),
        rain_hour_mm=_within(raw.rain_hour_mm, MOST_RAIN_HOUR_MM),
        gust_kmh=_within(raw.gust_kmh, MOST_GUST_KMH),
        storm_from=raw.storm_from,
        basis=taken.basis,
        assumed=assumed,
    )


def _extremes(raw: DayWeather, taken: DayWeather) -> tuple[float, float, tuple[str, ...]]:
    low, high = _held(taken.min_c, 5.0), _held(taken.max_c, 15.0)
    clash = low > high
    low, high = in_agreement(low, high, low_known=raw.min_c is not None)
    low, high = _held(low, low), _held(high, high)
    name = say_day(raw.day)
    said: tuple[str, ...] = ()
    if raw.min_c is None and raw.max_c is None:
        said = (
            f"{name}: no temperatures known, a usual {degrees(low)} to {degrees(high)} C taken",
        )
    elif raw.min_c is None:
        said = (f"{name}: lowest not known, {degrees(low)} C taken",)
    elif raw.max_c is None:
        said = (f"{name}: highest not known, {degrees(high)} C taken",)
    elif clash:
        said = (f"{name}: lowest above highest, {degrees(low)} to {degrees(high)} C taken",)
    return low, high, said


def _held(temp_c: float | None, otherwise: float) -> float:
    value = otherwise if temp_c is None else temp_c
    return max(COLDEST_AIR_C, min(WARMEST_AIR_C, value))


def _within(value: float | None, most: float) -> float | None:
    return value if value is not None and 0.0 <= value <= most else None


def damp_days(weather: Weather, day: date) -> int | None:
    """How many days in a row it has been damp, today included; None where today is not known."""
    today = weather.on(day)
    if today is None or today.rain_mm is None:
        return None
    for back in range(LONGEST_DAMP_DAYS):
        on = weather.on(date.fromordinal(day.toordinal() - back))
        if on is None or on.rain_mm is None or on.rain_mm < DAMP_MM:
            return back
    return LONGEST_DAMP_DAYS


def tonight_min_c(weather: Weather, day: date) -> tuple[float | None, str]:
    """The lowest to reckon with in the coming night, and how it is known.

    A forecast lowest of a day may fall at its dawn or at its evening, so the lower of today's and
    tomorrow's is taken. A reading of today is of the night that is over and does not count.
    """
    today, tomorrow = weather.on(day), weather.on(date.fromordinal(day.toordinal() + 1))
    ahead = tomorrow.min_c if tomorrow is not None else None
    own = today.min_c if today is not None else None
    if own is None and ahead is None:
        return None, ""
    if own is None or (today is not None and today.basis == "reading" and ahead is not None):
        return _tonight(ahead, "the lowest forecast for tomorrow")
    if ahead is None:
        return _tonight(own, "the lowest of today; tomorrow is not known")
    return _tonight(
        min(own, ahead),
        "the lower of today's and tomorrow's lowest, which may fall at dawn or at evening",
    )


def _tonight(value: float | None, how: str) -> tuple[float | None, str]:
    held = None if value is None else _held(value, 0.0)
    return held, f"tonight {held:g} C: {how}" if held is not None else ""


def warm_season(site: Site, day: date) -> bool:
    """Whether it is the half of the year with the longer days."""
    return site.day_length_h(day) >= WARM_DAY_LENGTH_H
