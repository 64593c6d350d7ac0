"""One day of a weather file, the faults of its rows, and what the whole file holds."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import field
from datetime import date

from benchround.core.frozen import dataclass
from benchround.core.record import Draft, Figure, Kind
from benchround.feeds.daily_columns import Column, Mapped

_ISO = re.compile(r"([0-9]{4})-?([0-9]{2})-?([0-9]{2})(?:[T ].*)?")
_PARTED = re.compile(r"([0-9]{1,2})[./-]([0-9]{1,2})[./-]([0-9]{4})(?: .*)?")


@dataclass(frozen=True, slots=True)
class DailyReading:
    """One day of a file; None where it says nothing."""

    day: date
    min_c: float | None = None
    max_c: float | None = None
    rain_mm: float | None = None
    gust_kmh: float | None = None
    sun_h: float | None = None

    def figures(self) -> dict[str, Figure]:
        """The figures as a record keeps them."""
        named = {
            "min_c": self.min_c,
            "max_c": self.max_c,
            "rain_mm": self.rain_mm,
            "gust_kmh": self.gust_kmh,
            "sun_h": self.sun_h,
        }
        return {name: value for name, value in named.items() if value is not None}

    def draft(self, place: str = "", note: str = "") -> Draft:
        """The reading as it would be recorded."""
        return Draft(Kind.READING, place, self.figures(), note, day=self.day)


@dataclass(frozen=True, slots=True)
class RowFault:
    """Something left out, and why."""

    row: int
    reason: str

    def __str__(self) -> str:
        return f"row {self.row}: {self.reason}"


@dataclass(frozen=True, slots=True)
class DailyFile:
    """What a file holds.

    Attributes:
        readings: one a day, in order of days.
        faults: rows or figures left out.
        gaps: days between the first and the last that no row is for, as (first, days).
        columns: the columns used.
        empty: rows that have a day and no figure at all.
    """

    readings: tuple[DailyReading, ...]
    faults: tuple[RowFault, ...]
    gaps: tuple[tuple[date, int], ...]
    columns: Mapping[Column, Mapped] = field(default_factory=dict)
    empty: int = 0


def read_date(written: str, dates: str) -> date | None:
    """A day of a table, None where it is none."""
    iso, parted = _ISO.fullmatch(written), _PARTED.fullmatch(written)
    if dates == "iso":
        numbers = (iso[1], iso[2], iso[3]) if iso else None
    elif parted:
        numbers = (
            (parted[3], parted[2], parted[1])
            if dates == "dmy"
            else (parted[3], parted[1], parted[2])
        )
    else:
        numbers = None
    try:
        found = date(*(int(number) for number in numbers)) if numbers else None
    except ValueError:
        return None
    return found if found is not None and 1850 <= found.year <= 2200 else None
