"""Words as lines of a screen, and the only place that makes them fit to be drawn.

What a grower typed is data: it never meets markup, it cannot move the cursor of the terminal, it
stays on its line, and it is cut to the room there is. Everything drawn goes through `spans`.
"""

from __future__ import annotations

import os
import re
import unicodedata
from collections.abc import Callable, Iterable, Sequence
from enum import StrEnum
from functools import lru_cache

from benchround.core.unit_words import OWN_MARKS

MOST_LETTERS = 2_000
"""What is longer is cut before it is measured: no line of a screen holds more."""
MOST_MARKS = 2
"""Accents kept over one letter; more would spill into other lines."""
CUT = ".."
CLAUSE_ENDS = re.compile(r"[,;:] | \(")
UNSEEN = frozenset({"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"})
"""Categories of characters that have no place on a line: controls, direction marks, line ends."""
UNKNOWN = "?"
"""Stands for what cannot be shown, here as in the pictures."""
SIMPLE_LOCALES = frozenset({"C", "POSIX"})


Say = Callable[[str], str]
_speech: list[Callable[[], Say]] = []
"""Gives what turns a sentence into the grower's units; empty while no season is open."""


def speak(say: Callable[[], Say]) -> None:
    """Say every sentence from now on in the units of the season that is open.

    Args:
        say: gives the season's own way of saying it, asked for each time it is needed.
    """
    _speech[:] = [say]


def in_units(text: str) -> str:
    """A sentence of the program in the grower's units."""
    return _speech[0]()(text) if _speech else text


class Role(StrEnum):
    """What a piece of text is, by meaning; the theme gives it its colour."""

    INK = "ink"
    STRONG = "strong"
    QUIET = "quiet"
    HEADING = "heading"
    OVERDUE = "overdue"
    LATE = "late"
    DUE = "due"
    HELD = "held"
    EARLY = "early"
    DONE = "done"
    BAD = "bad"
    CAUTION = "caution"
    KEY = "key"
    CURSOR = "cursor"
    FIELD = "field"
    CARET = "caret"


Span = tuple[str, Role]
Line = tuple[Span, ...]
BLANK: Line = ()


def line(*parts: str | Span, role: Role = Role.INK) -> Line:
    """A line from plain words and words with a role."""
    return tuple(part if isinstance(part, tuple) else (part, role) for part in parts)


def clean(text: str, most: int = MOST_LETTERS) -> str:
    """The text as it may stand on one line: no controls, no direction marks, not endless.

    Args:
        text: anything, from the keyboard, a file or another computer.
        most: letters kept.
    """
    if text.isascii() and text.isprintable() and len(text) <= most:
        return text
    return _clean(text[: most + 1], most, plain_letters_only())


@lru_cache(maxsize=4096)
def _clean(text: str, most: int, ascii_only: bool) -> str:
    signs: list[str] = []
    marks = 0
    for sign in unicodedata.normalize("NFC", text):
        if sign in OWN_MARKS:
            continue
        category = unicodedata.category(sign)
        marks = marks + 1 if category in ("Mn", "Me") else 0
        if marks > MOST_MARKS:
            continue
        blank = category == "Zs" or sign in "\t\n\r"
        signs.append(" " if blank else UNKNOWN if category in UNSEEN else sign)
    seen = "".join(signs)
    if ascii_only:
        from benchround.drawing.cells import spelled_plainly  # few terminals need it

        seen = spelled_plainly(seen)
    return seen if len(seen) <= most else seen[: most - len(CUT)] + CUT


@lru_cache(maxsize=1)
def plain_letters_only() -> bool:
    """Whether the terminal was said to show plain letters only (LANG=C, or not UTF-8).

    Python itself sets LC_CTYPE to C.UTF-8 where it finds the C locale, so that name tells nothing.
    """
    names = (os.environ.get(name, "") for name in ("LC_ALL", "LC_CTYPE", "LANG"))
    said = next((name for name in names if name and name != "C.UTF-8"), "")
    charset = said.partition(".")[2].partition("@")[0].lower().replace("-", "")
    return said in SIMPLE_LOCALES or charset not in ("", "utf8")


def width_of(text: str) -> int:
    """How many columns a cleaned text takes."""
    return len(text) if text.isascii() else _columns(text)


def _columns(text: str) -> int:
    """How many columns letters of any script take."""
    from rich.cells import cell_len  # most words are of plain letters: a start does without

    return cell_len(text)


def fit(text: str, width: int, *, typed: bool = False) -> str:
    """The text in exactly so many columns: padded, or cut with two dots.

    Args:
        text: anything.
        width: columns.
        typed: whether it is left in the units it is in: typed in a field, or turned already.
    """
    if width <= 0:
        return ""
    seen = clean(text if typed else in_units(text))
    wide = width_of(seen)
    if wide <= width:
        return seen + " " * (width - wide)
    if width <= len(CUT):
        return CUT[:width]
    if seen.isascii():
        return seen[: width - len(CUT)] + CUT
    from rich.cells import set_cell_size

    return set_cell_size(seen, width - len(CUT)) + CUT


def clause(text: str, width: int) -> str:
    """As many whole clauses of a text as fit, so that no word is cut; empty where none does.

    Args:
        text: clauses parted by a comma, a semicolon, a colon or a bracket.
        width: columns.
    """
    if width_of(clean(text)) <= width:
        return text
    ends = [found.start() for found in CLAUSE_ENDS.finditer(text)]
    return next((text[:end] for end in reversed(ends) if width_of(clean(text[:end])) <= width), "")


def wrap(text: str, width: int, indent: str = "") -> list[str]:
    """The text in lines of at most so many columns, broken at spaces; long words are cut through.

    Args:
        text: anything; it is cleaned first.
        width: columns, at least 1.
        indent: put before every line but the first, within the width.
    """
    width = max(1, width)
    indent = indent if width_of(indent) < width else ""
    lines: list[str] = []
    now = ""
    for word in _pieces(clean(in_units(text)).split(), width - width_of(indent)):
        lead = indent if lines else ""
        trial = f"{now} {word}" if now else lead + word
        if now and width_of(trial) > width:
            lines.append(now)
            trial = indent + word
        now = trial
    return [*lines, now] if now else lines


def _pieces(words: Iterable[str], width: int) -> Iterable[str]:
    for word in words:
        while width_of(word) > width:
            head = word[:width] if word.isascii() else _head(word, width)
            yield head
            word = word[len(head) :]
        if word:
            yield word


def _head(word: str, width: int) -> str:
    taken = 0
    for number, sign in enumerate(word):
        taken += _columns(sign)
        if taken > width:
            return word[: max(1, number)]
    return word


def paragraph(text: str, width: int, role: Role = Role.INK, indent: str = "") -> list[Line]:
    """A wrapped text as lines of one role."""
    return [line((words, role)) for words in wrap(text, width, indent)]


def spans(words: Line, width: int, whole: Role | None = None) -> Line:
    """A line as it is drawn: cleaned, cut or padded to the width.

    Args:
        words: the spans of the line.
        width: columns.
        whole: one role for the whole line, such as the cursor's; None: each span its own.
    """
    drawn: list[Span] = []
    left = width
    last = len(words) - 1
    for number, (text, role) in enumerate(words):
        seen = clean(text)
        wide = width_of(seen)
        if wide > left or (wide == left and number < last):
            seen, wide = fit(seen, left, typed=True) if wide > left else seen, left
        if wide:
            drawn.append((seen, whole or role))
            left -= wide
        if left <= 0:
            break
    if left > 0:
        drawn.append((" " * left, whole or Role.INK))
    return tuple(drawn)


def plain(lines: Sequence[Line]) -> str:
    """Lines as plain text, for tests and for copying out."""
    return "\n".join("".join(clean(text) for text, _ in words).rstrip() for words in lines)
