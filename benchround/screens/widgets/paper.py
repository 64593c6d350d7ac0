"""Paper: a widget that draws lines of words, each with a role that the theme gives a colour."""

from __future__ import annotations

from collections.abc import Sequence

from rich.style import Style
from textual.geometry import Size
from textual.strip import Strip
from textual.widget import Widget

from benchround.screens.text import BLANK, Line, Role, plain, strip
from benchround.screens.theme import role_styles


class Paper(Widget):
    """Lines of words. What does not fit into its height is not drawn.

    A subclass gives `lines`; they are asked for again after `rewrite`.
    """

    def __init__(self, *, id: str | None = None, classes: str | None = None) -> None:
        super().__init__(id=id, classes=classes)
        self._written: tuple[int, Sequence[Line]] | None = None

    def lines(self, width: int) -> Sequence[Line]:
        """The lines at a width, from the top."""
        return ()

    def written(self, width: int) -> Sequence[Line]:
        """The lines at a width, kept until the next `rewrite`."""
        if self._written is None or self._written[0] != width:
            self._written = (width, self.lines(width))
        return self._written[1]

    def rewrite(self, *, layout: bool = False) -> None:
        """Ask for the lines again and draw them.

        Args:
            layout: the number of lines may have changed, so that the screen is laid out anew.
        """
        self._written = None
        self.refresh(layout=layout)

    @property
    def text(self) -> str:
        """What is written, as plain text."""
        return plain(self.written(self.size.width))

    def style_of(self, role: Role) -> Style:
        """The style of a role under the present theme."""
        return role_styles(self.app.theme)[role]

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        """As many lines as there are."""
        return len(self.written(width)) if width else 0

    def render_line(self, y: int) -> Strip:
        """One line, drawn."""
        width = self.size.width
        lines = self.written(width)
        return strip(lines[y] if y < len(lines) else BLANK, width, self.style_of)
