"""The round as it is first drawn, before Textual is read: the very lines its screen shows.

Reading Textual takes longer than all else at a start, and longer still on an old laptop. The grower
reads the round meanwhile; then the screen is drawn over it and looks the same. Keys typed until
then wait for it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import zip_longest
from typing import TYPE_CHECKING

from benchround.core.errors import BenchroundError
from benchround.core.task import Round, Task
from benchround.screens.detail_lines import cautions_of, detail_lines
from benchround.screens.foot_line import foot_line
from benchround.screens.head_lines import head_lines, notes_of, with_place
from benchround.screens.keys import ROUND
from benchround.screens.rows import Row, first_task, rows_of
from benchround.screens.sizes import HEIGHTS, HIGH, LOW, MIDDLE, WIDE, WIDTHS, size_class
from benchround.screens.steered import RULE, Drawn
from benchround.screens.task_lines import row_line
from benchround.screens.text import BLANK, Line, Role, spans, speak

if TYPE_CHECKING:
    from benchround.desk import Desk
    from benchround.screens.sitting import Sitting

DETAIL_HIGH: Mapping[str, int] = {LOW: 5, MIDDLE: 8, HIGH: 12}
"""Lines of the detail beneath the list, the rule above it included."""
DETAIL_SHARE, DETAIL_LEAST = 30, 46
"""Per cent of the columns, and the least, of the detail beside the list, its rule included."""
ABOVE, BESIDE = "-", "| "
FOOT_HIGH = 2
"""The line for what was done, and the keys."""


def first_picture(desk: Desk, sitting: Sitting, columns: int, lines: int) -> list[Drawn]:
    """Today's round as its screen opens, line by line; empty where there is no room for it.

    Args:
        desk: the open season.
        sitting: what the grower begins with.
        columns: of the terminal.
        lines: of the terminal.
    """
    speak(lambda: desk.season.unit_words)
    try:
        made = desk.round()
    except BenchroundError:
        return []  # the screen says what is wrong
    ring = sitting.ring
    rows = rows_of(made, desk.season, key=ring.named("early"))
    head = _head(desk, sitting, made, rows, columns)
    high = lines - len(head) - FOOT_HIGH
    wide = size_class(columns, WIDTHS) == WIDE
    beneath = 0 if wide else DETAIL_HIGH[size_class(lines, HEIGHTS)]
    if high - beneath < 1:
        return []
    draw = _beside if wide else _above
    foot = (BLANK, foot_line(ring.footer_words(ROUND), columns))
    return [
        *(spans(words, columns) for words in head),
        *draw(_Body(desk, made, rows, ring.named("why")), columns, high, beneath),
        *(spans(words, columns) for words in foot),
    ]


def _head(
    desk: Desk, sitting: Sitting, made: Round, rows: Sequence[Row], columns: int
) -> list[Line]:
    notes = notes_of(desk, sitting)
    first, *rest = head_lines(made, desk.season, desk.today, notes, columns)
    number = sum(isinstance(row, Task) for row in rows)
    return [with_place(first, min(1, number), number, columns), *rest]


class _Body:
    """The list, and the detail of its first task."""

    def __init__(self, desk: Desk, made: Round, rows: Sequence[Row], why_key: str) -> None:
        self._season, self._day, self._rows, self._why_key = desk.season, made.day, rows, why_key
        self._cursor = first_task(rows)

    def listed(self, columns: int, high: int) -> Iterator[Drawn]:
        """The list from its top, the cursor on the first task."""
        for number in range(high):
            if number >= len(self._rows):
                yield spans(BLANK, columns)
                continue
            here = number == self._cursor
            words = row_line(self._rows[number], self._season, columns, current=here)
            yield spans(words, columns, Role.CURSOR if here else None)

    def told(self, columns: int, high: int) -> Iterator[Drawn]:
        """The detail of the first task."""
        task = self._rows[self._cursor] if self._cursor is not None else None
        found: Sequence[Line] = ()
        if isinstance(task, Task):
            cautions = cautions_of(task, self._season, self._day)
            found = detail_lines(task, self._season, cautions, columns, high, self._why_key)
        for _, words in zip_longest(range(high), found[:high], fillvalue=BLANK):
            yield spans(words, columns)


def _above(body: _Body, columns: int, high: int, beneath: int) -> Iterator[Drawn]:
    yield from body.listed(columns, high - beneath)
    yield ((ABOVE * columns, RULE),)
    yield from body.told(columns, beneath - 1)


def _beside(body: _Body, columns: int, high: int, _: int) -> Iterator[Drawn]:
    beside = max(DETAIL_LEAST, columns * DETAIL_SHARE // 100)
    listed, told = body.listed(columns - beside, high), body.told(beside - len(BESIDE), high)
    for left, right in zip(listed, told, strict=True):
        yield (*left, (BESIDE, RULE), *right)
