"""What a frame's day is drawn from."""

from __future__ import annotations

import math
from collections.abc import Sequence
from datetime import date, time

from benchround.core.frame.build import LidPosition
from benchround.core.frame.lid_words import LidLimits, LidStep, limits_for
from benchround.core.frame.outlook import FrameOutlook
from benchround.core.frozen import dataclass

HOURS = 24


@dataclass(frozen=True, slots=True)
class FrameCurve:
    """A frame through one day; each temperature is the mean of its clock hour.

    Attributes:
        name: the frame.
        outside_c: outside air.
        inside_c: inside, when the lid follows the plan.
        shut_c: inside, when the lid is left shut.
        lid: where the lid stands in each hour by the plan.
        act_c: the limit above which heat harms; the lid must be up before.
        low_c: the afternoon warmth below which the lid comes down to keep the rest.
        shut_passes_at: when the shut frame passes the limit to act; None where it never does.
        steps: what to do with the lid, in order of time.
        assumed: what was not known, and what was taken instead.
    """

    name: str
    day: date
    outside_c: tuple[float, ...] = ()
    inside_c: tuple[float, ...] = ()
    shut_c: tuple[float, ...] = ()
    lid: tuple[LidPosition, ...] = ()
    act_c: float = LidLimits().act_above_c
    low_c: float = LidLimits().aim_low_c
    shut_passes_at: time | None = None
    steps: tuple[LidStep, ...] = ()
    assumed: tuple[str, ...] = ()

    @property
    def known_c(self) -> tuple[float, ...]:
        """Every temperature that can be drawn."""
        every = (*self.outside_c, *self.inside_c, *self.shut_c)
        return tuple(temp for temp in every if math.isfinite(temp))


def frame_curve(
    name: str, day: date, outlook: FrameOutlook, limits: LidLimits | None = None
) -> FrameCurve:
    """The day of a frame, from its outlook.

    Args:
        name: the frame.
        day: the day.
        outlook: the frame's day ahead.
        limits: the limits that were acted on; None takes the usual ones for what stands there.
    """
    held = limits_for(outlook.stock) if limits is None else limits
    return FrameCurve(
        name=name,
        day=day,
        outside_c=tuple(hour.air_c for hour in outlook.day.hours),
        inside_c=outlook.inside.inside_c,
        shut_c=outlook.shut.inside_c,
        lid=outlook.advice.lid_plan,
        act_c=held.act_above_c,
        low_c=held.aim_low_c,
        shut_passes_at=outlook.advice.shut_passes_at,
        steps=outlook.advice.steps,
        assumed=outlook.assumed,
    )


def extremes(temps: Sequence[float]) -> tuple[float, int, float, int] | None:
    """Lowest and its hour, highest and its hour; None where nothing is known."""
    known = [(temp, hour) for hour, temp in enumerate(temps) if math.isfinite(temp)]
    if not known:
        return None
    low, high = min(known), max(known, key=lambda one: (one[0], -one[1]))
    return low[0], low[1], high[0], high[1]
