"""What one sowing teaches: how much of it came up, and after how much heat.

Only seed that had a fair chance teaches. A sowing that mice, birds or slugs got at, that dried
out, was washed out, cooked or frosted, that stood too hot or too cold, or whose records do not tell
enough, is left out, and the reason is kept.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from benchround.core.batch.batch import Batch, Sowing
from benchround.core.crop.crop import Crop
from benchround.core.frozen import dataclass
from benchround.core.learning.lesson_mishaps import told
from benchround.core.learning.lesson_time import Timed, Times, time_of
from benchround.core.lifecycle import SEEDLING, WAITING
from benchround.core.record import Cause, Kind, Record
from benchround.core.seed.final_count import NOT_YET, final_count_in
from benchround.core.seed.heat import WarmthOf, thermal_model
from benchround.core.seed.looks_reading import story_since_sowing


@dataclass(frozen=True, slots=True)
class Lesson:
    """What one sowing teaches; None where it does not, or not yet.

    Attributes:
        packet: the packet it was sown from; empty where that was not said.
        sown, up: seeds sown and the final count; both or neither.
        days, heat: from sowing to the first seedling, in days and in degree-days.
        old_seed: nothing came up and old seed was named as the cause: it tells of the packet only.
        no_share, no_time: why count and time are left out; empty where used, or not known yet.
    """

    batch: str
    packet: str = ""
    sown: int | None = None
    up: int | None = None
    days: float | None = None
    heat: float | None = None
    old_seed: bool = False
    no_share: str = ""
    no_time: str = ""


def lesson_of(
    batch: Batch, crop: Crop, warmth_of: WarmthOf, times: Times | None = None
) -> Lesson | None:
    """What a batch teaches of its crop; None where nothing was sown or nothing is known yet.

    Args:
        batch: the batch.
        crop: its crop's rules.
        warmth_of: gives the warmth of a place by its days.
        times: times found under this warmth before; None where none are kept.
    """
    sowing = batch.sowing
    if sowing is None or crop.germination is None:
        return None
    if Kind.CHITTED in batch.main.first:
        return _nothing(batch, sowing, "it was sown already sprouted")
    story = story_since_sowing(batch)
    up_on, mishap, before_up = told(story)
    if up_on is None:
        return _nothing_up(batch, sowing, story, mishap)
    timed = Timed(None, before_up)
    if not before_up:
        model, known = thermal_model(crop.germination), {} if times is None else times
        timed = time_of(batch, sowing, story, model, warmth_of, known)
    counted = _Counted(None, mishap or timed.stall)
    if not counted.because:
        growing = batch.main.stage in WAITING | SEEDLING
        counted = _count(sowing, story, growing, crop.germination.share)
    return Lesson(
        batch.id,
        sowing.packet,
        sown=sowing.seeds if counted.up is not None else None,
        up=counted.up,
        days=timed.days,
        heat=timed.heat,
        no_share=counted.because,
        no_time=timed.because,
    )


class _Counted(NamedTuple):
    """A final count, or why there is none."""

    up: int | None
    because: str = ""


def _nothing(batch: Batch, sowing: Sowing, because: str) -> Lesson:
    return Lesson(batch.id, sowing.packet, no_share=because, no_time=because)


def _nothing_up(
    batch: Batch, sowing: Sowing, story: Iterable[Record], mishap: str
) -> Lesson | None:
    """A sowing of which nothing was seen: waiting still, or ended without a seedling."""
    if mishap:
        return _nothing(batch, sowing, mishap)
    if not batch.ended:
        return None
    causes = [record.text("cause") for record in story if record.kind is Kind.LOST]
    none = f"nothing came up ({(causes[-1] if causes else '') or 'cause not known'})"
    if causes and causes[-1] == Cause.OLD_SEED and sowing.seeds:
        return Lesson(batch.id, sowing.packet, sown=sowing.seeds, up=0, old_seed=True, no_time=none)
    return _nothing(batch, sowing, none)


def _count(sowing: Sowing, story: Iterable[Record], growing: bool, usual_share: float) -> _Counted:
    """The final count, where emergence is over and was counted."""
    found = final_count_in(story, sowing, usual_share)
    return _Counted(found.up, "" if growing and found.because in NOT_YET else found.because)
