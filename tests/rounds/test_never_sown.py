"""A sowing let go for weeks: one question, and no list of what is overdue for months.

The days are our proposal; that a sowing missed waits for its next window is common practice, no
source.
"""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from benchround.core.lifecycle import Stage
from benchround.core.record import Kind
from benchround.core.task import Family, Standing, Task
from benchround.rounds.answers import drafts_for
from benchround.rounds.never_sown import GIVEN_UP, NEXT_TIME, NOW, STEPS
from benchround.rounds.standing import AFTER_ANSWER_DAYS, LONG_DAYS
from tests.rounds.one_batch import batch_tasks
from tests.rounds.spring import Spring

PLANNED = date(2026, 1, 10)
YEAR = [PLANNED + timedelta(days=n) for n in range(0, 700)]


def planned(crop: str, **said: str) -> Spring:
    """A plan nobody follows."""
    story = Spring()
    story.tell(PLANNED, Kind.PLANNED, "b01", crop=crop, wanted=12, **said)
    return story


def tasks(story: Spring, day: date) -> tuple[Task, ...]:
    season = story.season()
    return batch_tasks(season, season.batches["b01"], day)


def answer(story: Spring, day: date, said: str) -> None:
    """Answer the question; every record has to fit the batch as it then stands."""
    [task] = story.tasks(day, Family.STANDS)
    for draft in drafts_for(task, {"still": said}, story.season()):
        story.tell(day, draft.kind, draft.about, **draft.figures)
    assert story.season().doubts == ()


def first_asked(story: Spring, since: date = PLANNED) -> date:
    season = story.season()
    return next(
        day
        for day in YEAR
        if day >= since
        and any(
            task.family is Family.STANDS for task in batch_tasks(season, season.batches["b01"], day)
        )
    )


@pytest.mark.parametrize(
    "crop",
    [
        "tomato",
        "cosmos",
        "foxglove",
        "lettuce",
        "sweet-pea",
        "lupin",
        "carrot",
        "tulip",
        "delphinium",
    ],
)
def test_nothing_planned_is_called_overdue_for_more_than_three_weeks(crop: str) -> None:
    story = planned(crop)
    season = story.season()
    for day in YEAR:
        found = batch_tasks(season, season.batches["b01"], day)
        late = [task.overdue_days for task in found if task.standing is Standing.OVERDUE]
        sows = [task for task in found if task.family in (Family.SOW, Family.BULBS)]
        in_time = any(task.standing is not Standing.OVERDUE for task in sows)
        assert max(late, default=0) <= LONG_DAYS or in_time, (crop, day)


def test_the_question_names_the_time_that_is_over_and_the_next() -> None:
    story = planned("tomato")
    day = first_asked(story)
    [task] = tasks(story, day)
    [ask] = task.asks
    assert (task.standing, ask.choices) == (Standing.DUE, (NOW, NEXT_TIME, GIVEN_UP))
    assert task.instruction.startswith("Still to be sown? Its time was over on ")
    assert "the next begins " in task.instruction
    assert any(figure.startswith("sow: due until ") for figure in task.why.figures)


def test_now_makes_it_due_for_a_week_and_it_is_asked_again_weeks_later() -> None:
    story = planned("tomato")
    day = first_asked(story)
    answer(story, day, NOW)
    [sow] = [task for task in tasks(story, day) if task.family is Family.SOW]
    assert (sow.standing, sow.window.latest) == (
        Standing.DUE,
        day + timedelta(days=AFTER_ANSWER_DAYS),
    )
    again = first_asked(story, day + timedelta(days=1))
    assert again == day + timedelta(days=AFTER_ANSWER_DAYS + LONG_DAYS + 1)


@pytest.mark.parametrize("crop", ["tomato", "cosmos", "foxglove", "tulip"])
def test_next_time_keeps_it_quiet_until_its_next_window(crop: str) -> None:
    story = planned(crop)
    day = first_asked(story)
    answer(story, day, NEXT_TIME)
    season = story.season()
    batch = season.batches["b01"]
    assert batch.main.stage is Stage.PLANNED
    asked = next(
        later
        for later in (day + timedelta(days=n) for n in range(600))
        if batch_tasks(season, batch, later)
    )
    assert asked > day + timedelta(days=30)
    found = batch_tasks(season, batch, asked)
    assert {task.family for task in found} <= STEPS
    assert all(task.standing is not Standing.OVERDUE for task in found)


def test_a_day_of_ones_own_comes_again_a_year_on() -> None:
    story = planned("cosmos", sow_on="2026-03-20", sow_by="2026-03-25")
    day = first_asked(story)
    assert day == date(2026, 3, 25) + timedelta(days=LONG_DAYS + 1)
    answer(story, day, NEXT_TIME)
    assert tasks(story, date(2027, 3, 19)) == ()
    [sow] = tasks(story, date(2027, 3, 20))
    assert (sow.family, sow.window.latest) == (Family.SOW, date(2027, 3, 25))


def test_given_up_ends_it() -> None:
    story = planned("tomato")
    day = first_asked(story)
    answer(story, day, GIVEN_UP)
    assert story.season().batches["b01"].main.stage is Stage.CANCELLED
    assert tasks(story, day) == ()


def test_seed_left_in_the_cold_is_asked_about_and_has_no_next_time() -> None:
    story = planned("delphinium")
    story.tell(PLANNED, Kind.CHILLED, "b01", days=28, seeds=40)
    day = first_asked(story)
    [task] = tasks(story, day)
    assert task.asks[0].choices == (NOW, GIVEN_UP)
    assert "It is at 'stratifying' since" in task.instruction
    answer(story, day, GIVEN_UP)
    assert story.season().batches["b01"].ended
