"""Pinch, and the measuring that pinching and planting wait for."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.dates import say_day
from benchround.core.lifecycle import OUTWARD, SEEDLING, Stage
from benchround.core.record import Kind, Record
from benchround.core.task import Ask, Family, Harm, Slot, Why, Window
from benchround.rounds.proposal import Proposal, draft, in_sight, window
from benchround.rounds.view import BatchView

STAGES = (
    Stage.EMERGING,
    Stage.SEED_LEAF,
    Stage.TRUE_LEAF,
    Stage.PRICKED_OUT,
    Stage.GROWING_ON,
    Stage.POTTED_ON,
    Stage.HARDENING,
    Stage.READY,
    Stage.ESTABLISHING,
    Stage.OVERWINTERING,
)
RECKONED_GRACE_DAYS = 7
MEASURE_EVERY_DAYS = 7
MEASURE_FROM_DAYS = 70
"""Leeks are looked at for size from ten weeks after sowing (10-14 weeks, from memory)."""


def propose(view: BatchView) -> Iterator[Proposal]:
    """Pinching by what was measured, else by days; measuring stems where size decides."""
    if view.stage in STAGES and not view.since(Kind.PINCHED) and not view.is_spare:
        yield from _pinch(view)
    if view.stage in SEEDLING | {Stage.GROWING_ON, Stage.OVERWINTERING, *OUTWARD}:
        yield from _measure(view)


def _pinch(view: BatchView) -> Iterator[Proposal]:
    growing = view.crop.growing
    if growing.pinch_pairs is None and growing.pinch_height_cm is None:
        return
    measured = next((r for r in _measures(view) if _reached(view, r)), None)
    if measured is not None:
        yield _pinching(view, window(measured.day), _seen(view, measured))
        return
    if growing.pinch_days is None:
        return
    leaves = view.true_leaves
    start = view.since(Kind.POTTED_ON, Kind.PRICKED_OUT) or (leaves[0] if leaves else None)
    if start is not None:
        best = start + timedelta(days=growing.pinch_days)
        if not in_sight(view, Family.PINCH, best):
            return
        figure = f"{growing.pinch_days} days from {say_day(start)}; count the leaves first"
        yield _pinching(view, window(best, grace=RECKONED_GRACE_DAYS), figure)


def _measures(view: BatchView) -> Iterator[Record]:
    if view.since(Kind.MEASURED) is None:
        return
    for record in view.batch.records:
        if record.kind is Kind.MEASURED and record.text("part") == view.part.name:
            yield record


def _reached(view: BatchView, record: Record) -> bool:
    growing = view.crop.growing
    pairs, height = record.number("pairs"), record.number("height_cm")
    by_pairs = growing.pinch_pairs is not None and pairs is not None
    by_height = growing.pinch_height_cm is not None and height is not None
    return (by_pairs and (pairs or 0) >= (growing.pinch_pairs or 0)) or (
        by_height and (height or 0) >= (growing.pinch_height_cm or 0)
    )


def _seen(view: BatchView, record: Record) -> str:
    pairs, height = record.count("pairs"), record.number("height_cm")
    size = f"{pairs} pairs of leaves" if pairs is not None else f"{height:g} cm high"
    return f"{size} on {say_day(record.day)}"


def _pinching(view: BatchView, when: Window, figure: str) -> Proposal:
    growing = view.crop.growing
    pairs = growing.pinch_pairs
    above = (
        f"above the {_ordinal(max(1, pairs - 1))} pair of leaves"
        if pairs is not None
        else f"at {growing.pinch_height_cm:g} cm"
    )
    return Proposal(
        Family.PINCH,
        when,
        Harm.GETS_LATE,
        f"Pinch {view.alive or 'the plants'} {above}",
        Why(
            "pinching makes it branch; flower comes a week or two later for it",
            (figure,),
            view.crop.source("growing.pinch_pairs" if pairs else "growing.pinch_height_cm"),
        ),
        (draft(view, Kind.PINCHED, count=None),),
    )


def _ordinal(number: int) -> str:
    return {1: "first", 2: "second", 3: "third", 4: "fourth"}.get(number, f"{number}th")


def _measure(view: BatchView) -> Iterator[Proposal]:
    wanted, sowing = view.crop.planting.size_stem_mm, view.batch.sowing
    if wanted is None or sowing is None:
        return
    last = view.part.last.get(Kind.MEASURED)
    stem = last.number("stem_mm") if last else None
    if stem is not None and stem >= wanted:
        return
    best: date = sowing.day + timedelta(days=MEASURE_FROM_DAYS)
    if last is not None:
        best = max(best, last.day + timedelta(days=MEASURE_EVERY_DAYS))
    if not in_sight(view, Family.MEASURE, best):
        return
    so_far = f"{stem:g} mm on {say_day(last.day)}" if last and stem is not None else "not yet"
    yield Proposal(
        Family.MEASURE,
        window(best, grace=MEASURE_EVERY_DAYS),
        Harm.GETS_LATE,
        f"Measure stems: planted at {wanted:g} mm",
        Why(
            "size, not the calendar, decides when it is planted",
            (f"measured {so_far}",),
            view.crop.source("planting.size_stem_mm"),
        ),
        (draft(view, Kind.MEASURED),),
        slot=Slot.MIDDAY,
        asks=(Ask("stem_mm", "stem, mm", needed=True, whole=False),),
    )
