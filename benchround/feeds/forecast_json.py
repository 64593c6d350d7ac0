"""A daily forecast as JSON, read into outlook days; nothing in it is trusted.

The shape expected is that of Open-Meteo's daily forecast (written down from memory, not looked up):

    {"daily_units": {"time": "iso8601", "temperature_2m_min": "°C", ...},
     "daily": {"time": ["2026-05-27", ...], "temperature_2m_min": [5.1, ...],
               "temperature_2m_max": [23.4, ...], "precipitation_sum": [0.0, ...],
               "wind_gusts_10m_max": [22.0, ...], "sunshine_duration": [43200.0, ...]}}

Every list is as long as `time`; a figure may be null, and a list may be missing. Sunshine is in
seconds. Other services serve if they answer in this shape.
"""

from __future__ import annotations

import json
import math
from collections.abc import Callable, Mapping
from datetime import date
from types import MappingProxyType
from typing import Any, NoReturn

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.sky.known_day import MOST_GUST_KMH, MOST_RAIN_MM
from benchround.core.sky.weather import COLDEST_C, HOTTEST_C
from benchround.core.units import KMH_PER_MS
from benchround.feeds.outlook_day import OutlookDay

MOST_DAYS = 16
LONGEST_DAY_H = 24.0


@dataclass(frozen=True, slots=True)
class _Series:
    """One list of the answer: its units with the way to ours, and what its figures can be."""

    units: Mapping[str, Callable[[float], float]]
    low: float
    high: float


def _as_is(value: float) -> float:
    return value


_TEMPERATURE = _Series({"°C": _as_is}, COLDEST_C, HOTTEST_C)
SERIES: Mapping[str, _Series] = MappingProxyType(
    {
        "temperature_2m_min": _TEMPERATURE,
        "temperature_2m_max": _TEMPERATURE,
        "precipitation_sum": _Series({"mm": _as_is}, 0.0, MOST_RAIN_MM),
        "wind_gusts_10m_max": _Series(
            {"km/h": _as_is, "m/s": lambda wind: wind * KMH_PER_MS}, 0.0, MOST_GUST_KMH
        ),
        "sunshine_duration": _Series({"s": lambda sun: sun / 3600.0}, 0.0, LONGEST_DAY_H),
    }
)


@dataclass(frozen=True, slots=True)
class Forecast:
    """The days of a forecast, and what in it could not be."""

    days: tuple[OutlookDay, ...]
    doubts: tuple[str, ...] = ()


def read_forecast(text: str, note: str) -> Forecast:
    """Read a daily forecast.

    Args:
        text: the JSON.
        note: where it comes from, kept with each day.

    Raises:
        InputError: it is no JSON, has another shape, or uses other units.
    """
    daily, units = _parts(text)
    days = _days(daily.get("time"))
    doubts: list[str] = []
    columns = {
        name: _figures(name, daily.get(name), units.get(name), days, doubts) for name in SERIES
    }
    if all(value is None for column in columns.values() for value in column):
        raise _wrong("it holds no figures")
    found: list[OutlookDay] = []
    for index, day in enumerate(days):
        low = columns["temperature_2m_min"][index]
        high = columns["temperature_2m_max"][index]
        if low is not None and high is not None and low > high:
            doubts.append(f"{day}: lowest {low:g} C is above highest {high:g} C; neither is used")
            low = high = None
        outlook = OutlookDay(
            day,
            note,
            min_c=low,
            max_c=high,
            rain_mm=columns["precipitation_sum"][index],
            gust_kmh=columns["wind_gusts_10m_max"][index],
            sun_h=columns["sunshine_duration"][index],
        )
        if outlook.figures():
            found.append(outlook)
    return Forecast(tuple(found), tuple(doubts))


def _wrong(why: str) -> InputError:
    return InputError(f"The answer is not the daily forecast that was expected: {why}.")


def _no_constant(name: str) -> NoReturn:
    raise ValueError(f"{name} is no figure")


def _parts(text: str) -> tuple[dict[str, Any], dict[str, Any]]:
    try:
        whole = json.loads(text, parse_constant=_no_constant)
    except (ValueError, RecursionError) as error:
        raise _wrong("it is no whole JSON text") from error
    daily = whole.get("daily") if isinstance(whole, dict) else None
    if not isinstance(daily, dict):
        raise _wrong("'daily' is missing")
    units = whole.get("daily_units", {})
    if not isinstance(units, dict):
        raise _wrong("'daily_units' is no table")
    return daily, units


def _days(raw: object) -> list[date]:
    if not isinstance(raw, list) or not 1 <= len(raw) <= MOST_DAYS:
        raise _wrong(f"'time' is no list of 1 to {MOST_DAYS} days")
    try:
        days = [date.fromisoformat(text) for text in raw]
    except (TypeError, ValueError) as error:
        raise _wrong("'time' holds something that is no day") from error
    if sorted(set(days)) != days:
        raise _wrong("the days of 'time' are not in order")
    return days


def _figures(
    name: str, raw: object, unit: object, days: list[date], doubts: list[str]
) -> list[float | None]:
    if raw is None:
        return [None] * len(days)
    if not isinstance(raw, list) or len(raw) != len(days):
        raise _wrong(f"'{name}' is no list as long as 'time'")
    series = SERIES[name]
    if unit is not None and unit not in series.units:
        known = ", ".join(series.units)
        raise _wrong(f"'{name}' is in {str(unit)[:20]!r}, not in {known}")
    turned = series.units[unit] if isinstance(unit, str) else next(iter(series.units.values()))
    found: list[float | None] = []
    for day, value in zip(days, raw, strict=True):
        if value is not None and (isinstance(value, bool) or not isinstance(value, int | float)):
            raise _wrong(f"'{name}' holds something that is no figure")
        figure = None if value is None else _turned(turned, value)
        if figure is not None and not series.low <= figure <= series.high:
            doubts.append(f"{day}: {name} {figure:g} cannot be and is not used")
            figure = None
        found.append(figure)
    return found


def _turned(turn: Callable[[float], float], value: float) -> float:
    try:
        return round(turn(float(value)), 1)
    except OverflowError:
        return math.inf
