"""What every screen has: its keys, a line for what was done, and a foot."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING, Any, Self, TypeVar, cast

from textual import events
from textual.binding import BindingsMap
from textual.css.query import NoMatches
from textual.screen import Screen

from benchround.screens.sizes import HEIGHTS, WIDTHS, size_class
from benchround.screens.widgets.key_bar import KeyBar
from benchround.screens.widgets.line_edit import MOST_TYPED
from benchround.screens.widgets.status import Status

if TYPE_CHECKING:
    from textual.geometry import Size

    from benchround.desk import Desk
    from benchround.screens.app import BenchroundApp
    from benchround.screens.key_ring import KeyRing

Result = TypeVar("Result")
NOT_PASTED = "Pasted text is only taken in a field of a sheet: nothing was done with it."
CUT = f"A field takes {MOST_TYPED:,} letters: what was pasted beyond that was left out."


class BenchScreen(Screen[Result], inherit_bindings=False):
    """A screen of the program."""

    KEYS_OF = ""
    """Its name in the list of keys."""
    HORIZONTAL_BREAKPOINTS = list(WIDTHS)  # noqa: RUF012 - as Textual has it
    VERTICAL_BREAKPOINTS = list(HEIGHTS)  # noqa: RUF012

    def fit_to(self, size: Size) -> None:
        """Take the classes of a size before the screen is opened, so that it is laid out once."""
        for length, sizes in ((size.width, WIDTHS), (size.height, HEIGHTS)):
            self.add_class(size_class(length, sizes), update=False)

    @property
    def bench(self) -> BenchroundApp:
        """The program this screen belongs to."""
        return cast("BenchroundApp", self.app)

    @property
    def ring(self) -> KeyRing:
        """The keys as this grower has them."""
        return self.bench.ring

    def on_mount(self) -> None:
        """Take the grower's own keys."""
        if not self.ring.all_usual:
            self.take_keys()

    def take_keys(self) -> None:
        """Listen to the keys as they are now, and name them at the foot."""
        self._bindings = BindingsMap(self.ring.bindings(self.KEYS_OF))
        for foot in self.query(KeyBar):
            foot.rewrite()

    def on_key(self, event: events.Key) -> None:
        """Say of a key that does nothing how to leave, and where all keys are shown."""
        if all(event.key not in key.keys for key in self.ring.on(self.KEYS_OF)):
            self.say(self.way_out())

    def on_paste(self, event: events.Paste) -> None:
        """Say where pasted text is taken: its letters must not be read as keys."""
        event.stop()
        self.say(NOT_PASTED, bad=True)

    def on_form_cut(self) -> None:
        """Say that not all that was pasted had room."""
        self.say(CUT, bad=True)

    def on_letters_cut(self) -> None:
        """Say that not all that was pasted had room."""
        self.say(CUT, bad=True)

    def way_out(self) -> str:
        """How to leave, and how to get help, in one line."""
        known = {key.action: key for key in self.ring.on(self.KEYS_OF)}
        helps = f"{known['help'].shown_first} shows all keys" if "help" in known else ""
        leaves = known.get("app.quit") or known.get("leave")
        away = f"{leaves.shown_first} leaves, {self._what_stays()}" if leaves else ""
        return "; ".join(words for words in (away, helps) if words)

    def _what_stays(self) -> str:
        lost = getattr(self.app, "lost_on_leaving", False)  # before a first season there is none
        return "the sample is not kept" if lost else "everything is saved"

    @property
    def desk(self) -> Desk:
        """The open season."""
        return self.bench.desk

    @property
    def refusal(self) -> str:
        """Why the last thing asked for was not done, while the screen says so."""
        try:
            status = self.query_one(Status)  # which Textual finds again without looking for it
        except NoMatches:
            return ""
        return status.said if status.bad else ""

    def forget_refusal(self, words: str) -> None:
        """Take a refusal off the screen once something else was done; what was done stays.

        Args:
            words: what stood there before it was done.
        """
        if words and self.refusal == words:
            self.say("")

    def say(self, words: str, *, bad: bool = False) -> None:
        """Say on this screen what was done, or why it was not."""
        self.query_one(Status).say(words, bad=bad)

    @classmethod
    def arrive(cls, bench: BenchroundApp) -> Self:
        """The screen as it is when it is gone to from anywhere.

        Raises:
            BenchroundError: it cannot be opened now.
        """
        made: Self = cast("Any", cls)()
        return made

    def came_back(self, said: str | None) -> None:
        """A screen above was closed; `said` is what it recorded."""
        if said:
            self.say(said)

    def put_away(self) -> None:
        """The screen is closed from elsewhere: keep what is half done."""

    def require_open(self, day: date) -> None:
        """Refuse early, before a sheet is filled in in vain.

        Raises:
            BenchroundError: nothing can be recorded on that day, or in this season.
        """
        self.bench.require_open(day)

    def action_help(self) -> None:
        """Open the page of all keys."""
        self.bench.open("help", self.KEYS_OF)
