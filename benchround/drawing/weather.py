"""A day of weather in words: what its temperatures, rain and gusts ask for."""

from __future__ import annotations

import math
from datetime import date

from benchround.core.frame.lid_words import LidLimits
from benchround.core.frozen import dataclass
from benchround.core.sky.weather import DayWeather
from benchround.core.units import METRIC, Rain, Units, miles_an_hour

FROST_C, HOT_C = 3.0, 28.0
"""Night that may bring ground frost, and day that harms under glass; our proposal."""
LIMITS = LidLimits()


@dataclass(frozen=True, slots=True)
class DayLine:
    """One day as it is drawn; what is not known is None."""

    day: date
    weather: DayWeather | None = None

    @property
    def low_c(self) -> float | None:
        """The lowest temperature."""
        return _finite(self.weather.min_c if self.weather else None)

    @property
    def high_c(self) -> float | None:
        """The highest temperature."""
        return _finite(self.weather.max_c if self.weather else None)


def _finite(value: float | None) -> float | None:
    return value if value is not None and math.isfinite(value) else None


def temperature_words(line: DayLine) -> str:
    """What the temperature warns of, first; empty where it warns of nothing."""
    words = []
    if line.low_c is not None and line.low_c <= FROST_C:
        words.append("frost" if line.low_c <= 0.0 else "ground frost")
    if line.high_c is not None and line.high_c >= HOT_C:
        words.append("hot")
    return ", ".join(words)


def rain_words(weather: DayWeather | None) -> str:
    """Rain in words: dry, so many millimetres, a downpour."""
    if weather is None or _finite(weather.rain_mm) is None:
        return "rain ?"
    rain, hour = weather.rain_mm or 0.0, weather.rain_hour_mm or 0.0
    if rain <= 0.0:
        return "dry"
    hard = rain >= LIMITS.rain_day_mm or hour >= LIMITS.rain_hour_mm
    return f"{'downpour' if hard else 'rain'} {rain:g} mm"


def gust_words(weather: DayWeather | None, units: Units = METRIC) -> str:
    """Gusts in words: what they mean for lids, and the figure in the grower's unit without it."""
    gust = _finite(weather.gust_kmh) if weather is not None else None
    if gust is None:
        return "gusts ?"
    word = "calm"
    if gust >= LIMITS.strap_kmh:
        word = "strap lids"
    elif gust >= LIMITS.latch_kmh:
        word = "latch lids"
    return f"{word} {miles_an_hour(gust) if units.rain is Rain.INCH else f'{gust:.0f}'}"
