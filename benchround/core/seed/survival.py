"""Kaplan-Meier survival of seedlings or seeds followed one by one."""

from __future__ import annotations

import math
from collections.abc import Sequence

from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import within


@dataclass(frozen=True, slots=True)
class SurvivalStep:
    """The estimate just after a day with events.

    Attributes:
        day: The day.
        at_risk: Followed on that day.
        events: Events on that day.
        survival: Share without an event so far.
        error: Greenwood's standard error, 0 where the share has reached 0.
    """

    day: float
    at_risk: int
    events: int
    survival: float
    error: float


def kaplan_meier(days: Sequence[float], happened: Sequence[bool]) -> tuple[SurvivalStep, ...]:
    """Return S(t) = prod(1 - d/n) with S sqrt(sum d / (n (n - d))) at every day with events.

    Kaplan & Meier 1958, J. Am. Stat. Assoc. 53:457-481; Greenwood 1926 (formulas from memory).

    Args:
        days: How long each was followed.
        happened: Whether the event came on that day, False where watching ended before it.
    """
    if len(days) != len(happened):
        raise OutOfRangeError(
            f"{len(days)} durations but {len(happened)} outcomes: give one outcome for each."
        )
    for day in days:
        within("days followed", day, 0.0)
    steps, survival, spread = [], 1.0, 0.0
    for day in sorted({d for d, event in zip(days, happened, strict=True) if event}):
        at_risk = sum(1 for d in days if d >= day)
        events = sum(1 for d, event in zip(days, happened, strict=True) if event and d == day)
        survival *= 1.0 - events / at_risk
        if events < at_risk:
            spread += events / (at_risk * (at_risk - events))
        steps.append(SurvivalStep(day, at_risk, events, survival, survival * math.sqrt(spread)))
    return tuple(steps)
