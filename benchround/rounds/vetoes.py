"""The two vetoes: weather and room. What they forbid is held, not overdue."""

from __future__ import annotations

from datetime import date, timedelta

from benchround.core.dates import say_day
from benchround.core.frame.lid_words import LidLimits
from benchround.core.planning.growing_season import AUTUMN_AHEAD_DAYS, safe_from
from benchround.core.sky.weather import DayWeather
from benchround.core.task import Hold
from benchround.rounds.view import BatchView

NIGHTS_WANTED = 5
"""Nights above the crop's least wanted before tender stock goes out (our proposal)."""
PLANTING_GUST_KMH = 40.0
"""Beaufort 6 begins at 39 km/h; its use for planting is our proposal."""
DOWNPOUR = LidLimits()
"""Rain that keeps lids down keeps planting waiting too."""
TOO_HOT_C = 30.0
FROST_SOURCE = (
    "10 % last-frost date: seed firm's frost-probability pages (idea read); "
    "five nights: our proposal"
)


def nights_from(view: BatchView, start: date) -> tuple[DayWeather, ...]:
    """The known weather of `start` and the nights after it that planting must come through."""
    return view.season.weather.ahead(start, NIGHTS_WANTED)


def frost_hold(view: BatchView) -> Hold | None:
    """Whether frost forbids planting this crop out today, why, and when to look again."""
    least = view.crop.planting.least_night_c
    if least is None:
        return None
    safe = safe_from(view.season.site.year, view.day)
    cold = [
        weather
        for weather in nights_from(view, view.day)
        if weather.min_c is not None and weather.min_c <= least
    ]
    if cold:
        worst = min(cold, key=lambda weather: weather.min_c or 0.0)
        again = max(max(weather.day for weather in cold) + timedelta(days=1), safe)
        return Hold(
            f"{worst.min_c:g} C on {say_day(worst.day)}; "
            f"{NIGHTS_WANTED} nights above {least:g} C are wanted",
            again,
        )
    if view.day >= safe:
        return None
    if (safe - view.day).days > AUTUMN_AHEAD_DAYS:
        return Hold("the first frost of autumn is due: keep it under glass or let it go", safe)
    return Hold(f"before the safe last-frost day {say_day(safe)}", safe)


def last_cold_day(view: BatchView, since: date) -> date | None:
    """The last known day from `since` to today that was too cold for this crop."""
    least = view.crop.planting.least_night_c
    if least is None:
        return None
    day = view.day
    while day >= since:
        weather = view.season.weather.on(day)
        if weather is not None and weather.min_c is not None and weather.min_c <= least:
            return day
        day -= timedelta(days=1)
    return None


def storm_hold(view: BatchView) -> Hold | None:
    """Whether wind, downpour or heat forbids planting anything out today."""
    today = view.season.weather.on(view.day)
    if today is None:
        return None
    reason = _rough(today)
    if not reason:
        return None
    again = view.day + timedelta(days=1)
    for weather in view.season.weather.ahead(again, 7):
        if not _rough(weather):
            again = weather.day
            break
    return Hold(reason, again)


def _rough(weather: DayWeather) -> str:
    if weather.gust_kmh is not None and weather.gust_kmh > PLANTING_GUST_KMH:
        return f"gusts of {weather.gust_kmh:g} km/h"
    if weather.rain_mm is not None and weather.rain_mm >= DOWNPOUR.rain_day_mm:
        return f"{weather.rain_mm:g} mm of rain"
    if weather.rain_hour_mm is not None and weather.rain_hour_mm >= DOWNPOUR.rain_hour_mm:
        return f"{weather.rain_hour_mm:g} mm of rain in an hour"
    if weather.max_c is not None and weather.max_c >= TOO_HOT_C:
        return f"{weather.max_c:g} C: too hot to move plants"
    return ""


def room_hold(view: BatchView, to_place: str) -> Hold | None:
    """Whether the bed meant for these plants has not been cleared yet."""
    holder = view.season.uncleared.get(to_place) if to_place else None
    if holder is None or holder == view.batch.id:
        return None
    place = view.season.place(to_place)
    name = place.name if place else to_place
    return Hold(f"{name} is not cleared: {holder} still stands there")
