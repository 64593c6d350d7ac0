"""Deadhead and pick at the crop's interval; what is left for seed is left alone."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from benchround.core.dates import say_day
from benchround.core.lifecycle import Stage
from benchround.core.record import Kind
from benchround.core.task import Ask, Family, Harm, Why, Window
from benchround.rounds.frosted import frosted_on
from benchround.rounds.proposal import Proposal, draft, in_sight, window
from benchround.rounds.view import BatchView

USUAL_DAYS = {"heads": 5, "pick": 2, "spikes": 10}
MARK_FROM_DAYS = 3
MARK_GRACE_DAYS = 14
MARKED_SPIKES = 2
LAST_THIRD = 2 / 3
PICK_EVERY_DAYS = 3


def propose(view: BatchView) -> Iterator[Proposal]:
    """Deadheading and picking of what flowers, marking for seed, picking of what crops."""
    if view.stage in (Stage.FLOWERING, Stage.CROPPING) and frosted_on(view) is not None:
        return
    if view.stage is Stage.FLOWERING:
        yield from _deadhead(view)
        yield from _mark(view)
    elif view.stage is Stage.CROPPING:
        yield from _pick(view)


def _deadhead(view: BatchView) -> Iterator[Proposal]:
    flowering = view.crop.flowering
    first = view.since(Kind.FIRST_FLOWER)
    if flowering is None or flowering.deadhead == "none" or first is None:
        return
    style = flowering.deadhead
    every = flowering.deadhead_every_days or USUAL_DAYS.get(style, 7)
    last = view.since(Kind.DEADHEADED, Kind.PICKED)
    if last is not None and last >= first:
        best = last + timedelta(days=every)
        figure = f"last done {say_day(last)}, every {every} days"
    else:
        days = flowering.deadhead_first_days or every
        best = first + timedelta(days=days)
        figure = f"first flower {say_day(first)}, first round after {days} days"
    if not in_sight(view, Family.DEADHEAD, best):
        return
    marked = view.batch.marked_for_seed
    words = {
        "pick": "Pick all and remove every pod",
        "spikes": "Cut main spikes that are two thirds faded",
    }.get(style, "Deadhead, with the seed case")
    leave = f"; leave the {marked} marked for seed" if marked else ""
    kind = Kind.PICKED if style == "pick" else Kind.DEADHEADED
    yield Proposal(
        Family.DEADHEAD,
        window(best),
        Harm.GETS_LATE,
        f"{words}{leave}",
        Why(
            "flowers that set seed stop flowering",
            (figure,),
            view.crop.source("flowering.deadhead"),
        ),
        (draft(view, kind),),
    )


def _mark(view: BatchView) -> Iterator[Proposal]:
    flowering, first = view.crop.flowering, view.since(Kind.FIRST_FLOWER)
    if flowering is None or first is None or view.batch.marked_for_seed:
        return
    if not view.crop.seed.worth or flowering.deadhead == "none":
        return
    if flowering.deadhead == "spikes":
        days = flowering.deadhead_first_days or USUAL_DAYS["spikes"]
        early = MARK_FROM_DAYS
    else:
        days = early = round(flowering.lasts_days * LAST_THIRD)
    best = first + timedelta(days=days)
    earliest = first + timedelta(days=min(early, days))
    if not in_sight(view, Family.MARK_SEED, earliest):
        return
    yield Proposal(
        Family.MARK_SEED,
        Window(earliest, best, best + timedelta(days=MARK_GRACE_DAYS)),
        Harm.GETS_LATE,
        f"Mark {MARKED_SPIKES} of the best for seed; they are not deadheaded",
        Why(
            "seed is saved from marked plants only, before deadheading takes them",
            (f"in flower since {say_day(first)}",),
        ),
        (draft(view, Kind.MARKED_FOR_SEED, count=MARKED_SPIKES),),
        asks=(Ask("count", "marked", str(MARKED_SPIKES)),),
    )


def _pick(view: BatchView) -> Iterator[Proposal]:
    last = view.since(Kind.PICKED, Kind.CROPPED) or view.part.since
    yield Proposal(
        Family.PICK,
        window(last + timedelta(days=PICK_EVERY_DAYS), grace=PICK_EVERY_DAYS),
        Harm.GETS_LATE,
        "Pick what is ready",
        Why("what is not picked goes over", (f"last picked {say_day(last)}",)),
        (draft(view, Kind.PICKED),),
    )
