"""The line that says what was done, or why it was not."""

from __future__ import annotations

from collections.abc import Sequence

from benchround.screens.text import Line, Role, fit, line, paragraph
from benchround.screens.widgets.paper import Paper

MOST_LINES = 3


class Status(Paper):
    """What was last done or refused; it stays until the next thing is said."""

    def __init__(self) -> None:
        super().__init__(id="status")
        self._said = ""
        self._role = Role.DONE

    @property
    def said(self) -> str:
        """What it says now, in full."""
        return self._said

    @property
    def bad(self) -> bool:
        """Whether it says why something was not done."""
        return bool(self._said) and self._role is Role.BAD

    def say(self, words: str, *, bad: bool = False) -> None:
        """Say something; empty words clear the line."""
        self._said = words
        self._role = Role.BAD if bad else Role.DONE
        self.rewrite(layout=True)

    def lines(self, width: int) -> Sequence[Line]:
        """The words, in at most three lines."""
        found = paragraph(self._said, width, self._role)
        if len(found) <= MOST_LINES:
            return found or (line(""),)
        rest = " ".join(text for words in found[MOST_LINES - 1 :] for text, _ in words)
        return [*found[: MOST_LINES - 1], line((fit(rest, width, typed=True), self._role))]
