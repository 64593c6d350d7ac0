"""Words broken into lines of so many cells; nothing is lost."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from benchround.drawing.cells import cell_width, clean, head
from benchround.drawing.glyphs import Glyphs


def wrap(text: str, width: int, glyphs: Glyphs, indent: str = "") -> tuple[str, ...]:
    """Return the text in lines of at most so many cells, broken at spaces; nothing is lost.

    Args:
        text: anything.
        width: cells, taken as at least 2, the room of one wide letter.
        glyphs: the set of signs.
        indent: put before every line but the first.
    """
    width = max(2, width)
    indent = indent if len(indent) + 2 <= width else ""
    lines: list[str] = []
    now = ""
    for word in _pieces(clean(text, glyphs), width - len(indent)):
        trial = f"{now} {word}" if now else word
        if now and cell_width(trial) > width:
            lines.append(now)
            trial = indent + word
        now = trial
    return (*lines, now) if now else ()


def wrap_items(
    items: Iterable[str], width: int, glyphs: Glyphs, between: str = ", "
) -> tuple[str, ...]:
    """Return items in lines of at most so many cells, broken between items where that can be."""
    lines: list[str] = []
    now, tail = "", between.rstrip()
    for item in (clean(item, glyphs) for item in items):
        trial = f"{now}{between}{item}" if now else item
        if now and cell_width(trial) + len(tail) > width:
            lines.append(now + tail)
            trial = item
        now = trial
    broken = (wrap(line, width, glyphs) for line in [*lines, now])
    return tuple(part for parts in broken for part in parts)


def _pieces(text: str, width: int) -> Iterator[str]:
    for word in text.split():
        while cell_width(word) > width:
            first = head(word, width)
            yield first
            word = word[len(first) :]
        if word:
            yield word
