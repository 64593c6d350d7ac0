"""A small season through a whole year of real weather, morning by morning.

Weather: Seattle 2015, daily extremes and rain (NOAA by vega-datasets, read). Each morning the round
is made, lids and watering are ticked as a grower would, and the books are looked at.
"""

from __future__ import annotations

import csv
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date, timedelta
from pathlib import Path

import pytest

from benchround.core.book import RecordBook
from benchround.core.frame.balance import Sunlit, day_terms
from benchround.core.frame.build import LidPosition
from benchround.core.frame.outlook import FrameOutlook
from benchround.core.record import Draft, Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.task import Family, Task
from benchround.core.water.run import run_balance
from benchround.core.water.tray_filled import stays
from benchround.core.water.tray_fit import days_in
from benchround.core.water.tray_outlook import tray_outlook
from benchround.rounds.build import build_round, standing_by_place
from benchround.rounds.frame_view import outlook
from benchround.rounds.view import PlaceView
from tests.rounds.small_season import CROPS

DATA = Path(__file__).parents[1] / "data" / "year" / "seattle_2015.csv"
FIRST, LAST = date(2015, 1, 1), date(2015, 12, 31)
SEATTLE: dict[str, Figure] = {
    "lat_deg": 47.6,
    "lon_deg": -122.3,
    "altitude_m": 50,
    "timezone": "America/Los_Angeles",
    "last_frost": "03-20",
    "last_frost_safe": "04-20",
    "first_frost": "11-10",
}
PLACES: dict[str, dict[str, Figure]] = {
    "house": {"name": "House", "kind": "greenhouse bench", "order": 1},
    "bench": {"name": "Bench", "kind": "bench", "order": 2},
    "frame": {"name": "Frame", "kind": "frame", "order": 3, "glazing": "glass"},
    "bed": {"name": "Bed", "kind": "bed", "order": 4},
}
STORY: tuple[tuple[str, str, Kind, dict[str, Figure]], ...] = (
    ("w1", "2014-09-10", Kind.SOWN, {"crop": "hardling", "place": "frame", "raising": "cells"}),
    ("w1", "2014-10-15", Kind.TRUE_LEAVES, {"count": 30}),
    ("w1", "2014-11-10", Kind.OVERWINTERING, {}),
    ("w1", "2015-03-20", Kind.PLANTED_OUT, {"place": "bed"}),
    ("s1", "2015-03-01", Kind.SOWN, {"crop": "tenderling", "place": "house", "raising": "cells"}),
    ("s1", "2015-03-09", Kind.FIRST_UP, {"count": 34}),
    ("s1", "2015-03-18", Kind.TRUE_LEAVES, {"count": 36}),
    ("s1", "2015-04-01", Kind.PRICKED_OUT, {"count": 36, "container": "40-cell tray"}),
    ("s1", "2015-04-20", Kind.POTTED_ON, {"count": 36, "container": "9 cm pot"}),
    ("s1", "2015-05-04", Kind.HARDENING_BEGUN, {"place": "frame"}),
    ("s1", "2015-05-25", Kind.PLANTED_OUT, {"place": "bed"}),
    ("d1", "2015-06-05", Kind.SOWN, {"crop": "dustling", "place": "frame", "raising": "tray"}),
    ("d1", "2015-06-20", Kind.SEED_LEAVES, {"count": 60}),
    ("d1", "2015-07-10", Kind.PRICKED_OUT, {"count": 40, "place": "bench", "cells": 40}),
    ("d1", "2015-08-10", Kind.GROWING_ON, {}),
    ("d1", "2015-11-01", Kind.OVERWINTERING, {"place": "frame"}),
)
OURS = (Family.LIDS, Family.SHADE, Family.STRAP, Family.FLEECE, Family.WATER, Family.AIR)


@dataclass
class Year:
    """What a year of mornings came to."""

    tasks: list[tuple[date, Task]] = field(default_factory=list)
    frames: list[tuple[date, FrameOutlook]] = field(default_factory=list)
    weather: dict[date, tuple[float, float, float]] = field(default_factory=dict)
    worst_heat: float = 0.0
    worst_water_ml: float = 0.0
    least_left_ml: float = 0.0
    trays: int = 0

    def of(self, family: Family) -> list[tuple[date, Task]]:
        return [(day, task) for day, task in self.tasks if task.family is family]


class Grower:
    """Keeps the record book, morning by morning."""

    def __init__(self) -> None:
        self.number = 0
        first = [self.record(FIRST - timedelta(days=400), Kind.SITE, "", SEATTLE)]
        first += [
            self.record(FIRST - timedelta(days=400), Kind.PLACE, code, figures)
            for code, figures in PLACES.items()
        ]
        self.book = RecordBook(first, lambda _: CROPS)

    def record(self, day: date, kind: Kind, about: str, figures: dict[str, Figure]) -> Record:
        self.number += 1
        return Record(f"Y{self.number:07d}", day, kind, about, figures)

    def tell(self, day: date, kind: Kind, about: str, figures: dict[str, Figure]) -> None:
        self.book.add([self.record(day, kind, about, figures)])

    def tick(self, day: date, drafts: tuple[Draft, ...]) -> None:
        for draft in drafts:
            self.tell(day, draft.kind, draft.about, dict(draft.figures))


def weather() -> Iterator[tuple[date, float, float, float]]:
    for row in csv.DictReader(DATA.open()):
        day = date.fromisoformat(row["date"])
        yield day, float(row["tmin_c"]), float(row["tmax_c"]), float(row["rain_mm"])


@pytest.fixture(scope="module")
def year() -> Year:
    found, grower = Year(), Grower()
    told = sorted((date.fromisoformat(on), name, kind, said) for name, on, kind, said in STORY)
    rows = list(weather())
    for number, (day, low, high, rain) in enumerate(rows):
        for on, name, kind, said in [line for line in told if line[0] <= day]:
            grower.tell(on, kind, name, said)
        told = [line for line in told if line[0] > day]
        today: dict[str, Figure] = {"min_c": low, "max_c": high, "rain_mm": rain}
        grower.tell(day, Kind.OUTLOOK, "", today)
        if number + 1 < len(rows) and day.day % 7:  # no outlook for tomorrow on some mornings
            _, next_low, next_high, _ = rows[number + 1]
            tomorrow: dict[str, Figure] = {"min_c": next_low, "max_c": next_high}
            grower.tell(day + timedelta(days=1), Kind.OUTLOOK, "", tomorrow)
        found.weather[day] = (low, high, rain)
        _morning(found, grower, day)
    return found


def _morning(found: Year, grower: Grower, day: date) -> None:
    season = grower.book.season
    _look_at_frame(found, season, day)
    _look_at_trays(found, season, day)
    ticked = _tick_all(found, grower, day)
    more = _tick_all(found, grower, day)
    assert more <= {task for task in more if task.startswith("water:")} - ticked, f"{day}: {more}"
    assert _tick_all(found, grower, day) == set()


def _tick_all(found: Year, grower: Grower, day: date) -> set[str]:
    """Tick every task of ours; a lid that was opened may bring a tray under it to its limit."""
    ours = [t for t in build_round(grower.book.season, day).tasks if t.family in OURS]
    for task in ours:
        found.tasks.append((day, task))
        grower.tick(day, task.ticks)
    return {task.key for task in ours}


def _look_at_frame(found: Year, season: Season, day: date) -> None:
    spot = season.place("frame")
    assert spot is not None
    view = PlaceView(season, spot, standing_by_place(season, day).get("frame", ()), day)
    frame = outlook(view)
    if frame is not None:
        found.frames.append((day, frame))
        for hour, lid in zip(frame.day.hours, frame.advice.lid_plan, strict=True):
            sun = Sunlit(hour.radiation_wm2, hour.wind_taken_ms, factor=frame.fit.sun_factor)
            terms = day_terms(frame.build, sun, lid)
            astray = abs(terms.residual_w) / max(1.0, terms.in_w)
            found.worst_heat = max(found.worst_heat, astray)


def _look_at_trays(found: Year, season: Season, day: date) -> None:
    for batch in season.batches.values():
        for part in batch.parts:
            tray = tray_outlook(season, batch, part, day)
            if tray is None:
                continue
            found.trays += 1
            stood = tuple((since, at, tray.factor.factor) for since, at in stays(batch, part))
            days = days_in(season, part, tray.leaves, tray.full.day, day, stood)
            states = run_balance(tray.holder.water, tuple(days))
            astray = sum(abs(state.residual_ml) for state in states)
            if states:
                astray += abs(states[-1].end_ml - tray.left_ml)
            found.worst_water_ml = max(found.worst_water_ml, astray)
            found.least_left_ml = min(found.least_left_ml, tray.left_ml)


def test_every_task_says_why_with_figures_and_a_source(year: Year) -> None:
    assert {task.family for _, task in year.tasks} >= set(OURS) - {Family.STRAP}
    for day, task in year.tasks:
        said = f"{day} {task.family}: {task.instruction}"
        assert task.why.rule and task.why.source, said
        assert any(letter.isdigit() for letter in " ".join(task.why.figures)), said
        assert len(task.instruction) > 10 and "None" not in str(task.why), said


def test_heat_and_water_are_all_accounted_for(year: Year) -> None:
    assert len(year.frames) > 190 and year.trays > 350
    assert 0.0 < year.worst_heat < 1e-9
    assert year.worst_water_ml < 1e-6
    assert year.least_left_ml >= 0.0


def test_a_frame_that_would_pass_27_is_opened_or_shaded(year: Year) -> None:
    """RHS, Greenhouse: ventilation and shading (read): heat above 27 C harms plants under glass."""
    lids = {day: task for day, task in year.of(Family.LIDS)}
    shaded = {day for day, _ in year.of(Family.SHADE)}
    hot = [(day, frame) for day, frame in year.frames if frame.shut.max_c > 27.0]
    assert len(hot) > 60
    for day, frame in hot:
        assert day in lids, f"{day}: shut it reaches {frame.shut.max_c:.0f} C"
        by_noon = max(frame.advice.lid_plan[:13], key=list(LidPosition).index)
        assert by_noon is not LidPosition.SHUT
        working_day = max(frame.inside.inside_c[10:17])
        assert working_day <= 27.5 or day in shaded, f"{day}: {working_day:.1f} C, no shade"


def test_no_cold_night_passes_tender_stock_without_a_cover(year: Year) -> None:
    """LID-10: a lowest of 4 C or less calls for fleece over tender and half-hardy stock."""
    fleeced = {day for day, _ in year.of(Family.FLEECE)}
    begun, out = date(2015, 5, 4), date(2015, 5, 25)
    for day, (low, _, _) in year.weather.items():
        if begun <= day < out and low <= 4.0:
            assert day in fleeced
        if low > 4.0 and year.weather.get(day + timedelta(days=1), (9.0, 0, 0))[0] > 4.0:
            assert day not in fleeced


def test_trays_dry_fast_in_july_and_slowly_in_december(year: Year) -> None:
    """Between summer and winter the round asks for water in the measure the weather takes it."""
    by_month = Counter(day.month for day, task in year.of(Family.WATER) if task.about == "d1")
    assert by_month[7] >= 10  # an 84 or 40-cell tray lasts 1 to 3 days in the open in July
    assert by_month[12] <= 3
    assert by_month[7] > by_month[9] > by_month[12]


def test_nothing_is_overdue_for_a_grower_who_ticks_every_morning(year: Year) -> None:
    late = [(day, task.family, task.about) for day, task in year.tasks if task.overdue_days]
    assert late == []


def test_resting_stock_is_aired_on_mild_days_only(year: Year) -> None:
    aired = [day for day, task in year.of(Family.AIR) if task.instruction.startswith("Air")]
    assert len(aired) > 40
    assert all(year.weather[day][1] > 5.0 for day in aired)
