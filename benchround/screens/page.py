"""A page to read: as long as it likes, moved with the arrow keys."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult

from benchround.screens.base import BenchScreen
from benchround.screens.keys import PAGE, bindings
from benchround.screens.text import Line, Role, fit, line
from benchround.screens.widgets.key_bar import KeyBar
from benchround.screens.widgets.paper import Paper, Sight
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
        self.draw_changes()

    def rewrite(self, *, layout: bool = False) -> None:
        """Ask for the lines again when they are drawn: a page may be long, and long to write."""
        self._written = None
        self.refresh(layout=layout)

    def on_resize(self) -> None:
        """Stay within the page."""
        self._written = None
        self.go(0)

    def sight(self, width: int, height: int) -> Sight:
        """The lines in sight; the last one says when there is more."""
        lines = self.written(width)
        found: list[tuple[Line, Role | None]] = [
            (words, None) for words in lines[self.top : self.top + height]
        ]
        left = len(lines) - self.top - height
        if left > 0 and found:
            screen = self.screen
            how = screen.more_key() if isinstance(screen, PageScreen) else ""
            found[-1] = (line((fit(f"{left + 1} more lines: {how}", width), Role.QUIET)), None)
        return found


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
