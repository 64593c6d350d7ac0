"""What every picture is made of: lines of spans with a role, and a grid to put signs on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from enum import StrEnum
from itertools import groupby
from typing import NamedTuple

from benchround.drawing.cells import cell_width, clean, cut, fit
from benchround.drawing.glyphs import ASCII, CONSOLE, UNICODE, Glyphs
from benchround.drawing.wrapping import wrap, wrap_items

__all__ = [
    "ASCII",
    "BLANK",
    "CONSOLE",
    "UNICODE",
    "Glyphs",
    "Grid",
    "Inked",
    "Line",
    "Role",
    "cell_width",
    "clean",
    "cut",
    "fit",
    "line_width",
    "paragraph",
    "plain",
    "within_width",
    "wrap",
    "wrap_items",
]


class Role(StrEnum):
    """What a span means. Whoever shows the lines gives each role its colour, or none."""

    TITLE = "title"
    LABEL = "label"
    TEXT = "text"
    QUIET = "quiet"
    AXIS = "axis"
    NOW = "now"
    GOOD = "good"
    WARN = "warn"
    BAD = "bad"
    DONE = "done"  # recorded
    AHEAD = "ahead"  # expected
    FLOWER = "flower"
    CROP = "crop"
    WATER = "water"
    COLD = "cold"
    HOT = "hot"
    LIMIT = "limit"
    OUTSIDE = "outside"
    INSIDE = "inside"
    SHUT = "shut"
    COUNT = "count"
    CURVE = "curve"


class Inked(NamedTuple):
    """A stretch of a line in one ink: text that means one thing."""

    text: str
    role: Role = Role.TEXT


Line = tuple[Inked, ...]
BLANK: Line = ()


def plain(lines: Iterable[Line]) -> str:
    """Return lines as text, without blanks at their ends."""
    return "\n".join("".join(span.text for span in line).rstrip() for line in lines)


def line_width(line: Line) -> int:
    """Return how many cells a line takes."""
    return sum(cell_width(span.text) for span in line)


def within_width(lines: Iterable[Line], width: int, glyphs: Glyphs) -> Iterator[Line]:
    """Yield the lines cleaned, each cut with an ellipsis where it is wider than the width."""
    for line in lines:
        spans: list[Inked] = []
        left = max(0, width)
        for text, role in line:
            seen = clean(text, glyphs)
            wide = cell_width(seen)
            if wide > left:
                if left:
                    spans.append(Inked(cut(seen, left, glyphs), role))
                break
            if seen:
                spans.append(Inked(seen, role))
            left -= wide
        yield tuple(spans)


def paragraph(
    text: str, width: int, glyphs: Glyphs, role: Role = Role.TEXT, indent: str = ""
) -> tuple[Line, ...]:
    """Return a text broken into lines of one role."""
    return tuple((Inked(words, role),) for words in wrap(text, width, glyphs, indent))


class Grid:
    """Rows of single cells to put signs on; what is put later covers what was there."""

    def __init__(self, width: int, height: int) -> None:
        self.width, self.height = max(0, width), max(0, height)
        self._cells = [[Inked(" ", Role.TEXT)] * self.width for _ in range(self.height)]

    def put(self, column: int, row: int, sign: str, role: Role) -> None:
        """Put one sign; outside the grid it is left out."""
        if 0 <= column < self.width and 0 <= row < self.height:
            self._cells[row][column] = Inked(sign, role)

    def line(self, row: int) -> Line:
        """Return a row, neighbours of one role joined."""
        grouped = groupby(self._cells[row], key=lambda span: span.role)
        return tuple(Inked("".join(span.text for span in spans), role) for role, spans in grouped)

    def lines(self) -> tuple[Line, ...]:
        """Return all rows."""
        return tuple(self.line(row) for row in range(self.height))
