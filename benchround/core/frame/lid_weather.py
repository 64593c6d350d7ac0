"""What wind, rain, heat beyond venting, snow and a cold night ask of a frame's lid."""

from collections.abc import Sequence
from datetime import time
from itertools import pairwise

from benchround.core.frame.build import Glazing, LidPosition
from benchround.core.frame.lid_scene import Cap, LidScene, further, highest_at, position_at
from benchround.core.frame.lid_words import (
    COLORADO,
    GLASSHOUSE,
    MATS,
    OWN,
    PRACTICE,
    AdviceKind,
    LidStep,
    Stock,
)
from benchround.core.frame.night import USUAL_NIGHT_GAINS
from benchround.core.sky.hour_curve import clock_at, falls_below, minute_of, rises_above
from benchround.core.units import degrees

FLEECE_GAIN_C = (1.1, 2.2)
"""What fleece adds, K (2-4 degF; Colorado State University, GardenNotes 722, read)."""
FREEZING_MARGIN_C = 0.5
"""Tender stock expected within this of freezing is better indoors; our proposal."""


def wind_caps(scene: LidScene) -> list[Cap]:
    """Return how far gusts let the lid stand open, from when they set in."""
    gust, start = scene.day.gust_kmh, _storm_minute(scene)
    if gust is None or gust <= scene.limits.latch_kmh:
        return []
    if gust > scene.limits.strap_kmh:
        return [Cap(start, LidPosition.SHUT)]
    return [Cap(start, LidPosition.FIRST_NOTCH)]


def rain_caps(scene: LidScene) -> list[Cap]:
    """Return how far a downpour lets the lid stand open over seed that is not up."""
    if scene.stock is not Stock.GERMINATING or not _downpour(scene):
        return []
    start = _storm_minute(scene)
    hot = rises_above(scene.shut, scene.limits.act_above_c, max(start, scene.rise), scene.leave)
    return [Cap(start, LidPosition.SHUT if hot is None else LidPosition.CRACK)]


def _storm_minute(scene: LidScene) -> float:
    return 0.0 if scene.day.storm_from is None else minute_of(scene.day.storm_from)


def _downpour(scene: LidScene) -> bool:
    in_hour, in_day = scene.day.rain_in_hour_mm, scene.day.rain_mm
    return (in_hour is not None and in_hour >= scene.limits.rain_hour_mm) or (
        in_day is not None and in_day >= scene.limits.rain_day_mm
    )


def _stormy_lid(
    scene: LidScene, caps: Sequence[Cap], moves: Sequence[LidStep]
) -> LidPosition | None:
    """Return where the storm puts the lid; None where it already stands low enough."""
    start = _storm_minute(scene)
    standing = position_at(moves, scene.day.standing, start)
    highest = highest_at(caps, start)
    return highest if further(standing, highest) else None


def wind_steps(scene: LidScene, caps: Sequence[Cap], moves: Sequence[LidStep]) -> list[LidStep]:
    """Return what gusts ask: the lowest notch and a latch, or shut and strapped.

    Args:
        scene: the frame's day.
        caps: how far wind and rain let the lid stand open.
        moves: the day's openings and closings, in order of time.
    """
    gust, limits = scene.day.gust_kmh, scene.limits
    if gust is None or gust <= limits.latch_kmh:
        return []
    strap = gust > limits.strap_kmh
    limit = limits.strap_kmh if strap else limits.latch_kmh
    return [
        LidStep(
            AdviceKind.STRAP if strap else AdviceKind.LATCH,
            scene.day.storm_from,
            LidPosition.SHUT if strap else _stormy_lid(scene, caps, moves),
            (f"gusts of {gust:g} km/h, limit {limit:g} km/h",),
            "the gust takes an unlatched lid; never prop it"
            if strap
            else "lowest notch at most, hooked or weighed down",
            OWN,
        )
    ]


def rain_steps(scene: LidScene, caps: Sequence[Cap], moves: Sequence[LidStep]) -> list[LidStep]:
    """Return what a downpour asks over seed that is not up; arguments as for the wind."""
    if scene.stock is not Stock.GERMINATING or not _downpour(scene):
        return []
    in_hour, in_day = scene.day.rain_in_hour_mm, scene.day.rain_mm
    figures = [] if in_hour is None else [f"{in_hour:g} mm in an hour"]
    figures += [] if in_day is None else [f"{in_day:g} mm in the day"]
    position = _stormy_lid(scene, caps, moves)
    reason = "big drops wash seed together: lids down over trays that are not up"
    return [LidStep(AdviceKind.RAIN, scene.day.storm_from, position, tuple(figures), reason, OWN)]


def shade_steps(
    scene: LidScene, caps: Sequence[Cap], openings: Sequence[LidStep], until: float
) -> list[LidStep]:
    """Return when to shade: once the lid can go no further and the frame still gets too hot."""
    starts = [scene.rise, *(minute_of(s.at) for s in openings if s.at is not None)]
    starts += [cap.from_minute for cap in caps]
    marks = [*sorted(mark for mark in starts if scene.rise <= mark < until), until]
    for begin, end in pairwise(marks):
        lid = position_at(openings, scene.day.standing, begin)
        highest = highest_at(caps, begin)
        lid = highest if further(lid, highest) else lid
        passed = rises_above(scene.curves[lid], scene.limits.act_above_c, begin, end)
        if passed is not None:
            return [_shade_step(scene, lid, passed)]
    return []


def _shade_step(scene: LidScene, lid: LidPosition, minute: float) -> LidStep:
    curve = scene.curves[lid]
    cooler = falls_below(curve, scene.limits.act_above_c, minute + 1.0, scene.fall)
    held = "with the lid off" if lid is LidPosition.OFF else f"held at {lid} by wind or rain"
    figures = (
        f"{held} it reaches {degrees(max(curve), 1)} C, limit {scene.limits.act_above_c:g} C",
    )
    latest = None if cooler is None else clock_at(cooler)
    reason = "venting alone cannot hold the heat"
    return LidStep(AdviceKind.SHADE, clock_at(minute, 5), None, figures, reason, GLASSHOUSE, latest)


def night_cover_steps(scene: LidScene, at: time | None) -> list[LidStep]:
    """Return the covers tonight calls for: fleece, a mat, or taking tender stock in."""
    tonight = scene.day.tonight_min_c
    if tonight is None:
        return []
    inside_c = tonight + scene.night_c
    steps: list[LidStep] = []
    fleece = scene.delicate and tonight <= scene.limits.fleece_at_c
    mat = tonight <= scene.limits.mat_at_c
    if fleece:
        low, high = (inside_c + gain for gain in FLEECE_GAIN_C)
        figures = (
            f"{tonight:g} C outside, about {degrees(inside_c, 1)} C in the shut frame",
            f"{degrees(low, 1)} to {degrees(high, 1)} C under fleece",
        )
        reason = "ground frost comes with the air a little above zero"
        steps.append(LidStep(AdviceKind.FLEECE, at, None, figures, reason, COLORADO))
    if mat:
        figures = (f"{tonight:g} C outside", f"a mat adds {USUAL_NIGHT_GAINS.mat_c:g} K or so")
        reason = "insulate the light by night; take it off in the morning"
        steps.append(LidStep(AdviceKind.MAT, at, None, figures, reason, MATS))
    covers_c = (FLEECE_GAIN_C[0] if fleece else 0.0) + (USUAL_NIGHT_GAINS.mat_c if mat else 0.0)
    if scene.delicate and inside_c + covers_c < FREEZING_MARGIN_C:
        coldest = (f"about {degrees(inside_c + covers_c, 1)} C under every cover",)
        reason = "the covers will not keep the frost out"
        steps.append(LidStep(AdviceKind.BRING_IN, at, None, coldest, reason, OWN))
    return steps


def care_steps(scene: LidScene, openings: Sequence[LidStep]) -> list[LidStep]:
    """Return the cautions that hold all day: glass lights, and snow on them."""
    gust = scene.day.gust_kmh
    windy = gust is not None and gust > scene.limits.latch_kmh
    lifted = any(step.position is LidPosition.OFF for step in openings)
    steps: list[LidStep] = []
    if scene.build.glazing is Glazing.GLASS and (windy or lifted):
        reason = (
            "lay glass lights flat before the wind; nobody carries one in it"
            if windy
            else "lift glass lights with two hands, gloved, one at a time"
        )
        figures = (f"gusts of {gust:g} km/h",) if windy else ()
        steps.append(LidStep(AdviceKind.HANDLE, None, None, figures, reason, PRACTICE))
    if scene.day.snow_lying:
        tonight = scene.day.tonight_min_c
        cold = tonight is not None and tonight <= scene.limits.mat_at_c
        reason = (
            "leave snow on as a blanket through the cold snap; never lean on the light"
            if cold
            else "brush it off for light; never lean on the light"
        )
        steps.append(LidStep(AdviceKind.SNOW, None, None, (), reason, PRACTICE))
    return steps
