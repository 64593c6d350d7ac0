"""What every screen has: its keys, a line for what was done, and a foot."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar, cast

from textual.screen import Screen

from benchround.screens.widgets.status import Status

if TYPE_CHECKING:
    from benchround.desk import Desk
    from benchround.screens.app import BenchroundApp

Result = TypeVar("Result")


class BenchScreen(Screen[Result], inherit_bindings=False):
    """A screen of the program."""

    KEYS_OF = ""
    """Its name in the list of keys."""
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (110, "-wide")]  # noqa: RUF012 - as Textual has it
    VERTICAL_BREAKPOINTS = [(0, "-low"), (23, "-middle"), (34, "-high")]  # noqa: RUF012

    @property
    def bench(self) -> BenchroundApp:
        """The program this screen belongs to."""
        return cast("BenchroundApp", self.app)

    @property
    def desk(self) -> Desk:
        """The open season."""
        return self.bench.desk

    def say(self, words: str, *, bad: bool = False) -> None:
        """Say on this screen what was done, or why it was not."""
        self.query_one(Status).say(words, bad=bad)
