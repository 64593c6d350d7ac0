"""What guards a frame besides its lid: shade, straps and latches, fleece and mats."""

from __future__ import annotations

from dataclasses import replace
from datetime import time

from benchround.core.frame.build import Glazing
from benchround.core.frame.lid_words import AdviceKind, LidStep
from benchround.core.frame.outlook import FrameOutlook
from benchround.core.record import Draft, Figure, Kind
from benchround.core.sky.known_day import KnownDay, known_day
from benchround.core.task import Family, Harm, Slot, Why, Window
from benchround.core.water.run import DayPart, looks_a_day
from benchround.rounds.frame_view import sky_figures, tender_names
from benchround.rounds.lid_text import clock, rounded, slot_of, sources, step_figures
from benchround.rounds.proposal import Proposal, place_draft
from benchround.rounds.view import PlaceView

SHADE_FROM_C, SUNNY_H = 26.0, 4.0
"""A sunny day this warm wants shade at noon even where the balance just holds; our proposal."""
NOON_SHADE = (time(11), time(15))
ROUND_TIMES = {
    DayPart.MORNING: "in the morning",
    DayPart.MIDDAY: "at midday",
    DayPart.AFTERNOON: "at 15:00",
    DayPart.EVENING: "at 17:00",
}
"""Rounds of water on a hot day (UC Santa Cruz, Unit 1.3 Supplement 1, read)."""
COVERS = (AdviceKind.FLEECE, AdviceKind.MAT, AdviceKind.BRING_IN)
WIND = (AdviceKind.STRAP, AdviceKind.LATCH)


def family_draft(
    view: PlaceView, kind: Kind, family: Family, at: time | None, **figures: Figure
) -> Draft:
    """A record about the frame that names the family it ticks off."""
    return replace(place_draft(view, kind, family=str(family), **figures), at=at)


def this_day(view: PlaceView) -> Window:
    """A window of today alone: tomorrow's weather makes its own task."""
    return Window(view.day, view.day, view.day)


def shade(view: PlaceView, found: FrameOutlook) -> Proposal | None:
    """Shade, where venting alone cannot hold the heat or a hot sunny day comes."""
    known = known_day(view.season.weather, view.season.site, view.day)
    step = found.advice.first(AdviceKind.SHADE)
    sunny = known.basis != "usual" and (known.sun_h is None or known.sun_h >= SUNNY_H)
    hot = sunny and known.max_c >= SHADE_FROM_C
    if found.build.glazing is Glazing.SLATS or (step is None and not hot):
        return None
    start, end = NOON_SHADE if step is None else (step.at, step.latest)
    until = f" to {clock(end)}" if end is not None else ""
    figures = step.figures if step is not None else (f"limit for sunny days {SHADE_FROM_C:g} C",)
    return Proposal(
        Family.SHADE,
        this_day(view),
        Harm.SPOILS_THIS_WEEK if step is None else Harm.DIES_TODAY,
        f"Shade from {clock(start)}{until}{_rounds(known)}",
        Why(
            "shade goes on when venting alone cannot hold 27 C",
            (*sky_figures(view), *figures, *found.assumed),
            sources(found.advice, AdviceKind.SHADE) if step is not None else "our proposal",
        ),
        (family_draft(view, Kind.SHADED, Family.SHADE, start),),
        slot=slot_of(start),
        at=start,
    )


def _rounds(known: KnownDay) -> str:
    parts = looks_a_day(known.max_c, warm_season=True)
    if len(parts) < len(DayPart):
        return ""
    *first, last = (ROUND_TIMES[part] for part in parts)
    return f"; look at the water {', '.join(first)} and {last}"


def strap(view: PlaceView, found: FrameOutlook) -> Proposal | None:
    """Strap the lids down before a gale, latch them in a strong wind."""
    step = found.advice.first(AdviceKind.STRAP) or found.advice.first(AdviceKind.LATCH)
    if step is None:
        return None
    gale = step.kind is AdviceKind.STRAP
    rain = tuple(step_figures(found.advice, AdviceKind.RAIN))
    return Proposal(
        Family.STRAP,
        this_day(view),
        Harm.SPOILS_THIS_WEEK,
        _strap_line(found, step, bool(rain)),
        Why(
            step.reason,
            (*sky_figures(view), *step.figures, *rain, *found.assumed),
            sources(found.advice, *WIND),
        ),
        (
            family_draft(
                view,
                Kind.LID,
                Family.STRAP,
                step.at,
                position="strapped" if gale else "latched",
            ),
        ),
        slot=slot_of(step.at),
        at=step.at,
    )


def _strap_line(found: FrameOutlook, step: LidStep, rain: bool) -> str:
    when = f"from {clock(step.at)}" if step.at is not None else "all day"
    if step.kind is AdviceKind.STRAP:
        flat = ", glass lights laid flat" if found.build.glazing is Glazing.GLASS else ""
        return f"Shut and strap {when}, trays under cover{flat}: {step.figures[0]}"
    down = "; lids down over seed trays" if rain else ""
    return f"Latch at the first notch {when}, no planting{down}: {step.figures[0]}"


def cover(view: PlaceView, found: FrameOutlook) -> Proposal | None:
    """Fleece or a mat for a cold night, and the lid down early."""
    steps = [s for s in found.advice.steps if s.kind in COVERS]
    names = tender_names(view)
    if not names:
        steps = [s for s in steps if s.kind is AdviceKind.MAT]
    if not steps:
        return None
    shut = found.advice.first(AdviceKind.LOWER)
    early = f"Close early, by {clock(shut.latest or shut.at)}; " if shut is not None else ""
    kinds = [s.kind for s in steps]
    covers = [f"fleece over {names}"] * (AdviceKind.FLEECE in kinds)
    covers += ["a mat over the light"] * (AdviceKind.MAT in kinds)
    covers += ["better: bring the tender trays in"] * (AdviceKind.BRING_IN in kinds)
    at = None if steps[0].at is None else rounded(steps[0].at)
    line = f"{early}{', '.join(covers)}: {found.day.tonight_min_c:g} C tonight"
    return Proposal(
        Family.FLEECE,
        this_day(view),
        Harm.DIES_TODAY,
        line[:1].upper() + line[1:],
        Why(
            "; ".join(dict.fromkeys(step.reason for step in steps)),
            (*step_figures(found.advice, *kinds), *found.assumed),
            sources(found.advice, *kinds),
        ),
        (
            family_draft(
                view,
                Kind.COVERED,
                Family.FLEECE,
                at,
                cover=", ".join(str(kind) for kind in kinds),
            ),
        ),
        slot=Slot.EVENING,
        at=at,
    )
