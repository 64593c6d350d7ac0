"""Pests: the slug patrol at dusk after losses, and the mouse trap that is looked at every day."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from benchround.core.dates import say_day
from benchround.core.record import Cause, Kind, Record
from benchround.core.task import Ask, Family, Harm, Slot, Why, Window
from benchround.rounds.proposal import Proposal, draft
from benchround.rounds.view import BatchView

QUIET_DAYS = 14
"""A trap that caught nothing for this long is taken up (common practice, no source)."""
PATROL_DAYS = 7
"""Dusk searches go on for a week after the last loss (common practice, no source)."""

CALLED_FOR_BY = frozenset({Kind.LOST, Kind.TRAP_SET})
"""Records after which there may be something to look out for."""


def propose(view: BatchView) -> Iterator[Proposal]:
    """Patrols and traps of the part in view."""
    part = view.part
    if CALLED_FOR_BY.isdisjoint(part.last) or part.ended:
        return
    lost, trap = part.last.get(Kind.LOST), view.since(Kind.TRAP_SET)
    if lost is not None and lost.text("cause") == Cause.SLUG:
        yield from _patrol(view, lost)
    lifted = view.since(Kind.TRAP_LIFTED)
    if trap is not None and (lifted is None or lifted < trap):
        yield from _trap(view)


def _patrol(view: BatchView, lost: Record) -> Iterator[Proposal]:
    if (view.day - lost.day).days > PATROL_DAYS or view.did_today(Kind.PATROLLED):
        return
    number = lost.count()
    yield Proposal(
        Family.PESTS,
        Window(lost.day, lost.day, view.day),
        Harm.SPOILS_THIS_WEEK,
        "Slug patrol at dusk: under trays, pots and leaves; lift trays off the ground",
        Why(
            "slugs come back to what they found",
            (f"{number or 'some'} lost on {say_day(lost.day)}",),
            "pests page on slugs and snails (under glass too); remedies from memory",
        ),
        (draft(view, Kind.PATROLLED),),
        slot=Slot.EVENING,
        cause=str(Cause.SLUG),
    )


def _trap(view: BatchView) -> Iterator[Proposal]:
    if view.did_today(Kind.TRAP_SEEN, Kind.TRAP_SET):
        return
    seen = view.since(Kind.TRAP_SEEN, Kind.TRAP_SET) or view.day
    due = seen + timedelta(days=1)
    since = view.since(Kind.TRAP_SET, Kind.LOST) or view.day
    quiet = (view.day - since).days >= QUIET_DAYS
    yield Proposal(
        Family.PESTS,
        Window(due, due, max(due, view.day)),
        Harm.GETS_LATE,
        "Two weeks without a loss: take the mouse trap up"
        if quiet
        else "Look at the mouse trap; take it up when nothing comes",
        Why(
            "a set trap is looked at every day",
            (f"last seen {say_day(seen)}", f"set, or something lost, {say_day(since)}"),
        ),
        (draft(view, Kind.TRAP_SEEN),),
        asks=(
            Ask("lifted", "taken up", "yes" if quiet else "no", whole=False, choices=("yes", "no")),
        ),
        cause=str(Cause.MOUSE),
    )
