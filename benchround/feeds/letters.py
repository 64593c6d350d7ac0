"""Letters as they can be printed: nothing unseen, nothing lost.

What a typeface has is printed as it is. What it lacks is written in Latin letters where a common
way to do so exists (accents left off; Greek and Cyrillic letter by letter, common practice, no
source), and by its Unicode number where none does, so that no name comes out shorter than it is.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Callable

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
        unjoined: whether its letters should be joined or stacked and will stand apart.
    """

    text: str
    replaced: tuple[str, ...] = ()
    unjoined: bool = False


def one_line(text: str) -> str:
    """A text in one line, without characters that leave no ink."""
    spaced = (" " if sign.isspace() else sign for sign in text)
    seen = (
        sign
        for sign in spaced
        if unicodedata.category(sign) not in UNSEEN and ord(sign) not in VARIANTS
    )
    return " ".join("".join(seen).split())


def printable(text: str, has: Callable[[str], bool]) -> Printable:
    """A text with the letters a typeface has.

    Args:
        text: any text; it comes out in one line.
        has: whether the typeface can draw a character.
    """
    said: list[str] = []
    replaced: dict[str, None] = {}
    unjoined = False
    for sign in unicodedata.normalize("NFC", one_line(text)):
        if sign == " " or has(sign):
            said.append(sign)
            unjoined = unjoined or joins(sign)
        else:
            said.append(_otherwise(sign, has))
            replaced[sign] = None
    return Printable(" ".join("".join(said).split()), tuple(replaced), unjoined)


def joins(sign: str) -> bool:
    """Whether a letter belongs to a script that joins or stacks its letters."""
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
