"""Fitting one frame to what its thermometer showed.

Each maximum inside gives the sun factor that would make the model show just that maximum; each
minimum gives a night gain. Few readings say little, so both are drawn towards the build's own
figures: a normal prior and normal readings, weighted by how sure each is (the textbook rule; the
spreads are our proposal). A dull day hardly moves the sun factor, since a degree of error in the
thermometer or the guessed cloud is then a large share of the gain.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, log, sqrt

from benchround.core.frame.balance import sun_factor_at
from benchround.core.frame.build import FrameBuild, LidPosition
from benchround.core.frame.day import (
    FrameFit,
    HourWeather,
    hour_gain_c,
    require_day,
    sunlit_in,
    usual_night_gain_c,
)
from benchround.core.frame.night import LEAST_GAIN_C, MOST_GAIN_C
from benchround.core.frozen import dataclass
from benchround.core.units import degrees

PRIOR_LOG_SPREAD = 0.4
"""How far a frame's true sun factor usually lies from 1, as a natural logarithm; our proposal."""
READING_LOG_SPREAD = 0.2
"""Error of one reading of the factor by day-to-day weather alone; our proposal."""
MAXIMUM_ERROR_C = 2.0
"""Error of an inside maximum against a day drawn from two temperatures and a sky; our proposal."""
PRIOR_NIGHT_SPREAD_C = 1.0
"""How far a frame's night gain usually lies from the default, K; our proposal."""
MINIMUM_ERROR_C = 1.0
"""Error of one night gain, K; our proposal."""
LEAST_FACTOR, MOST_FACTOR = 0.2, 3.0
"""Outside these a maximum is not explained by the sun on this frame."""
LEAST_GAIN_TO_FIT_C = 2.0
"""Days on which the model gains less say nothing about the sun factor."""
HOTTEST_READING_C = 65.0
"""A shut frame has been seen at 57 degC (anecdote, read); well above it is a misreading."""
COLDEST_READING_C = -40.0


@dataclass(frozen=True, slots=True)
class FrameReading:
    """One day's thermometer in a frame, with the weather and the lid of that day.

    Attributes:
        name: what to call it in a message, such as the day.
        hours: 24 hours of outside weather.
        lid_plan: 24 lid positions as they were.
        inside_max_c: the maximum read inside, degC, or None.
        inside_min_c: the minimum read inside, degC, or None.
    """

    name: str
    hours: tuple[HourWeather, ...]
    lid_plan: tuple[LidPosition, ...]
    inside_max_c: float | None = None
    inside_min_c: float | None = None


@dataclass(frozen=True, slots=True)
class RejectedReading:
    """A reading left out of the fit, and why."""

    name: str
    reason: str


@dataclass(frozen=True, slots=True)
class FitResult:
    """The fit, and the readings it did not use."""

    fit: FrameFit
    rejected: tuple[RejectedReading, ...]


@dataclass(frozen=True, slots=True)
class _Sign:
    """One figure drawn from a reading, with its standard error."""

    value: float
    error: float


def fit_frame(
    build: FrameBuild, readings: Sequence[FrameReading], night_c: float | None = None
) -> FitResult:
    """Refit a frame's sun factor and night gain to its readings.

    Args:
        build: the frame.
        readings: the days read, in any order.
        night_c: the night gain to start from, K; None takes that of a clear calm night.

    Returns:
        The fit with the number of readings behind either figure and its standard error, and the
        readings rejected by name. With no usable reading both figures are those of the build.

    Raises:
        OutOfRangeError: a reading does not carry 24 hours and 24 lid positions.
    """
    start_c = usual_night_gain_c(build) if night_c is None else night_c
    rejected: list[RejectedReading] = []
    suns: list[_Sign] = []
    nights: list[_Sign] = []
    for reading in readings:
        fault = reading_fault(reading)
        if fault is not None:
            rejected.append(RejectedReading(reading.name, fault))
            continue
        for found, sign in ((suns, _sun_sign(build, reading)), (nights, _night_sign(reading))):
            if isinstance(sign, RejectedReading):
                rejected.append(sign)
            elif sign is not None:
                found.append(sign)
    return FitResult(_settle(suns, nights, start_c), tuple(rejected))


def reading_fault(reading: FrameReading) -> str | None:
    """Return why a reading cannot be true, or None when it can.

    Raises:
        OutOfRangeError: it does not carry 24 hours and 24 lid positions.
    """
    require_day("hours of weather", reading.hours)
    require_day("lid positions", reading.lid_plan)
    low, high = reading.inside_min_c, reading.inside_max_c
    for word, value in (("minimum", low), ("maximum", high)):
        if value is not None and not COLDEST_READING_C <= value <= HOTTEST_READING_C:
            return (
                f"the {word} of {value:g} C lies outside {COLDEST_READING_C:g} to"
                f" {HOTTEST_READING_C:g} C"
            )
    if low is not None and high is not None and low > high:
        return f"the minimum of {low:g} C is above the maximum of {high:g} C"
    return None


def _sun_sign(build: FrameBuild, reading: FrameReading) -> _Sign | RejectedReading | None:
    """Return the logarithm of the sun factor that explains the maximum; None says nothing."""
    maximum = reading.inside_max_c
    if maximum is None:
        return None
    gain_c = _sun_gain_at_peak_c(build, reading)
    if gain_c < LEAST_GAIN_TO_FIT_C:
        return None
    factor = _factor_for(build, reading, maximum)
    if not LEAST_FACTOR <= factor <= MOST_FACTOR:
        coolest, hottest = (_max_with(build, reading, f) for f in (LEAST_FACTOR, MOST_FACTOR))
        return RejectedReading(
            reading.name,
            f"no sun on this frame explains a maximum of {maximum:g} C: with the lid as noted it"
            f" lies between {degrees(coolest)} and {degrees(hottest)} C",
        )
    return _Sign(log(factor), sqrt(READING_LOG_SPREAD**2 + (MAXIMUM_ERROR_C / gain_c) ** 2))


def _factor_for(build: FrameBuild, reading: FrameReading, maximum: float) -> float:
    """Return the sun factor that shows a maximum: the least that brings any hour up to it.

    It is 0 or less where the air outside was as warm as that, by night as well. The reading is one
    of a day with sun.
    """
    return min(
        sun_factor_at(build, sunlit_in(hour), lid, maximum - hour.air_c)
        for hour, lid in zip(reading.hours, reading.lid_plan, strict=True)
        if hour.radiation_wm2 > 0.0 or hour.air_c > maximum
    )


def _max_with(build: FrameBuild, reading: FrameReading, factor: float) -> float:
    """Return the maximum the model shows with a sun factor, the night left out, degC."""
    fit = FrameFit(sun_factor=factor)
    return max(
        hour.air_c + hour_gain_c(build, hour, lid, 0.0, fit)
        for hour, lid in zip(reading.hours, reading.lid_plan, strict=True)
    )


def _sun_gain_at_peak_c(build: FrameBuild, reading: FrameReading) -> float:
    """Return the gain of the hour the model finds hottest, K."""
    gains = [
        (hour.air_c + gain, gain)
        for hour, lid in zip(reading.hours, reading.lid_plan, strict=True)
        for gain in (hour_gain_c(build, hour, lid, 0.0),)
    ]
    return max(gains)[1]


def _night_sign(reading: FrameReading) -> _Sign | RejectedReading | None:
    """Return the shut frame's night gain that explains the minimum; None says nothing."""
    minimum = reading.inside_min_c
    if minimum is None:
        return None
    dark = [
        (hour.air_c, lid)
        for hour, lid in zip(reading.hours, reading.lid_plan, strict=True)
        if hour.radiation_wm2 <= 0.0
    ]
    if not dark:
        return None
    outside_c, lid = min(dark, key=lambda pair: pair[0])
    if lid is not LidPosition.SHUT:
        return None
    gain_c = minimum - outside_c
    if not LEAST_GAIN_C <= gain_c <= MOST_GAIN_C:
        return RejectedReading(
            reading.name,
            f"a minimum of {minimum:g} C is {gain_c:+.1f} K from the night outside, beyond"
            f" {LEAST_GAIN_C:+g} to {MOST_GAIN_C:+g} K for a frame without heat",
        )
    return _Sign(gain_c, MINIMUM_ERROR_C)


def _settle(suns: Sequence[_Sign], nights: Sequence[_Sign], start_c: float) -> FrameFit:
    log_factor, log_error = _weigh(_Sign(0.0, PRIOR_LOG_SPREAD), suns)
    night_c, night_error = _weigh(_Sign(start_c, PRIOR_NIGHT_SPREAD_C), nights)
    return FrameFit(
        sun_factor=exp(log_factor),
        sun_spread=log_error,
        sun_readings=len(suns),
        night_gain_c=night_c,
        night_spread_c=night_error,
        night_readings=len(nights),
    )


def _weigh(prior: _Sign, signs: Sequence[_Sign]) -> tuple[float, float]:
    """Return the mean weighted by 1 / error squared, the prior among them, and its error.

    Readings that differ more than their errors allow widen the error (scaled by the square root
    of the reduced chi-square, never below one).
    """
    every = (prior, *signs)
    weights = [1.0 / sign.error**2 for sign in every]
    total = sum(weights)
    mean = sum(w * sign.value for w, sign in zip(weights, every, strict=True)) / total
    error = sqrt(1.0 / total)
    if len(signs) < 2:
        return mean, error
    misfit = sum(w * (s.value - mean) ** 2 for w, s in zip(weights[1:], signs, strict=True))
    return mean, error * max(1.0, sqrt(misfit / (len(signs) - 1)))
