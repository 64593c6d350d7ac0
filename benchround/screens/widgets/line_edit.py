"""Editing one line of text: letters, a place between them, and nothing of the screen."""

from __future__ import annotations

from dataclasses import replace

from benchround.core.frozen import dataclass

MOST_TYPED = 10_000
"""A field takes no more; what is longer is cut when it is pasted (our proposal)."""


@dataclass(frozen=True, slots=True)
class LineEdit:
    """A line being typed.

    Attributes:
        text: what stands in it.
        at: how many letters stand before the caret.
    """

    text: str = ""
    at: int = 0

    def put(self, typed: str) -> LineEdit:
        """With letters put in at the caret; line ends become spaces."""
        flat = " ".join(typed.splitlines()) if typed else ""
        text = (self.text[: self.at] + flat + self.text[self.at :])[:MOST_TYPED]
        return LineEdit(text, min(self.at + len(flat), len(text)))

    def takes(self, typed: str) -> bool:
        """Whether there is room for so many letters more."""
        return len(self.text) + len(typed) <= MOST_TYPED

    def back(self) -> LineEdit:
        """Without the letter before the caret."""
        if not self.at:
            return self
        return LineEdit(self.text[: self.at - 1] + self.text[self.at :], self.at - 1)

    def delete(self) -> LineEdit:
        """Without the letter after the caret."""
        return LineEdit(self.text[: self.at] + self.text[self.at + 1 :], self.at)

    def move(self, by: int) -> LineEdit:
        """With the caret so many letters further on."""
        return replace(self, at=max(0, min(len(self.text), self.at + by)))

    def start(self) -> LineEdit:
        """With the caret before the first letter."""
        return replace(self, at=0)

    def end(self) -> LineEdit:
        """With the caret behind the last letter."""
        return replace(self, at=len(self.text))


def line_of(text: str) -> LineEdit:
    """A line with the caret at its end."""
    return LineEdit(text, len(text))
