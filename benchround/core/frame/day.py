"""A day in a frame: inside temperatures by the hour, and where the day's heat went.

Each hour is taken as steady: the frame's few litres of air warm within minutes, and what soil and
sides take up is already left out of the balance. So there is no lag, and warnings come early.
By night the frame holds its night gain, less what the lid position lets go; in daylight it holds
the larger of the sun's gain and the night's. A night gain below zero fades out by 100 W/m2.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property, lru_cache

from benchround.core.errors import OutOfRangeError
from benchround.core.frame.balance import HeatTerms, Sunlit, gain_through_c, heat_terms
from benchround.core.frame.build import FrameBuild, LidPosition
from benchround.core.frame.night import (
    NightSky,
    kept_at_night,
    night_gain_c,
    require_night_gain,
)
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import require_air_temp, within

HOURS_A_DAY = 24
STILL_AIR_MS = 1.0
"""Wind taken where none is known; on the still side, so that warnings come early. Our proposal."""
NIGHT_FADES_BY_WM2 = 100.0
"""Radiation by which a night gain below zero has gone; our proposal."""


@dataclass(frozen=True, slots=True)
class HourWeather:
    """Outside weather of one clock hour, as means over it.

    Attributes:
        air_c: air temperature, -60 to 60 degC.
        radiation_wm2: radiation on level ground, 0 to 1400 W/m2.
        wind_ms: wind at about 2 m, 0 to 60 m/s; None where not known.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """

    air_c: float
    radiation_wm2: float
    wind_ms: float | None = None

    def __post_init__(self) -> None:
        require_air_temp("the air of an hour", self.air_c)
        within("the radiation of an hour", self.radiation_wm2, 0.0, 1400.0, "W/m2")
        if self.wind_ms is not None:
            within("the wind of an hour", self.wind_ms, 0.0, 60.0, "m/s")

    @property
    def wind_taken_ms(self) -> float:
        """The wind, or the still air taken where it is not known, m/s."""
        return STILL_AIR_MS if self.wind_ms is None else self.wind_ms


@dataclass(frozen=True, slots=True)
class FrameFit:
    """What the grower's own readings say about one frame.

    Attributes:
        sun_factor: how much more of the sun's heat the frame keeps than its build says.
        sun_spread: standard error of the factor, as a share of it.
        sun_readings: how many maxima it rests on.
        night_gain_c: gain of the shut frame by night, K; None where it was not fitted.
        night_spread_c: standard error of that gain, K.
        night_readings: how many minima it rests on.
    """

    sun_factor: float = 1.0
    sun_spread: float = 0.0
    sun_readings: int = 0
    night_gain_c: float | None = None
    night_spread_c: float = 0.0
    night_readings: int = 0


UNFITTED = FrameFit()


@dataclass(frozen=True)
class FrameDay:
    """Inside temperatures of a day, hour by hour, and its heat.

    Attributes:
        inside_c: mean of each hour, degC.
        gains_c: how much warmer than outside each hour is, K.
        sunlit: the sun and wind of each hour.
        lid_plan: where the lid stands in each hour.
    """

    build: FrameBuild
    inside_c: tuple[float, ...]
    gains_c: tuple[float, ...]
    sunlit: tuple[Sunlit, ...]
    lid_plan: tuple[LidPosition, ...]

    @cached_property
    def terms(self) -> tuple[HeatTerms, ...]:
        """Heat of each hour, W, which over the hour are also Wh; few who ask the warmth ask it."""
        each = zip(self.sunlit, self.lid_plan, self.gains_c, strict=True)
        return tuple(heat_terms(self.build, sun, lid, gain) for sun, lid, gain in each)

    @property
    def max_c(self) -> float:
        """The warmest hour, degC."""
        return max(self.inside_c)

    @property
    def min_c(self) -> float:
        """The coldest hour, degC."""
        return min(self.inside_c)

    @property
    def in_wh(self) -> float:
        """Heat the day brought, Wh: sun, and what the ground gave back."""
        return sum(term.in_w for term in self.terms)

    @property
    def out_wh(self) -> float:
        """Heat the day took away, Wh: evaporated, into the ground, and lost outside."""
        return sum(term.out_w for term in self.terms)


def usual_night_gain_c(build: FrameBuild, fit: FrameFit = UNFITTED) -> float:
    """Return the night gain to count on, K: the fitted one, else that of a clear calm night."""
    if fit.night_gain_c is not None:
        return fit.night_gain_c
    return night_gain_c(build.glazing, NightSky.CLEAR_CALM)


def hour_gain_c(
    build: FrameBuild,
    hour: HourWeather,
    lid: LidPosition,
    night_c: float,
    fit: FrameFit = UNFITTED,
) -> float:
    """Return how much warmer than outside the frame is in one hour, K, as described above.

    Args:
        build: the frame.
        hour: the outside weather.
        lid: how far the light stands open.
        night_c: gain of the shut frame by night, -3 to 10 K.
        fit: what the grower's readings say.
    """
    by_sun = 0.0
    if hour.radiation_wm2 > 0.0:
        by_sun = gain_through_c(build, sunlit_in(hour, fit), lid, build.opening_m2(lid))
    by_night = require_night_gain("the night gain", night_c) * kept_at_night(build, lid)
    fading = max(0.0, 1.0 - hour.radiation_wm2 / NIGHT_FADES_BY_WM2)
    return max(by_night, by_sun + min(by_night, 0.0) * fading)


def frame_day(
    build: FrameBuild,
    hours: Sequence[HourWeather],
    lid_plan: Sequence[LidPosition],
    fit: FrameFit = UNFITTED,
    night_gain: float | None = None,
) -> FrameDay:
    """Return the inside of a frame through a day, as described at the head of this file.

    Args:
        build: the frame.
        hours: 24 hours of outside weather, by the clock.
        lid_plan: 24 lid positions.
        fit: what the grower's readings say.
        night_gain: gain of the shut frame by night, -3 to 10 K; None takes the fitted one, else
            that of a clear calm night.

    Raises:
        OutOfRangeError: not 24 hours or positions, or a figure outside its range.
    """
    require_day("hours of weather", hours)
    require_day("lid positions", lid_plan)
    night_c = usual_night_gain_c(build, fit) if night_gain is None else night_gain
    gains = tuple(
        hour_gain_c(build, hour, lid, night_c, fit)
        for hour, lid in zip(hours, lid_plan, strict=True)
    )
    inside = tuple(hour.air_c + gain for hour, gain in zip(hours, gains, strict=True))
    sunlit = tuple(sunlit_in(hour, fit) for hour in hours)
    return FrameDay(build, inside, gains, sunlit, tuple(lid_plan))


def require_day(figure: str, of_hours: Sequence[object]) -> None:
    """Refuse a day that does not have 24 hours.

    Raises:
        OutOfRangeError: there are more or fewer than 24.
    """
    if len(of_hours) != HOURS_A_DAY:
        raise OutOfRangeError(
            f"a day of the frame needs {HOURS_A_DAY} {figure}, not {len(of_hours)}: give one for"
            " each clock hour"
        )


def sunlit_in(hour: HourWeather, fit: FrameFit = UNFITTED) -> Sunlit:
    """The sun and wind of an hour over a frame."""
    return _sun_over(hour.radiation_wm2, hour.wind_taken_ms, fit.sun_factor)


@lru_cache(maxsize=256)  # the same hours come again for every lid position and frame
def _sun_over(radiation_wm2: float, wind_ms: float, factor: float) -> Sunlit:
    return Sunlit(radiation_wm2, wind_ms, factor=factor)
