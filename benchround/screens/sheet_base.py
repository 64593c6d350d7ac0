"""What every sheet has: a form, notes beside or beneath it, saving, and a way back."""

from __future__ import annotations

from abc import abstractmethod
from collections.abc import Callable, Mapping, Sequence
from typing import TypeVar

from textual.app import ComposeResult
from textual.containers import Container

from benchround.core.errors import BenchroundError, InputError
from benchround.screens.base import BenchScreen
from benchround.screens.text import Line, Role, line
from benchround.screens.widgets.field import Field
from benchround.screens.widgets.form import Form
from benchround.screens.widgets.key_bar import KeyBar
from benchround.screens.widgets.paper import Paper
from benchround.screens.widgets.status import Status

Value = TypeVar("Value")
KEPT = "What you typed before is here again; {} begins anew."


class SheetFault(InputError):
    """What is wrong with a sheet, by field.

    Args:
        faults: field -> what is wrong with it.
        words: what to say on the status line.
    """

    def __init__(self, faults: Mapping[str, str], words: str = "") -> None:
        number = len(faults)
        said = "one field wants another look" if number == 1 else f"{number} fields want a look"
        super().__init__(words or f"Nothing was recorded: {said}.")
        self.faults = faults


class Reading:
    """Reads the fields of a sheet one by one and gathers what is wrong with them."""

    def __init__(self) -> None:
        self.faults: dict[str, str] = {}

    def read(self, name: str, reader: Callable[[], Value], otherwise: Value) -> Value:
        """What a field says; `otherwise` where it cannot be understood, which is noted."""
        try:
            return reader()
        except InputError as error:
            self.faults[name] = str(error)
            return otherwise

    def finish(self) -> None:
        """Refuse the sheet if anything was wrong.

        Raises:
            SheetFault: what is wrong, by field.
        """
        if self.faults:
            raise SheetFault(self.faults)


class Title(Paper):
    """The head of a sheet."""

    def lines(self, width: int) -> Sequence[Line]:
        """What the sheet is about."""
        screen = self.screen
        return screen.title_lines(width) if isinstance(screen, Sheet) else ()


class Notes(Paper):
    """What the sheet has to say to what is typed."""

    def lines(self, width: int) -> Sequence[Line]:
        """The notes, cut to the height there is."""
        screen, high = self.screen, self.size.height
        found = list(screen.note_lines(width)) if isinstance(screen, Sheet) else []
        if high and len(found) > high:
            return [*found[: high - 1], line(("..", Role.QUIET))]
        return found

    def on_resize(self) -> None:
        """Cut them to the new height."""
        self.rewrite()


class Sheet(BenchScreen[str], inherit_bindings=False):
    """A sheet to fill in. Closing gives the sentence of what was recorded, or None."""

    CSS_PATH = ["sheet.tcss"]  # noqa: RUF012 - as Textual has it
    AUTO_FOCUS = "Form"

    @property
    def kept_as(self) -> str:
        """Under what name what was typed is kept."""
        return self.KEYS_OF

    @property
    def foot_first(self) -> str:
        """The id of a key that is named first at the foot while it is wanted; empty: none is."""
        return ""

    def make_fields(self) -> Sequence[Field]:
        """The fields, with their defaults."""
        return ()

    def title_lines(self, width: int) -> Sequence[Line]:
        """The head of the sheet."""
        return ()

    def note_lines(self, width: int) -> Sequence[Line]:
        """What is said beneath the form or beside it."""
        return ()

    def retell(self) -> None:
        """Work out anew what depends on what was typed."""

    @abstractmethod
    def save(self) -> str:
        """Record what the sheet says; the sentence for it.

        Raises:
            SheetFault: fields cannot be understood; nothing was recorded.
            BenchroundError: it could not be recorded.
        """

    @property
    def form(self) -> Form:
        """The form."""
        return self.query_one(Form)

    def compose(self) -> ComposeResult:
        """Title, form and notes, status, foot."""
        yield Title(id="title")
        with Container(id="sheet"):
            yield Form(self.make_fields())
            yield Notes(id="notes")
        yield Status()
        yield KeyBar(self.KEYS_OF)

    def on_mount(self) -> None:
        """Put back what was typed before."""
        kept = self.bench.half_filled.get(self.kept_as)
        if kept:
            self.form.restore(kept)
            self.say(KEPT.format(self.ring.named("new-sheet")))
        self._tell()

    def on_form_changed(self) -> None:
        """Work out anew what depends on the form."""
        self.forget_refusal(self.refusal)
        self._tell()

    def on_form_asked(self) -> None:
        """Show all keys; where there is no such page, say how to leave."""
        if any(key.action == "help" for key in self.ring.on(self.KEYS_OF)):
            self.action_help()
        else:
            self.say(self.way_out())

    def _tell(self) -> None:
        try:
            self.retell()
        except BenchroundError as error:
            self.bench.refuse(error)
        self.form.redraw()
        self.query_one("#title", Title).rewrite()
        self.query_one("#notes", Notes).rewrite()
        self.query_one(KeyBar).rewrite()

    def action_save(self) -> None:
        """Record what the sheet says and close it; with faults, show them and stay."""
        said = self.saved()
        self.bench.half_filled.pop(self.kept_as, None)
        self.dismiss(said)

    def saved(self) -> str:
        """Save what stands in the form; the sentence for it. Faults are shown at their fields.

        Raises:
            SheetFault: fields cannot be understood; nothing was recorded.
            BenchroundError: it could not be recorded.
        """
        self.form.now.settle()
        try:
            return self.save()
        except SheetFault as fault:
            self.form.errors(fault.faults)
            raise

    def action_field(self, by: int) -> None:
        """Go to the next field or the one before."""
        self.form.step(by)

    def action_choice(self, by: int) -> None:
        """Take the next choice or the one before."""
        self.form.pick(by)

    def action_empty(self) -> None:
        """Empty the field."""
        self.form.empty()

    def action_renew(self) -> None:
        """Forget what was typed."""
        self.bench.half_filled.pop(self.kept_as, None)
        for field in self.form.fields:
            field.reset()
        self.form.go(self.form.fields[0].id)
        self.say("Begun anew.")
        self._tell()

    def action_back(self) -> None:
        """Close the sheet and keep what was typed."""
        self.put_away()
        kept = self.kept_as in self.bench.half_filled
        self.dismiss("Kept as it is: open the sheet again to go on." if kept else None)

    def put_away(self) -> None:
        """Keep what was typed."""
        typed = self.form.typed()
        if typed:
            self.bench.half_filled[self.kept_as] = typed
        else:
            self.bench.half_filled.pop(self.kept_as, None)


def by_field(error: BenchroundError, labels: Mapping[str, str]) -> SheetFault:
    """An error that begins with a field's label or name, as a fault of that field.

    Args:
        error: what the desk said.
        labels: field -> label.
    """
    words = str(error)
    head, found, rest = words.partition(": ")
    for name, label in labels.items():
        if found and head in (label, name):
            return SheetFault({name: rest})
    return SheetFault({}, words)
