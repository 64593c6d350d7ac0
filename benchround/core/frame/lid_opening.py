"""When to open: by the heat the frame would reach, by hardening, by the rule of air over warmth."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import time

from benchround.core.frame.build import LID_ORDER, LidPosition
from benchround.core.frame.lid_scene import Cap, LidScene, further, highest_at
from benchround.core.frame.lid_words import (
    GLASSHOUSE,
    OWN,
    SANTA_CRUZ,
    STAND_OPEN_C,
    TRIAL,
    AdviceKind,
    HardeningPlan,
    LidStep,
)
from benchround.core.frozen import dataclass
from benchround.core.sky.hour_curve import clock_at, minute_of, rises_above
from benchround.core.units import degrees

MERGE_MIN = 45.0
"""Steps nearer together than this become one walk; our proposal."""
PART_WAY_BY_MIN = 8.5 * 60.0
FULLY_BY_MIN = 10.0 * 60.0
"""On a warm bright day part-way by 08:30 and fully by 10:00 (UC Santa Cruz, read; at 37 N)."""
ROUND_MIN = 5
AIRING_H = 2.0
"""A cold damp frame is aired from this long before noon; our proposal."""


@dataclass(frozen=True, slots=True)
class _Move:
    minute: float
    position: LidPosition
    figures: tuple[str, ...]


def heat_steps(scene: LidScene) -> list[LidStep]:
    """Return the openings that keep the frame cool, from where the lid stands in the morning."""
    moves = _by_clock(scene, _heat_moves(scene))
    return [_heat_step(scene, move) for move in _merged(moves)]


def _heat_moves(scene: LidScene) -> list[_Move]:
    """Open one further each time the frame would pass its limit with the lid as it is."""
    moves: list[_Move] = []
    standing, minute = scene.day.standing, scene.rise
    while standing is not LidPosition.OFF:
        shut = standing is LidPosition.SHUT
        limit = scene.limits.crack_at_c if shut else scene.limits.raise_at_c
        passed = rises_above(scene.curves[standing], limit, minute, scene.fall)
        figures = (f"{standing}, it passes {limit:g} C at {_clock(passed)}",)
        bright = _bright_minute(scene) if shut else None
        if bright is not None and (passed is None or bright < passed):
            passed = bright
            figures = (f"sun above {scene.limits.bright_wm2:g} W/m2 from {_clock(bright)}",)
        if passed is None:
            break
        standing = LID_ORDER[LID_ORDER.index(standing) + 1]
        moves.append(_Move(passed, standing, figures))
        minute = passed
    return moves


def _clock(minute: float | None) -> str:
    return "no time" if minute is None else f"{clock_at(minute):%H:%M}"


def _bright_minute(scene: LidScene) -> float | None:
    """Return when the sun is strong enough to cook a shut frame whatever the air, or None."""
    sun = tuple(
        hour.radiation_wm2 if hour.air_c > scene.limits.bright_air_c else 0.0
        for hour in scene.day.hours
    )
    return rises_above(sun, scene.limits.bright_wm2, scene.rise, scene.fall)


def _by_clock(scene: LidScene, moves: list[_Move]) -> list[_Move]:
    """On a warm day that ends with the lid off, be part-way and fully open by the clock."""
    if not (scene.warm and moves and moves[-1].position is LidPosition.OFF):
        return moves
    limits = (PART_WAY_BY_MIN, *(FULLY_BY_MIN for _ in moves[1:]))
    return [_no_later(move, limit) for move, limit in zip(moves, limits, strict=True)]


def _no_later(move: _Move, limit: float) -> _Move:
    if move.minute <= limit:
        return move
    by_clock = f"warm bright day: by {_clock(limit)}"
    return replace(move, minute=limit, figures=(*move.figures, by_clock))


def _merged(moves: Sequence[_Move]) -> list[_Move]:
    """Join steps that follow each other closely: at the first one's time, as far as the last."""
    walks: list[_Move] = []
    for move in moves:
        if walks and move.minute - walks[-1].minute < MERGE_MIN:
            walks[-1] = replace(
                walks[-1], position=move.position, figures=walks[-1].figures + move.figures[:1]
            )
        else:
            walks.append(move)
    return walks


def _heat_step(scene: LidScene, move: _Move) -> LidStep:
    off = move.position is LidPosition.OFF
    return LidStep(
        AdviceKind.TAKE_OFF if off else AdviceKind.OPEN,
        _opening_time(scene, move.minute),
        move.position,
        move.figures,
        f"keeps the frame below {scene.limits.act_above_c:g} C",
        GLASSHOUSE if not scene.warm else f"{GLASSHOUSE}; {SANTA_CRUZ}",
    )


def _opening_time(scene: LidScene, minute: float) -> time:
    return clock_at(max(scene.rise, minute), ROUND_MIN)


def hardening_steps(scene: LidScene) -> list[LidStep]:
    """Return what today's stage of hardening off asks of the lid; none without a plan."""
    plan = scene.hardening
    if plan is None:
        return []
    gust = scene.day.gust_kmh
    if gust is not None and gust > scene.limits.step_back_kmh:
        limit = scene.limits.step_back_kmh
        return [_held(f"gusts of {gust:g} km/h, limit {limit:g} km/h")]
    half = plan is HardeningPlan.HALF_OPEN
    position = LidPosition.SECOND_NOTCH if half else LidPosition.OFF
    wanted = [(STAND_OPEN_C[scene.stock], scene.air, "outside")]
    if half:  # what is hardened least is never opened before what is hardened more
        wanted.append((scene.limits.half_open_at_c, scene.shut, "inside"))
    reached: list[float] = []
    figures: list[str] = []
    for limit, curve, where in wanted:
        minute = rises_above(curve, limit, scene.rise, scene.leave)
        if minute is None:
            return [_held(f"only {degrees(max(curve), 1)} C {where}, {limit:g} C wanted")]
        reached.append(minute)
        figures.append(f"{limit:g} C {where} at {_clock(minute)}")
    at = _opening_time(scene, max(reached))
    said = (*figures, f"stage: {plan}")
    return [LidStep(AdviceKind.HARDEN, at, position, said, "hardening off", TRIAL)]


def _held(figure: str) -> LidStep:
    return LidStep(
        AdviceKind.HOLD_BACK, None, None, (figure,), "repeat this hardening day tomorrow", OWN
    )


def airing_steps(scene: LidScene) -> list[LidStep]:
    """Return the airing a cold wet spell calls for: air before warmth."""
    limits, damp = scene.limits, scene.day.damp_days
    cold = scene.day.mean_c < limits.wet_spell_mean_c
    if damp is None or damp < limits.wet_spell_days or not cold:
        return []
    figures = (f"mean {degrees(scene.day.mean_c, 1)} C", f"damp for {damp} days")
    at = clock_at(max(scene.rise, scene.noon - AIRING_H * 60.0), ROUND_MIN)
    reason = "cold and damp for long brings mould and damping off"
    return [LidStep(AdviceKind.AIR, at, LidPosition.CRACK, figures, reason, SANTA_CRUZ)]


def opened_furthest(steps: Sequence[LidStep], start: LidPosition) -> list[LidStep]:
    """Return openings in order of time, without those that open no further than one before."""
    kept: list[LidStep] = []
    standing = start
    for step in sorted(steps, key=_order):
        if step.position is None:
            kept.append(step)
        elif further(step.position, standing):
            kept.append(step)
            standing = step.position
    return kept


def capped(steps: Sequence[LidStep], caps: Sequence[Cap], start: LidPosition) -> list[LidStep]:
    """Return openings held to what wind and rain allow; those left without effect go."""
    held: list[LidStep] = []
    for step in steps:
        if step.position is None or step.at is None:
            held.append(step)
            continue
        highest = highest_at(caps, minute_of(step.at))
        if further(step.position, highest):
            step = replace(step, kind=AdviceKind.OPEN, position=highest)
        held.append(step)
    return opened_furthest(held, heeded(start, caps))


def heeded(start: LidPosition, caps: Sequence[Cap]) -> LidPosition:
    """Return where the lid stands at midnight once the day's caps are heeded."""
    highest = highest_at(caps, 0.0)
    return highest if further(start, highest) else start


def _order(step: LidStep) -> tuple[float, int]:
    minute = -1.0 if step.at is None else minute_of(step.at)
    position = -1 if step.position is None else LID_ORDER.index(step.position)
    return (minute, position)
