"""The foot of a screen: the few keys worth naming, as many as fit."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, cast

from benchround.screens.text import Line, Role, Span, width_of
from benchround.screens.widgets.paper import Paper

if TYPE_CHECKING:
    from benchround.screens.app import BenchroundApp

GAP = 2


class KeyBar(Paper):
    """One line of keys. The last one of the list stays, whatever the width.

    Args:
        screen: the name of the screen in the list of keys.
    """

    def __init__(self, screen: str) -> None:
        super().__init__(id="keys")
        self._screen = screen

    def lines(self, width: int) -> Sequence[Line]:
        """The keys that fit."""
        ring = cast("BenchroundApp", self.app).ring
        first = getattr(self.screen, "foot_first", "")
        now = tuple((ring.named(key.id), key.label) for key in ring.keys if key.id == first)
        return (foot_line((*now, *ring.footer_words(self._screen)), width),)


def foot_line(words: Sequence[tuple[str, str]], width: int) -> Line:
    """Keys and labels side by side; what does not fit is left out from the last but one on."""
    kept = list(words)
    while len(kept) > 1 and _wide(kept) > width:
        del kept[-2]
    spans: list[Span] = []
    for number, (key, label) in enumerate(kept):
        if number:
            spans.append((" " * GAP, Role.QUIET))
        spans += [(key, Role.KEY), (f" {label}", Role.QUIET)]
    return tuple(spans)


def _wide(words: Sequence[tuple[str, str]]) -> int:
    return sum(width_of(key) + 1 + width_of(label) for key, label in words) + GAP * (len(words) - 1)
