"""A list to pick from: rows drawn line by line, a cursor that keeps to its row."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from textual.message import Message

from benchround.core.frozen import dataclass
from benchround.screens.text import Line, Role, fit, line
from benchround.screens.widgets.paper import Paper, Sight

LEAD_WIDE = 2

Words = Callable[[int], Line]
"""A row's words at a width."""


@dataclass(frozen=True, slots=True)
class Row:
    """One row.

    Attributes:
        words: what it says at a width.
        key: what is picked with it; empty for a heading and for what is only read.
    """

    words: Words
    key: str = ""


def heading(words: str, more: str = "") -> Row:
    """A heading, with a few words at its end."""

    def lines(width: int) -> Line:
        room = max(0, width - len(more))
        return line((fit(words, room), Role.HEADING), (more, Role.QUIET))

    return Row(lines)


def told(words: Line) -> Row:
    """A row that is only read."""
    return Row(lambda width: words)


class PickList(Paper, can_focus=True):
    """Rows of which one is picked; headings are passed over."""

    class Moved(Message):
        """The cursor stands on another row."""

    def __init__(self) -> None:
        super().__init__(id="picks")
        self.rows: tuple[Row, ...] = ()
        self.cursor: int | None = None
        self._top = 0
        self._told: dict[tuple[int, int], Line] = {}

    @property
    def picked(self) -> str:
        """The key of the row under the cursor; empty where there is none."""
        return self.rows[self.cursor].key if self.cursor is not None else ""

    @property
    def position(self) -> tuple[int, int]:
        """Which row the cursor stands on, counted from 1, and how many can be picked."""
        keys = [number for number, row in enumerate(self.rows) if row.key]
        return (keys.index(self.cursor) + 1 if self.cursor in keys else 0), len(keys)

    def show(self, rows: Sequence[Row], key: str | None = None) -> None:
        """Show other rows.

        Args:
            rows: the rows.
            key: the row to stand on; None: the same as before, else the nearest.
        """
        wanted = self.picked if key is None else key
        before = self.cursor or 0
        self.rows = tuple(rows)
        keys = {row.key: number for number, row in enumerate(self.rows) if row.key}
        at = keys.get(wanted)
        if at is None and keys:
            at = min(keys.values(), key=lambda n: abs(n - before)) if key is None else None
            at = min(keys.values()) if at is None else at
        self.cursor = at
        self._told = {}
        self._follow()
        self.draw_changes()

    def go(self, index: int | None) -> None:
        """Put the cursor on a row; what cannot be picked leaves it where it is."""
        if index is None or index == self.cursor or not self.rows[index].key:
            return
        self.cursor = index
        self._follow()
        self.draw_changes()
        self.post_message(self.Moved())

    def step(self, by: int) -> None:
        """Go so many rows down, or up if negative."""
        keys = [number for number, row in enumerate(self.rows) if row.key]
        if self.cursor in keys:
            self.go(keys[max(0, min(len(keys) - 1, keys.index(self.cursor) + by))])

    def step_page(self, by: int) -> None:
        """Go a screenful down or up."""
        self.step(by * max(1, self.size.height - 2))

    def _first(self) -> int | None:
        return next((number for number, row in enumerate(self.rows) if row.key), None)

    def _follow(self) -> None:
        """Keep the cursor in sight, with what stands above the first row where there is room."""
        high = self.size.height
        if not high:
            return
        at = self.cursor or 0
        lead = 0 if at == self._first() else at - 1
        if self.cursor is None or at - lead >= high or (lead and self.rows[lead].key):
            lead = at
        self._top = min(self._top, lead)
        self._top = max(self._top, at - high + 1)
        self._top = max(0, min(self._top, len(self.rows) - high))

    def on_resize(self) -> None:
        """Keep the cursor in sight."""
        self._follow()
        self.draw_changes()

    def on_focus(self) -> None:
        """Show that the keys move this cursor."""
        self.draw_changes()

    def on_blur(self) -> None:
        """Show that the keys move something else."""
        self.draw_changes()

    def lines(self, width: int) -> Sequence[Line]:
        """Every row as a line; for tests and for copying out."""
        return [self._words(number, width) for number in range(len(self.rows))]

    def _words(self, number: int, width: int) -> Line:
        key = self.rows[number].key
        room = max(0, width - LEAD_WIDE) if key else width
        told = self._told.get((number, room))
        if told is None:
            told = self._told[(number, room)] = self.rows[number].words(room)
        lead = "> " if number == self.cursor else "  "
        return ((lead, Role.KEY), *told) if key else told

    def sight(self, width: int, height: int) -> Sight:
        """The rows in sight, the cursor's marked."""
        self._follow()  # the height may be another than when the cursor went there
        here = self.cursor if self.has_focus or not self.can_focus else None
        numbers = range(self._top, min(len(self.rows), self._top + height))
        return [(self._words(n, width), Role.CURSOR if n == here else None) for n in numbers]
