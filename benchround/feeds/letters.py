"""Letters as they can be printed: nothing unseen, nothing lost.

What a typeface has is printed as it is. What it lacks is written in Latin letters where a common
way to do so exists (accents left off; Greek and Cyrillic letter by letter, common practice, no
source), and by its Unicode number where none does, so that no name comes out shorter than it is.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterator

from benchround.core.frozen import dataclass

GREEK = dict(
    zip(
        "αβγδεζηθικλμνξοπρσςτυφχψω",
        (
            *("a", "v", "g", "d", "e", "z", "i", "th", "i", "k", "l", "m", "n", "x", "o", "p"),
            *("r", "s", "s", "t", "y", "f", "ch", "ps", "o"),
        ),
        strict=True,
    )
)
CYRILLIC = dict(
    zip(
        "абвгдеёжзийклмнопрстуфхцчшщъыьэюяєіїґў",
        (
            *("a", "b", "v", "g", "d", "e", "e", "zh", "z", "i", "i", "k", "l", "m", "n", "o"),
            *("p", "r", "s", "t", "u", "f", "kh", "ts", "ch", "sh", "shch", "", "y", "", "e"),
            *("yu", "ya", "ye", "i", "yi", "g", "u"),
        ),
        strict=True,
    )
)
SIGNS = {
    **GREEK,
    **CYRILLIC,
    **{"ß": "ss", "æ": "ae", "ø": "o", "œ": "oe", "ł": "l", "đ": "d", "ð": "d", "þ": "th"},
    **{"\u0131": "i", "\u2018": "'", "\u2019": "'", "\u201c": '"', "\u201d": '"', "\u201e": '"'},
    **{"\u2013": "-", "\u2014": "-", "\u2026": "...", "\u2022": "*", "\u00d7": "x"},
}
"""Letters and signs in plain Latin ones."""

UNSEEN = ("Cf", "Cc", "Cs")
"""Classes of characters that leave no ink: directions, joiners, controls, half characters."""
JOINERS = ("\u200c", "\u200d")
"""What keeps two letters apart that would be joined, and what joins them."""
STACKING = 9
"""Unicode's combining class of a sign by which the next letter is stacked on the one before it."""
NUMBERED = re.compile(r"(\[U\+[0-9A-F]{4,6}\])")
"""A letter told by its number, as `printable` writes it."""
VARIANTS = range(0xFE00, 0xFE10)
"""Marks that choose between two looks of the sign before them."""

JOINED = range(0x0600, 0x1100)
"""Scripts from Arabic to Myanmar, most of which join or stack their letters."""
SET_ONE_BY_ONE = (range(0x0E00, 0x0F00), range(0x10A0, 0x1100))
"""Among those, Thai, Lao and Georgian, which read well letter by letter."""


@dataclass(frozen=True, slots=True)
class Printable:
    """A text as it will be printed.

    Attributes:
        replaced: the letters that had to be written otherwise, in order, each once.
        joined: whether some of its letters are to be joined or stacked.
    """

    text: str
    replaced: tuple[str, ...] = ()
    joined: bool = False


def one_line(text: str) -> str:
    """A text in one line, without characters that leave no ink.

    What joins two letters of scripts that join theirs, or keeps them apart, belongs to the
    spelling and stays.
    """
    seen: list[str] = []
    for at, sign in enumerate(text):
        if sign.isspace():
            seen.append(" ")
        elif sign in JOINERS:
            if seen and joins(seen[-1]) and joins(text[at + 1 : at + 2]):
                seen.append(sign)
        elif unicodedata.category(sign) not in UNSEEN and ord(sign) not in VARIANTS:
            seen.append(sign)
    return " ".join("".join(seen).split())


def clusters(word: str) -> Iterator[str]:
    """A word in pieces between which a line may be broken: a letter with all that belongs to it.

    A letter that is told by its number is one piece too.
    """
    for piece in NUMBERED.split(word):
        if NUMBERED.fullmatch(piece):
            yield piece
        else:
            yield from _letters(piece)


def _letters(word: str) -> Iterator[str]:
    held = ""
    for sign in word:
        if held and not _goes_on(held[-1], sign):
            yield held
            held = ""
        held += sign
    if held:
        yield held


def _goes_on(before: str, sign: str) -> bool:
    marked = unicodedata.category(sign).startswith("M") or sign in JOINERS
    return marked or before in JOINERS or unicodedata.combining(before) == STACKING


def printable(text: str, has: Callable[[str], bool]) -> Printable:
    """A text with the letters a typeface has.

    Args:
        text: any text; it comes out in one line.
        has: whether the typeface can draw a character.
    """
    said: list[str] = []
    replaced: dict[str, None] = {}
    joined = False
    for sign in unicodedata.normalize("NFC", one_line(text)):
        if sign == " " or has(sign):
            said.append(sign)
            joined = joined or joins(sign)
        elif sign not in JOINERS:
            said.append(_otherwise(sign, has))
            replaced[sign] = None
    return Printable(" ".join("".join(said).split()), tuple(replaced), joined)


def joins(sign: str) -> bool:
    """Whether a letter belongs to a script that joins or stacks its letters."""
    if not sign:
        return False
    number = ord(sign)
    return number in JOINED and not any(number in script for script in SET_ONE_BY_ONE)


def _otherwise(sign: str, has: Callable[[str], bool]) -> str:
    plain = _latin(sign)
    if plain is None:
        base = "".join(s for s in unicodedata.normalize("NFKD", sign) if not _is_mark(s))
        parts = [part if has(part) else _latin(part) for part in base]
        plain = "".join(part for part in parts if part) if base.strip() and all(parts) else None
    if plain is not None and all(has(letter) for letter in plain if letter != " "):
        return plain
    return f"[U+{ord(sign):04X}]"


def _latin(sign: str) -> str | None:
    found = SIGNS.get(sign)
    if found is None and sign.lower() in SIGNS:
        found = SIGNS[sign.lower()].capitalize()
    return found


def _is_mark(sign: str) -> bool:
    return bool(unicodedata.combining(sign))
