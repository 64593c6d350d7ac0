"""Weeks without a word: one question instead of a list that grows (common practice, no source)."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from benchround.core.lifecycle import NEXT, WAITING, Stage
from benchround.core.record import Draft, Kind
from benchround.core.task import Family, Standing, Task
from benchround.rounds.answers import drafts_for
from benchround.rounds.standing import STAGE_KINDS, STEPS, stages_open
from tests.rounds.one_batch import batch_tasks
from tests.rounds.small_season import sown
from tests.rounds.spring import Spring

SOWN, UP = date(2026, 3, 8), date(2026, 3, 16)
MUCH_LATER = date(2026, 5, 25)


def tomatoes() -> Spring:
    """Sown in heat and seen to come up; then nothing is written down."""
    story = Spring()
    story.tell(date(2026, 1, 1), Kind.PLACE, "box", name="Box", kind="propagator", order=3)
    sown(story, "b01", "tomato", SOWN, "box", raising="tray", seeds=12, heat_c=20, covered=True)
    story.tell(UP, Kind.FIRST_UP, "b01", count=10)
    return story


def of_batch(story: Spring, day: date) -> list[Task]:
    season = story.season()
    return [t for t in batch_tasks(season, season.batches["b01"], day) if t.family is not F.WATER]


F = Family


def answer(story: Spring, day: date, **typed: str) -> tuple[Draft, ...]:
    """Tick the question; every record has to fit the batch as it then stands."""
    [task] = story.tasks(day, F.STANDS)
    drafts = drafts_for(task, typed, story.season())
    for draft in drafts:
        story.tell(day, draft.kind, draft.about, **draft.figures)
    assert story.season().doubts == ()
    return drafts


def test_steps_missed_for_weeks_become_one_question() -> None:
    story = tomatoes()
    early = {task.family for task in of_batch(story, UP + timedelta(days=12))}
    assert {F.UNCOVER, F.COUNT, F.PRICK_OUT} <= early
    later = of_batch(story, MUCH_LATER)
    assert [task.family for task in later if task.standing is Standing.OVERDUE] == []
    [task] = [task for task in later if task.family is F.STANDS]
    assert task.standing is Standing.DUE
    assert not {task.family for task in later} & STEPS
    assert any(figure.startswith("uncover: due until Mon 16 Mar") for figure in task.why.figures)


def test_several_missed_are_asked_about_sooner_than_one() -> None:
    """Off heat by the day it is up and the count six days after settling: from day 15 on."""
    story = tomatoes()
    asked = [n for n in range(60) if story.tasks(UP + timedelta(days=n), F.STANDS)]
    assert asked[0] == 15
    story.tell(UP, Kind.UNCOVERED, "b01")
    story.tell(UP + timedelta(days=4), Kind.COUNTED, "b01", count=10, final=True)
    [first] = [n for n in range(80) if story.tasks(UP + timedelta(days=n), F.STANDS)][:1]
    [pricking] = story.tasks(UP + timedelta(days=20), F.PRICK_OUT)
    assert first == (pricking.window.latest - UP).days + 22


ANSWERS = [
    ("seed leaves", Stage.SEED_LEAF),
    ("true leaves", Stage.TRUE_LEAF),
    ("pricked out", Stage.PRICKED_OUT),
    ("potted on", Stage.POTTED_ON),
    ("hardening begun", Stage.HARDENING),
    ("ready", Stage.READY),
    ("planted out", Stage.ESTABLISHING),
    ("first flower", Stage.FLOWERING),
]


@pytest.mark.parametrize(("stage", "leads_to"), ANSWERS)
def test_one_answer_sets_the_stage_and_the_skipped_steps_are_not_asked_again(
    stage: str, leads_to: Stage
) -> None:
    story = tomatoes()
    answer(story, MUCH_LATER, stage=stage, count="8")
    main = story.season().batches["b01"].main
    assert (main.stage, main.alive) == (leads_to, 8)
    for ahead in range(20):
        tasks = of_batch(story, MUCH_LATER + timedelta(days=ahead))
        families = {task.family for task in tasks}
        assert F.UNCOVER not in families
        assert F.STANDS not in families
        assert all(t.overdue_days <= ahead for t in tasks)


def test_a_step_still_to_come_is_due_from_the_answer_on() -> None:
    story = tomatoes()
    story.tell(UP + timedelta(days=10), Kind.TRUE_LEAVES, "b01")
    answer(story, MUCH_LATER, stage="true leaves", count="8")
    [task] = story.tasks(MUCH_LATER + timedelta(days=1), F.PRICK_OUT)
    assert (task.standing, task.overdue_days) == (Standing.DUE, 0)
    [task] = story.tasks(MUCH_LATER + timedelta(days=9), F.PRICK_OUT)
    assert (task.standing, task.overdue_days) == (Standing.OVERDUE, 2)
    assert story.tasks(MUCH_LATER + timedelta(days=29), F.STANDS)


def test_all_gone_ends_it() -> None:
    story = tomatoes()
    answer(story, MUCH_LATER, stage="lost")
    assert story.season().batches["b01"].main.stage is Stage.LOST


def test_seed_never_seen_to_come_up_can_stand_anywhere_by_now() -> None:
    story = Spring()
    sown(story, "b01", "tomato", SOWN, "sill", raising="tray", seeds=12)
    assert story.tasks(MUCH_LATER, F.STANDS)
    answer(story, MUCH_LATER, stage="growing on", count="9")
    main = story.season().batches["b01"].main
    assert (main.stage, main.alive) == (Stage.GROWING_ON, 9)


@pytest.mark.parametrize("stage", sorted(WAITING | {stage for _, stage in ANSWERS}))
def test_every_stage_offered_is_one_the_lifecycle_allows(stage: Stage) -> None:
    for kind in stages_open(stage):
        assert kind in STAGE_KINDS
        direct = (stage, kind) in NEXT
        assert direct or (stage in WAITING and (Stage.TRUE_LEAF, kind) in NEXT)
