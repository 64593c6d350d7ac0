"""When to lower the lid in the afternoon, and whether to leave it open for the night."""

from collections.abc import Sequence

from benchround.core.frame.build import LidPosition
from benchround.core.frame.lid_scene import Cap, LidScene, further, highest_at, position_at
from benchround.core.frame.lid_words import (
    OWN,
    SANTA_CRUZ,
    TRIAL,
    AdviceKind,
    HardeningPlan,
    LidStep,
    Stock,
)
from benchround.core.frozen import dataclass
from benchround.core.sky.hour_curve import (
    clock_at,
    falls_below,
    last_above,
    minute_of,
    value_at,
)
from benchround.core.units import degrees

COOL_BEFORE_MIN = (60.0, 30.0)
"""In the cool season, minutes before the sun leaves the frame (UC Santa Cruz, read)."""
WARM_SHARE = (0.59, 0.66)
"""In the warm season 17:30-18:00 (UC Santa Cruz, read) as a share of the time from noon to sunset:
there, at 37 N, midsummer noon is at 13:10 and sunset at 20:30 by the clock."""
COLD_NIGHT_EARLIER_MIN = 60.0
"""How much earlier before a cold night; that it is earlier was read, how much is ours."""
NIGHT_OPEN_HARDY_C = -3.0
"""Hardened hardy stock stands open down to here; common practice, no source."""
ROUND_MIN = 5


@dataclass(frozen=True, slots=True)
class Closing:
    """The window in which the lid comes down, in minutes of the day."""

    at: float
    latest: float
    figures: tuple[str, ...]


def usual_window(scene: LidScene) -> tuple[float, float]:
    """Return the usual closing window in minutes, an hour earlier before a cold night."""
    if scene.warm:
        span = scene.fall - scene.noon
        begin, end = (scene.noon + share * span for share in WARM_SHARE)
        begin, end = min(begin, scene.leave - 60.0), min(end, scene.leave - 30.0)
    else:
        begin, end = (scene.leave - before for before in COOL_BEFORE_MIN)
    if scene.cold_night:
        begin, end = begin - COLD_NIGHT_EARLIER_MIN, end - COLD_NIGHT_EARLIER_MIN
    return max(begin, scene.noon), max(end, scene.noon)


def closing(scene: LidScene, standing: LidPosition) -> Closing:
    """Return when a lid standing open comes down.

    The usual window; sooner when the frame falls below the day range the stock likes; later when
    the shut frame would get too hot with the sun still on it.

    Args:
        scene: the frame's day.
        standing: how far the lid stands open in the afternoon.
    """
    begin, end = usual_window(scene)
    sooner = begin
    figures = [f"sun leaves at {clock_at(scene.leave):%H:%M}"]
    cool = _cooled(scene, standing, begin)
    if cool is not None:
        begin, end = cool, min(end, cool + 30.0)
        sooner = begin
        figures.append(f"{standing}, it falls below {scene.limits.aim_low_c:g} C")
    safe = safe_from(scene)
    if safe > begin:
        begin, end = safe, max(end, safe + 30.0)
        figures.append(f"shut sooner it would reach {degrees(value_at(scene.shut, sooner))} C")
    if scene.cold_night:
        figures.append(f"{scene.day.tonight_min_c:g} C tonight: shut early on what warmth there is")
    shut_then = value_at(scene.shut, begin)
    figures.append(
        f"shut then, it holds about {degrees(shut_then)} C{_limit_words(scene, shut_then)}"
    )
    return Closing(begin, min(end, scene.fall), tuple(figures))


def _cooled(scene: LidScene, standing: LidPosition, before: float) -> float | None:
    """Return when the open frame has cooled enough to shut in its warmth, or None."""
    if scene.hardening is not None:
        return None
    curve = scene.curves[standing]
    if max(curve) <= scene.limits.aim_low_c:
        return None
    start = max(scene.noon, 60.0 * curve.index(max(curve)) + 30.0)
    cool = falls_below(curve, scene.limits.aim_low_c, start, before)
    if cool is None:
        return None
    warm = last_above(scene.shut, scene.limits.raise_at_c, start, scene.fall)
    later = cool if warm is None else max(cool, warm)
    return later if later < before else None


def _limit_words(scene: LidScene, shut_c: float) -> str:
    limit = scene.limits.spike_c
    return f", above {limit:g} C for a while" if round(shut_c) > limit else ""


def safe_from(scene: LidScene) -> float:
    """Return the minute from which the shut frame stays below what its stock bears.

    Tender stock likes the warmth, and before a cold night all stock wants it: for them it may spike
    for some hours, never too high. What is germinating or hardier stalls in it.
    """
    limits = scene.limits
    burnt = last_above(scene.shut, limits.never_above_c, scene.noon, scene.fall)
    hot = last_above(scene.shut, limits.spike_c, scene.noon, scene.fall)
    bears_it = scene.cold_night or scene.stock is Stock.TENDER
    spike_h = limits.spike_h if bears_it else 0.0
    after_hot = scene.noon if hot is None else hot - spike_h * 60.0
    return max(scene.noon, after_hot, scene.noon if burnt is None else burnt)


def closing_steps(
    scene: LidScene, caps: Sequence[Cap], openings: Sequence[LidStep]
) -> list[LidStep]:
    """Return the step that lowers the lid, or leaves it open for the night; none if it is shut."""
    last = [minute_of(step.at) for step in openings if step.at is not None]
    probe = max([*usual_window(scene), *last])
    standing = position_at(openings, scene.day.standing, probe)
    highest = highest_at(caps, probe)
    standing = highest if further(standing, highest) else standing
    if standing is LidPosition.SHUT:
        return []
    if scene.hardening is HardeningPlan.NIGHT_OPEN:
        return _hardening_night(scene, standing)
    return [_lower(scene, standing, _night_position(scene, caps))]


def _lower(scene: LidScene, standing: LidPosition, to: LidPosition) -> LidStep:
    when = closing(scene, standing)
    reason = "traps the last warmth" if to is LidPosition.SHUT else "a mild night: air, no more"
    return LidStep(
        AdviceKind.LOWER,
        clock_at(when.at, ROUND_MIN),
        to,
        when.figures,
        reason,
        SANTA_CRUZ,
        clock_at(when.latest),
    )


def _night_position(scene: LidScene, caps: Sequence[Cap]) -> LidPosition:
    """Return where the lid stays overnight: a crack when the night is mild enough, else shut."""
    tonight = scene.day.tonight_min_c
    if tonight is None or tonight <= scene.stand_open_c:
        return LidPosition.SHUT
    highest = highest_at(caps, scene.fall)
    return highest if further(LidPosition.CRACK, highest) else LidPosition.CRACK


def _hardening_night(scene: LidScene, standing: LidPosition) -> list[LidStep]:
    """Return whether stock at the last stage of hardening stays open tonight."""
    tonight = scene.day.tonight_min_c
    limit = scene.limits.fleece_at_c if scene.delicate else NIGHT_OPEN_HARDY_C
    if tonight is not None and tonight > limit:
        figures = (f"{tonight:g} C tonight, limit {limit:g} C",)
        at = clock_at(usual_window(scene)[0], ROUND_MIN)
        reason = "hardening off by night too"
        return [LidStep(AdviceKind.LEAVE_OPEN, at, standing, figures, reason, TRIAL)]
    known = "tonight not known" if tonight is None else f"{tonight:g} C tonight, limit {limit:g} C"
    held = LidStep(
        AdviceKind.HOLD_BACK, None, None, (known,), "shut tonight, repeat the hardening day", OWN
    )
    return [_lower(scene, standing, LidPosition.SHUT), held]
