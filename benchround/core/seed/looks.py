"""Counts of seedlings as they are taken: by looks, not by days.

A seedling found at a look came up some time since the look before. Storing both days keeps
every statistic honest however rarely the grower looks.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import whole, within


class Look(NamedTuple):
    """One look: seedlings newly up in (previous_look_day, this_look_day], days since sowing."""

    previous_look_day: float
    this_look_day: float
    newly_up: int


@dataclass(frozen=True, slots=True)
class Looks:
    """All looks at one sowing, in order, and the number of seeds sown.

    Attributes:
        steps: The looks; each begins where, or after, the one before ended.
        sown: Seeds sown, at least 1.
    """

    steps: tuple[Look, ...]
    sown: int

    def __post_init__(self) -> None:
        whole("seeds sown", self.sown, 1)
        last = 0.0
        for step in self.steps:
            whole("seedlings newly up", step.newly_up, 0)
            within("day of the look before", step.previous_look_day, last)
            within("day of the look", step.this_look_day, step.previous_look_day, low_open=True)
            last = step.this_look_day
        if self.up > self.sown:
            raise OutOfRangeError(
                f"{self.up} are up of {self.sown} sown: correct a count or the number sown."
            )

    @classmethod
    def of(cls, steps: Iterable[tuple[float, float, int]], sown: int) -> Looks:
        """Make looks from plain (previous day, this day, newly up) tuples."""
        return cls(tuple(Look(*step) for step in steps), sown)

    @classmethod
    def on_days(cls, days: Sequence[float], newly_up: Sequence[int], sown: int) -> Looks:
        """Make looks from the days looked and the newly up on each; the first counts from 0."""
        if len(days) != len(newly_up):
            raise OutOfRangeError(
                f"{len(days)} days but {len(newly_up)} counts: give one count for each look."
            )
        before = (0.0, *days[:-1])
        return cls.of(zip(before, days, newly_up, strict=True), sown)

    @property
    def up(self) -> int:
        """Seedlings up so far."""
        return sum(step.newly_up for step in self.steps)

    @property
    def never(self) -> int:
        """Seeds not up at the last look."""
        return self.sown - self.up

    @property
    def cumulative(self) -> tuple[int, ...]:
        """Seedlings up at each look."""
        total, sums = 0, []
        for step in self.steps:
            total += step.newly_up
            sums.append(total)
        return tuple(sums)

    def times(self, *, middle: bool = False) -> tuple[float, ...]:
        """Return the day of each look, or the middle of its interval."""
        if middle:
            return tuple((s.previous_look_day + s.this_look_day) / 2.0 for s in self.steps)
        return tuple(step.this_look_day for step in self.steps)
