"""Text as it may be printed: what could steer a terminal is spelled out instead.

A name or note may have come from another computer or a file. Printed as it is, an escape sequence
could colour, move or hide what stands around it, and a direction mark could turn it round.
"""

from __future__ import annotations

import unicodedata
from functools import lru_cache

STEERING = frozenset({"Cc", "Cf", "Cs", "Zl", "Zp"})
"""Categories of characters that are spelled out: controls, marks nobody sees, halves, line ends."""
JOINERS = frozenset("\u200c\u200d")
"""Marks nobody sees that letters and emoji are written with; they stay."""


def visible(text: str, *, lines: bool = False) -> str:
    """The text with every steering character spelled out as its number.

    Args:
        text: anything, from the keyboard, a file or another computer.
        lines: whether line ends and tabs stay as they are.
    """
    if text.isprintable():
        return text
    return "".join(sign if _stays(sign, lines) else spelled(sign) for sign in text)


def steering(text: str, *, lines: bool = False) -> str | None:
    """The first control character or half character of a text, None if it has none.

    Direction marks are no fault in a text; they are only spelled out when it is printed.
    """
    for sign in text:
        control = unicodedata.category(sign) in ("Cc", "Cs")
        if control and not (lines and sign in "\n\t"):
            return sign
    return None


@lru_cache(maxsize=1024)
def spelled(sign: str) -> str:
    """A character as its number after a backslash, as Python writes it."""
    number = ord(sign)
    if number < 0x100:
        return f"\\x{number:02x}"
    return f"\\u{number:04x}" if number < 0x10000 else f"\\U{number:08x}"


def _stays(sign: str, lines: bool) -> bool:
    if sign in JOINERS or (lines and sign in "\n\t"):
        return True
    return unicodedata.category(sign) not in STEERING
