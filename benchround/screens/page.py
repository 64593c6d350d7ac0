"""A page to read: as long as it likes, moved with the arrow keys."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult

from benchround.screens.base import BenchScreen
from benchround.screens.keys import PAGE, bindings
from benchround.screens.text import Line, Role, fit, line
from benchround.screens.unrolled import Unrolled
from benchround.screens.widgets.key_bar import KeyBar
from benchround.screens.widgets.paper import Paper, Sight
from benchround.screens.widgets.status import Status

PAUSE_S = 0.3
"""Before lines out of sight are made: who opened the wrong page goes on by then."""
STEP_S, REST_S = 0.004, 0.001
"""How long lines out of sight are made at a time, and the time for keys between."""


class Sheaf(Paper, can_focus=True):
    """The lines of a page, of which a screenful is seen.

    Of a page that is long to make the lines in sight are drawn first; the rest are made while the
    grower reads, a few at a time, so that no key waits for them.
    """

    def __init__(self) -> None:
        super().__init__(id="sheaf")
        self.top = 0
        self._making: Unrolled | None = None

    def lines(self, width: int) -> Sequence[Line]:
        """The lines of the page."""
        screen = self.screen
        return screen.page_lines(width) if isinstance(screen, PageScreen) else ()

    def go(self, by: int) -> None:
        """Move so many lines down, or up if negative."""
        size = self.size
        last = max(0, self._reached(self.top + by + size.height) - size.height)
        self.top = max(0, min(last, self.top + by))
        self.draw_changes()
        for foot in self.screen.query(KeyBar):
            foot.rewrite()

    @property
    def at_end(self) -> bool:
        """Whether the last line is in sight; not while there is no room yet."""
        bottom = self.top + self.size.height
        return bool(self.size.height) and self._reached(bottom + 1) <= bottom

    def _reached(self, number: int) -> int:
        """How many lines there are, at least; fewer than the number only where there are fewer."""
        lines = self.written(self.size.width)
        return lines.reach(number) if isinstance(lines, Unrolled) else len(lines)

    def _make_on(self) -> None:
        """Make a few more lines, and say how many there are once all are made."""
        lines = self._written[1] if self._written is not None else None
        if not isinstance(lines, Unrolled) or lines is not self._making:
            return
        lines.make_for(STEP_S)
        if lines.whole:
            self._making = None
            self.draw_changes()
        else:
            self.set_timer(REST_S, self._make_on)

    def _make_later(self, lines: Unrolled) -> None:
        if self._making is not lines:
            self._making = lines
            self.set_timer(PAUSE_S, self._make_on)

    @property
    def all_at_once(self) -> bool:
        """Whether lines out of sight are made with the others: without a terminal no key waits."""
        return self.app.is_headless

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
        below = self._more_below(lines, self.top + height)
        if below and found:
            screen = self.screen
            how = screen.more_key() if isinstance(screen, PageScreen) else ""
            found[-1] = (line((fit(f"{below}: {how}", width), Role.QUIET)), None)
        return found

    def _more_below(self, lines: Sequence[Line], bottom: int) -> str:
        """How much there is below the lines in sight; not how many lines until all are made."""
        if isinstance(lines, Unrolled) and not lines.whole and not self.all_at_once:
            if lines.reach(bottom + 1) <= bottom:
                return ""
            if not lines.whole:
                self._make_later(lines)
                return "more lines"
        left = len(lines) - bottom
        return f"{left + 1} more lines" if left > 0 else ""


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

    @property
    def foot_idle(self) -> frozenset[str]:
        """At the end of the page there is no more of it."""
        return frozenset(("read-down",)) if self.query_one(Sheaf).at_end else frozenset()

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
