"""Coming days, a line each: lowest to highest on one scale, rain and gusts in words."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from datetime import date, timedelta

from benchround.core.frame.lid_words import LidLimits
from benchround.core.frozen import dataclass
from benchround.core.season import Season
from benchround.core.sky.weather import DayWeather
from benchround.drawing.canvas import UNICODE, Glyphs, Inked, Line, Role, fit, within_width
from benchround.drawing.words import say_weekday, spoken

DAYS = 7
FROST_C, HOT_C = 3.0, 28.0
"""Night that may bring ground frost, and day that harms under glass; our proposal."""
LIMITS = LidLimits()
NOTHING = "No weather is known for the coming days."
WORDS, FIGURES = 35, 11
"""Cells of the words, and of lowest and highest on either side of the bar."""
LEAST_BAR, LONGEST_BAR = 6, 60
SPACE = Inked(" ", Role.TEXT)


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


def coming_days(season: Season, day: date, days: int = DAYS) -> tuple[DayLine, ...]:
    """Today and the days after it, up to the last one anything is known of."""
    every = [day + timedelta(days=ahead) for ahead in range(max(0, days))]
    found = [DayLine(on, season.weather.on(on)) for on in every]
    while found and found[-1].weather is None:
        found.pop()
    return tuple(found)


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


def gust_words(weather: DayWeather | None) -> str:
    """Gusts in words: what they mean for lids, and the figure."""
    gust = _finite(weather.gust_kmh) if weather is not None else None
    if gust is None:
        return "gusts ?"
    word = "calm"
    if gust >= LIMITS.strap_kmh:
        word = "strap lids"
    elif gust >= LIMITS.latch_kmh:
        word = "latch lids"
    return f"{word} {gust:.0f}"


def weather_rows(days: Sequence[DayLine], width: int, glyphs: Glyphs = UNICODE) -> Iterator[Line]:
    """Yield one line for each day; the bars share one scale. A narrow line has words only."""
    name = 10 if width >= 70 else 6
    bar = min(LONGEST_BAR, width - name - 1 - FIGURES - WORDS)
    scale = _scale(days)
    for line in days:
        on = say_weekday(line.day)
        on = on if name > len("Wed 27") else on[: -len(" May")]
        spans = [Inked(fit(on, name, glyphs) + " ", Role.LABEL)]
        low = Inked(f"{_figure(line.low_c):>3}", Role.COLD if _cold(line) else Role.TEXT)
        high = Inked(f"{_figure(line.high_c)} C", Role.HOT if _hot(line) else Role.TEXT)
        if bar >= LEAST_BAR:
            gap = Inked(" " * (6 - len(high.text)), Role.TEXT)
            spans += [low, SPACE, *_bar(line, scale, bar, glyphs), SPACE, high, gap]
        else:
            spans += [low, Inked("..", Role.TEXT), high, SPACE]
        spans.append(Inked(sky_words(line), _role(line)))
        yield from within_width([tuple(spans)], width, glyphs)


def sky_words(line: DayLine) -> str:
    """Warnings of the thermometer, rain and gusts, worst first."""
    said = (temperature_words(line), rain_words(line.weather), gust_words(line.weather))
    return ", ".join(filter(None, said))


def _figure(value: float | None) -> str:
    return "?" if value is None else f"{value:.0f}"


def _cold(line: DayLine) -> bool:
    return line.low_c is not None and line.low_c <= FROST_C


def _hot(line: DayLine) -> bool:
    return line.high_c is not None and line.high_c >= HOT_C


def _role(line: DayLine) -> Role:
    warns = ("frost", "hot", "downpour", "strap", "latch")
    return Role.WARN if any(word in sky_words(line) for word in warns) else Role.TEXT


def _scale(days: Iterable[DayLine]) -> tuple[float, float]:
    known = [c for line in days for c in (line.low_c, line.high_c) if c is not None]
    low, high = min(known, default=0.0), max(known, default=1.0)
    return low, max(high, low + 1.0)


def _bar(line: DayLine, scale: tuple[float, float], width: int, glyphs: Glyphs) -> Iterator[Inked]:
    low_c, high_c = line.low_c, line.high_c
    if low_c is None or high_c is None or low_c > high_c:
        yield Inked(glyphs.gap * width, Role.QUIET)
        return
    low, high = scale
    first = round((low_c - low) / (high - low) * (width - 1))
    last = round((high_c - low) / (high - low) * (width - 1))
    yield Inked(glyphs.gap * first, Role.QUIET)
    yield Inked(glyphs.done * (last - first + 1), Role.DONE)
    yield Inked(glyphs.gap * (width - 1 - last), Role.QUIET)


def weather_lines(
    days: Sequence[DayLine], width: int, glyphs: Glyphs = UNICODE
) -> tuple[Line, ...]:
    """The whole picture, one line a day."""
    if not days:
        return tuple(within_width([(Inked(NOTHING, Role.QUIET),)], width, glyphs))
    return tuple(weather_rows(days, width, glyphs))


def weather_words(days: Sequence[DayLine]) -> str:
    """The picture in sentences."""
    return spoken([day_words(line) for line in days]) if days else NOTHING


def day_words(line: DayLine) -> str:
    """One day in words."""
    words = [temperature_words(line)]
    words.append(f"{_figure(line.low_c)} to {_figure(line.high_c)} C".replace("?", "unknown"))
    words.append(rain_words(line.weather).replace("?", "unknown"))
    gusts = gust_words(line.weather).replace("?", "unknown")
    words.append(gusts if gusts.endswith("unknown") else f"{gusts} km/h in gusts")
    storm = line.weather.storm_from if line.weather else None
    words.append(f"from {storm:%H:%M}" if storm else "")
    basis = line.weather.basis if line.weather else ""
    words.append(f"by the {basis}" if basis else "")
    return f"{say_weekday(line.day)}: {', '.join(filter(None, words))}"
