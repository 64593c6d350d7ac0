"""A card whose list takes the whole width; beneath it the words for the row under the cursor."""

from __future__ import annotations

from benchround.screens.card import CardScreen
from benchround.screens.page import Sheaf
from benchround.screens.widgets.told import Told


class WideCard(CardScreen, inherit_bindings=False):
    """A list with a page beneath it that follows the cursor."""

    CSS_PATH = ["page.tcss", "card.tcss", "wide_card.tcss"]  # noqa: RUF012 - as Textual has it

    def on_pick_list_moved(self) -> None:
        """Tell of the row the cursor went to."""
        self.tell()

    def tell(self) -> None:
        """Write head and page anew, the page from its first line."""
        self.query_one("#head", Told).rewrite(layout=True)
        sheaf = self.query_one(Sheaf)
        sheaf.top = 0
        sheaf.rewrite()

    def more_key(self) -> str:
        """The key that shows the rest of the page."""
        return "page down" if self.turned else "tab"

    def undo_last(self) -> None:
        """Take back the last thing recorded in this sitting, and say so."""
        gone = self.bench.doings.undo()
        self.write_card()
        self.say(gone.said if gone else "There is nothing to take back.")

    def action_undo(self) -> None:
        """Take back the last thing recorded."""
        self.undo_last()
