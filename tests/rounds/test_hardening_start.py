"""When a course of hardening may begin: weather, the crop's own limit, and what comes before it.

The step back rule (a night at or below the crop's limit, gusts above 50 km/h) is rule HAR-08 of the
trade tables, "our proposal"; that hardening begins once seedlings are off heat, thinned and in true
leaf is common practice, no source; tender kinds not before the last frost: Which? Gardening, how to
harden off tender plants (read).
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from benchround.core.crop.crop import Growing, Hardening, Planting
from benchround.core.record import Figure, Kind
from benchround.core.season import Season
from benchround.core.task import Family, Standing, Task
from benchround.rounds.build import build_round
from tests.folding import fold_season
from tests.rounds.small_season import CROPS, DAY, GLASS, LONDON, Story, outlook, place, sown

LIMIT_C = 8.0
EASY = replace(
    CROPS["tenderling"],
    growing=Growing(feed=False, pot_on=False, true_leaf_days=10, per_cell=2, keep_per_cell=1),
    hardening=Hardening(days=18, least_days=18, limit_c=LIMIT_C),
    planting=Planting(from_sowing_days=(28, 42), least_night_c=10.0),
)
PROPAGATOR: dict[str, Figure] = {"name": "Propagator", "kind": "propagator"}
BENCH: dict[str, Figure] = {"name": "Bench", "kind": "bench"}


class Told(Story):
    """A story of seedlings that share their cells and go out from them."""

    def season(self) -> Season:
        return fold_season(self.records, {**CROPS, "tenderling": EASY})


def seedlings(up_ago: int = 20, sown_ago: int = 30, at: str = "bench") -> Story:
    told = Told()
    told.tell(date(2026, 1, 1), Kind.SITE, **LONDON)
    place(told, "warm", **PROPAGATOR)
    place(told, "bench", **BENCH)
    place(told, "frame", **GLASS)
    sown(told, "b1", "tenderling", DAY - timedelta(days=sown_ago), at, seeds=30)
    told.tell(DAY - timedelta(days=up_ago), Kind.FIRST_UP, "b1", count=30)
    return told


def thinned(told: Story) -> Story:
    told.tell(DAY - timedelta(days=3), Kind.THINNED, "b1", count=15)
    return told


def days(told: Story, *lows: float, gust_kmh: float | None = None) -> Story:
    for ahead, low in enumerate(lows):
        gust = gust_kmh if ahead == 0 else None
        outlook(told, DAY + timedelta(days=ahead), low, 20, **({"gust_kmh": gust} if gust else {}))
    return told


def start(told: Story, day: date = DAY) -> list[Task]:
    return told.tasks(day, Family.HARDEN)


def test_in_fair_weather_it_begins() -> None:
    (task,) = start(days(thinned(seedlings()), 12, 12, 12, 12, 12))
    assert task.standing is not Standing.HELD
    assert task.instruction.startswith("Start hardening 15, into Frame A: day 1 of 18")


@pytest.mark.parametrize(
    ("lows", "because", "again"),
    [
        ((12, 12, 2, 12, 12, 12), "2 C on Fri 29 May; 3 nights above 8 C are wanted", 3),
        ((8, 12, 12, 12, 12, 12), "8 C on Wed 27 May; 3 nights above 8 C are wanted", 1),
        ((12, 5, 7, 3, 12, 12), "5 C on Thu 28 May; 3 nights above 8 C are wanted", 4),
    ],
)
def test_cold_in_its_first_nights_holds_it_back_by_the_crops_own_limit(
    lows: tuple[float, ...], because: str, again: int
) -> None:
    (task,) = start(days(thinned(seedlings()), *lows))
    assert task.standing is Standing.HELD
    assert task.hold is not None
    assert task.hold.because == because
    assert task.hold.look_again == DAY + timedelta(days=again)
    assert because in task.instruction and because in task.why.figures
    assert "day 1 of" not in task.instruction


def test_what_would_step_back_at_once_is_not_begun_in_a_gale() -> None:
    (task,) = start(days(thinned(seedlings()), 12, 12, 12, 12, gust_kmh=68))
    assert task.standing is Standing.HELD
    assert "gusts of 68 km/h, limit 50; look again Thu 28 May" in task.instruction
    (task,) = start(days(thinned(seedlings()), 12, 12, 12, 12, gust_kmh=50))
    assert task.standing is not Standing.HELD


def test_days_the_weather_forbade_are_not_the_growers() -> None:
    told = days(thinned(seedlings(up_ago=40, sown_ago=50)), *[12.0] * 6)
    (task,) = start(told)
    assert task.standing is Standing.OVERDUE
    outlook(told, DAY - timedelta(days=1), 3, 15)
    (task,) = start(told)
    assert (task.standing, task.window.best) == (Standing.DUE, DAY)


def test_it_is_not_offered_before_it_is_thinned() -> None:
    told = days(seedlings(), *[12.0] * 6)
    assert start(told) == []
    assert len(start(thinned(told))) == 1


def test_it_is_not_offered_while_it_is_on_heat() -> None:
    told = days(seedlings(up_ago=14, at="warm"), *[12.0] * 6)
    thin = replace(EASY, growing=replace(EASY.growing, per_cell=1))
    season = fold_season(told.records, {**CROPS, "tenderling": thin})
    assert [t for t in _tasks(season) if t.family is Family.HARDEN] == []
    assert [t for t in _tasks(season) if t.family is Family.UNCOVER] != []
    told.tell(DAY - timedelta(days=1), Kind.UNCOVERED, "b1", off_heat=True, place="bench")
    season = fold_season(told.records, {**CROPS, "tenderling": thin})
    assert len([t for t in _tasks(season) if t.family is Family.HARDEN]) == 1


@pytest.mark.parametrize("up_ago", [3, 9, 13])
def test_it_waits_until_its_true_leaves_have_been_there_some_days(up_ago: int) -> None:
    """Up 10 days to true leaves by the crop, and 4 more; sown long enough ago for the course."""
    assert start(days(thinned(seedlings(up_ago=up_ago)), *[12.0] * 6)) == []


def test_fourteen_days_up_it_is_offered() -> None:
    assert len(start(days(thinned(seedlings(up_ago=14)), *[12.0] * 6))) == 1


def _tasks(season: Season) -> tuple[Task, ...]:
    return build_round(season, DAY).tasks
