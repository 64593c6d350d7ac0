"""The nouns of a sowing plan: what it is for, its steps, the answer."""

from __future__ import annotations

from datetime import date
from enum import StrEnum

from benchround.core.frozen import dataclass


class Goal(StrEnum):
    """What is wanted on the day."""

    PLANTING = "planting out"
    FLOWERING = "in flower"
    PICKING = "first picking"


@dataclass(frozen=True, slots=True)
class PlanStep:
    """One step on the way, sown on the best day."""

    name: str
    day: date
    until: date | None = None


@dataclass(frozen=True, slots=True)
class SowPlan:
    """When to sow so as to be ready on a day.

    Attributes:
        goal, wanted: what was asked for.
        possible: whether it can still be had.
        sow_from, sow_best, sow_by: the days to sow; None where no sowing leads there.
        ready_from, ready_by: when the goal is reached if sown on the best day.
        earliest: the first day the goal can be had instead, where the wanted one cannot.
        reason: on what the days rest, or why there are none.
        remarks: what else should be known.
        steps: the way there, sown on the best day.
        source: where the days come from.
    """

    goal: Goal
    wanted: date
    possible: bool
    reason: str
    sow_from: date | None = None
    sow_best: date | None = None
    sow_by: date | None = None
    ready_from: date | None = None
    ready_by: date | None = None
    earliest: date | None = None
    remarks: tuple[str, ...] = ()
    steps: tuple[PlanStep, ...] = ()
    source: str = ""

    @property
    def bench_days(self) -> int | None:
        """Days a tray stands on the bench, from sowing to planting out; None where unknown."""
        planted = next((step.day for step in self.steps if step.name == "plant out"), None)
        if planted is None or self.sow_best is None:
            return None
        return (planted - self.sow_best).days
