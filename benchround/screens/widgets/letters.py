"""A line to type letters into, above a list that follows them."""

from __future__ import annotations

from collections.abc import Sequence

from textual import events
from textual.message import Message

from benchround.screens.text import Line, Role, fit, line, width_of
from benchround.screens.widgets.form import EDITS
from benchround.screens.widgets.line_edit import LineEdit
from benchround.screens.widgets.paper import Paper


class Letters(Paper, can_focus=True):
    """What was typed, and how much was found by it.

    Args:
        label: the words before the line.
    """

    class Changed(Message):
        """Other letters stand there now."""

    class Cut(Message):
        """What was pasted did not all have room."""

    def __init__(self, label: str) -> None:
        super().__init__(id="letters")
        self._label = label
        self._edit = LineEdit()
        self._found = ""

    @property
    def typed(self) -> str:
        """The letters."""
        return self._edit.text

    def put(self, text: str) -> None:
        """Let other letters stand there."""
        self._take(LineEdit(text, len(text)))

    def tell(self, found: str) -> None:
        """Say at the end of the line how much was found."""
        self._found = found
        self.rewrite()

    def on_key(self, event: events.Key) -> None:
        """Type."""
        edit = EDITS.get(event.key)
        if edit is not None:
            self._take(edit(self._edit))
        elif event.is_printable and event.character:
            self._take(self._edit.put(event.character))
        else:
            return
        event.stop()
        event.prevent_default()

    def on_paste(self, event: events.Paste) -> None:
        """Take pasted text as typed."""
        event.stop()
        room = self._edit.takes(event.text)
        self._take(self._edit.put(event.text))
        if not room:
            self.post_message(self.Cut())

    def _take(self, edit: LineEdit) -> None:
        changed = edit.text != self._edit.text
        self._edit = edit
        self.rewrite()
        if changed:
            self.post_message(self.Changed())

    def lines(self, width: int) -> Sequence[Line]:
        """One line: label, letters with the caret, what was found."""
        label = f"{self._label} "
        room = max(4, width - width_of(label) - width_of(self._found) - 2)
        text, at = self._edit.text, self._edit.at
        before, under = text[max(0, at - room) : at], text[at : at + 1] or " "
        after = text[at + 1 : at + 1 + room]
        while width_of(before) > room - 1:
            before = before[1:]
        rest = fit(after, max(0, room - width_of(before) - width_of(under)), typed=True)
        return [
            line(
                (label, Role.STRONG),
                (before, Role.FIELD),
                (under, Role.CARET),
                (rest, Role.FIELD),
                (f"  {self._found}", Role.QUIET),
            )
        ]
