"""What may go to disk: the longest texts, the largest numbers, the characters refused."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping

from benchround.core.errors import InputError
from benchround.core.record import Figure

LONGEST_NOTE = 10_000
LONGEST_FIGURE_TEXT = 20_000
LONGEST_NAME = 200
LONGEST_ID = 64
MOST_FIGURES = 400
LARGEST_WHOLE = 2**53
"""Whole numbers beyond this are no longer exact in other programs that read JSON."""

_CONTROL = r"[\x00-\x1f\x7f-\x9f\ud800-\udfff]"
_CONTROL_BUT_LINES = r"[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff]"


def checked_text(what: str, text: str, longest: int, *, lines: bool = False) -> str:
    """Return text that may go to disk, or refuse it.

    Args:
        what: what the text is, in the grower's words; it opens the message.
        text: any text; emoji, right-to-left text and brackets are all kept as they are.
        longest: most characters allowed.
        lines: whether line breaks and tabs are allowed.

    Raises:
        InputError: not text, too long, or it holds a control character or half a character.
    """
    if not isinstance(text, str):
        raise InputError(f"{what} is {shown(text)}; give text")
    if len(text) > longest:
        raise InputError(f"{what} has {len(text)} characters; shorten it to {longest}")
    bad = first_unprintable(text, lines=lines)
    if bad is not None:
        raise InputError(
            f"{what} holds a character that cannot be printed"
            f" (U+{ord(text[bad]):04X}, at place {bad + 1}); take it out"
        )
    return str(text)


def first_unprintable(text: str, *, lines: bool) -> int | None:
    """Where a text's first control character or half character stands, None if it has none."""
    if text.isprintable():
        return None
    bad = re.search(_CONTROL_BUT_LINES if lines else _CONTROL, text)
    return None if bad is None else bad.start()


def checked_figures(figures: Mapping[str, Figure]) -> dict[str, Figure]:
    """A record's figures as plain text, numbers and yes or no.

    Raises:
        InputError: a figure is something else, or out of bounds.
    """
    if len(figures) > MOST_FIGURES:
        raise InputError(f"a record has {len(figures)} figures; {MOST_FIGURES} is the most")
    return {
        checked_text("the name of a figure", name, LONGEST_NAME): _plain(name, value)
        for name, value in figures.items()
    }


def _plain(name: str, value: object) -> Figure:
    if isinstance(value, str):
        return checked_text(f'the figure "{name}"', value, LONGEST_FIGURE_TEXT, lines=True)
    if isinstance(value, bool):
        return value
    if isinstance(value, int) and abs(value) <= LARGEST_WHOLE:
        return int(value)
    if isinstance(value, float) and math.isfinite(value):
        return float(value)
    raise InputError(
        f'the figure "{name}" is {shown(value)}; give text, yes or no, or a number'
        f" not beyond {LARGEST_WHOLE}"
    )


def shown(value: object) -> str:
    """A value cut short for a message; whole numbers may have more digits than can be printed."""
    if isinstance(value, int) and not isinstance(value, bool) and abs(value) > LARGEST_WHOLE:
        return f"a whole number of {value.bit_length()} bits"
    return repr(value)[:60]
