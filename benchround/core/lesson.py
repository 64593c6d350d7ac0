"""What one sowing teaches: how much of it came up, and after how much heat.

Only seed that had a fair chance teaches. A sowing that mice, birds or slugs got at, that dried
out, was washed out, cooked or frosted, that stood too hot or too cold, or whose records do not tell
enough, is left out, and the reason is kept.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date, timedelta
from typing import NamedTuple

from benchround.core.batch import Batch, Sowing
from benchround.core.crop import Crop
from benchround.core.dates import say_day
from benchround.core.lifecycle import SEEDLING, WAITING
from benchround.core.looks_of import SEEDS_NOT_SAID, FirstUp, first_up_in
from benchround.core.looks_reading import (
    NEVER_COUNTED,
    SEEDLINGS_SEEN,
    TAKEN_OUT,
    Reading,
    story_since_sowing,
)
from benchround.core.record import Cause, Kind, Record
from benchround.core.seed_heat import Moves, heat_felt, place_on, places_of, thermal_model
from benchround.core.stall import COLD_DAYS, too_cold, too_hot
from benchround.core.thermal_model import ThermalModel
from benchround.core.warmth import Warmth

TEACH_NOTHING = frozenset(
    {
        Cause.MOUSE,
        Cause.BIRD,
        Cause.SLUG,
        Cause.DRIED_OUT,
        Cause.WASHED_OUT,
        Cause.DROWNED,
        Cause.COOKED,
        Cause.FROSTED,
        Cause.FORGOTTEN,
        Cause.WRONG_LABEL,
    }
)
"""Losses before or at emergence that say nothing of the seed (our proposal)."""

WIDEST_LOOK_DAYS = 7
"""First seedlings found after longer than this without a look tell no time (our proposal)."""

MOST_APART = 5.0
"""Heat this many times more or less than the library's is a wrong day or place (our proposal)."""

LEAVES = (Kind.SEED_LEAVES, Kind.TRUE_LEAVES)
Felt = Callable[[str, date], Warmth]
"""The warmth at a place, by its code, on a day."""


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


def lesson_of(batch: Batch, crop: Crop, felt: Felt) -> Lesson | None:
    """What a batch teaches of its crop; None where nothing was sown or nothing is known yet."""
    sowing = batch.sowing
    if sowing is None or crop.germination is None:
        return None
    if Kind.CHITTED in batch.main.first:
        return _nothing(batch, sowing, "it was sown already sprouted")
    story = story_since_sowing(batch)
    up_on, mishap, before_up = _told(story)
    if up_on is None:
        return _nothing_up(batch, sowing, story, mishap)
    timed = _Timed(None, before_up)
    if not before_up:
        timed = _time(batch, sowing, story, thermal_model(crop.germination), felt)
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


class _Timed(NamedTuple):
    """Heat and days to the first seedling, or why there are none; `stall` where it was a stall."""

    heat: float | None
    because: str = ""
    days: float | None = None
    stall: str = ""


def _nothing(batch: Batch, sowing: Sowing, because: str) -> Lesson:
    return Lesson(batch.id, sowing.packet, no_share=because, no_time=because)


def _told(story: Iterable[Record]) -> tuple[date | None, str, str]:
    """The day something was first seen up, and what befell the sowing.

    Returns:
        The day, None where nothing was seen; what befell it before emergence was over; and the
        same up to the day it was up. Empty where nothing did.
    """
    up_on: date | None = None
    mishap = before_up = ""
    for record in story:
        if up_on is None:
            up_on = _up_on(record)
        mishap = mishap or _mishap(record)
        if up_on is None or record.day <= up_on:
            before_up = mishap
        if record.kind in TAKEN_OUT or record.flag("final"):
            break
    return up_on, mishap, before_up


def _up_on(record: Record) -> date | None:
    """The day of a record that shows that something is up."""
    kind = record.kind
    if kind in SEEDLINGS_SEEN:
        return record.day if record.count() != 0 else None
    shows = kind in LEAVES or (kind in TAKEN_OUT and kind is not Kind.COMPOSTED)
    return record.day if shows else None


def _mishap(record: Record) -> str:
    match record.kind:
        case Kind.STALLED:
            return f"stalled by {record.text('cause') or 'heat or cold'}"
        case Kind.WASHED_OUT:
            return "washed out"
        case Kind.RESOWN:
            return f"sown again on {say_day(record.day)}"
        case Kind.LOST if record.text("cause") in TEACH_NOTHING:
            return f"lost: {record.text('cause')}"
        case _:
            return ""


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
    if not sowing.seeds:
        return _Counted(None, SEEDS_NOT_SAID)
    reading = Reading(sowing).read(story)
    fault = reading.fault(sowing.seeds)
    if fault:
        return _Counted(None, "" if growing and fault == NEVER_COUNTED else fault)
    if not reading.settled and reading.up < usual_share * sowing.seeds:
        return _Counted(None, "" if growing else "its last count came too early to be final")
    return _Counted(reading.up)


def _time(
    batch: Batch, sowing: Sowing, story: Iterable[Record], model: ThermalModel, felt: Felt
) -> _Timed:
    """The heat its first seedling took, unless the records tell none or it sulked."""
    first, moves = first_up_in(story, sowing.day), places_of(batch, batch.main)
    because = _no_time(batch, sowing, first, moves)
    if because or first is None:
        return _Timed(None, because)
    total, cold, middle = 0.0, 0, first.middle
    for number in range(int(first.by)):
        day = sowing.day + timedelta(days=number)
        warm = felt(place_on(moves, day), day)
        cold = cold + 1 if too_cold(model, warm) else 0
        stall = ""
        if too_hot(model, warm):
            stall = f"stalled by heat: {warm.max_c:.0f} C on {say_day(day)}"
        elif cold >= COLD_DAYS:
            stall = f"stalled by cold up to {say_day(day)}"
        if stall:
            return _Timed(None, stall, stall=stall)
        if number < middle:
            total += heat_felt(model, warm.mean_c) * min(1.0, middle - number)
    if not model.theta50 / MOST_APART <= total <= model.theta50 * MOST_APART:
        odd = f"{total:.0f} degree-days where {model.theta50:.0f} are usual: a wrong day or place?"
        return _Timed(None, odd)
    return _Timed(total, days=middle)


def _no_time(batch: Batch, sowing: Sowing, first: FirstUp | None, moves: Moves) -> str:
    """Why the records tell no time; empty where they do."""
    chilled = batch.main.last_day(Kind.CHILLED)
    if chilled is not None and chilled >= sowing.day:
        return "it was chilled after sowing"
    if not any(place for _, place in moves):
        return "where it stood was not said"
    if first is None:
        return "the day of the first seedling is not on record"
    if first.by - first.after > WIDEST_LOOK_DAYS:
        return f"nobody looked for {first.by - first.after:.0f} days before it was up"
    return ""
