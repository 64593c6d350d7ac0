"""A card: a list on its front, a page on its back. Where there is room both are seen."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from textual.app import ComposeResult
from textual.containers import Container

from benchround.screens.page import PageScreen, Sheaf
from benchround.screens.text import Line
from benchround.screens.widgets.key_bar import KeyBar
from benchround.screens.widgets.pick_list import PickList, Row
from benchround.screens.widgets.status import Status
from benchround.screens.widgets.told import Told

TURNED = "-turned"
MOST_LINES = 100_000
"""More than any page has: going so far goes to its end."""


class CardScreen(PageScreen, inherit_bindings=False):
    """A head, a list and a page. The keys that move go to the side that lies up."""

    CSS_PATH = ["page.tcss", "card.tcss"]  # noqa: RUF012 - as Textual has it
    AUTO_FOCUS = "PickList"
    OF_ROWS: ClassVar[frozenset[str]] = frozenset()
    """Ids of keys at the foot that have nothing to do while the list is empty."""

    def __init__(self) -> None:
        super().__init__()
        self._asked = ""

    def head_lines(self, width: int) -> Sequence[Line]:
        """What the card is about."""
        return ()

    def rows(self) -> Sequence[Row]:
        """The list on the front."""
        return ()

    @property
    def picks(self) -> PickList:
        """The list."""
        return self.query_one(PickList)

    @property
    def foot_idle(self) -> frozenset[str]:
        """The keys that are not named at the foot, because there is nothing to use them on."""
        return frozenset() if any(row.key for row in self.picks.rows) else self.OF_ROWS

    @property
    def turned(self) -> bool:
        """Whether the back lies up."""
        return self.has_class(TURNED)

    def compose(self) -> ComposeResult:
        """Head, list and page, status, foot."""
        yield Told("head", self.head_lines)
        with Container(id="card"):
            yield PickList()
            yield Sheaf()
        yield Status()
        yield KeyBar(self.KEYS_OF)

    def on_mount(self) -> None:
        """Write the card."""
        self.write_card()

    def came_back(self, said: str | None) -> None:
        """Write the card anew after a sheet was closed; the cursor goes to the one row it added."""
        before = {row.key for row in self.picks.rows}
        self.write_card()
        added = [row.key for row in self.picks.rows if row.key not in before]
        if said and len(added) == 1:
            self.write_card(added[0])
        self.say(said or "")

    def write_card(self, key: str | None = None) -> None:
        """Write head, list and page anew.

        Args:
            key: the row to stand on; None: the same as before; empty: the first.
        """
        self.picks.show(self.rows(), key)
        self.query_one("#head", Told).rewrite(layout=True)
        self.query_one(Sheaf).rewrite()
        self.query_one(KeyBar).rewrite()

    def on_pick_list_moved(self) -> None:
        """Head and foot may tell of the row; what was asked of another one is no longer open."""
        self.query_one("#head", Told).rewrite()
        self.query_one(KeyBar).rewrite()
        if self._asked:
            self.say("")

    def say(self, words: str, *, bad: bool = False) -> None:
        """Say it; what was asked is no longer open."""
        self._asked = ""
        super().say(words, bad=bad)

    def confirmed(self, about: str, question: str) -> bool:
        """Whether a key was pressed for the second time; the first time the question is asked.

        Args:
            about: what is asked about.
            question: the words.
        """
        if self._asked == about:
            return True
        self.say(question)
        self._asked = about
        return False

    def action_undo(self) -> None:
        """Take back the last thing done."""
        gone = self.bench.doings.undo()
        self.write_card()
        self.say(gone.said if gone else "There is nothing to take back.")

    def action_turn(self) -> None:
        """Turn the card over."""
        self.toggle_class(TURNED)
        self.set_focus(self.query_one(Sheaf) if self.turned else self.picks)

    def action_move(self, by: int) -> None:
        """Go a line down or up on the side that lies up."""
        if self.turned:
            self.query_one(Sheaf).go(by)
        else:
            self.picks.step(by)

    def action_page(self, by: int) -> None:
        """Go a screenful down or up on the side that lies up."""
        if self.turned:
            self.action_leaf(by)
        else:
            self.picks.step_page(by)

    def action_end(self, by: int) -> None:
        """Go to the last line or the first on the side that lies up."""
        if self.turned:
            self.query_one(Sheaf).go(by * MOST_LINES)
        else:
            self.picks.step(by * len(self.picks.rows))
