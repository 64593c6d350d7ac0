"""The sample season lived on for a year by a grower who does each morning what is asked.

Where every kind of task appears is listed; the other checks are of sense: no morning too long, no
task back the same morning it was ticked, none that flickers, none that is asked for ever. The
limits are our own; the days of the list are a regression test.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from dataclasses import dataclass, field
from datetime import date, timedelta
from itertools import pairwise

import pytest

from benchround.core.book import RecordBook
from benchround.core.record import Cause, Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.task import Ask, Family, Round, Standing, Task
from benchround.crops.library import load_library
from benchround.rounds.answers import drafts_for
from benchround.rounds.build import build_round
from benchround.rounds.kept import KeptRound
from tests.sample.story import DAY_0, records

F = Family
DAYS = 366
DOING = (Standing.DUE, Standing.LATE, Standing.OVERDUE)
SWEET_PEAS = DAY_0 + timedelta(days=128)
"""Early October: sweet peas for next year are sown in the frame (garden columns: read)."""
BY_THE_SKY = (F.LIDS, F.SHUT, F.SHADE, F.STRAP, F.FLEECE, F.AIR, F.WATER, F.THERMOMETER)
"""Tasks that come and go with the weather, or stand there every morning."""

AS_IT_STANDS = {
    **dict.fromkeys(
        (F.THERMOMETER, F.LIDS, F.LOOK, F.UNCOVER, F.WATER, F.COUNT, F.RESOW, F.THIN, F.PRICK_OUT),
        0,
    ),
    **dict.fromkeys((F.POT_ON, F.PINCH, F.MEASURE, F.TURN, F.FEED, F.SOAK, F.CHILL, F.SOW), 0),
    **dict.fromkeys((F.HARDEN, F.PLANT_OUT, F.SPARES, F.SUPPORT, F.DEADHEAD, F.MARK_SEED), 0),
    **dict.fromkeys((F.SAVE_SEED, F.CLEAR, F.RELABEL, F.LOCATE, F.PESTS), 0),
    F.SHADE: 1,
    F.SOW_AGAIN: 1,
    F.STRAP: 2,
    F.FLEECE: 3,
    F.PACK_SEED: 4,
    F.WEED: 7,
    F.STANDS: 11,
    F.BULBS: 27,
    F.OVERWINTER: 145,
}
"""Day after the sample's own on which `today --on` first shows a kind of task."""
LIVED_ON = {F.SHUT: 0, F.PICK: 31, F.WASH: 45, F.AIR: 146}
"""The same for what first comes to a grower who ticks."""


@dataclass
class Year:
    """What a year of mornings came to."""

    first: dict[Family, int] = field(default_factory=dict)
    sizes: list[int] = field(default_factory=list)
    overdue: list[int] = field(default_factory=list)
    seen: dict[str, list[int]] = field(default_factory=lambda: defaultdict(list))
    ticked: dict[str, list[int]] = field(default_factory=lambda: defaultdict(list))
    told: dict[str, list[int]] = field(default_factory=lambda: defaultdict(list))
    back: list[tuple[int, str]] = field(default_factory=list)


def answer(task: Task, ask: Ask) -> str:
    """What a grower says who finds everything as it should be; one batch damps off."""
    match ask.into:
        case "count" if task.family is F.LOOK:
            return "10"
        case "count" if ask.needed and not ask.default:
            return "10"
        case "place" if task.family is F.PLANT_OUT:
            return ask.default or "Bed 4"
        case "flowered" | "picked" | "ripe" | "over":
            return "yes"
        case "cause":
            return str(Cause.DAMPING_OFF)
        case "again":
            return "sown" if task.about in ("b02", "b14") else "no"
    typed = {"stem_mm": "9", "pairs": "4", "min_c": "9", "max_c": "15"}
    return ask.default or typed.get(ask.into, "")


class Grower:
    """Keeps the book through the year."""

    def __init__(self) -> None:
        library = load_library()
        self.book, self.kept = RecordBook(records(), lambda _: library), KeptRound()
        self.year, self.number = Year(), 0

    def round(self, day: date) -> Round:
        return self.kept.round(self.book.season, day)

    def tell(self, new: list[tuple[date, Kind, str, dict[str, Figure]]]) -> None:
        made = []
        for day, of, about, figures in new:
            self.number += 1
            made.append(Record(f"9Y{self.number:06d}", day, of, about, figures))
            self.year.told[about].append((day - DAY_0).days)
        self.book.check(made)
        self.book.add(made)

    def morning(self, number: int) -> None:
        year, day = self.year, DAY_0 + timedelta(days=number)
        start = self.round(day)
        year.sizes.append(len(start.today))
        year.overdue.append(len(start.overdue))
        for task in start.tasks:
            year.seen[task.key].append(number)
        done: dict[str, str] = {}
        while True:
            tasks = self.round(day).tasks
            for task in tasks:
                year.first.setdefault(task.family, number)
            left = (t for t in tasks if t.standing in DOING and t.ticks)
            open_now = [t for t in left if done.get(t.key) != t.instruction]
            year.back += [(number, t.key) for t in tasks if done.get(t.key) == t.instruction]
            if not open_now:
                return
            self._tick(open_now[0], day)
            done[open_now[0].key] = open_now[0].instruction
            year.ticked[open_now[0].key].append(number)

    def _tick(self, task: Task, day: date) -> None:
        drafts = drafts_for(task, {a.into: answer(task, a) for a in task.asks}, self.book.season)
        self.tell([(d.day or day, d.kind, d.about, dict(d.figures)) for d in drafts])


@pytest.fixture(scope="module")
def year() -> Year:
    grower = Grower()
    sown: dict[str, Figure] = {"crop": "sweet-pea", "seeds": 20, "cells": 20, "place": "frame-a"}
    for number in range(DAYS):
        if DAY_0 + timedelta(days=number) == SWEET_PEAS:
            grower.tell([(SWEET_PEAS, Kind.SOWN, "p1", sown)])
        grower.morning(number)
    return grower.year


def test_every_kind_of_task_is_on_one_of_the_two_lists() -> None:
    assert set(AS_IT_STANDS) | set(LIVED_ON) == set(Family)
    assert not set(AS_IT_STANDS) & set(LIVED_ON)


@pytest.mark.parametrize("family", AS_IT_STANDS, ids=str)
def test_the_sample_shows_every_kind_of_task_on_its_day(sample: Season, family: Family) -> None:
    number = AS_IT_STANDS[family]
    shown = {task.family for task in build_round(sample, DAY_0 + timedelta(days=number)).tasks}
    assert family in shown
    if number:
        before = build_round(sample, DAY_0 + timedelta(days=number - 1))
        assert family not in {task.family for task in before.tasks}


@pytest.mark.parametrize("family", LIVED_ON, ids=str)
def test_a_grower_who_ticks_comes_to_the_other_kinds(year: Year, family: Family) -> None:
    assert year.first[family] == LIVED_ON[family]


def test_no_morning_is_too_long(year: Year) -> None:
    """Thirty to eighty batches are seen to in 20 to 40 minutes (from memory)."""
    assert year.sizes[0] < 50  # the scenario's own busiest morning
    assert max(year.sizes[7:]) <= 32
    winter = year.sizes[190:250]  # December and January
    assert max(winter) <= 12
    assert min(year.sizes) >= 1


def test_nothing_stays_overdue_for_a_grower_who_does_what_is_asked(year: Year) -> None:
    assert max(year.overdue[1:]) <= 1


def test_a_tick_is_the_end_of_a_task_that_morning(year: Year) -> None:
    assert year.back == []


def test_nothing_is_asked_for_ever(year: Year) -> None:
    """Picking and deadheading end when a crop has had its time; nothing else comes so often."""
    often = Counter({key: len(days) for key, days in year.seen.items()})
    quiet = {k: n for k, n in often.items() if k.partition(":")[0] not in map(str, BY_THE_SKY)}
    assert {key: days for key, days in quiet.items() if days > 50} == {}


def test_nothing_flickers(year: Year) -> None:
    """What goes without a tick, and without a record of its batch, does not come back at once."""
    flickers = []
    for key, days in year.seen.items():
        family, about, _ = key.split(":")
        if family in map(str, BY_THE_SKY):
            continue
        busy = set(year.ticked[key]) | set(year.told[about])
        for one, other in pairwise(days):
            if 1 < other - one <= 4 and not busy & set(range(one, other + 1)):
                flickers.append((key, one, other))
    assert flickers == []
