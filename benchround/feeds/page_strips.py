"""Cutting a page into strips that are set one below the other, each at a known height."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

from benchround.core.frozen import dataclass
from benchround.feeds.fitting import POINT_MM, line_height_mm
from benchround.feeds.pages import Block, Grid, Heading, Page, Tick, Words
from benchround.feeds.pdf_text import Ink

HEADING_TIMES = {1: 1.5, 2: 1.15, 3: 1.0}
"""Size of a heading over the body's, by its level."""
ABOVE_EMS = {1: 0.0, 2: 0.7, 3: 0.4}
"""Room above a heading, by its level."""
NUMBER_EMS, BOX_EMS, GAP_EMS, BETWEEN_EMS = 1.4, 0.8, 4.5, 0.6
"""Room for a tick's number, its box, a gap to write in and the space between, in body sizes."""
CELL_GAP_MM = 2.0
LONGEST_WORD_EMS = 14.0
"""A longer word of a table is torn rather than the table set smaller: some thirty letters."""
MOST_LINES = 12
"""Lines of a table's row that are kept together; more would not stand on the smallest paper."""

Draw = Callable[[float, float], None]
"""Draws something, given its left and top edge."""


@dataclass(frozen=True, slots=True)
class Strip:
    """A strip of a column that is not to be torn apart.

    Attributes:
        draw: draws it.
        keep: whether it must not be the last of a column, as a heading.
        again: strips drawn once more above it where it begins a column, as a table's head.
    """

    height_mm: float
    draw: Draw
    keep: bool = False
    again: tuple[Strip, ...] = ()


@dataclass(frozen=True, slots=True)
class Setting:
    """How a page is set: with what, how large, and how wide a column is."""

    pen: Ink
    size_pt: float
    across_mm: float

    @property
    def em_mm(self) -> float:
        """The size of the letters in mm."""
        return self.size_pt * POINT_MM

    def strips(self, page: Page) -> list[Strip]:
        """The page's strips from top to bottom."""
        found = [self._heading(Heading(page.title, 1))]
        for block in page.blocks:
            found.extend(self._block(block))
        return found

    def _block(self, block: Block) -> Iterator[Strip]:
        match block:
            case Heading():
                yield self._heading(block)
            case Words(text):
                for line in self.pen.wrap(text, self.across_mm, self.size_pt):
                    yield self._line(line)
            case Tick():
                yield self._tick(block)
            case Grid():
                yield from self._grid(block)

    def _line(self, line: str) -> Strip:
        def draw(left: float, top: float) -> None:
            self.pen.lines([line], left, top, self.size_pt)

        return Strip(line_height_mm(self.size_pt), draw)

    def _heading(self, heading: Heading) -> Strip:
        size = self.size_pt * HEADING_TIMES[heading.level]
        above = ABOVE_EMS[heading.level] * self.em_mm
        lines = self.pen.wrap(heading.text, self.across_mm, size, bold=True)

        def draw(left: float, top: float) -> None:
            self.pen.lines(lines, left, top + above, size, bold=True)

        return Strip(above + len(lines) * line_height_mm(size), draw, keep=True)

    def _tick(self, tick: Tick) -> Strip:
        em, high = self.em_mm, line_height_mm(self.size_pt)
        box = em * BOX_EMS
        indent = box + em * (NUMBER_EMS + BETWEEN_EMS)
        room = self.across_mm - indent
        lines = self.pen.wrap(tick.text, room, self.size_pt)
        gaps = self._gaps(tick.blanks, lines, room)
        count = max([len(lines), *(row + 1 for row, _, _ in gaps)])

        def draw(left: float, top: float) -> None:
            self.pen.box(left, top + (high - box) / 2, box, box)
            end = left + indent - em * BETWEEN_EMS / 2
            self.pen.lines([str(tick.number)], 0, top, self.size_pt, bold=True, right=end)
            self.pen.lines(lines, left + indent, top, self.size_pt)
            for row, along, text in gaps:
                self._gap(text, left + indent + along, top + row * high)

        return Strip(count * high + em * 0.2, draw)

    def _gaps(
        self, blanks: Sequence[str], lines: Sequence[str], room: float
    ) -> list[tuple[int, float, str]]:
        """Where gaps to write in go: line, distance from the left, and the words before the gap."""
        em, measure = self.em_mm, self.pen.measure()
        row = max(len(lines) - 1, 0)
        used = measure(lines[-1]) * self.size_pt if lines else 0.0
        found: list[tuple[int, float, str]] = []
        for blank in blanks:
            text = self.pen.ready(f"{blank}:")
            wide = measure(text) * self.size_pt + em * GAP_EMS
            if used > 0 and used + em + wide > room:
                row, used = row + 1, 0.0
            start = used + em if used > 0 else 0.0
            found.append((row, start, text))
            used = start + wide
        return found

    def _gap(self, text: str, left: float, top: float) -> None:
        self.pen.lines([text], left, top, self.size_pt)
        em = self.em_mm
        start = left + self.pen.measure()(text) * self.size_pt
        base = top + line_height_mm(self.size_pt) * 0.9
        self.pen.rule(start + em * 0.3, base, start + em * GAP_EMS, base)

    def _grid(self, grid: Grid) -> Iterator[Strip]:
        widths = self._column_widths(grid)
        (head,) = self._cells(grid, grid.columns, widths, bold=True)
        yield head
        for row in grid.rows:
            for strip in self._cells(grid, row, widths):
                yield Strip(strip.height_mm, strip.draw, again=(head,))

    def _cells(
        self, grid: Grid, row: Sequence[str], widths: Sequence[float], *, bold: bool = False
    ) -> Iterator[Strip]:
        """A row, in further strips where a cell has more lines than are kept together."""
        wrapped = [
            self.pen.wrap(cell, width, self.size_pt, bold=bold)
            for cell, width in zip(row, widths, strict=True)
        ]
        for start in range(0, max([1, *map(len, wrapped)]), MOST_LINES):
            piece = [lines[start : start + MOST_LINES] for lines in wrapped]
            yield self._row(grid, piece, widths, bold=bold)

    def _row(
        self,
        grid: Grid,
        wrapped: Sequence[Sequence[str]],
        widths: Sequence[float],
        *,
        bold: bool,
    ) -> Strip:
        high = max([1, *(len(lines) for lines in wrapped)]) * line_height_mm(self.size_pt)

        def draw(left: float, top: float) -> None:
            at_mm = left
            for at, (lines, width) in enumerate(zip(wrapped, widths, strict=True)):
                right = at_mm + width if at in grid.numbers else None
                self.pen.lines(lines, at_mm, top, self.size_pt, bold=bold, right=right)
                at_mm += width + CELL_GAP_MM
            if bold:
                self.pen.rule(left, top + high, left + self.across_mm, top + high)

        return Strip(high + (0.4 if bold else 0.1) * self.em_mm, draw, keep=bold)

    def whole_words(self, page: Page) -> bool:
        """Whether no word of a table has to be torn apart for want of room."""
        grids = (block for block in page.blocks if isinstance(block, Grid))
        return all(sum(self._least_widths(grid)) <= self._room(grid) for grid in grids)

    def _column_widths(self, grid: Grid) -> list[float]:
        """Widths by what stands in the columns; where that is too much, the widest give way."""
        room = self._room(grid)
        wanted = [self._widest(column) for column in _columns(grid)]
        if sum(wanted) <= room:
            return wanted
        least = self._least_widths(grid)
        return _level(wanted, least if sum(least) <= room else [0.0] * len(least), room)

    def _room(self, grid: Grid) -> float:
        return self.across_mm - CELL_GAP_MM * (len(grid.columns) - 1)

    def _least_widths(self, grid: Grid) -> list[float]:
        """The widths of the longest words of the columns that are not to be torn."""
        most = LONGEST_WORD_EMS * self.em_mm
        return [
            min(self._widest([word for cell in column for word in cell.split()]), most)
            for column in _columns(grid)
        ]

    def _widest(self, column: Sequence[str]) -> float:
        """The width of the widest cell of a column, the first being its bold head."""
        plain, bold = self.pen.measure(), self.pen.measure(bold=True)
        head, *cells = dict.fromkeys(column)
        wide = [bold(self.pen.ready(head)), *(plain(self.pen.ready(cell)) for cell in cells)]
        return max(wide) * self.size_pt + 0.2


def _columns(grid: Grid) -> list[list[str]]:
    return [[name, *(row[at] for row in grid.rows)] for at, name in enumerate(grid.columns)]


def _level(wanted: Sequence[float], least: Sequence[float], room: float) -> list[float]:
    """The widths when the widest columns are cut to one width, none below its least."""
    fixed: dict[int, float] = {}
    while True:
        free = [at for at in range(len(wanted)) if at not in fixed]
        most = _cut(sorted(wanted[at] for at in free), room - sum(fixed.values()))
        short = {at: least[at] for at in free if min(wanted[at], most) < least[at]}
        if not short:
            return [fixed.get(at, min(width, most)) for at, width in enumerate(wanted)]
        fixed.update(short)


def _cut(widths: Sequence[float], room: float) -> float:
    """The width at which the widest of the columns must be cut so that all fill the room."""
    left, rest = room, len(widths)
    for width in widths:
        if width * rest > left:
            return left / rest
        left, rest = left - width, rest - 1
    return max(widths, default=0.0)
