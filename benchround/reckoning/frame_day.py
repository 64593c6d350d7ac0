"""A cold frame through one day: warmth by the hour and advice on the lid, for the shell."""

from __future__ import annotations

import argparse
from datetime import date, timedelta

from benchround.core.frame.build import FrameBuild, LidPosition
from benchround.core.frame.day import FrameDay, frame_day
from benchround.core.frame.lid_words import LidAdvice, LidDay, LidStep, Stock
from benchround.core.frame.lids import advise_lids
from benchround.core.frame.place import SAID_POSITIONS
from benchround.core.frame.weather import lid_day, radiation_mj, where_of
from benchround.core.numbers.ranges import require_min_max, within
from benchround.core.site import Site
from benchround.core.sky.known_day import MOST_GUST_KMH, MOST_RAIN_MM
from benchround.core.sky.sunclock import sun_day
from benchround.core.sky.weather import DayWeather, Weather
from benchround.core.units import degrees
from benchround.plain import JsonValue
from benchround.reckoning.answer import Answer, minute, rounded


def day_answer(given: argparse.Namespace, frame: FrameBuild, source: str) -> Answer:
    """The day's curve with the lid as given, shut, and as advised."""
    site = Site(lat_deg=given.lat, lon_deg=given.lon, timezone=_zone(given))
    weather = _weather(given)
    lid = SAID_POSITIONS[given.lid]
    asked, assumed = lid_day(weather, site, given.on, lid)
    advice = advise_lids(frame, asked, Stock(given.stock))
    shut = frame_day(frame, asked.hours, (LidPosition.SHUT,) * 24)
    held = frame_day(frame, asked.hours, (lid,) * 24)
    daily_mj = radiation_mj(where_of(site), given.on, given.min, given.max, given.sun_hours)
    said = tuple(dict.fromkeys((*assumed, *advice.assumed)))
    value: dict[str, JsonValue] = {
        "on": given.on.isoformat(),
        "lid": str(lid),
        "stock": given.stock,
        "radiation_mj": rounded(daily_mj, 2),
        "sunrise": minute(asked.sunrise),
        "sunset": minute(asked.sunset),
        "shut_max_c": rounded(shut.max_c, 2),
        "shut_passes_at": minute(advice.shut_passes_at),
        "lid_max_c": rounded(held.max_c, 2),
        "gain_c": rounded(max(_gains(asked, held)), 2),
        "hours": _hours(asked, advice, shut, held),
        "advice": [_step(step) for step in advice.steps],
        "assumed": list(said),
        "source": source,
    }
    return Answer(value, _lines(given, asked, advice, shut, source), said)


def _zone(given: argparse.Namespace) -> str:
    """The time zone, refused if the computer does not know it."""
    zone: str = given.tz.strip()
    if zone:
        sun_day(given.on, 0.0, 0.0, zone)
    return zone


def _weather(given: argparse.Namespace) -> Weather:
    require_min_max(given.min, given.max)
    for figure, value, high, unit in (
        ("the hours of sunshine", given.sun_hours, 24.0, "h"),
        ("the gust", given.gust, MOST_GUST_KMH, "km/h"),
        ("the rain of the day", given.rain, MOST_RAIN_MM, "mm"),
    ):
        if value is not None:
            within(figure, value, 0.0, high, unit)
    on: date = given.on
    days = {
        on: DayWeather(
            on,
            given.min,
            given.max,
            sun_h=given.sun_hours,
            rain_mm=given.rain,
            gust_kmh=given.gust,
        )
    }
    if given.next_min is not None:
        within("the next lowest", given.next_min, -60.0, 60.0, "degC")
        after = on + timedelta(days=1)
        days[after] = DayWeather(after, given.next_min)
    return Weather(days)


def _gains(asked: LidDay, held: FrameDay) -> list[float]:
    return [inside - hour.air_c for inside, hour in zip(held.inside_c, asked.hours, strict=True)]


def _hours(asked: LidDay, advice: LidAdvice, shut: FrameDay, held: FrameDay) -> list[JsonValue]:
    return [
        {
            "hour": number,
            "outside_c": rounded(hour.air_c, 2),
            "radiation_wm2": rounded(hour.radiation_wm2, 1),
            "shut_c": rounded(shut.inside_c[number], 2),
            "lid_c": rounded(held.inside_c[number], 2),
            "advised_lid": str(advice.lid_plan[number]),
            "advised_c": rounded(advice.inside_c[number], 2),
        }
        for number, hour in enumerate(asked.hours)
    ]


def _step(step: LidStep) -> JsonValue:
    return {
        "kind": str(step.kind),
        "at": minute(step.at),
        "latest": minute(step.latest),
        "lid": str(step.position) if step.position is not None else None,
        "figures": list(step.figures),
        "reason": step.reason,
        "source": step.source,
    }


def _lines(
    given: argparse.Namespace, asked: LidDay, advice: LidAdvice, shut: FrameDay, source: str
) -> tuple[str, ...]:
    passes = minute(advice.shut_passes_at)
    left_shut = f"  left shut it reaches {degrees(shut.max_c, 1)} C"
    table = [
        f"  {number:02d}:00  outside {hour.air_c:5.1f}  sun {hour.radiation_wm2:4.0f}  "
        f"shut {shut.inside_c[number]:5.1f}  advised {advice.inside_c[number]:5.1f} "
        f"{advice.lid_plan[number].words}"
        for number, hour in enumerate(asked.hours)
    ]
    return (
        f"{given.on.isoformat()}, {given.min:g} to {given.max:g} C, {given.stock} stock",
        f"{left_shut}, too hot from {passes}" if passes else left_shut,
        *(f"  {_step_words(step)}" for step in advice.steps),
        *table,
        f"  formula: {source}",
    )


def _step_words(step: LidStep) -> str:
    at = f"{minute(step.at)} " if step.at is not None else ""
    lid = f": {step.position.words}" if step.position is not None else ""
    return f"{at}{step.kind}{lid}. {step.reason} ({'; '.join((*step.figures, step.source))})"
