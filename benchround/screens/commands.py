"""Finding a command by its words: the keys of the screen beneath, each with what it does."""

from __future__ import annotations

from collections.abc import Sequence

from benchround.screens.key_ring import KeyRing
from benchround.screens.keys import COMMANDS, bindings
from benchround.screens.sheet_base import Sheet, SheetFault
from benchround.screens.text import Line, Role, paragraph
from benchround.screens.widgets.field import Choice, Field, Finder, among

HERE = "find a command"


class CommandSheet(Sheet, inherit_bindings=False):
    """Choose a command of a screen. Closing gives the id of its key, or None.

    Args:
        about: the name of the screen in the list of keys.
        ring: the keys as the grower has them.
    """

    BINDINGS = bindings(COMMANDS)
    KEYS_OF = COMMANDS

    def __init__(self, about: str, ring: KeyRing) -> None:
        super().__init__()
        self.about = about
        self._tells = {key.id: key.tooltip for key in ring.on(about)}
        self._finder = command_finder(about, ring)

    def make_fields(self) -> Sequence[Field]:
        """The one field."""
        return [Field("command", HERE, finder=self._finder, only=True)]

    def title_lines(self, width: int) -> Sequence[Line]:
        """What this is."""
        return paragraph("Find a command by its words", width, Role.HEADING)

    def note_lines(self, width: int) -> Sequence[Line]:
        """What the command chosen does."""
        choice = self.form.field("command").choice
        words = self._tells[choice.value] if choice else "Type a few letters, then enter."
        return paragraph(words, width, Role.QUIET)

    def save(self) -> str:
        """The command chosen."""
        choice = self.form.field("command").choice
        if choice is None:
            raise SheetFault({"command": "type letters of a command"}, "Nothing was chosen.")
        return choice.value

    def action_back(self) -> None:
        """Close without a command."""
        self.dismiss(None)


def command_finder(about: str, ring: KeyRing) -> Finder:
    """The commands of a screen by the letters of their names, then of their sentences."""
    keys = [key for key in ring.on(about) if key.id != "palette"]
    choices = [Choice(key.id, key.label, f"{key.shown}: {key.tooltip}") for key in keys]
    by_name = among(choices)

    def find(letters: str) -> Sequence[Choice]:
        found = list(by_name(letters))
        wanted = letters.strip().casefold()
        return [*found, *(c for c in choices if c not in found and wanted in c.more.casefold())]

    return find
