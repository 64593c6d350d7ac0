"""The list of tasks: drawn line by line, so that five thousand cost no more than fifty."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Sequence

from benchround.core.season import Season
from benchround.core.task import Task
from benchround.screens.rows import Heading, Row, first_task, index_of, place_to_stand
from benchround.screens.task_lines import row_line
from benchround.screens.text import Line, Role
from benchround.screens.widgets.paper import MOST_KEPT, Paper, Sight


class TaskList(Paper, can_focus=True):
    """Rows with a cursor and marks.

    The cursor stands on a task, never on a heading, and keeps to it by its key.

    Args:
        moved: called when the cursor stands on another task, before anything is drawn, so that all
            that follows the cursor is drawn with it.
    """

    def __init__(self, moved: Callable[[], None]) -> None:
        super().__init__(id="tasks")
        self._moved = moved
        self.rows: tuple[Row, ...] = ()
        self.cursor: int | None = None
        self.marked: frozenset[str] = frozenset()
        self._season: Season | None = None
        self._top = 0
        self._numbers: list[int] = []
        self._kept: dict[int, tuple[Task, tuple[int, bool, bool], Line]] = {}

    @property
    def current(self) -> Task | None:
        """The task under the cursor."""
        row = self.rows[self.cursor] if self.cursor is not None else None
        return row if isinstance(row, Task) else None

    @property
    def chosen(self) -> tuple[Task, ...]:
        """The marked tasks in their order; the current one if none is marked."""
        marked = tuple(row for row in self.rows if isinstance(row, Task) and row.key in self.marked)
        if marked:
            return marked
        return (self.current,) if self.current else ()

    @property
    def position(self) -> tuple[int, int]:
        """Which task the cursor stands on, counted from 1, and how many there are."""
        at = bisect_right(self._numbers, self.cursor) if self.cursor is not None else 0
        return at, len(self._numbers)

    def show(self, rows: tuple[Row, ...], season: Season, key: str = "") -> None:
        """Show other rows.

        Args:
            rows: the rows.
            season: names what they are about.
            key: the task to stand on; empty: stay on the present one, else on the next.
        """
        wanted = index_of(rows, key) if key else None
        if wanted is None and self.cursor is not None:
            wanted = place_to_stand(self.rows, self.cursor, rows)
        self.rows, self._season = rows, season
        self._numbers = [number for number, row in enumerate(rows) if isinstance(row, Task)]
        self.cursor = wanted if wanted is not None else first_task(rows)
        if self.marked:
            self.marked &= {row.key for row in rows if isinstance(row, Task)}
        self._follow()
        self.draw_changes()

    def go(self, index: int | None) -> None:
        """Put the cursor on a row; a heading or nothing leaves it where it is."""
        if index is None or index == self.cursor or not isinstance(self.rows[index], Task):
            return
        self.cursor = index
        self._follow()
        self.draw_changes()
        self._moved()

    def step(self, by: int) -> None:
        """Go so many tasks down, or up if negative."""
        at = self.cursor
        for _ in range(abs(by)):
            found = self._next(at, 1 if by > 0 else -1)
            if found is None:
                break
            at = found
        self.go(at)

    def step_group(self, by: int) -> None:
        """Go to the first task under the next heading, or under the one before."""
        starts = [n + 1 for n, row in enumerate(self.rows[:-1]) if isinstance(row, Heading)]
        starts = [n for n in starts if isinstance(self.rows[n], Task)]
        at = self.cursor or 0
        ahead = [n for n in starts if n > at] if by > 0 else [n for n in starts if n < at][::-1]
        self.go(ahead[0] if ahead else None)

    def step_page(self, by: int) -> None:
        """Go a screenful of tasks down or up."""
        self.step(by * max(1, self.size.height - 2))

    def mark(self, keys: frozenset[str]) -> None:
        """Mark exactly these tasks."""
        self.marked = keys
        self.draw_changes()

    def _next(self, at: int | None, by: int) -> int | None:
        number = (at if at is not None else -1) + by
        while 0 <= number < len(self.rows):
            if isinstance(self.rows[number], Task):
                return number
            number += by
        return None

    def _follow(self) -> None:
        """Keep the cursor in sight, with the heading above it where there is room."""
        high = self.size.height
        if not high:
            return
        at = self.cursor or 0
        lead = at - 1 if at and isinstance(self.rows[at - 1], Heading) and high > 1 else at
        self._top = min(self._top, lead)
        below = at if self._next(at, 1) is not None else len(self.rows) - 1
        self._top = max(self._top, min(below - high + 1, lead))
        self._top = max(0, min(self._top, len(self.rows) - high))

    def on_resize(self) -> None:
        """Keep the cursor in sight when there is more room or less."""
        self._follow()
        self.draw_changes()

    def on_focus(self) -> None:
        """Draw the cursor anew."""
        self.draw_changes()

    def lines(self, width: int) -> Sequence[Line]:
        """Every row as a line; for tests and for copying out."""
        return [self.words(row, width) for row in self.rows]

    def words(self, row: Row, width: int) -> Line:
        """One row in words."""
        marked = isinstance(row, Task) and row.key in self.marked
        current = row is self.current
        return row_line(row, self._season, width, current=current, marked=marked)

    def sight(self, width: int, height: int) -> Sight:
        """The rows in sight, the cursor's marked."""
        rows = enumerate(self.rows[self._top : self._top + height], start=self._top)
        return [
            (self._words_of(row, width), Role.CURSOR if number == self.cursor else None)
            for number, row in rows
        ]

    def _words_of(self, row: Row, width: int) -> Line:
        """A row in words, kept as long as the round hands out the same task."""
        if isinstance(row, Heading):
            return self.words(row, width)
        state = width, row is self.current, bool(self.marked) and row.key in self.marked
        kept = self._kept.get(id(row))
        if kept is None or kept[0] is not row or kept[1] != state:
            if len(self._kept) >= MOST_KEPT:
                self._kept.clear()
            kept = self._kept[id(row)] = (row, state, self.words(row, width))
        return kept[2]
