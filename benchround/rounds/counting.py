"""Counts: the final germination count, the take after pricking out, the gaps after planting."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from benchround.core.dates import say_day
from benchround.core.lifecycle import SEEDLING, Stage
from benchround.core.record import Kind
from benchround.core.seed.final_count import final_count
from benchround.core.seed.looks_of import SETTLED_AFTER_DAYS
from benchround.core.task import Ask, Family, Harm, Slot, Why, Window
from benchround.rounds import partial
from benchround.rounds.proposal import Proposal, draft, in_sight, window
from benchround.rounds.view import BatchView

FINAL_GRACE_DAYS = 6
TAKE_AFTER_DAYS, TAKE_LATEST_DAYS = 7, 10
GAPS_FROM_DAYS, GAPS_DUE_DAYS, GAPS_LATEST_DAYS = 10, 12, 14


def propose(view: BatchView) -> Iterator[Proposal]:
    """The count this stage is owed."""
    if view.did_today(Kind.COUNTED, Kind.TAKEN):
        return
    if view.stage in SEEDLING and not view.in_row:
        yield from _final(view)
    elif view.stage is Stage.PRICKED_OUT:
        yield from _take(view)
    elif view.stage is Stage.ESTABLISHING and not view.is_spare:
        yield from _gaps(view)


def _final(view: BatchView) -> Iterator[Proposal]:
    sowing, first_up = view.batch.sowing, view.first_up
    if sowing is None or sowing.seeds is None or first_up is None:
        return
    found = final_count(view.batch, view.crop)
    if not found.can_come:
        return
    last = view.part.last.get(Kind.COUNTED)
    best = first_up + timedelta(days=SETTLED_AFTER_DAYS)
    if not in_sight(view, Family.COUNT, best):
        return
    so_far = f"{last.count()} on {say_day(last.day)}" if last is not None else "none yet"
    yield Proposal(
        Family.COUNT,
        window(best, grace=FINAL_GRACE_DAYS),
        Harm.GETS_LATE,
        f"Final germination count of {sowing.seeds} sown{partial.end_words(view)}",
        Why(
            "emergence is over by now; the share that came up sets next year's sowing",
            (
                f"first up {say_day(first_up)}",
                f"counted so far: {so_far}",
                f"no final count yet: {found.because}",
                *partial.figures(view),
            ),
        ),
        (draft(view, Kind.COUNTED, final=True),),
        slot=Slot.MIDDAY,
        asks=(Ask("count", "seedlings up", needed=True, most=sowing.seeds),),
    )


def _take(view: BatchView) -> Iterator[Proposal]:
    pricked = view.since(Kind.PRICKED_OUT)
    if pricked is None:
        return
    best = pricked + timedelta(days=TAKE_AFTER_DAYS)
    if not in_sight(view, Family.COUNT, best):
        return
    yield Proposal(
        Family.COUNT,
        Window(best, best, pricked + timedelta(days=TAKE_LATEST_DAYS)),
        Harm.GETS_LATE,
        f"Count how many of {view.alive or 'those'} pricked out have taken",
        Why("a week after pricking out the losses show", (f"pricked out {say_day(pricked)}",)),
        (draft(view, Kind.TAKEN),),
        slot=Slot.MIDDAY,
        asks=(Ask("count", "taken", str(view.alive or ""), most=view.alive),),
    )


def _gaps(view: BatchView) -> Iterator[Proposal]:
    planted = view.since(Kind.PLANTED_OUT)
    if planted is None or (view.since(Kind.COUNTED, Kind.GAPPED_UP) or planted) > planted:
        return
    due = planted + timedelta(days=GAPS_DUE_DAYS)
    latest = planted + timedelta(days=GAPS_LATEST_DAYS)
    if (view.day - latest).days > GAPS_LATEST_DAYS:
        return
    earliest = planted + timedelta(days=GAPS_FROM_DAYS)
    if not in_sight(view, Family.COUNT, earliest):
        return
    yield Proposal(
        Family.COUNT,
        Window(earliest, due, latest),
        Harm.GETS_LATE,
        f"Count gaps among {view.alive or 'those'} planted and fill them from the spares",
        Why("gaps are filled in the second week", (f"planted {say_day(planted)}",)),
        (draft(view, Kind.COUNTED, count=view.alive),),
        slot=Slot.MIDDAY,
        asks=(Ask("count", "standing", str(view.alive or ""), most=view.alive),),
    )
