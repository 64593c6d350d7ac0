"""Which column of a weather file holds what, and in what units: told, or guessed from its name."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from enum import StrEnum
from types import MappingProxyType

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.units import INCH_MM, KMH_PER_KNOT, KMH_PER_MPH, KMH_PER_MS, celsius


class Column(StrEnum):
    """What a column can hold."""

    DAY = "day"
    MIN = "min"
    MAX = "max"
    RAIN = "rain"
    GUST = "gust"
    SUN = "sun"


GUESSES: Mapping[Column, tuple[str, ...]] = MappingProxyType(
    {
        Column.DAY: ("day", "date", "datum", "time", "datetime", "dateutc", "observation date"),
        Column.MIN: (
            "min",
            "tmin",
            "temp min",
            "min temp",
            "minimum",
            "minimum temperature",
            "temperature min",
            "temperature 2m min",
            "low",
            "lowest",
            "tn",
        ),
        Column.MAX: (
            "max",
            "tmax",
            "temp max",
            "max temp",
            "maximum",
            "maximum temperature",
            "temperature max",
            "temperature 2m max",
            "high",
            "highest",
            "tx",
        ),
        Column.RAIN: (
            "rain",
            "prcp",
            "precip",
            "precipitation",
            "precipitation sum",
            "rainfall",
            "rr",
        ),
        Column.GUST: ("gust", "gusts", "wind gust", "max gust", "wind gusts 10m max", "wsfg"),
        Column.SUN: ("sun", "sunshine", "sun hours", "sunshine hours", "hours of sun"),
    }
)
"""Usual names, without capitals, units and punctuation. A mean wind is no gust and not here."""

Convert = Callable[[float], float]
UNITS: Mapping[Column, Mapping[str, Convert]] = MappingProxyType(
    {
        Column.MIN: {"C": lambda t: t, "F": celsius},
        Column.MAX: {"C": lambda t: t, "F": celsius},
        Column.RAIN: {"mm": lambda depth: depth, "in": lambda depth: depth * INCH_MM},
        Column.GUST: {
            "kmh": lambda wind: wind,
            "mph": lambda wind: wind * KMH_PER_MPH,
            "ms": lambda wind: wind * KMH_PER_MS,
            "kn": lambda wind: wind * KMH_PER_KNOT,
        },
        Column.SUN: {"h": lambda sun: sun, "min": lambda sun: sun / 60.0},
    }
)
"""Units of each column, the usual one first, and how they become C, mm, km/h and hours."""

_UNIT_WORDS = {
    "c": "C",
    "degc": "C",
    "celsius": "C",
    "f": "F",
    "degf": "F",
    "fahrenheit": "F",
    "mm": "mm",
    "in": "in",
    "inch": "in",
    "inches": "in",
    "kmh": "kmh",
    "km h": "kmh",
    "kph": "kmh",
    "mph": "mph",
    "ms": "ms",
    "m s": "ms",
    "kn": "kn",
    "knots": "kn",
    "h": "h",
    "hours": "h",
    "minutes": "min",
}


@dataclass(frozen=True, slots=True)
class Mapped:
    """One column of the file that is used: its place, its heading and its unit."""

    index: int
    heading: str
    unit: str = ""


def read_map(text: str) -> dict[Column, str]:
    """A mapping typed as `day=DATE,min=TMIN`.

    Raises:
        InputError: a piece is no such pair, or a name is given twice.
    """
    found: dict[Column, str] = {}
    for piece in filter(None, (piece.strip() for piece in text.split(","))):
        name, equals, heading = (part.strip() for part in piece.partition("="))
        if not equals or not heading or name not in set(Column):
            raise InputError(
                f"{piece[:40]!r} names no column: write pairs such as day=DATE,min=TMIN; the "
                f"names are {', '.join(Column)}."
            )
        column = Column(name)
        if column in found:
            raise InputError(f"'{name}' is mapped twice: to {found[column]} and to {heading}.")
        found[column] = heading
    return found


def columns_of(
    headings: Sequence[str], told: Mapping[Column, str], units: Mapping[Column, str]
) -> dict[Column, Mapped]:
    """The columns to use: those told by heading, the others guessed.

    Args:
        headings: the file's first row.
        told: column -> heading, capitals not counting.
        units: column -> unit; what is missing is read off the heading, else the usual one.

    Raises:
        InputError: a heading is not there, is there twice, or none holds the day.
    """
    found: dict[Column, Mapped] = {}
    plain = [_plain(heading) for heading in headings]
    for column in Column:
        heading = told.get(column)
        index = _guessed(plain, column) if heading is None else _told(headings, heading, column)
        if index is None:
            continue
        unit = units.get(column) or plain[index][1]
        if unit not in UNITS.get(column, {}):
            unit = next(iter(UNITS.get(column, {"": None})))
        found[column] = Mapped(index, headings[index].strip(), unit)
    if Column.DAY not in found or len(found) < 2:
        lacks = "day" if Column.DAY not in found else "figure"
        shown = ", ".join(heading.strip()[:30] for heading in headings[:12])
        raise InputError(
            f"No column holds a {lacks}; the columns are: {shown}. Name them, as in "
            "day=DATE,min=TMIN,max=TMAX."
        )
    return found


def _told(headings: Sequence[str], wanted: str, column: Column) -> int:
    same = [n for n, heading in enumerate(headings) if heading.strip() == wanted]
    same = same or [
        n for n, heading in enumerate(headings) if heading.strip().casefold() == wanted.casefold()
    ]
    if len(same) != 1:
        how_often = "twice" if same else "not"
        shown = ", ".join(heading.strip()[:30] for heading in headings[:12])
        raise InputError(
            f"The column {wanted[:40]!r} for '{column}' is {how_often} in the file; the columns "
            f"are: {shown}."
        )
    return same[0]


def _guessed(plain: Sequence[tuple[str, str]], column: Column) -> int | None:
    for guess in GUESSES[column]:
        same = [n for n, (name, _) in enumerate(plain) if name == guess]
        if len(same) == 1:
            return same[0]
        if same:
            raise InputError(f"More than one column looks like '{column}': say which by name.")
    return None


def _plain(heading: str) -> tuple[str, str]:
    """A heading without capitals and punctuation, and the unit at its end if it has one."""
    words = re.sub(r"[^a-z0-9]+", " ", heading.replace("°", "deg").casefold()).split()
    for length in (2, 1):
        unit = _UNIT_WORDS.get(" ".join(words[-length:])) if len(words) > length else None
        if unit is not None:
            return " ".join(words[:-length]), unit
    return " ".join(words), ""
