"""Tasks, weather and records in words."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, time, timedelta

import pytest

from benchround.core.record import Draft, Kind
from benchround.core.season import Season
from benchround.core.site import Place, PlaceKind
from benchround.core.sky.weather import DayWeather, Weather
from benchround.core.task import Ask, Harm, Round, Standing, Window
from benchround.screens.words import (
    counts,
    figure_words,
    full_day,
    harm_mark,
    outlook,
    record_words,
    standing_words,
    tick_words,
    window_words,
)
from tests.sample.story import DAY_0
from tests.screens.stage import figures, task

SEASON = Season(crops={}, places=(Place("frame-a", "Frame A", PlaceKind.FRAME, 1),))


def ahead(days: int, **said: float | time | None) -> DayWeather:
    return DayWeather(DAY_0 + timedelta(days=days), **said)  # type: ignore[arg-type]  # by name


def weather(*days: DayWeather) -> Weather:
    return Weather({day.day: day for day in days})


@pytest.mark.parametrize(
    ("known", "pieces"),
    [
        ((), ("no weather known",)),
        (
            (ahead(0, min_c=5, max_c=23, rain_mm=0, gust_kmh=22),),
            ("5 to 23 C, dry, gusts 22 km/h",),
        ),
        ((ahead(0, min_c=-2.5),), ("down to -2.5 C",)),
        ((ahead(0, max_c=31, rain_mm=4),), ("up to 31 C, rain 4 mm",)),
        ((ahead(0, storm_from=time(17, 0)),), ("storm from 17:00",)),
        ((ahead(0),), ("nothing measured",)),
        ((ahead(3, min_c=2, gust_kmh=60),), ("today not known", "Sat down to 2 C, gusts 60 km/h")),
        (
            (ahead(0, min_c=5, max_c=9), ahead(1, max_c=28), ahead(2, rain_mm=10), ahead(4)),
            ("5 to 9 C", "Thu 28 C", "Fri 10 mm"),
        ),
    ],
)
def test_the_weather_in_one_line(known: tuple[DayWeather, ...], pieces: tuple[str, ...]) -> None:
    assert outlook(weather(*known), DAY_0) == pieces


def test_states_and_marks_are_words_and_signs() -> None:
    late = task(standing=Standing.OVERDUE, overdue_days=4, harm=Harm.SPOILS_THIS_WEEK)
    assert (standing_words(late), harm_mark(late)) == ("overdue 4", "!")
    dying = task(harm=Harm.DIES_TODAY)
    assert (standing_words(dying), harm_mark(dying)) == ("due", "!!")
    assert harm_mark(task(standing=Standing.HELD)) == ""


def test_counts_name_what_there_is() -> None:
    tasks = (
        task("a"),
        task("b", standing=Standing.OVERDUE, overdue_days=2),
        task("c", standing=Standing.LATE),
        task("d", standing=Standing.HELD),
        task("e", standing=Standing.EARLY),
    )
    assert counts(Round(DAY_0, tasks)) == "3 to do, 1 overdue, 1 late, 1 held"
    assert counts(Round(DAY_0, ())) == "0 to do"


def test_a_day_in_full() -> None:
    # 1 March 2024 was a Friday (leap year; any calendar)
    assert full_day(date(2024, 3, 1)) == "Fri 1 March 2024"


def test_windows_in_words() -> None:
    def words(early: int, late: int) -> str:
        window = Window(DAY_0 - timedelta(days=early), DAY_0, DAY_0 + timedelta(days=late))
        return window_words(replace(task(), window=window))

    assert words(0, 0) == "for Wed 27 May only"
    late = replace(task(standing=Standing.OVERDUE), window=Window(DAY_0, DAY_0, DAY_0))
    assert window_words(late) == "due on Wed 27 May"
    assert words(2, 0) == "may be done from Mon 25 May, on time on Wed 27 May"
    assert words(0, 3) == "on time Wed 27 May to Sat 30 May"
    assert words(1, 400) == "may be done from Tue 26 May, on time from Wed 27 May"


def test_figures_in_words() -> None:
    said = figures(
        count=22, part="spares", place="frame-a", min_c=5.0, depth_mm=3, off_heat=True, back=False
    )
    assert figure_words(said, SEASON) == "22, Frame A, min 5 C, depth 3 mm, off heat"
    assert figure_words(figures(place="nowhere", container="half tray"), SEASON) == (
        "nowhere, half tray"
    )


def test_what_a_tick_writes() -> None:
    made = task(
        ticks=(Draft(Kind.PRICKED_OUT, "b25", figures(count=20)), Draft(Kind.DONE, "b25")),
        asks=(Ask("count", "pricked out", "22"), Ask("pairs", "pairs", needed=True)),
    )
    assert tick_words(made, SEASON) == "pricked out (22); done; asks for: pairs"
    assert tick_words(task(ticks=()), SEASON).startswith("nothing by itself")


def test_what_was_recorded() -> None:
    drafts = (
        Draft(Kind.LOST, "b20", figures(count=4, cause="slug")),
        Draft(Kind.WATERED, "frame-a", figures(of_place=True)),
        Draft(Kind.READING, "", figures(min_c=4)),
    )
    assert record_words(drafts, SEASON) == ("b20 lost: 4, slug; Frame A watered; reading: min 4 C")
