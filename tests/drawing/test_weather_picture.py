"""Coming days in words, by the limits lids are moved by."""

from __future__ import annotations

import pytest

from benchround.core.sky.weather import DayWeather
from benchround.drawing.weather import DayLine, gust_words, rain_words, temperature_words
from tests.drawing.fixed import TODAY


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
    assert rain_words(day(rain_mm=float("nan")).weather) == "rain ?"


def test_cold_and_heat_are_named_first() -> None:
    assert temperature_words(day(min_c=-1.0, max_c=10.0)) == "frost"
    assert temperature_words(day(min_c=2.0, max_c=28.0)) == "ground frost, hot"
    assert temperature_words(day(min_c=8.0, max_c=20.0)) == ""
