"""What was done for last year's growth is not done for this year's.

Bulb leaves are left at least six weeks after deadheading: usage example of a dictionary for
daffodils (read); that supports and marks for seed go with the old growth: common practice, no
source.
"""

from __future__ import annotations

from datetime import date, timedelta
from itertools import pairwise

import pytest

from benchround.core.dates import say_day
from benchround.core.lifecycle import Stage
from benchround.core.planning.schedule import expected_course
from benchround.core.planning.schedule_step import Step
from benchround.core.record import Cause, Kind
from benchround.core.task import Family, Task
from benchround.crops.library import load_library
from benchround.rounds.build import build_round
from tests.folding import fold_season
from tests.rounds.small_season import Story, begin, place

LIBRARY = load_library()
SIX_WEEKS = timedelta(weeks=6)
DORMANT = date(2026, 5, 12)


def tasks(told: Story, day: date, family: Family) -> list[Task]:
    found = build_round(fold_season(told.records, LIBRARY), day).tasks
    return [task for task in found if task.family is family]


def bulbs(*, deadheaded: date | None = None) -> Story:
    """Two springs of a pot of tulips."""
    told = begin()
    place(told, "bed", name="Bed", kind="bed")
    told.tell(date(2024, 10, 1), Kind.PLANTED_BULBS, "t1", crop="tulip", count=20, place="bed")
    told.tell(date(2025, 4, 10), Kind.FIRST_FLOWER, "t1")
    told.tell(date(2025, 5, 5), Kind.DEADHEADED, "t1")
    told.tell(date(2025, 5, 10), Kind.DORMANT, "t1")
    told.tell(date(2026, 4, 12), Kind.FIRST_FLOWER, "t1")
    if deadheaded is not None:
        told.tell(deadheaded, Kind.DEADHEADED, "t1")
    told.tell(DORMANT, Kind.DORMANT, "t1")
    return told


@pytest.mark.parametrize(
    ("deadheaded", "counted_from"),
    [(None, DORMANT), (date(2026, 5, 4), date(2026, 5, 4))],
    ids=["not deadheaded", "deadheaded"],
)
@pytest.mark.parametrize("kept", [False, True], ids=["asked first", "kept last year"])
def test_bulbs_rest_six_weeks_every_year(
    deadheaded: date | None, counted_from: date, *, kept: bool
) -> None:
    told = bulbs(deadheaded=deadheaded)
    if kept:
        told.tell(date(2025, 6, 25), Kind.DONE, "t1", family=str(Family.BULBS))
    due = counted_from + SIX_WEEKS
    assert tasks(told, due - timedelta(days=1), Family.BULBS) == []
    (task,) = tasks(told, due, Family.BULBS)
    assert task.window.best == due
    assert task.overdue_days == 0
    assert any(say_day(counted_from) in figure for figure in task.why.figures)
    told.tick(task, due)
    assert tasks(told, due, Family.BULBS) == []
    assert tasks(told, due + SIX_WEEKS, Family.BULBS) == []


def test_lifting_is_decided_for_each_part_by_itself() -> None:
    spared = begin()
    place(spared, "bed", name="Bed", kind="bed")
    planted, flowered = date(2025, 10, 1), date(2026, 4, 10)
    spared.tell(planted, Kind.PLANTED_BULBS, "t1", crop="tulip", count=20, place="bed")
    spared.tell(flowered, Kind.FIRST_FLOWER, "t1")
    spared.tell(flowered, Kind.LEFT_FOR_SEED, "t1", count=5, rest="kept")
    spared.tell(DORMANT, Kind.DORMANT, "t1", part="spares")
    (task,) = tasks(spared, DORMANT + SIX_WEEKS, Family.BULBS)
    assert task.part == task.ticks[0].figures["part"] == "spares"
    spared.tick(task, DORMANT + SIX_WEEKS)
    assert tasks(spared, DORMANT + SIX_WEEKS + timedelta(days=30), Family.BULBS) == []


def perennial(crop: str) -> Story:
    """Planted and flowered in 2025, cut back in August, in flower again in June 2026."""
    told = begin()
    place(told, "bed", name="Bed", kind="bed")
    told.tell(date(2025, 2, 1), Kind.SOWN, "d1", crop=crop, seeds=20, place="bed", raising="tray")
    told.tell(date(2025, 3, 1), Kind.FIRST_UP, "d1", count=12)
    told.tell(date(2025, 5, 1), Kind.PLANTED_OUT, "d1", count=12, place="bed")
    told.tell(date(2025, 5, 20), Kind.BUDS, "d1")
    told.tell(date(2025, 5, 21), Kind.SUPPORTED, "d1")
    told.tell(date(2025, 6, 10), Kind.FIRST_FLOWER, "d1")
    told.tell(date(2025, 6, 20), Kind.MARKED_FOR_SEED, "d1", count=2)
    told.tell(date(2025, 8, 1), Kind.SEED_RIPE, "d1")
    told.tell(date(2025, 8, 2), Kind.SEED_SAVED, "d1", packet="d1-seed")
    told.tell(date(2025, 8, 20), Kind.PACKED, "d1")
    told.tell(date(2025, 8, 21), Kind.CUT_BACK, "d1")
    return told


def test_supports_are_asked_for_again_when_it_buds_again() -> None:
    told = perennial("delphinium")
    assert tasks(told, date(2026, 5, 26), Family.SUPPORT) == []
    told.tell(date(2026, 5, 25), Kind.BUDS, "d1")
    (task,) = tasks(told, date(2026, 5, 26), Family.SUPPORT)
    assert task.window.best == date(2026, 5, 25)
    told.tick(task, date(2026, 5, 26))
    assert tasks(told, date(2026, 5, 27), Family.SUPPORT) == []


def looks(told: Story, day: date) -> list[Task]:
    found = tasks(told, day, Family.LOOK)
    return [task for task in found if task.instruction == "Look for the first flower"]


def test_after_cutting_back_the_first_flower_is_looked_for_a_year_after_the_last_one() -> None:
    """Planted 1 May 2025 and in flower from 10 June 2025 (common practice, no source)."""
    told = perennial("delphinium")
    for month in (9, 10, 11):
        assert looks(told, date(2025, month, 1)) == []
    assert looks(told, date(2026, 4, 1)) == []
    (look,) = looks(told, date(2026, 6, 10))
    assert look.window.best == date(2026, 6, 10)
    assert look.why.figures == ("a year after its last first flower or picking, Wed 10 Jun",)
    assert look.why.source == "common practice, no source"


def test_after_cutting_back_nothing_is_said_where_no_flower_was_noted() -> None:
    told = perennial("delphinium")
    told.records = [r for r in told.records if r.kind is not Kind.FIRST_FLOWER]
    told.records = [r for r in told.records if r.day < date(2025, 6, 1)]
    told.tell(date(2025, 6, 5), Kind.CUT_BACK, "d1")
    assert fold_season(told.records, LIBRARY).doubts == ()
    assert looks(told, date(2026, 6, 10)) == []


@pytest.mark.parametrize(
    ("crop", "coming"),
    [
        pytest.param("gaura", [], id="flowers so many days from planting"),
        pytest.param("delphinium", [2026], id="flowers in its time of the year"),
    ],
)
def test_what_comes_is_not_counted_from_the_planting_of_other_years(
    crop: str, coming: list[int]
) -> None:
    season = fold_season(perennial(crop).records, LIBRARY)
    batch = season.batches["d1"]
    steps = expected_course(season, batch, season.crop(crop), date(2025, 9, 1))
    assert [step.day.year for step in steps if step.step is Step.FLOWER] == coming


def test_the_best_are_marked_anew_and_their_seed_looked_at_anew() -> None:
    told = perennial("delphinium")
    told.tell(date(2026, 6, 8), Kind.FIRST_FLOWER, "d1")
    assert fold_season(told.records, LIBRARY).batches["d1"].main.stage is Stage.FLOWERING
    late = date(2026, 9, 20)
    assert tasks(told, late, Family.SAVE_SEED) == []
    (mark,) = tasks(told, date(2026, 6, 25), Family.MARK_SEED)
    told.tick(mark, date(2026, 6, 25))
    assert tasks(told, date(2026, 6, 26), Family.MARK_SEED) == []
    (look,) = tasks(told, late, Family.SAVE_SEED)
    assert "Look whether the seed ripens" in look.instruction


def test_ripe_seed_that_was_never_collected_is_gone_with_the_old_growth() -> None:
    told = perennial("delphinium")
    kept = [r for r in told.records if r.kind not in (Kind.SEED_SAVED, Kind.PACKED)]
    told.records = kept
    told.tell(date(2026, 6, 8), Kind.FIRST_FLOWER, "d1")
    assert tasks(told, date(2026, 6, 9), Family.SAVE_SEED) == []


def test_a_tray_washed_before_the_loss_is_washed_after_it() -> None:
    told = perennial("delphinium")
    told.tell(date(2026, 2, 1), Kind.WASHED, "d1")
    told.tell(date(2026, 3, 1), Kind.LOST, "d1", cause=str(Cause.DISEASE))
    (task,) = tasks(told, date(2026, 3, 2), Family.WASH)
    told.tick(task, date(2026, 3, 2))
    assert tasks(told, date(2026, 3, 3), Family.WASH) == []


def test_a_label_lost_a_second_time_is_written_a_second_time() -> None:
    told = begin()
    place(told, "house", name="House", kind="greenhouse bench")
    told.tell(date(2026, 3, 1), Kind.SOWN, "d1", crop="unknown", seeds=20, place="house")
    told.tell(date(2026, 3, 20), Kind.TRUE_LEAVES, "d1", count=12)
    told.tell(date(2026, 3, 21), Kind.LABEL_LOST, "d1")
    told.tell(date(2026, 3, 22), Kind.RELABELLED, "d1")
    assert tasks(told, date(2026, 3, 23), Family.RELABEL) == []
    told.tell(date(2026, 4, 2), Kind.LABEL_LOST, "d1")
    (task,) = tasks(told, date(2026, 4, 3), Family.RELABEL)
    assert task.window.best == date(2026, 4, 2)


@pytest.mark.parametrize(
    ("crop", "kind", "stage"),
    [
        pytest.param("delphinium", Kind.CUT_BACK, Stage.GROWING_ON, id="a hardy perennial"),
        pytest.param("tulip", Kind.DORMANT, Stage.DORMANT, id="a bulb"),
        pytest.param("larkspur", Kind.COMPOSTED, Stage.COMPOSTED, id="an annual"),
    ],
)
def test_only_what_dies_after_seeding_is_composted_once_the_seed_is_saved(
    crop: str, kind: Kind, stage: Stage
) -> None:
    """Perennials and bulbs live on (common practice, no source)."""
    told = begin()
    place(told, "bed", name="Bed", kind="bed")
    if kind is Kind.DORMANT:
        told.tell(date(2024, 10, 1), Kind.PLANTED_BULBS, "x1", crop=crop, count=20, place="bed")
    else:
        told.tell(date(2025, 2, 1), Kind.SOWN, "x1", crop=crop, place="bed", raising="cells")
        told.tell(date(2025, 2, 20), Kind.FIRST_UP, "x1", count=20)
        told.tell(date(2025, 3, 10), Kind.TRUE_LEAVES, "x1", count=20)
        told.tell(date(2025, 5, 1), Kind.PLANTED_OUT, "x1", count=20, place="bed")
    told.tell(date(2025, 6, 20), Kind.FIRST_FLOWER, "x1")
    told.tell(date(2025, 7, 20), Kind.GOING_OVER, "x1")
    told.tell(date(2025, 8, 1), Kind.SEED_SAVED, "x1")
    (clear,) = tasks(told, date(2025, 8, 2), Family.CLEAR)
    (tick,) = clear.ticks
    assert tick.kind is kind
    told.tell(date(2025, 8, 2), tick.kind, "x1")
    season = fold_season(told.records, LIBRARY)
    assert season.doubts == ()
    assert season.batches["x1"].main.stage is stage


def biennial(crop: str) -> Story:
    """Sown in June 2025 and planted in September."""
    told = begin()
    place(told, "bed", name="Bed", kind="bed")
    told.tell(date(2025, 6, 5), Kind.SOWN, "d1", crop=crop, seeds=40, place="bed", raising="tray")
    told.tell(date(2025, 6, 20), Kind.FIRST_UP, "d1", count=24)
    told.tell(date(2025, 9, 10), Kind.PLANTED_OUT, "d1", count=20, place="bed")
    return told


def opens(told: Story, crop: str, since: date) -> date:
    """The day the crop's time in flower opens at the story's site."""
    season, flowering = fold_season(told.records, LIBRARY), LIBRARY[crop].flowering
    assert flowering is not None
    assert flowering.window is not None
    span = season.site.year.span(flowering.window, since)
    assert span is not None
    return span.opens


@pytest.mark.parametrize("crop", ["foxglove", "sweet-william", "forget-me-not", "honesty"])
def test_a_biennials_first_flower_is_looked_for_in_its_second_year(crop: str) -> None:
    """Sown one summer, in flower the next (RHS, Biennials: growing from seed; from memory)."""
    told = biennial(crop)
    day = opens(told, crop, date(2026, 1, 1))
    assert day.year == 2026
    assert looks(told, date(2025, 11, 1)) == []
    assert looks(told, day - timedelta(days=1)) == []
    (look,) = looks(told, day)
    assert look.window.best == day
    assert look.why.source == LIBRARY[crop].source("flowering")
    told.tell(day + timedelta(days=3), Kind.FIRST_FLOWER, "d1")
    assert looks(told, day + timedelta(days=4)) == []


def test_bulbs_are_looked_for_each_spring_and_not_all_summer() -> None:
    told = begin()
    place(told, "bed", name="Bed", kind="bed")
    told.tell(date(2024, 11, 5), Kind.PLANTED_BULBS, "t1", crop="tulip", count=20, place="bed")
    day = opens(told, "tulip", date(2025, 1, 1))
    (look,) = looks(told, day)
    assert look.window.best == day
    told.tell(day, Kind.FIRST_FLOWER, "t1")
    told.tell(day + timedelta(days=30), Kind.DORMANT, "t1")
    assert looks(told, date(2025, 10, 1)) == []
    (again,) = looks(told, day + timedelta(days=365))
    assert again.window.best == day + timedelta(days=365)
    assert looks(told, date(2026, 9, 1)) == []  # none came up: not gone round after all summer
    assert len(looks(told, day + timedelta(days=730))) == 1


def test_what_flowers_in_its_time_is_given_up_for_the_year_when_that_is_long_past() -> None:
    told = biennial("foxglove")
    assert looks(told, date(2026, 12, 1)) == []
    day = opens(told, "foxglove", date(2027, 1, 1))
    assert len(looks(told, day)) == 1


def test_looks_at_the_seed_ask_as_well_whether_the_flowering_is_over() -> None:
    """They come every third day and would put off the question that is asked alone."""
    told = biennial("foxglove")
    first = opens(told, "foxglove", date(2026, 1, 1))
    told.tell(first, Kind.FIRST_FLOWER, "d1")
    told.tell(first + timedelta(days=5), Kind.MARKED_FOR_SEED, "d1", count=2)
    flowering = LIBRARY["foxglove"].flowering
    assert flowering is not None
    asked: list[date] = []
    for number in range(120):
        day = first + timedelta(days=number)
        for family in (Family.SAVE_SEED, Family.LOOK):
            for task in tasks(told, day, family):
                if task.window.best > day:
                    continue
                asked += [day for ask in task.asks if ask.into == "over"]
                told.tell(day, Kind.LOOKED, "d1")
    over = first + timedelta(days=flowering.lasts_days)
    assert asked[0] == over
    apart = [(two - one).days for one, two in pairwise(asked)]
    assert apart
    assert max(apart) <= 7
