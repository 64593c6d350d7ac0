"""A sowing let go for weeks: one question, and no list of what is overdue for months.

The days are our proposal; that a sowing missed waits for its next window is common practice, no
source.
"""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from benchround.core.dates import say_date
from benchround.core.lifecycle import Stage
from benchround.core.planning.schedule import expected_course
from benchround.core.record import Kind
from benchround.core.task import Family, Standing, Task
from benchround.crops.library import load_library
from benchround.rounds.answers import drafts_for
from benchround.rounds.never_sown import ARE_SOWING, GIVEN_UP, LEAD_TO_SOWING, NEXT_TIME, NOW
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
        assert max(late, default=0) <= LONG_DAYS, (crop, day)


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
    assert {task.family for task in found} <= LEAD_TO_SOWING
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


def asked_within(crop: str, planned_on: date, days: int) -> tuple[Spring, date, Task] | None:
    """A plan let go, and the first week its question is asked in."""
    story = Spring()
    story.tell(planned_on, Kind.PLANNED, "b01", crop=crop, wanted=12)
    for day in (planned_on + timedelta(days=n) for n in range(0, days, 7)):
        asked = [task for task in tasks(story, day) if task.family is Family.STANDS]
        if asked:
            return story, day, asked[0]
    return None


def sows(story: Spring, day: date) -> bool:
    """Whether the sowing, or the planting, is due on a day."""
    return any(
        task.family in ARE_SOWING and task.window.earliest <= day for task in tasks(story, day)
    )


@pytest.mark.parametrize("crop", sorted(load_library()))
def test_it_is_asked_for_again_on_the_very_day_the_question_named(crop: str) -> None:
    found = asked_within(crop, PLANNED, 500)
    if found is None:  # crops of several windows go on from one to the next
        assert len(load_library()[crop].windows) != 1 or crop == "unknown"
        return
    story, day, task = found
    if NEXT_TIME not in task.asks[0].choices:
        assert "next begins" not in task.instruction
        return
    named = next(
        later
        for later in (day + timedelta(days=n) for n in range(1, 900))
        if f"the next begins {say_date(later)}." in task.instruction
    )
    answer(story, day, NEXT_TIME)
    before = named - timedelta(days=2)  # soaked the evening before, some are in sight a day sooner
    assert not sows(story, before)
    assert sows(story, named)


@pytest.mark.parametrize("year", [2026, 2027, 2028])
def test_bulbs_whose_window_is_open_are_to_be_planted_whenever_they_were_planned(year: int) -> None:
    story = Spring()
    story.tell(date(2025, 8, 1), Kind.PLANNED, "b01", crop="tulip", wanted=24)
    assert sows(story, date(year, 11, 10))


def test_after_next_time_the_day_ahead_is_that_of_the_next_year() -> None:
    story = planned("cosmos", sow_on="2026-03-20", sow_by="2026-06-15")
    day = first_asked(story)
    answer(story, day, NEXT_TIME)
    season = story.season()
    course = expected_course(season, season.batches["b01"], season.crop("cosmos"), day)
    assert course[0].day == date(2027, 3, 20)
    story.tell(date(2027, 3, 20), Kind.SOWN, "b01", seeds=20, place="sill", raising="cells")
    [sow_again] = story.tasks(date(2027, 4, 20), Family.RESOW)
    assert "15 Jun" not in sow_again.instruction


def test_a_last_day_before_the_day_wished_counts_as_that_day() -> None:
    story = planned("cosmos", sow_on="2026-05-01", sow_by="2026-03-01")
    [sow] = tasks(story, date(2026, 5, 1))
    assert (sow.family, sow.standing) == (Family.SOW, Standing.DUE)


def test_what_is_said_later_does_not_reach_back() -> None:
    story = planned("tomato")
    [before] = tasks(story, date(2026, 3, 10))
    story.tell(date(2027, 1, 1), Kind.DONE, "b01", family=str(Family.SOW))
    assert tasks(story, date(2026, 3, 10)) == (before,)


def test_a_wished_day_that_went_by_tells_that_the_crop_may_still_be_sown() -> None:
    story = planned("lettuce", sow_on="2026-04-01")
    day = first_asked(story)
    [task] = tasks(story, day)
    assert any(figure.startswith("the crop may be sown until ") for figure in task.why.figures)


def test_sown_after_all_it_is_not_said_that_its_window_is_open() -> None:
    story = planned("tomato")
    day = first_asked(story)
    answer(story, day, NOW)
    [sow] = [task for task in tasks(story, day) if task.family is Family.SOW]
    assert sow.why.rule.startswith("its sowing window has closed")
