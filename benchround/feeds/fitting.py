"""Fitting text into a box: smaller, then on more lines, never cut off."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence

from benchround.core.frozen import dataclass
from benchround.core.units import INCH_MM
from benchround.feeds.letters import clusters

POINT_MM = INCH_MM / 72
"""A point in millimetres: 1/72 inch, as PDF counts."""
LEADING = 1.2
"""Height of a line over the size of its letters (printers' usual, no source)."""
STEP_PT = 0.25
LEAST_PT = 1.0
READABLE_PT = 5.0
"""Letters below this are hard to read on a label (our proposal)."""

Measure = Callable[[str], float]
"""Gives a text's width in mm at a size of one point."""


@dataclass(frozen=True, slots=True)
class Fitted:
    """Lines of text and the size at which they fit."""

    lines: tuple[str, ...]
    size_pt: float

    @property
    def line_mm(self) -> float:
        """Height of one line."""
        return line_height_mm(self.size_pt)

    @property
    def height_mm(self) -> float:
        """Height of all lines."""
        return len(self.lines) * self.line_mm

    @property
    def readable(self) -> bool:
        """Whether the letters are large enough to read."""
        return self.size_pt >= READABLE_PT


def line_height_mm(size_pt: float) -> float:
    """The height a line takes at a size."""
    return size_pt * LEADING * POINT_MM


def fit(
    paragraphs: Sequence[str],
    width_mm: float,
    height_mm: float,
    largest_pt: float,
    measure: Measure,
    unbroken_pt: float = math.inf,
) -> Fitted:
    """The largest size at which every word of the paragraphs stands in the box.

    A paragraph begins on a line of its own. Below the least size it is set at the least size,
    beyond the box rather than cut off.

    Args:
        paragraphs: the texts; empty ones take no line.
        width_mm: width of the box.
        height_mm: height of the box.
        largest_pt: the size to begin at.
        measure: gives a text's width.
        unbroken_pt: a size from which on paragraphs are kept to one line each, where they fit so.
    """
    texts = [text for text in paragraphs if text]
    widest = max((measure(text) for text in texts), default=0.0)
    if widest > 0:
        in_width = width_mm / widest
        in_height = height_mm / (len(texts) * line_height_mm(1.0))
        whole_pt = math.floor(min(largest_pt, in_width, in_height) / STEP_PT) * STEP_PT
        if whole_pt >= unbroken_pt:
            return Fitted(tuple(texts), whole_pt)
    size = largest_pt
    while size > LEAST_PT:
        if len(texts) * line_height_mm(size) <= height_mm + 1e-9:
            lines = tuple(line for text in texts for line in wrap(text, width_mm, size, measure))
            if len(lines) * line_height_mm(size) <= height_mm + 1e-9:
                return Fitted(lines, size)
        size -= STEP_PT
    lines = tuple(line for text in texts for line in wrap(text, width_mm, LEAST_PT, measure))
    return Fitted(lines, LEAST_PT)


def wrap(text: str, width_mm: float, size_pt: float, measure: Measure) -> tuple[str, ...]:
    """A text in lines no wider than the box; words longer than a line are broken by letters."""
    most = width_mm / size_pt
    space = measure(" ")
    lines: list[str] = []
    words: list[str] = []
    used = 0.0
    for word in text.split():
        for piece in _pieces(word, most, measure):
            wide = measure(piece)
            if words and used + space + wide > most + 1e-9:
                lines.append(" ".join(words))
                words, used = [], 0.0
            used += wide + (space if words else 0.0)
            words.append(piece)
    if words:
        lines.append(" ".join(words))
    return tuple(lines)


def _pieces(word: str, most: float, measure: Measure) -> Iterator[str]:
    if measure(word) <= most + 1e-9:
        yield word
        return
    piece, used = "", 0.0
    for letter in clusters(word):
        wide = measure(letter)
        if piece and used + wide > most:
            yield piece
            piece, used = "", 0.0
        piece += letter
        used += wide
    yield piece
