"""The list of screens: a letter goes there, whatever lies above the round is put away."""

from __future__ import annotations

from textual.app import ComposeResult

from benchround.screens.base import BenchScreen
from benchround.screens.destinations import DESTINATIONS, Destination
from benchround.screens.keys import GO_TO, bindings
from benchround.screens.text import Line, Role, fit, line, paragraph
from benchround.screens.widgets.key_bar import KeyBar
from benchround.screens.widgets.pick_list import PickList, Row, told
from benchround.screens.widgets.status import Status

LETTER_WIDE, NAME_WIDE = 4, 12


class GoToScreen(BenchScreen[str], inherit_bindings=False):
    """Every screen with its letter."""

    CSS_PATH = ["go_to.tcss"]  # noqa: RUF012 - as Textual has it
    BINDINGS = bindings(GO_TO)
    KEYS_OF = GO_TO
    AUTO_FOCUS = "PickList"

    def compose(self) -> ComposeResult:
        """List, status, foot."""
        yield PickList()
        yield Status()
        yield KeyBar(self.KEYS_OF)

    def on_mount(self) -> None:
        """Show the list."""
        head = paragraph("Go to: type the letter", self.size.width, Role.HEADING)
        self.query_one(PickList).show([*map(told, head), *map(_row, DESTINATIONS)])

    def action_move(self, by: int) -> None:
        """Go a line down or up."""
        self.query_one(PickList).step(by)

    def action_pick(self) -> None:
        """Go where the cursor stands."""
        self.bench.go_to(self.query_one(PickList).picked)

    def action_go(self, name: str) -> None:
        """Go there."""
        self.bench.go_to(name)

    def action_back(self) -> None:
        """Stay."""
        self.dismiss(None)


def _row(found: Destination) -> Row:
    def words(width: int) -> Line:
        room = max(0, width - LETTER_WIDE - NAME_WIDE)
        return line(
            (fit(found.letter, LETTER_WIDE), Role.KEY),
            (fit(found.name, NAME_WIDE), Role.STRONG),
            (fit(found.tells, room), Role.QUIET),
        )

    return Row(words, found.name)
