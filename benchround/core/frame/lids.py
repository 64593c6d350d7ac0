"""Advice on a frame's lid for one day: open, take off, lower, cover, strap, and by when.

Everything follows from the frame's heat balance at each lid position and the day's weather. Times
are by the clock, openings rounded down to five minutes. Same input, same advice.
"""

from collections.abc import Sequence
from datetime import time

from benchround.core.frame.build import FrameBuild, LidPosition
from benchround.core.frame.day import UNFITTED, FrameFit, frame_day
from benchround.core.frame.lid_closing import closing_steps
from benchround.core.frame.lid_opening import (
    airing_steps,
    capped,
    hardening_steps,
    heat_steps,
    heeded,
)
from benchround.core.frame.lid_scene import (
    Cap,
    LidScene,
    further,
    highest_at,
    position_at,
    set_scene,
)
from benchround.core.frame.lid_weather import (
    care_steps,
    night_cover_steps,
    rain_caps,
    rain_steps,
    shade_steps,
    wind_caps,
    wind_steps,
)
from benchround.core.frame.lid_words import (
    AdviceKind,
    HardeningPlan,
    LidAdvice,
    LidDay,
    LidLimits,
    LidStep,
    Stock,
    limits_for,
)
from benchround.core.sky.hour_curve import clock_at, minute_of, rises_above
from benchround.core.units import degrees

_KINDS = tuple(AdviceKind)
_BALANCE = "heat balance of the frame"


def advise_lids(
    build: FrameBuild,
    day: LidDay,
    stock: Stock,
    *,
    limits: LidLimits | None = None,
    hardening: HardeningPlan | None = None,
    fit: FrameFit = UNFITTED,
    night_gain: float | None = None,
) -> LidAdvice:
    """Return what to do with a frame's lid today.

    Args:
        build: the frame.
        day: weather, sun and season.
        stock: the most delicate thing in the frame.
        limits: what to act on; None takes the usual ones for the stock.
        hardening: how far hardening off has come, if plants are hardening here.
        fit: what the grower's readings say of the frame.
        night_gain: gain of the shut frame by night, K; None takes the fitted one, else that of a
            clear calm night.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    wanted = limits_for(stock) if limits is None else limits
    scene = set_scene(build, day, stock, wanted, hardening, fit, night_gain)
    caps = [*wind_caps(scene), *rain_caps(scene)]
    openings = _openings(scene, caps)
    closings = closing_steps(scene, caps, openings)
    moves = sorted([*openings, *closings], key=_order)
    steps = [*moves, *wind_steps(scene, caps, moves), *rain_steps(scene, caps, moves)]
    steps += care_steps(scene, openings) + _shade(scene, caps, openings, closings)
    steps += night_cover_steps(scene, _cover_at(scene, closings))
    ordered = tuple(sorted(_with_rest(scene, steps), key=_order))
    plan = _plan(scene, caps, ordered)
    passed = rises_above(scene.shut, wanted.act_above_c, scene.rise, scene.fall)
    return LidAdvice(
        steps=ordered,
        shut_passes_at=None if passed is None else clock_at(passed),
        shut_max_c=max(scene.shut),
        lid_plan=plan,
        inside_c=frame_day(build, day.hours, plan, fit, scene.night_c).inside_c,
        assumed=assumptions(day, stormy=bool(caps)),
    )


def _openings(scene: LidScene, caps: Sequence[Cap]) -> list[LidStep]:
    steps = [*heat_steps(scene), *hardening_steps(scene)]
    if not any(step.position for step in steps):
        steps += airing_steps(scene)
    return capped(steps, caps, heeded(scene.day.standing, caps))


def _shade(
    scene: LidScene, caps: Sequence[Cap], openings: Sequence[LidStep], closings: Sequence[LidStep]
) -> list[LidStep]:
    lowered = [minute_of(s.at) for s in closings if s.kind is AdviceKind.LOWER and s.at is not None]
    return shade_steps(scene, caps, openings, min([scene.leave, *lowered]))


def _cover_at(scene: LidScene, closings: Sequence[LidStep]) -> time:
    lowered = [step.latest for step in closings if step.latest is not None]
    return max(lowered) if lowered else clock_at(scene.fall - 30.0, 5)


def _with_rest(scene: LidScene, steps: list[LidStep]) -> list[LidStep]:
    """Say that the lid stays shut, where nothing else moves it."""
    moved = any(step.position is not None for step in steps)
    if moved or scene.day.standing is not LidPosition.SHUT:
        return steps
    figures = (f"shut, it reaches {degrees(max(scene.shut), 1)} C",)
    rest = LidStep(
        AdviceKind.STAY_SHUT, None, LidPosition.SHUT, figures, "too cool to open", _BALANCE
    )
    return [rest, *steps]


def _order(step: LidStep) -> tuple[float, int]:
    return (-1.0 if step.at is None else minute_of(step.at), _KINDS.index(step.kind))


def _plan(
    scene: LidScene, caps: Sequence[Cap], steps: Sequence[LidStep]
) -> tuple[LidPosition, ...]:
    plan: list[LidPosition] = []
    for hour in range(24):
        minute = 60.0 * hour + 30.0
        standing = position_at(steps, scene.day.standing, minute)
        highest = highest_at(caps, minute)
        plan.append(highest if further(standing, highest) else standing)
    return tuple(plan)


def assumptions(day: LidDay, stormy: bool = False) -> tuple[str, ...]:
    """Return what the day left open and what the advice took instead, in words.

    Args:
        day: what was known.
        stormy: whether wind or rain hold the lid down.
    """
    missing = (
        (day.gust_kmh, "no gusts forecast: taken as calm enough to prop lids"),
        (day.tonight_min_c, "tonight's minimum not known: lids shut at night, no cover advised"),
        (day.sunrise, "sunrise not given: taken from the first hour with sun"),
        (day.sunset, "sunset not given: taken from the last hour with sun"),
        (day.sun_leaves, "sun taken to stay on the frame until sunset"),
        (day.damp_days, "damp days not counted: no cold wet spell taken"),
    )
    said = [words for value, words in missing if value is None]
    if day.rain_mm is None and day.rain_in_hour_mm is None:
        said.append("rain not known: no downpour taken")
    if any(hour.wind_ms is None for hour in day.hours):
        said.append("wind not known in some hours: 1 m/s taken, so the frame warms sooner")
    if stormy and day.storm_from is None:
        said.append("hour of gusts or rain not known: the whole day taken")
    return tuple(said)
