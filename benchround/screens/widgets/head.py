"""The head of the round: the day, how many tasks, the weather, and what is worth knowing first."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import TYPE_CHECKING

from benchround.core.season import Season
from benchround.core.task import Round
from benchround.screens.head_lines import Notes, head_lines, notes_of, with_place
from benchround.screens.text import BLANK, Line
from benchround.screens.widgets.paper import Paper

if TYPE_CHECKING:
    from benchround.desk import Desk
    from benchround.screens.sitting import Sitting


class RoundHead(Paper):
    """Two lines always; more where there is something to be said."""

    def __init__(self) -> None:
        super().__init__(id="head")
        self._round: Round | None = None
        self._season: Season | None = None
        self._today: date | None = None
        self._notes: Notes = ()
        self._at = (0, 0)
        self._kept: tuple[int, tuple[Line, ...]] | None = None

    def show(self, made: Round, desk: Desk, sitting: Sitting, position: tuple[int, int]) -> None:
        """Show the head of a round; the cursor stands at a task of so many."""
        self._round, self._season, self._today = made, desk.season, desk.today
        self._notes = notes_of(desk, sitting)
        self._at = position
        self._kept = None
        self.rewrite(layout=True)

    def stand(self, position: tuple[int, int]) -> None:
        """Say which task of how many the cursor stands on."""
        if position != self._at:
            self._at = position
            self.rewrite()

    def lines(self, width: int) -> Sequence[Line]:
        """Day and counts, weather, and notes."""
        if self._round is None or self._season is None or self._today is None:
            return [BLANK]
        if self._kept is None or self._kept[0] != width:
            told = head_lines(self._round, self._season, self._today, self._notes, width)
            self._kept = (width, tuple(told))
        first, *rest = self._kept[1]
        return [with_place(first, *self._at, width), *rest]
