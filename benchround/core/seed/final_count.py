"""How many of a sowing came up in the end: one count for the card, the learning and the review.

What is read of the records, and that seedlings lost before the last count had come up, is told in
`looks_reading`.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from benchround.core.batch.batch import Batch, Sowing
from benchround.core.crop.crop import Crop
from benchround.core.record import Record
from benchround.core.seed.looks_reading import (
    NEVER_COUNTED,
    NOT_LOOKED_AT,
    NOT_SOWN,
    SEEDS_NOT_SAID,
    Reading,
    story_since_sowing,
)

TOO_EARLY = "its last count came too early to be final"
NOT_YET = frozenset({NOT_LOOKED_AT, NEVER_COUNTED, TOO_EARLY})
"""Faults a later count can still mend while seedlings stand where they were sown."""
SINCE = ", and plants were taken out or lost uncounted since"
"""Said of those faults where no later count can mend them any more."""


class FinalCount(NamedTuple):
    """Seedlings that came up in the end.

    Attributes:
        up: None where that cannot be told, see `because`.
        sown: seeds sown, those sown again included; 0 where it was not said.
        because: why there is no final count; empty where there is one.
    """

    up: int | None
    sown: int
    because: str = ""

    @property
    def can_come(self) -> bool:
        """Whether there is no final count, and one more count can still be it."""
        return self.up is None and self.because in NOT_YET


def final_count(batch: Batch, crop: Crop) -> FinalCount:
    """How many of a batch came up in the end, from its records."""
    if batch.sowing is None:
        return FinalCount(None, 0, NOT_SOWN)
    usual = crop.germination.share if crop.germination else None
    return final_count_in(story_since_sowing(batch), batch.sowing, usual)


def final_count_in(
    story: Iterable[Record], sowing: Sowing, usual_share: float | None
) -> FinalCount:
    """The same from the records after a sowing.

    Args:
        story: the records, in story order.
        sowing: what was sown.
        usual_share: the crop's germination; a count that reaches it is taken as the final one.
            Leaves noted with a number are not: whoever notes leaves has not looked for the last.
    """
    if not sowing.seeds:
        return FinalCount(None, sowing.again_seeds, SEEDS_NOT_SAID)
    sown = sowing.seeds + sowing.again_seeds
    reading = Reading(sowing).read(story)
    fault = reading.count_fault(sown)
    if not fault and not reading.settled:
        reached = usual_share is not None and reading.up_by_count >= usual_share * sown
        fault = "" if reached else TOO_EARLY
    if fault in NOT_YET and reading.over:
        fault += SINCE
    return FinalCount(None, sown, fault) if fault else FinalCount(reading.up, sown)
