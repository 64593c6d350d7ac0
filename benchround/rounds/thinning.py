"""Thin: cells to as many as are kept in one, rows in two steps; clumps are left whole."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from benchround.core.crop.crop import Raising
from benchround.core.dates import say_day
from benchround.core.lifecycle import SEEDLING
from benchround.core.record import Kind
from benchround.core.task import Ask, Family, Harm, Why, Window
from benchround.rounds.proposal import Proposal, draft
from benchround.rounds.view import BatchView

EARLY_DAYS = 3
GRACE_DAYS = 7
SECOND_STEP_DAYS = 4
"""Seed leaves to first true leaf, at the least (stages: 4 / 10 / 21 days, from memory)."""
SOURCE = "Grovida, The first few weeks (nip out at soil level); timing common practice"


def propose(view: BatchView) -> Iterator[Proposal]:
    """Thinning while seedlings crowd."""
    if view.stage not in SEEDLING or view.did_today(Kind.THINNED):
        return
    if view.in_row:
        yield from _row(view)
    elif view.raising in (Raising.CELLS, Raising.POTS):
        yield from _cells(view)


def _cells(view: BatchView) -> Iterator[Proposal]:
    if not to_be_thinned(view) or view.true_leaves is None:
        return
    sowing, keep, per_cell = view.batch.sowing, view.crop.growing.keep_per_cell, _per_cell(view)
    day, seen = view.true_leaves
    counted = view.part.last.get(Kind.COUNTED)
    cells = (counted.count("cells") if counted else None) or (sowing.cells if sowing else None)
    most = cells * keep if cells else None
    left = min(most, view.alive) if most is not None and view.alive is not None else most
    yield Proposal(
        Family.THIN,
        Window(
            day - timedelta(days=EARLY_DAYS if not seen else 0),
            day,
            day + timedelta(days=GRACE_DAYS),
        ),
        Harm.SPOILS_THIS_WEEK,
        f"Thin to {'one' if keep == 1 else keep} a cell: nip the weaker at soil level",
        Why(
            "seedlings that share a cell are thinned at the first true leaf",
            (
                f"{per_cell} seeds a cell",
                f"true leaves {'seen' if seen else 'expected'} {say_day(day)}",
            ),
            SOURCE,
        ),
        (draft(view, Kind.THINNED, count=left),),
        asks=(Ask("count", "left after thinning", str(left or ""), most=view.alive),),
    )


def to_be_thinned(view: BatchView) -> bool:
    """Whether seedlings still share their cells and are to be thinned."""
    crowded = view.stage in SEEDLING and view.raising in (Raising.CELLS, Raising.POTS)
    if not crowded or view.since(Kind.THINNED):
        return False
    return _per_cell(view) > view.crop.growing.keep_per_cell


def _per_cell(view: BatchView) -> int:
    sowing = view.batch.sowing
    return (sowing.per_cell if sowing else None) or view.crop.growing.per_cell


def _row(view: BatchView) -> Iterator[Proposal]:
    growing = view.crop.growing
    first, final = growing.thin_first_mm, growing.thin_to_mm
    if final is None or view.first_up is None:
        return
    last = view.part.last.get(Kind.THINNED)
    done_mm = (last.number("spacing_mm") or (first if first else final)) if last else None
    if done_mm is not None and done_mm >= final:
        return
    if last is None and first is not None:
        best, to_mm, step = view.first_up + timedelta(days=SECOND_STEP_DAYS), first, "first"
    elif last is not None:
        best, to_mm, step = last.day + timedelta(days=SECOND_STEP_DAYS), final, "second"
    else:
        leaves = view.true_leaves
        best = leaves[0] if leaves else view.first_up + timedelta(days=10)
        to_mm, step = final, "only"
    since = f"thinned to {done_mm / 10:g} cm on {say_day(last.day)}" if last and done_mm else ""
    yield Proposal(
        Family.THIN,
        Window(best, best, best + timedelta(days=GRACE_DAYS)),
        Harm.SPOILS_THIS_WEEK,
        f"Thin the row to {to_mm / 10:g} cm",
        Why(
            f"rows are thinned in steps; this is the {step}",
            tuple(part for part in (f"up {say_day(view.first_up)}", since) if part),
            SOURCE,
        ),
        (draft(view, Kind.THINNED, spacing_mm=to_mm),),
        asks=(Ask("count", "plants left (if counted)", most=view.alive),),
    )
