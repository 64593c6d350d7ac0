"""Coming days: words by the limits lids are moved by, bars on one scale."""

from __future__ import annotations

from datetime import timedelta

import pytest

from benchround.core.season import Season
from benchround.core.sky.weather import DayWeather
from benchround.drawing.canvas import ASCII, UNICODE
from benchround.drawing.weather import (
    NOTHING,
    DayLine,
    coming_days,
    day_words,
    gust_words,
    rain_words,
    temperature_words,
    weather_lines,
    weather_words,
)
from tests.drawing.checks import must_be_sayable, must_hold, text_of
from tests.drawing.fixed import TODAY, WEATHER
from tests.sample.story import DAY_0, OUTLOOK


def day(**figures: float) -> DayLine:
    return DayLine(TODAY, DayWeather(TODAY, **figures))  # type: ignore[arg-type]  # numbers only


@pytest.mark.parametrize(
    ("gust", "words"),
    # latch from 40, strap from 60 km/h: our proposal after Beaufort 6 to 8, as the lid advice
    [(22, "calm 22"), (39.9, "calm 40"), (40, "latch lids 40"), (60, "strap lids 60")],
)
def test_gusts_are_said_as_what_they_ask_of_lids(gust: float, words: str) -> None:
    assert gust_words(day(gust_kmh=gust).weather) == words


@pytest.mark.parametrize(
    ("rain", "hour", "words"),
    # a downpour is 5 mm in an hour or 10 mm in a day: our proposal, as the lid advice
    [
        (0.0, 0.0, "dry"),
        (6.0, 1.0, "rain 6 mm"),
        (6.0, 5.0, "downpour 6 mm"),
        (10.0, 0.0, "downpour 10 mm"),
    ],
)
def test_rain_in_words(rain: float, hour: float, words: str) -> None:
    assert rain_words(day(rain_mm=rain, rain_hour_mm=hour).weather) == words


def test_what_is_not_known_is_a_question_mark_and_never_dry() -> None:
    unknown = DayLine(TODAY)
    assert rain_words(None) == "rain ?" and gust_words(None) == "gusts ?"
    assert temperature_words(unknown) == ""
    assert "unknown" in day_words(unknown) and "?" not in day_words(unknown)
    assert rain_words(day(rain_mm=float("nan")).weather) == "rain ?"


def test_cold_and_heat_are_named_first() -> None:
    assert temperature_words(day(min_c=-1.0, max_c=10.0)) == "frost"
    assert temperature_words(day(min_c=2.0, max_c=28.0)) == "ground frost, hot"
    assert temperature_words(day(min_c=8.0, max_c=20.0)) == ""


def test_one_line_a_day_and_bars_that_share_a_scale() -> None:
    lines = text_of(weather_lines(WEATHER, 80, ASCII))
    assert len(lines) == len(WEATHER)
    bars = [line[15:38] for line in lines]
    # lowest -2 and highest 29 C over 23 cells: 5 C is cell round(7 / 31 * 22) = 5, 23 C is 18
    assert bars[0] == "." * 5 + "=" * 14 + "." * 4
    assert bars[1].endswith("=") and bars[3].startswith("=")
    assert "=" not in bars[4] + bars[5]


def test_the_sample_is_told_as_it_was_forecast(sample: Season) -> None:
    days = coming_days(sample, DAY_0)
    assert len(days) == len(OUTLOOK)
    for line, (offset, figures) in zip(days, OUTLOOK, strict=True):
        assert line.day == DAY_0 + timedelta(days=offset)
        assert (line.low_c, line.high_c) == (figures["min_c"], figures["max_c"])
    words = weather_words(days)
    assert "downpour 22 mm, strap lids 68" in words and "from 17:00" in words


def test_days_beyond_what_is_known_are_left_out(sample: Season) -> None:
    assert len(coming_days(sample, DAY_0, 30)) == 7
    assert coming_days(sample, DAY_0 + timedelta(days=400)) == ()
    assert text_of(weather_lines((), 60)) == [NOTHING]
    must_be_sayable(weather_words(()))


@pytest.mark.parametrize("width", [20, 46, 59, 60, 69, 70, 80, 200])
def test_words_are_kept_where_the_bar_must_go(width: int) -> None:
    lines = weather_lines(WEATHER, width, UNICODE)
    must_hold(lines, width, UNICODE)
    if width >= 46:
        assert "downpour 22 mm" in text_of(lines)[1]
