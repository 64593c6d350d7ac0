"""Lids, shade, straps and fleece: what today's weather asks of every frame something lives in."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import time

from benchround.core.frame.build import Glazing
from benchround.core.frame.lid_words import AdviceKind, LidLimits
from benchround.core.frame.outlook import FrameOutlook
from benchround.core.frame.place import write_plan
from benchround.core.record import Kind
from benchround.core.task import Family, Harm, Slot, Why
from benchround.rounds.frame_view import outlook, own_reading, sky_figures
from benchround.rounds.lid_guards import COVERS, cover, family_draft, shade, strap, this_day
from benchround.rounds.lid_text import (
    MOVES,
    clock,
    closing_line,
    first_time,
    later_closing,
    moves,
    plan_line,
    rounded,
    shut_figure,
    slot_of,
    sources,
    step_figures,
)
from benchround.rounds.proposal import Proposal
from benchround.rounds.view import PlaceView


def propose(view: PlaceView) -> Iterator[Proposal]:
    """What the frame or tunnel asks today: its lid, shade, straps, a cover for the night."""
    found = outlook(view)
    if found is None:
        return
    for family in (_lids, _shut, shade, strap, cover):
        proposal = family(view, found)
        if proposal is not None and not _done(view, proposal):
            yield proposal


def _done(view: PlaceView, proposal: Proposal) -> bool:
    """Whether this family's task was ticked today."""
    return _ticked(view, proposal.ticks[0].kind, proposal.family)


def _ticked(view: PlaceView, kind: Kind, family: Family) -> bool:
    """Whether a family's task was ticked today; its record carries the family's name."""
    log = view.season.place_log.get(view.place.code, ())
    return any(
        record.day == view.day and record.kind is kind and record.text("family") == str(family)
        for record in log
    )


def _shut(view: PlaceView, found: FrameOutlook) -> Proposal | None:
    """Letting the lid down again: the half one forgets, a line of its own once it was opened."""
    step = later_closing(found.advice)
    if step is None or not _ticked(view, Kind.LID, Family.LIDS):
        return None
    tonight, limits = found.day.tonight_min_c, LidLimits()
    cold = tonight is not None and tonight <= limits.fleece_at_c
    covered = any(found.advice.first(kind) is not None for kind in COVERS)
    figures = () if tonight is None else (f"{tonight:g} C tonight",)
    return Proposal(
        Family.SHUT,
        this_day(view),
        Harm.DIES_TODAY if cold or covered else Harm.SPOILS_THIS_WEEK,
        closing_line(step),
        Why(step.reason, (*step.figures, *figures, *found.assumed), step.source),
        (
            family_draft(
                view,
                Kind.LID,
                Family.SHUT,
                None if step.at is None else rounded(step.at),
                position=str(step.position),
            ),
        ),
        slot=slot_of(step.at),
        at=step.at,
    )


def _lids(view: PlaceView, found: FrameOutlook) -> Proposal | None:
    """The day's plan for the lid in one line."""
    advice = found.advice
    slats = found.build.glazing is Glazing.SLATS
    rain = advice.first(AdviceKind.RAIN)
    steps = moves(advice)
    leave_open = advice.first(AdviceKind.LEAVE_OPEN)
    if (slats and rain is None) or not (steps or leave_open):
        return None
    plan = [(step.at, step.position) for step in steps]
    said = write_plan((at or time(0), position) for at, position in plan if position is not None)
    when = f" by {clock(rain.at)}" if rain is not None and rain.at is not None else ""
    line = f"Slats let rain through: seed trays under cover{when}" if slats else plan_line(advice)
    dies = advice.shut_passes_at is not None or advice.first(AdviceKind.FLEECE) is not None
    kinds = (*MOVES, AdviceKind.LEAVE_OPEN, AdviceKind.HOLD_BACK)
    return Proposal(
        Family.LIDS,
        this_day(view),
        Harm.DIES_TODAY if dies else Harm.SPOILS_THIS_WEEK,
        line,
        Why(
            "the lid is opened before the frame passes 27 C and lowered on the last warmth",
            (
                *sky_figures(view),
                shut_figure(found),
                *own_reading(view),
                *step_figures(advice, *kinds),
                *found.assumed,
            ),
            sources(advice, *kinds),
        ),
        (
            family_draft(
                view,
                Kind.LID,
                Family.LIDS,
                None,
                position=str(steps[0].position) if steps else str(found.day.standing),
                plan="" if slats else said,
            ),
        ),
        slot=Slot.FIRST,
        at=rain.at if slats and rain is not None else first_time(advice),
    )
