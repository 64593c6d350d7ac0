"""What the weather commands share: the season they mean, and days as values and words."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date

from benchround.core.errors import SeasonError
from benchround.core.record import Draft
from benchround.core.sky.weather import DayWeather
from benchround.desk import Desk
from benchround.plain import JsonValue
from benchround.whereabouts import find_season


def local_day() -> date:
    """The grower's day by the computer's clock; the one place these commands read it."""
    return date.today()


def open_desk(season: str, today: date | None, *, read_only: bool = False) -> Desk:
    """The desk of the season meant, on the day given or today.

    Raises:
        SeasonError: there is no season.
    """
    found = find_season(season)
    if found is None:
        raise SeasonError("There is no season yet: begin one with 'benchround', or name a folder.")
    clock: Callable[[], date] = local_day if today is None else lambda: today
    return Desk.open(found, today=clock, read_only=read_only)


def draft_value(draft: Draft) -> JsonValue:
    """One draft as a JSON-ready value."""
    value: dict[str, JsonValue] = {"day": draft.day.isoformat() if draft.day else None}
    if draft.about:
        value["place"] = draft.about
    value.update(draft.figures)
    return value


def weather_value(weather: DayWeather) -> dict[str, JsonValue]:
    """One day's weather as a JSON-ready value; null where not known."""
    return {
        "day": weather.day.isoformat(),
        "basis": weather.basis,
        "min_c": weather.min_c,
        "max_c": weather.max_c,
        "sun_h": weather.sun_h,
        "rain_mm": weather.rain_mm,
        "rain_hour_mm": weather.rain_hour_mm,
        "gust_kmh": weather.gust_kmh,
        "storm_from": f"{weather.storm_from:%H:%M}" if weather.storm_from else None,
    }
