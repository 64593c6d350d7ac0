"""A piece of paper whose lines the screen writes."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from benchround.screens.text import Line, Role, line
from benchround.screens.widgets.paper import Paper

LinesAt = Callable[[int], Sequence[Line]]


class Told(Paper):
    """Lines that come from elsewhere.

    Args:
        id: its name in the style sheet.
        lines_at: gives the lines at a width.
        more: said in the last line where not all fits into the height; empty: the paper is as high
            as its lines.
    """

    def __init__(self, id: str, lines_at: LinesAt, more: str = "") -> None:
        super().__init__(id=id)
        self._lines_at = lines_at
        self._more = more

    def lines(self, width: int) -> Sequence[Line]:
        """The lines, cut to the height there is where the height is given."""
        found = list(self._lines_at(width))
        high = self.size.height
        if self._more and high and len(found) > high:
            return [*found[: high - 1], line((self._more, Role.QUIET))]
        return found

    def on_resize(self) -> None:
        """Cut it to the new height."""
        if self._more:
            self.rewrite()
