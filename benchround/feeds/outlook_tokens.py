"""Cutting a typed weather line into words, and the shapes of words that hold a figure."""

from __future__ import annotations

import re
from datetime import time

from benchround.core.units import KMH_PER_KNOT, KMH_PER_MPH, KMH_PER_MS

DASHES = str.maketrans({"\N{MINUS SIGN}": "-", "\N{EN DASH}": "-"})

_N = r"(?:[0-9]{1,3}(?:\.[0-9]{1,2})?|\.[0-9]{1,2})"
_DEG = r"°?([cf]?)"
_SPEED = r"km/?h|kph|mph|m/?s|kn|kts?|knots"

PAIR = re.compile(rf"(-?{_N}){_DEG}(?:/|\.\.|-)(-?{_N}){_DEG}")
TEMP = re.compile(rf"(-?{_N}){_DEG}")
LOW = re.compile(rf"(?:min|low|lo|night)(-?{_N}){_DEG}")
HIGH = re.compile(rf"(?:max|high|hi)(-?{_N}){_DEG}")
RAIN = re.compile(rf"(?:r|rain)({_N})(mm|in)?|({_N})(mm|in)")
RAIN_HOUR = re.compile(rf"(?:r|rain)?({_N})(mm|in)/?(?:h|hr|hour)|rh({_N})(mm|in)?")
GUST = re.compile(rf"(?:g|gusts?)({_N})({_SPEED})?|({_N})({_SPEED})")
FORCE = re.compile(r"(?:f|bft|force)([0-9]{1,2})")
SUN = re.compile(rf"({_N})h")
CLOCK = re.compile(r"(?:from|@)([0-9]{1,2})(?:[:.h]([0-9]{2}))?(am|pm|h)?")
DAY = re.compile(
    r"\+[0-9]{1,2}|[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}|[0-9]{1,2}\.[0-9]{1,2}\.|today|tomorrow"
)
WEEKDAY = re.compile(r"mon|tue|wed|thu|fri|sat|(?:mon|tues|wednes|thurs|fri|satur|sun)day")
"""`sun` alone is the sky, not the day."""

JOINED = frozenset(
    {"r", "rain", "g", "gust", "gusts", "f", "bft", "force", "from", "@"}
    | {"min", "low", "lo", "night", "max", "high", "hi"}
)
"""Words that belong to the figure after them."""
UNITS = frozenset(
    {
        "mm",
        "in",
        "mm/h",
        "in/h",
        "h",
        "km/h",
        "kmh",
        "kph",
        "mph",
        "m/s",
        "ms",
        "kn",
        "kt",
        "kts",
        "knots",
    }
)
"""Units that belong to the figure before them."""


def kmh_per(unit: str) -> float:
    """Kilometres an hour in one of a `GUST` word's unit."""
    if unit == "mph":
        return KMH_PER_MPH
    if unit in ("m/s", "ms"):
        return KMH_PER_MS
    return KMH_PER_KNOT if unit.startswith("k") and unit[1] in "nt" else 1.0


def clock_of(found: re.Match[str]) -> time | None:
    """The time of a `CLOCK` word, None where there is no such time."""
    hour, minute = int(found[1]), int(found[2] or 0)
    if found[3] in ("am", "pm"):
        if not 1 <= hour <= 12:
            return None
        hour = hour % 12 + (12 if found[3] == "pm" else 0)
    return time(hour, minute) if hour < 24 and minute < 60 else None


def words_of(typed: str) -> list[str]:
    """The words of a piece: in small letters, figures joined to the words they belong to."""
    plain = typed.lower().translate(DASHES)
    plain = re.sub(r"(?<=[0-9]),(?=[0-9]+(?:mm|c|°|km|mph|m/s|h\b))", ".", plain)
    plain = re.sub(r"(?<=[0-9c°])\s*/\s*(?=-?[0-9])", "/", plain)
    found: list[str] = []
    for word in re.split(r"\s+|,(?=\s|$)", plain):
        bare = word.strip("!?()'\"") or word
        if bare.strip(".,") and bare != "of":
            before = found[-1] if found else ""
            figure_after = before in JOINED and re.match(r"-?\.?[0-9]", bare) is not None
            unit_after = bare in UNITS and before[-1:].isdigit()
            if figure_after or unit_after:
                found[-1] += bare
            else:
                found.append(bare)
    return found
