"""One course, one stage a day: what is said and what the lid does agree."""

from __future__ import annotations

from datetime import timedelta

import pytest

from benchround.core.crop.crop import Hardening
from benchround.core.frame.lid_words import HardeningPlan, LidLimits
from benchround.core.record import Kind
from benchround.core.task import Family
from benchround.rounds.hardening import stage_of_course
from tests.rounds.small_season import DAY, GLASS, Story, begin, outlook, place, sown

HALF, FULL, NIGHT = HardeningPlan.HALF_OPEN, HardeningPlan.FULLY_OPEN, HardeningPlan.NIGHT_OPEN


def test_eighteen_days_are_six_and_six_and_six() -> None:
    """Which? Gardening, trial of hardening-off methods: 6 + 6 + 6 days (read)."""
    course = Hardening(days=18, least_days=18)
    stages = [stage_of_course(course, number) for number in range(1, 19)]
    assert stages == [HALF] * 6 + [FULL] * 6 + [NIGHT] * 6


@pytest.mark.parametrize("days", range(1, 31))
def test_a_course_never_goes_back_by_itself(days: int) -> None:
    course = Hardening(days=days, least_days=1)
    order = [HALF, FULL, NIGHT]
    levels = [order.index(stage_of_course(course, number)) for number in range(1, days + 1)]
    assert levels == sorted(levels)
    assert levels[-1] == 2


def hardening(number: int, gust_kmh: float) -> Story:
    """A frame with one batch on a day of its course, mild but for the wind."""
    told = begin()
    place(told, "frame", **GLASS)
    begun = DAY - timedelta(days=number - 1)
    sown(told, "b1", "tenderling", begun - timedelta(days=40), "frame")
    told.tell(begun - timedelta(days=30), Kind.FIRST_UP, "b1", count=30)
    told.tell(begun, Kind.HARDENING_BEGUN, "b1")
    for ahead in range(-1, 3):
        outlook(told, DAY + timedelta(days=ahead), 12, 20, gust_kmh=gust_kmh)
    return told


@pytest.mark.parametrize(
    ("number", "calm", "windy"),
    [
        (3, "half open by day when sunny", "half open by day when sunny"),
        (7, "fully open by day, shut at night", "half open by day when sunny"),
        (9, "fully open by day, shut at night", "fully open by day, shut at night"),
        (14, "fully open day and night", "open by day, shut tonight"),
    ],
)
def test_the_step_back_is_one_stage_at_most(number: int, calm: str, windy: str) -> None:
    """A gust the lid goes back for is one the batch goes back for: one limit, ours."""
    limit = LidLimits().step_back_kmh
    (task,) = hardening(number, limit).tasks(DAY, Family.HARDEN)
    assert f"day {number} of 18: {calm}" in task.instruction
    (task,) = hardening(number, limit + 1).tasks(DAY, Family.HARDEN)
    assert "STEP BACK" in task.instruction
    assert windy in task.instruction
