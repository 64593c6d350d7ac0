"""A page as plain text and as Markdown."""

from __future__ import annotations

import re
from collections.abc import Iterator

from benchround.feeds.letters import one_line
from benchround.feeds.pages import Block, Grid, Heading, Page, Tick, Words

GAP = "______"
_MARKS = re.compile(r"([\\`*_\[\]<>|~&#])")
"""Signs that can be marks of Markdown wherever they stand."""
_AT_START = re.compile(r"^([+\-=:]|\d+(?=[.)]))")
"""What makes a list, a rule or a heading at the beginning of a line."""


def as_text(page: Page) -> str:
    """The page as plain text."""
    return "\n".join((page.title, *(line for b in page.blocks for line in _plain(b)))) + "\n"


def as_markdown(page: Page) -> str:
    """The page as Markdown in which no text of the grower's is read as a mark."""
    lines = [f"# {escaped(page.title)}"]
    for block in page.blocks:
        lines.extend(_marked(block))
    return "\n".join(lines) + "\n"


def escaped(text: str) -> str:
    """A text in one line in which every sign that could be a mark of Markdown stands for itself."""
    return _MARKS.sub(r"\\\1", one_line(text))


def _line(text: str) -> str:
    """The same for a text that begins a line."""
    said = escaped(text)
    start = _AT_START.match(said)
    if start is None:
        return said
    at = start.end() if start[1][0].isdigit() else 0
    return f"{said[:at]}\\{said[at:]}"


def _plain(block: Block) -> Iterator[str]:
    match block:
        case Heading(text):
            yield ""
            yield one_line(text)
        case Words(text):
            yield one_line(text)
        case Tick(number, text, blanks):
            gaps = "".join(f"  {one_line(blank)}: {GAP}" for blank in blanks)
            yield f"[ ] {number:>2}  {one_line(text)}{gaps}"
        case Grid(columns, rows):
            yield from (" | ".join(one_line(cell) for cell in row) for row in (columns, *rows))


def _marked(block: Block) -> Iterator[str]:
    yield ""
    match block:
        case Heading(text, level):
            yield f"{'#' * level} {escaped(text)}"
        case Words(text):
            yield _line(text)
        case Tick(number, text, blanks):
            gaps = "".join(f" {escaped(blank)}: {escaped(GAP)}" for blank in blanks)
            yield f"- [ ] {number}\\. {escaped(text)}{gaps}"
        case Grid(columns, rows, numbers):
            marks = ("---:" if at in numbers else "---" for at in range(len(columns)))
            yield _row(columns)
            yield f"| {' | '.join(marks)} |"
            for row in rows:
                yield _row(row)


def _row(cells: tuple[str, ...]) -> str:
    return f"| {' | '.join(escaped(cell) for cell in cells)} |"
