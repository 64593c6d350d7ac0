"""All that lid advice is drawn from: the frame's curve at each lid position, the sun, the wind."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from benchround.core.frame.build import LID_ORDER, FrameBuild, LidPosition
from benchround.core.frame.day import (
    FrameFit,
    hour_gain_c,
    usual_night_gain_c,
)
from benchround.core.frame.lid_words import (
    STAND_OPEN_C,
    HalfYear,
    HardeningPlan,
    LidDay,
    LidLimits,
    LidStep,
    Stock,
)
from benchround.core.frozen import dataclass
from benchround.core.sky.hour_curve import minute_of

Curve = tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Cap:
    """From a minute of the day on, the lid stands no further open than this."""

    from_minute: float
    highest: LidPosition


@dataclass(frozen=True, slots=True)
class LidScene:
    """One frame on one day.

    Attributes:
        curves: inside temperature by hour, were the lid at that position all day, degC.
        rise, leave: minutes at which the sun comes to and leaves the frame.
        noon, fall: minutes of the middle of the day and of sunset.
    """

    build: FrameBuild
    day: LidDay
    stock: Stock
    limits: LidLimits
    hardening: HardeningPlan | None
    night_c: float
    curves: Mapping[LidPosition, Curve]
    rise: float
    noon: float
    leave: float
    fall: float

    @property
    def shut(self) -> Curve:
        """The curve of the frame left shut, degC."""
        return self.curves[LidPosition.SHUT]

    @property
    def air(self) -> Curve:
        """Outside air by the hour, degC."""
        return tuple(hour.air_c for hour in self.day.hours)

    @property
    def stand_open_c(self) -> float:
        """Outside temperature above which this stock may stand open, degC."""
        own = self.limits.close_min_c
        return STAND_OPEN_C[self.stock] if own is None else own

    @property
    def warm(self) -> bool:
        """Whether it is the warm half of the year."""
        return self.day.season is HalfYear.WARM

    @property
    def delicate(self) -> bool:
        """Whether a cold night hurts something in the frame."""
        return self.stock is not Stock.HARDY

    @property
    def cold_night(self) -> bool:
        """Whether tonight's forecast calls for a cover over this stock."""
        tonight = self.day.tonight_min_c
        if tonight is None:
            return False
        return tonight <= (self.limits.fleece_at_c if self.delicate else self.limits.mat_at_c)


class Curves(dict[LidPosition, Curve]):
    """The inside temperature by hour at each lid position, reckoned when it is asked for."""

    def __init__(self, build: FrameBuild, day: LidDay, night_c: float, fit: FrameFit) -> None:
        super().__init__()
        self._build, self._day, self._night_c, self._fit = build, day, night_c, fit

    def __missing__(self, lid: LidPosition) -> Curve:
        found = lid_curve(self._build, self._day, lid, self._night_c, self._fit)
        self[lid] = found
        return found


def set_scene(
    build: FrameBuild,
    day: LidDay,
    stock: Stock,
    limits: LidLimits,
    hardening: HardeningPlan | None,
    fit: FrameFit,
    night_gain: float | None,
) -> LidScene:
    """Return the scene of one frame's day."""
    night_c = usual_night_gain_c(build, fit) if night_gain is None else night_gain
    curves = Curves(build, day, night_c, fit)
    rise, fall = sun_window(day)
    leave = fall if day.sun_leaves is None else min(fall, minute_of(day.sun_leaves))
    noon = (rise + fall) / 2.0
    return LidScene(build, day, stock, limits, hardening, night_c, curves, rise, noon, leave, fall)


def lid_curve(
    build: FrameBuild, day: LidDay, lid: LidPosition, night_c: float, fit: FrameFit
) -> Curve:
    """Return the inside temperature by hour with the lid at one position all day, degC."""
    return tuple(hour.air_c + hour_gain_c(build, hour, lid, night_c, fit) for hour in day.hours)


def sun_window(day: LidDay) -> tuple[float, float]:
    """Return sunrise and sunset in minutes; where missing, by the hours that have sun."""
    lit = [index for index, hour in enumerate(day.hours) if hour.radiation_wm2 > 0.0]
    first, last = (lit[0], lit[-1] + 1) if lit else (8, 16)
    rise = first * 60.0 if day.sunrise is None else minute_of(day.sunrise)
    fall = last * 60.0 if day.sunset is None else minute_of(day.sunset)
    return (rise, fall) if rise < fall else (rise, 24.0 * 60.0 - 1.0)


def highest_at(caps: Sequence[Cap], minute: float) -> LidPosition:
    """Return how far the lid may stand open at a minute."""
    held = [cap.highest for cap in caps if cap.from_minute <= minute]
    return min(held, key=LID_ORDER.index, default=LidPosition.OFF)


def further(first: LidPosition, second: LidPosition) -> bool:
    """Return whether the first position is further open than the second."""
    return LID_ORDER.index(first) > LID_ORDER.index(second)


def position_at(steps: Sequence[LidStep], start: LidPosition, minute: float) -> LidPosition:
    """Return where the lid stands at a minute when the steps, in order of time, are followed."""
    standing = start
    for step in steps:
        if step.position is not None and (step.at is None or minute_of(step.at) <= minute):
            standing = step.position
    return standing
