"""Reading figures, days and places off the command line; what cannot be read is wrong usage."""

from __future__ import annotations

import argparse
import math
import re
from collections.abc import Sequence
from datetime import date

from benchround.core.errors import InputError, OutOfRangeError
from benchround.core.numbers.ranges import within
from benchround.core.typed.figures import whole_in

_MINUS_FIGURE = re.compile(r"-[0-9.]")
_PLAIN_NUMBER = re.compile(r"-[0-9]+|-[0-9]*\.[0-9]+")


class FigureParser(argparse.ArgumentParser):
    """A parser that takes words such as -45.9,170 or -2/16 as figures, not as options."""

    def parse_known_args(  # type: ignore[override]  # the overloads say the same
        self,
        args: Sequence[str] | None = None,
        namespace: argparse.Namespace | None = None,
    ) -> tuple[argparse.Namespace, list[str]]:
        """Parse; a leading space keeps such a word from being taken for an option."""
        words = None if args is None else [_kept(word) for word in args]
        return super().parse_known_args(words, namespace)


def _kept(word: str) -> str:
    if _MINUS_FIGURE.match(word) and not _PLAIN_NUMBER.fullmatch(word):
        return f" {word}"
    return word


def number(text: str) -> float:
    """A finite number."""
    try:
        value = float(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text.strip()[:40]!r} is no number") from None
    if not math.isfinite(value) or "_" in text or not text.isascii():
        raise argparse.ArgumentTypeError(f"{text.strip()[:40]!r} is no number")
    return value


def share(text: str) -> float:
    """A share, written 0.8 or 80%."""
    stripped = text.strip()
    if stripped.endswith("%"):
        return number(stripped[:-1]) / 100.0
    found = number(stripped)
    if 2.0 <= found <= 100.0:
        raise InputError(
            f"{stripped[:40]!r} is no share: give a figure above 0 and up to 1; write "
            f"{found:g}% or {found / 100.0:g}."
        )
    return found


def count(text: str) -> int:
    """A whole number."""
    number = whole_in(text.strip())
    if number is None:
        raise argparse.ArgumentTypeError(f"{text.strip()[:40]!r} is no whole number")
    return number


def day(text: str) -> date:
    """A day written as 2026-05-27."""
    stripped = text.strip()
    try:
        if not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", stripped):
            raise ValueError
        found = date.fromisoformat(stripped)
    except ValueError:
        raise argparse.ArgumentTypeError(
            f"{stripped[:40]!r} is no day: write it as 2026-05-27"
        ) from None
    if not 1900 <= found.year <= 2200:
        raise argparse.ArgumentTypeError(f"{stripped} is no day of our time (1900 to 2200)")
    return found


def month_day(text: str) -> str:
    """A day of any year, written 05-10; 29 February is not one of every year."""
    stripped = text.strip()
    try:
        if not re.fullmatch(r"[0-9]{2}-[0-9]{2}", stripped):
            raise ValueError
        date.fromisoformat(f"2025-{stripped}")
    except ValueError:
        raise argparse.ArgumentTypeError(
            f"{stripped[:40]!r} is no day of every year: write month and day as 05-10"
        ) from None
    return stripped


def pair(text: str) -> tuple[float, float]:
    """Two numbers with a comma, such as 52.5,-1.0 or 1.2,0.6."""
    parts = text.split(",")
    if len(parts) != 2:
        raise argparse.ArgumentTypeError(
            f"{text.strip()[:40]!r} is not two numbers with a comma between, such as 52.5,-1.0"
        )
    return number(parts[0]), number(parts[1])


def zone(text: str) -> str | float:
    """A clock: hours ahead of UTC, or a time zone name."""
    try:
        return number(text)
    except argparse.ArgumentTypeError:
        return text.strip()


def within_sky(lat_deg: float, lon_deg: float | None = None) -> None:
    """Refuse a latitude or longitude that is not on the globe.

    Raises:
        OutOfRangeError: it is not.
    """
    within("the latitude", lat_deg, -90.0, 90.0, "deg")
    if lon_deg is not None:
        within("the longitude", lon_deg, -180.0, 180.0, "deg")


def sun_hours_within(hours: float, daylight_h: float) -> float:
    """Return hours of sunshine a day can have.

    Raises:
        OutOfRangeError: more than the day is long, or below zero.
    """
    if hours < 0.0 or hours > daylight_h:
        raise OutOfRangeError(
            f"the hours of sunshine are {hours:g}, outside 0 to {daylight_h:.1f} h, the length of "
            "that day: check the figure"
        )
    return hours
