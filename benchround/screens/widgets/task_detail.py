"""What there is to know of the task under the cursor, as much as fits."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, cast

from benchround.core.season import Season
from benchround.core.task import Task
from benchround.screens.detail_lines import Cautions, detail_lines
from benchround.screens.text import Line
from benchround.screens.widgets.paper import Paper

if TYPE_CHECKING:
    from benchround.screens.app import BenchroundApp


class TaskDetail(Paper):
    """The task in full; what does not fit is on the page the key for why opens."""

    def __init__(self) -> None:
        super().__init__(id="detail")
        self._shown: Task | None = None
        self._season: Season | None = None
        self._cautions: Cautions = ()

    def show(self, task: Task | None, season: Season, cautions: Cautions) -> None:
        """Show another task with its cautions as (words, whether in full)."""
        self._shown, self._season, self._cautions = task, season, cautions
        self.rewrite()

    def lines(self, width: int) -> Sequence[Line]:
        """The rule above, and the task, cut to the height there is."""
        if self._shown is None or self._season is None:
            return ()
        why = cast("BenchroundApp", self.app).ring.named("why")
        high = self.size.height
        return detail_lines(self._shown, self._season, self._cautions, width, high, why)

    def on_resize(self) -> None:
        """Cut it to the new height."""
        self.rewrite()
