"""The sheet that gives an action another key; it holds on this computer, in every season."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from benchround.screens.key import Key
from benchround.screens.key_choice import actions
from benchround.screens.key_names import HOW, key_of, name_of
from benchround.screens.key_screens import SCREEN_WORDS
from benchround.screens.keys import KEYS_SHEET, bindings
from benchround.screens.sheet_base import Reading, Sheet, SheetFault
from benchround.screens.text import Line, Role, paragraph
from benchround.screens.widgets.field import Choice, Field, Finder, among
from benchround.shell.own_keys import keys_file, ring_of, text_of, with_keys, write_keys

ABOUT = "Your own keys are kept on this computer and hold in every season."
SAID = "Empty gives the usual key back. A comma stands between two keys."


class KeysSheet(Sheet, inherit_bindings=False):
    """Choose an action and its key."""

    BINDINGS = bindings(KEYS_SHEET)
    KEYS_OF = KEYS_SHEET

    def make_fields(self) -> Sequence[Field]:
        """The action, by its name or its words, and the keys for it."""
        action = Field("action", "what it does", finder=self._finder(), only=True)
        return [action, Field("keys", "key", hint="such as x, ctrl+t or f5")]

    def _finder(self) -> Finder:
        known = actions(self.ring.keys)
        choices = [Choice(name, name, _keys(members)) for name, members in known.items()]
        by_name = among(choices)
        tells = {name: " ".join(key.tooltip.casefold() for key in of) for name, of in known.items()}

        def find(letters: str) -> Sequence[Choice]:
            found = list(by_name(letters))
            wanted = letters.strip().casefold()
            return [*found, *(c for c in choices if c not in found and wanted in tells[c.value])]

        return find

    @property
    def _chosen(self) -> str:
        choice = self.form.field("action").choice
        return choice.value if choice else ""

    def title_lines(self, width: int) -> Sequence[Line]:
        """What this is."""
        return paragraph("Another key for what you do often", width, Role.HEADING)

    def note_lines(self, width: int) -> Sequence[Line]:
        """What the action does and where, its keys now, and how keys are named."""
        return list(self._notes(width))

    def _notes(self, width: int) -> Iterator[Line]:
        chosen = self._chosen
        if chosen:
            members = actions(self.ring.keys)[chosen]
            screens = dict.fromkeys(screen for key in members for screen in key.where)
            where = ", ".join(SCREEN_WORDS[screen] for screen in screens)
            yield from paragraph(members[0].tooltip, width, Role.STRONG)
            yield from paragraph(f"now: {_keys(members)}", width)
            yield from paragraph(f"on: {where}", width, Role.QUIET, "  ")
        yield from paragraph(f"Keys: {HOW}. {SAID}", width, Role.QUIET)
        yield from paragraph(ABOUT, width, Role.QUIET)
        yield from paragraph(str(keys_file()), width, Role.QUIET, "  ")

    def save(self) -> str:
        """Write the line, and take the keys at once."""
        values, reading = self.form.values(), Reading()
        if not self._chosen:
            raise SheetFault({"action": "type letters of what it does"})
        keys: tuple[str, ...] = reading.read("keys", lambda: _read(values["keys"]), ())
        reading.finish()
        path = keys_file()
        text = with_keys(text_of(path), self._chosen, keys)
        ring = ring_of(text, str(path))
        mine = [fault for fault in ring.faults if f"'{self._chosen}'" in fault]
        if mine:
            raise SheetFault({"keys": mine[0].partition(": ")[2]})
        write_keys(path, text)
        self.bench.take_ring(ring)
        now = _keys(actions(ring.keys)[self._chosen])
        return f"'{self._chosen}' is {now} from now on."


def _read(text: str) -> tuple[str, ...]:
    """The keys typed, as they are written into the file.

    Raises:
        InputError: one of them is no key.
    """
    words = [text] if text == "," else [word for word in text.split(",") if word.strip()]
    return tuple(name_of(key_of(word.strip())) for word in words)


def _keys(members: Sequence[Key]) -> str:
    return " or ".join(dict.fromkeys(name_of(name) for key in members for name in key.keys))
