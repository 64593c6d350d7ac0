"""What a batch's own records say of its germination: looks as intervals, and the figures from them.

A seedling found at a look came up since the look before; see `looks_reading` for what is read.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from typing import TYPE_CHECKING

from benchround.core.batch.batch import Batch
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import SEEDLINGS_SEEN, nothing_up
from benchround.core.record import Kind, Record
from benchround.core.seed.looks_reading import (
    NOT_SOWN,
    NOTHING_SEEN,
    SEEDS_NOT_SAID,
    SETTLED_AFTER_DAYS,
    TAKEN_OUT,
    LooksOf,
    Reading,
    story_since_sowing,
)

if TYPE_CHECKING:
    from benchround.core.seed.germination import GerminationSummary

__all__ = [
    "SETTLED_AFTER_DAYS",
    "BatchGermination",
    "FirstUp",
    "LooksOf",
    "first_up_in",
    "first_up_of",
    "germination_of",
    "looks_of",
    "story_since_sowing",
]

UP_WITHOUT_COUNT = (Kind.SEED_LEAVES, Kind.TRUE_LEAVES)


@dataclass(frozen=True, slots=True)
class FirstUp:
    """When the first seedling came up: after one look, by the next, in days since sowing.

    `assumed` is set where no look before it is on record and the day before is taken.
    """

    after: float
    by: float
    assumed: bool

    @property
    def middle(self) -> float:
        """The middle of the interval, days since sowing."""
        return (self.after + self.by) / 2.0


@dataclass(frozen=True, slots=True)
class BatchGermination:
    """One batch's germination for screens and reports.

    Attributes:
        summary: every figure the looks define; None where nothing can be said, see `because`.
        curve: (days since sowing, share of the seeds sown that is up), from (0, 0) on.
        settled: whether emergence is over, so that the share is the final one.
        notes: what was taken for granted.
    """

    summary: GerminationSummary | None
    curve: tuple[tuple[float, float], ...] = ()
    because: str = ""
    settled: bool = False
    notes: tuple[str, ...] = ()

    @property
    def share(self) -> float | None:
        """Share of the seeds sown that is up."""
        return self.summary.final_share if self.summary else None

    @property
    def range(self) -> tuple[float, float] | None:
        """The share's 95 % range by Wilson."""
        return (self.summary.low, self.summary.high) if self.summary else None

    @property
    def t50_days(self) -> float | None:
        """Days until half of those up were up."""
        return self.summary.t50_days if self.summary else None


def germination_of(batch: Batch) -> BatchGermination:
    """One batch's germination figures, or why there are none."""
    # the fits are many, and no round asks for them
    from benchround.core.seed.germination import germination_summary
    from benchround.core.seed.germination_times import germination_curve

    found = looks_of(batch)
    if found.looks is None:
        return BatchGermination(None, because=found.because)
    return BatchGermination(
        germination_summary(found.looks),
        germination_curve(found.looks),
        settled=found.settled,
        notes=found.notes,
    )


def looks_of(batch: Batch) -> LooksOf:
    """A batch's looks from its records, as far as nothing was taken out."""
    sowing = batch.sowing
    if sowing is None:
        return LooksOf(None, NOT_SOWN)
    if not sowing.seeds:
        return LooksOf(None, SEEDS_NOT_SAID)
    return Reading(sowing).read(story_since_sowing(batch)).result(sowing.seeds)


def first_up_of(batch: Batch) -> FirstUp | None:
    """When the first seedling came up, from the records; None where they do not tell.

    A first-up record means that it was looked for: with no earlier look on record the day before is
    taken. A count is a find of any age, so it needs a look before it; a leaf stage tells nothing.
    """
    sowing = batch.sowing
    return None if sowing is None else first_up_in(story_since_sowing(batch), sowing.day)


def first_up_in(story: Iterable[Record], sown: date) -> FirstUp | None:
    """The same from the records after a sowing."""
    last_without: int | None = None
    for record in story:
        days = (record.day - sown).days
        kind = record.kind
        if kind in NOTHING_SEEN or nothing_up(kind, record.count()):
            last_without = days
        elif kind in SEEDLINGS_SEEN:
            if last_without is not None and last_without < days:
                return FirstUp(float(last_without), float(days), False)
            if kind is Kind.FIRST_UP and days > 0:
                return FirstUp(days - 1.0, float(days), True)
            return None
        elif kind in UP_WITHOUT_COUNT or kind in TAKEN_OUT:
            return None
    return None
