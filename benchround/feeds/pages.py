"""What a printed page says, before it is known whether it becomes text, Markdown or a PDF."""

from __future__ import annotations

from benchround.core.frozen import dataclass


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading; level 1 is the page's title."""

    text: str
    level: int = 2


@dataclass(frozen=True, slots=True)
class Words:
    """A paragraph."""

    text: str


@dataclass(frozen=True, slots=True)
class Tick:
    """A box to tick, with its number, what to do, and room for figures.

    Attributes:
        blanks: what is to be written in by hand, each with its own gap.
    """

    number: int
    text: str
    blanks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Grid:
    """A table: a heading for each column, and rows of as many cells.

    Attributes:
        numbers: positions of the columns that hold numbers, which are set to the right.
    """

    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    numbers: frozenset[int] = frozenset()


Block = Heading | Words | Tick | Grid


@dataclass(frozen=True, slots=True)
class Page:
    """A page's blocks from top to bottom; where it is too long it goes on to further sheets.

    Attributes:
        foot: what further sheets are known by; empty: the title.
    """

    title: str
    blocks: tuple[Block, ...]
    foot: str = ""
