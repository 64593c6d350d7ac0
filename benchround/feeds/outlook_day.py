"""One day's outlook as it was understood: its figures, its words, the record it makes."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date, time

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.record import Draft, Figure, Kind
from benchround.core.typed.date import say_full

DayLength = float | Callable[[date], float]
"""Hours of daylight: one figure, or day -> hours."""


class OutlookLineError(InputError):
    """A typed weather line was not understood; nothing was taken from it.

    Attributes:
        line: the line as it was typed, for it to be mended.
        word: the word at fault, empty where it is the line as a whole.
    """

    def __init__(self, message: str, line: str, word: str = "") -> None:
        super().__init__(message)
        self.line = line
        self.word = word

    @property
    def at(self) -> int | None:
        """Where the word stands in the line; None where it does not stand there as it is."""
        if not self.word:
            return None
        alone = rf"(?<![0-9a-z.]){re.escape(self.word.lower())}(?![0-9a-z])"
        found = re.search(alone, self.line.lower())
        return found.start() if found else None


@dataclass(frozen=True, slots=True)
class OutlookDay:
    """What a line says of one day; None where it says nothing.

    Attributes:
        sky: the word for the sky, empty where none was typed.
        sun_share: its share of the day, from which `sun_h` follows.
        wind: the word or force the gusts were taken from, empty where they were typed.
        typed: the piece of the line.
    """

    day: date
    typed: str
    min_c: float | None = None
    max_c: float | None = None
    sky: str = ""
    sun_share: float | None = None
    sun_h: float | None = None
    rain_mm: float | None = None
    rain_hour_mm: float | None = None
    gust_kmh: float | None = None
    wind: str = ""
    storm_from: time | None = None

    def figures(self) -> dict[str, Figure]:
        """The figures as an outlook record keeps them."""
        named: dict[str, Figure | None] = {
            "min_c": self.min_c,
            "max_c": self.max_c,
            "sun_h": self.sun_h,
            "rain_mm": self.rain_mm,
            "rain_hour_mm": self.rain_hour_mm,
            "gust_kmh": self.gust_kmh,
            "storm_from": None if self.storm_from is None else f"{self.storm_from:%H:%M}",
        }
        return {name: value for name, value in named.items() if value is not None}

    def draft(self) -> Draft:
        """The outlook as it would be recorded; the words typed go along as its note."""
        return Draft(Kind.OUTLOOK, "", self.figures(), self.typed, day=self.day)

    def words(self, today: date) -> str:
        """The echo: what was understood, in full."""
        return f"{say_full(self.day, today)}: {', '.join(self._parts())}"

    def _parts(self) -> list[str]:
        parts: list[str] = []
        match self.min_c, self.max_c:
            case float() as low, float() as high:
                parts.append(f"{low:g} to {high:g} C")
            case float() as low, None:
                parts.append(f"lowest {low:g} C")
            case None, float() as high:
                parts.append(f"highest {high:g} C")
        if self.sun_h is not None:
            parts.append(f"{self.sky}, {self.sun_h:g} h of sun" if self.sky else self._sun())
        elif self.sky:
            parts.append(self.sky)
        if self.rain_mm is not None:
            parts.append(f"rain {self.rain_mm:g} mm" if self.rain_mm else "dry")
        if self.rain_hour_mm is not None:
            parts.append(f"up to {self.rain_hour_mm:g} mm in an hour")
        if self.gust_kmh is not None:
            gusts = f"gusts of {self.gust_kmh:g} km/h"
            parts.append(f"{self.wind}, taken as {gusts}" if self.wind else gusts)
        if self.storm_from is not None:
            parts.append(f"storm from {self.storm_from:%H:%M}")
        return parts

    def _sun(self) -> str:
        return f"{self.sun_h:g} h of sun"
