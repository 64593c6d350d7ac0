"""Figures and names as a grower types them into a sheet: whole numbers, numbers, places, notes."""

from __future__ import annotations

from collections.abc import Iterable

from benchround.core.errors import InputError
from benchround.core.site import Place

MOST_COUNT = 1_000_000
LONGEST_NOTE = 2_000
SHOWN = 30
"""Letters of a wrong entry that are said again."""


def read_whole(text: str, most: int = MOST_COUNT, least: int = 0) -> int | None:
    """A whole number as typed; None where nothing was typed.

    Raises:
        InputError: it is no whole number, or not from `least` to `most`.
    """
    said = text.strip()
    if not said:
        return None
    if not (said.isascii() and said.lstrip("+").isdigit()) or len(said) > SHOWN:
        raise InputError(f"'{shown(said)}' is not a whole number.")
    number = int(said)
    if not least <= number <= most:
        raise InputError(f"{number} is not between {least} and {most}.")
    return number


def read_number(text: str, least: float, most: float, unit: str = "") -> float | None:
    """A number as typed, with point or comma; None where nothing was typed.

    Raises:
        InputError: it is no number, or not from `least` to `most`.
    """
    said = text.strip().replace(",", ".")
    if not said:
        return None
    try:
        number = float(said)
    except ValueError:
        raise InputError(f"'{shown(said)}' is not a number.") from None
    if not least <= number <= most:
        end = f" {unit}" if unit else ""
        raise InputError(f"{number:g} is not between {least:g} and {most:g}{end}.")
    return number


def read_place(text: str, places: Iterable[Place]) -> str:
    """A place's code by its code, its name, or letters only one begins with; empty for none typed.

    Raises:
        InputError: no place, or more than one, answers to it.
    """
    wanted = text.strip().casefold()
    if not wanted:
        return ""
    known = tuple(places)
    names = [(place, place.code.casefold(), place.name.casefold()) for place in known]
    exact = [place for place, *said in names if wanted in said]
    near = exact or [p for p, *said in names if any(name.startswith(wanted) for name in said)]
    if len(near) == 1:
        return near[0].code
    which = "more than one place" if near else "no place"
    listed = ", ".join(place.name for place in (near or known)) or "none set up yet"
    raise InputError(f"{which} answers to '{shown(text.strip())}': {listed}.")


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
