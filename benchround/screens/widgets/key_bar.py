"""The foot of a screen: the few keys worth naming, as many as fit."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, cast

from benchround.screens.foot_line import foot_line
from benchround.screens.text import Line
from benchround.screens.widgets.paper import Paper

if TYPE_CHECKING:
    from benchround.screens.app import BenchroundApp


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
        idle: frozenset[str] = getattr(self.screen, "foot_idle", frozenset())
        now = tuple((ring.named(key.id), key.label) for key in ring.keys if key.id == first)
        return (foot_line((*now, *ring.footer_words(self._screen, idle)), width),)
