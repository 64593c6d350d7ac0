"""A page to read: as long as it likes, moved with the arrow keys."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.strip import Strip

from benchround.screens.base import BenchScreen
from benchround.screens.keys import PAGE, bindings
from benchround.screens.text import BLANK, Line, Role, fit, line, strip
from benchround.screens.widgets.key_bar import KeyBar
from benchround.screens.widgets.paper import Paper
from benchround.screens.widgets.status import Status


class Sheaf(Paper, can_focus=True):
    """The lines of a page, of which a screenful is seen."""

    def __init__(self) -> None:
        super().__init__(id="sheaf")
        self.top = 0

    def lines(self, width: int) -> Sequence[Line]:
        """The lines of the page."""
        screen = self.screen
        return screen.page_lines(width) if isinstance(screen, PageScreen) else ()

    def go(self, by: int) -> None:
        """Move so many lines down, or up if negative."""
        size = self.size
        last = max(0, len(self.written(size.width)) - size.height)
        self.top = max(0, min(last, self.top + by))
        self.refresh()

    def on_resize(self) -> None:
        """Stay within the page."""
        self._written = None
        self.go(0)

    def render_line(self, y: int) -> Strip:
        """One line in sight; the last one says when there is more."""
        width, high = self.size.width, self.size.height
        lines = self.written(width)
        number = self.top + y
        left = len(lines) - self.top - high
        if y == high - 1 and left > 0:
            screen = self.screen
            how = screen.more_key() if isinstance(screen, PageScreen) else ""
            more = line((fit(f"{left + 1} more lines: {how}", width), Role.QUIET))
            return strip(more, width, self.style_of)
        return strip(lines[number] if number < len(lines) else BLANK, width, self.style_of)


class PageScreen(BenchScreen[str], inherit_bindings=False):
    """A screen with one page."""

    CSS_PATH = ["page.tcss"]  # noqa: RUF012 - as Textual has it
    BINDINGS = bindings(PAGE)
    KEYS_OF = PAGE
    AUTO_FOCUS = "Sheaf"

    def page_lines(self, width: int) -> Sequence[Line]:
        """The lines of the page."""
        return ()

    def more_key(self) -> str:
        """The key that shows the rest of the page."""
        return "page down"

    def compose(self) -> ComposeResult:
        """Page, status, foot."""
        yield Sheaf()
        yield Status()
        yield KeyBar(self.KEYS_OF)

    def action_scroll(self, by: int) -> None:
        """Go a line down or up."""
        self.query_one(Sheaf).go(by)

    def action_leaf(self, by: int) -> None:
        """Go a screenful down or up."""
        sheaf = self.query_one(Sheaf)
        sheaf.go(by * max(1, sheaf.size.height - 1))

    def action_back(self) -> None:
        """Close the page."""
        self.dismiss(None)
