"""Stock that stands the winter under cover: air on mild days, a look each week.

The rule (air on every mild day, a weekly look) is that of the trade's table of stages for
overwintering stock; it and the limits are common practice or ours, no source.
"""

from __future__ import annotations

from datetime import date, time, timedelta

import pytest

from benchround.core.record import Figure, Kind
from benchround.core.task import Family, Standing, Task
from tests.rounds.small_season import GLASS, Story, begin, outlook, place, sown

WINTER = date(2026, 1, 20)
REST = date(2025, 11, 1)


def resting(**figures: Figure) -> Story:
    """A hardy batch at rest for the winter."""
    story = begin()
    place(story, "frame-a", **{**GLASS, **figures})
    sown(story, "b01", "hardling", date(2025, 9, 1), "frame-a", container="9 cm pot")
    story.tell(date(2025, 10, 1), Kind.TRUE_LEAVES, "b01", count=30)
    story.tell(REST, Kind.OVERWINTERING, "b01")
    return story


def air(story: Story, day: date = WINTER) -> list[Task]:
    return story.tasks(day, Family.AIR)


def looked(story: Story, back: int) -> None:
    story.tell(WINTER - timedelta(days=back), Kind.LOOKED, "b01")


@pytest.mark.parametrize(
    ("high", "gust", "wanted"),
    [(9.0, 10.0, True), (5.5, 40.0, True), (5.0, 10.0, False), (9.0, 41.0, False)],
    ids=["mild", "just mild, just calm", "too cold", "too windy"],
)
def test_air_on_every_mild_calm_day(high: float, gust: float, wanted: bool) -> None:
    story = resting()
    looked(story, 1)
    outlook(story, WINTER, 1, high, gust_kmh=gust)
    assert [task.instruction.startswith("Air well") for task in air(story)] == [True] * wanted


def test_a_week_without_a_look_is_due_even_when_it_is_too_cold_to_air() -> None:
    story = resting()
    looked(story, 7)
    outlook(story, WINTER, -6, -1)
    [task] = air(story)
    assert task.standing is Standing.DUE
    assert task.instruction.startswith("Look through it")
    assert "last looked through Tue 13 Jan, every 7 days" in task.why.figures
    assert [draft.kind for draft in task.ticks] == [Kind.LOOKED, Kind.DONE]


def test_six_days_after_a_look_nothing_is_asked_on_a_cold_day() -> None:
    story = resting()
    looked(story, 6)
    outlook(story, WINTER, -6, -1)
    assert air(story) == []


def test_ticked_it_is_gone_for_the_day_and_back_tomorrow_and_undo_brings_it_back() -> None:
    story = resting()
    for ahead in (0, 1):
        outlook(story, WINTER + timedelta(days=ahead), 2, 9)
    [task] = air(story)
    taken = story.tick(task, WINTER)
    assert air(story) == []
    [tomorrow] = air(story, WINTER + timedelta(days=1))
    assert tomorrow.instruction == "Air well in the middle of the day, shut before the sun goes"
    story.undo(taken, WINTER)
    assert air(story) == [task]


def test_lids_that_were_moved_have_aired_it() -> None:
    story = resting()
    looked(story, 1)
    outlook(story, WINTER, 2, 9)
    story.tell_at(time(10), WINTER, Kind.LID, "frame-a", position="crack")
    assert air(story) == []


def test_in_the_warm_half_of_the_year_lids_do_it_but_a_greenhouse_is_still_aired() -> None:
    may = date(2026, 5, 5)
    for kind, wanted in (("frame", 0), ("greenhouse bench", 1)):
        story = resting(kind=kind)
        story.tell(may - timedelta(days=1), Kind.LOOKED, "b01")
        outlook(story, may, 6, 18)
        assert len(air(story, may)) == wanted


def test_what_stands_in_the_open_or_grows_on_is_not_aired() -> None:
    story = resting(kind="bed")
    outlook(story, WINTER, 2, 9)
    assert air(story) == []
    growing = resting()
    growing.tell(WINTER - timedelta(days=2), Kind.GROWING_ON, "b01")
    outlook(growing, WINTER, 2, 9)
    assert air(growing) == []


def test_without_weather_the_usual_day_is_taken_and_said() -> None:
    story = resting()
    [task] = air(story)
    assert any("a usual" in figure for figure in task.why.figures)


def test_overwintering_trays_are_seldom_watered() -> None:
    """The trade's table of stages: water rarely."""
    story = resting()
    story.tell(WINTER - timedelta(days=9), Kind.WATERED, "b01")
    for back in range(10):
        outlook(story, WINTER - timedelta(days=back), 1, 7)
    assert story.tasks(WINTER, Family.WATER) == []
