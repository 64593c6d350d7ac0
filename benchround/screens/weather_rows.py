"""The rows of the weather: days to come and days measured, and each of them in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, timedelta

from benchround.core.frozen import dataclass
from benchround.core.season import Season
from benchround.core.sky.weather import FIGURES, DayWeather
from benchround.core.typed.date import say_full
from benchround.core.units import Units
from benchround.drawing.weather import (
    DayLine,
    gust_words,
    rain_words,
    temperature_words,
)
from benchround.drawing.words import say_weekday
from benchround.screens.pictures import glyphs
from benchround.screens.text import Line, Role, Span, fit
from benchround.screens.widgets.pick_list import Row

DAY_WIDE, TEMP_WIDE, WORDS_WIDE = 11, 13, 36
LEAST_BAR, LONGEST_BAR = 8, 50
AHEAD_DAYS, BACK_DAYS = 10, 30
WARNINGS = ("frost", "hot", "downpour", "latch", "strap")
WHERE_WIDE = 16
AHEAD = "> ahead"
"""What the key of a day to come begins with; no code of a place can be that."""
FORECAST_ONLY = "forecast only"
NONE_AHEAD = "No weather is known from today on: o types it, in one line."
FIGURE_WORDS = {
    "min_c": "lowest",
    "max_c": "highest",
    "sun_h": "sun",
    "rain_mm": "rain",
    "gust_kmh": "gusts",
}
NONE_BACK = "Nothing was measured in the last month: m types what the thermometer says."

Scale = tuple[float, float]


def ahead_lines(season: Season, day: date) -> list[DayLine]:
    """The days from today on that anything is known of."""
    every = [day + timedelta(days=n) for n in range(AHEAD_DAYS)]
    return [DayLine(on, known) for on in every if (known := season.weather.on(on)) is not None]


@dataclass(frozen=True, slots=True)
class Seen:
    """What was measured, or forecast and never measured, on a day that is over.

    Attributes:
        code, where: the place and its name; both empty outside.
    """

    day: date
    code: str
    where: str
    known: DayWeather

    @property
    def key(self) -> str:
        """What its row is picked by."""
        return f"{self.code}\n{self.day.isoformat()}"


def back_lines(season: Season, day: date) -> list[Seen]:
    """What was measured up to today, newest first."""
    found: list[Seen] = []
    for back in range(BACK_DAYS + 1):
        on = day - timedelta(days=back)
        outside = season.weather.on(on)
        if outside is not None and (back or outside.basis == "reading"):
            found.append(Seen(on, "", "", outside))
        for place in season.places:
            inside = season.weather.at(place.code, on)
            if inside is not None:
                found.append(Seen(on, place.code, place.name, inside))
    return found


def sky(known: DayWeather | None, units: Units) -> str:
    """What a day brings, warnings first, in the grower's units."""
    line_of = DayLine(known.day, known) if known is not None else None
    if known is None or line_of is None:
        return "not known"
    said = [temperature_words(line_of)]
    if known.rain_mm is not None:
        rain = rain_words(known)
        said.append(rain if rain == "dry" else f"{rain.split()[0]} {units.fall(known.rain_mm)}")
    if known.gust_kmh is not None:
        said.append(gust_words(known, units))
    if known.storm_from is not None:
        said.append(f"storm {known.storm_from:%H:%M}")
    return ", ".join(filter(None, said))


def warns(known: DayWeather | None) -> bool:
    """Whether a day brings something to act on."""
    return any(word in sky(known, Units()) for word in WARNINGS)


def scale_of(lines: Sequence[DayLine]) -> Scale:
    """The lowest and the highest of all days, for the bars."""
    known = [c for one in lines for c in (one.low_c, one.high_c) if c is not None]
    low, high = min(known, default=0.0), max(known, default=1.0)
    return low, max(high, low + 1.0)


def ahead_row(one: DayLine, scale: Scale, units: Units) -> Row:
    """A day to come: lowest to highest, as a bar where there is room, and what it brings."""

    def words(width: int) -> Line:
        role = Role.LATE if warns(one.weather) else Role.INK
        spans: list[Span] = [
            (fit(say_weekday(one.day), DAY_WIDE), Role.STRONG),
            (fit(units.span(one.low_c, one.high_c), TEMP_WIDE), Role.INK),
        ]
        bar = min(LONGEST_BAR, width - DAY_WIDE - TEMP_WIDE - WORDS_WIDE - 2)
        if bar >= LEAST_BAR:
            spans += [*_bar(one, scale, bar), ("  ", Role.INK)]
        left = max(0, width - sum(len(text) for text, _ in spans))
        read = what_was_read(one.weather) if one.weather else ""
        basis = "measured: " if read == "measured" else f"{read}; " if read else ""
        return (*spans, (fit(basis + sky(one.weather, units), left), role))

    return Row(words, f"{AHEAD}\n{one.day.isoformat()}")


def _bar(one: DayLine, scale: Scale, width: int) -> Iterator[Span]:
    signs, (low, high) = glyphs(), scale
    if one.low_c is None or one.high_c is None or one.low_c > one.high_c:
        yield signs.gap * width, Role.QUIET
        return
    first = round((one.low_c - low) / (high - low) * (width - 1))
    last = round((one.high_c - low) / (high - low) * (width - 1))
    yield signs.gap * first, Role.QUIET
    yield signs.done * (last - first + 1), Role.HELD
    yield signs.gap * (width - 1 - last), Role.QUIET


def back_row(seen: Seen, units: Units) -> Row:
    """What was measured on a day, outside or in a place."""
    outside = "outside" if seen.known.basis == "reading" else FORECAST_ONLY

    def words(width: int) -> Line:
        spans: list[Span] = [
            (fit(say_weekday(seen.day), DAY_WIDE), Role.STRONG),
            (fit(units.span(seen.known.min_c, seen.known.max_c), TEMP_WIDE), Role.INK),
            (fit(seen.where or outside, WHERE_WIDE), Role.QUIET),
        ]
        left = max(0, width - DAY_WIDE - TEMP_WIDE - WHERE_WIDE)
        return (*spans, (fit(sky(seen.known, units), left), Role.INK))

    return Row(words, seen.key)


def day_told(on: date, where: str, known: DayWeather, units: Units, today: date) -> str:
    """A day in a sentence, in the grower's units."""
    said = [units.span(known.min_c, known.max_c)]
    if known.sun_h is not None:
        said.append(f"{known.sun_h:g} h of sun")
    said.append(sky(known, units))
    if known.rain_hour_mm:
        said.append(f"up to {units.fall(known.rain_hour_mm)} in an hour")
    place = f" in {where}" if where else ""
    basis = basis_words(known)
    return f"{say_full(on, today)}{place}: {', '.join(filter(None, said))}; {basis}."


def what_was_read(known: DayWeather) -> str:
    """Which of the figures known of a day were measured; empty where none was."""
    names = [name for name in FIGURES if getattr(known, name) is not None]
    if known.basis == "reading" and known.measured.issuperset(names):
        return "measured"
    read = [words for name, words in FIGURE_WORDS.items() if name in known.measured]
    return f"{', '.join(read)} measured" if read else ""


def basis_words(known: DayWeather) -> str:
    """What a day's figures rest on; what was measured is told from what is forecast."""
    read = what_was_read(known)
    if read == "measured":
        return read
    forecast = "outlook" if known.basis == "reading" else known.basis
    return f"{read}, the rest by the {forecast}" if read else f"by the {forecast}"
