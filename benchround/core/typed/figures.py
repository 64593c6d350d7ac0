"""Figures as a grower types them - whole numbers, numbers with point or comma - and notes."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TypeVar

from benchround.core.errors import InputError

Read = TypeVar("Read")
MOST_COUNT = 1_000_000
LONGEST_NOTE = 2_000
SHOWN = 30
"""Letters of a wrong entry that are said again."""

# Compiled when a figure is first typed, which a start need not wait for.
_WHOLE = r"[+-]?[0-9]{1,30}"
_NUMBER = r"[+-]?(?:[0-9]{1,12}(?:[.,][0-9]{0,9})?|[.,][0-9]{1,9})"


def whole_in(text: str) -> int | None:
    """The whole number a text is, in plain figures, a sign allowed; None where it is none."""
    return int(text) if re.fullmatch(_WHOLE, text) else None


def number_in(text: str) -> float | None:
    """The number a text is, in plain figures with point or comma; None where it is none."""
    return float(text.replace(",", ".")) + 0.0 if re.fullmatch(_NUMBER, text) else None


def naming(field: str, read: Callable[[], Read]) -> Read:
    """What a reader reads.

    Raises:
        InputError: as the reader raises it, with the name of the field before it.
    """
    try:
        return read()
    except InputError as error:
        raise InputError(f"{field}: {error}") from None


def read_whole(text: str, most: int = MOST_COUNT, least: int = 0) -> int | None:
    """A whole number as typed; None where nothing was typed.

    Raises:
        InputError: it is no whole number, or not from `least` to `most`.
    """
    said = text.strip()
    if not said:
        return None
    number = whole_in(said)
    if number is None:
        raise InputError(f"'{shown(said)}' is not a whole number.")
    if not least <= number <= most:
        raise InputError(f"{number} is not between {least} and {most}.")
    return number


def read_number(text: str, least: float, most: float, unit: str = "") -> float | None:
    """A number as typed, with point or comma; None where nothing was typed.

    Raises:
        InputError: it is no number, or not from `least` to `most`.
    """
    said = text.strip()
    if not said:
        return None
    number = number_in(said)
    if number is None:
        raise InputError(f"'{shown(said)}' is not a number.")
    if not least <= number <= most:
        end = f" {unit}" if unit else ""
        raise InputError(f"{number:g} is not between {least:g} and {most:g}{end}.")
    return number


def read_note(text: str, longest: int = LONGEST_NOTE) -> str:
    """A note as typed, on one line.

    Raises:
        InputError: it is too long, or holds control characters.
    """
    said = " ".join(text.split())
    if len(said) > longest:
        raise InputError(f"{len(said)} letters are too many: {longest} at most.")
    if not said.isprintable():
        raise InputError("there are control characters in it: type plain text.")
    return said


def shown(text: str) -> str:
    """A wrong entry as it is said again: short, and nothing in it that cannot be printed."""
    seen = "".join(sign if sign.isprintable() else "?" for sign in text[: SHOWN + 1])
    return seen if len(text) <= SHOWN else f"{seen[:SHOWN]}.."
