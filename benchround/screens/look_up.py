"""A screen to look something up on: letters above, what goes by them beneath, enter opens it."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Sequence

from textual.app import ComposeResult
from textual.containers import Container

from benchround.core.errors import BenchroundError
from benchround.screens.base import BenchScreen
from benchround.screens.text import Line
from benchround.screens.widgets.key_bar import KeyBar
from benchround.screens.widgets.letters import Letters
from benchround.screens.widgets.pick_list import PickList, Row
from benchround.screens.widgets.status import Status
from benchround.screens.widgets.told import Told


class LookUpScreen(BenchScreen[str], inherit_bindings=False):
    """Rows that follow the letters typed. A subclass finds them and opens one."""

    CSS_PATH = ["look_up.tcss"]  # noqa: RUF012 - as Textual has it
    AUTO_FOCUS = "Letters"
    LABEL = "find"

    def found(self, letters: str) -> Sequence[Row]:
        """The rows that go by the letters."""
        return ()

    def found_words(self) -> str:
        """How much was found, in a few words."""
        at, of = self.picks.position
        return f"{at} of {of}" if of else "none"

    def head_lines(self, width: int) -> Sequence[Line]:
        """What stands above the letters."""
        return ()

    def aside_lines(self, width: int) -> Sequence[Line]:
        """What there is to know of the row under the cursor."""
        return ()

    @abstractmethod
    def open_picked(self, key: str) -> None:
        """Open what a row stands for."""

    @property
    def picks(self) -> PickList:
        """The rows."""
        return self.query_one(PickList)

    @property
    def letters(self) -> Letters:
        """The line of letters."""
        return self.query_one(Letters)

    def compose(self) -> ComposeResult:
        """Head, letters, rows and what is told of one, status, foot."""
        yield Told("head", self.head_lines)
        yield Letters(self.LABEL)
        with Container(id="body"):
            picks = PickList()
            picks.can_focus = False
            yield picks
            yield Told("aside", self.aside_lines, "..")
        yield Status()
        yield KeyBar(self.KEYS_OF)

    def on_mount(self) -> None:
        """Show everything there is."""
        self.show_found()

    def came_back(self, said: str | None) -> None:
        """Look again after what was opened has been closed."""
        self.show_found()
        self.say(said or "")

    def on_letters_changed(self) -> None:
        """Follow the letters."""
        self.show_found("")
        self.say("")

    def on_pick_list_moved(self) -> None:
        """Tell of the row the cursor went to."""
        self._tell()

    def show_found(self, key: str | None = None) -> None:
        """Look anew.

        Args:
            key: the row to stand on; None: the same as before; empty: the first.
        """
        self.picks.show(self.found(self.letters.typed), key)
        self.query_one("#head", Told).rewrite(layout=True)
        self._tell()

    def _tell(self) -> None:
        self.letters.tell(self.found_words())
        self.query_one("#aside", Told).rewrite()

    def action_pick(self) -> None:
        """Open the row under the cursor."""
        if not self.picks.picked:
            raise BenchroundError(self.nothing_words())
        self.open_picked(self.picks.picked)

    def nothing_words(self) -> str:
        """What to say where no row goes by the letters."""
        return "Nothing goes by these letters: take some away."

    def action_move(self, by: int) -> None:
        """Go a row down or up."""
        self.picks.step(by)

    def action_page(self, by: int) -> None:
        """Go a screenful down or up."""
        self.picks.step_page(by)

    def action_empty(self) -> None:
        """Take the letters away."""
        self.letters.put("")

    def action_back(self) -> None:
        """Take the letters away; without any, close."""
        if self.letters.typed:
            self.letters.put("")
        else:
            self.dismiss(None)
