"""The lines of a long page, made as far as they are asked for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from time import perf_counter
from typing import overload

from benchround.screens.text import Line

Pieces = Iterator[Sequence[Line]]
"""A page piece by piece. A piece is soon made; it is empty where only something was reckoned."""


class Unrolled(Sequence[Line]):
    """Lines of which only the first are made at once. Asking how many there are makes them all.

    Args:
        pieces: the page, piece by piece.
    """

    def __init__(self, pieces: Pieces) -> None:
        self._pieces = pieces
        self._made: list[Line] = []
        self.whole = False

    def reach(self, number: int) -> int:
        """Make the lines up to a number of them, as far as there are so many; how many are made."""
        while not self.whole and len(self._made) < number:
            self._make()
        return len(self._made)

    def make_for(self, seconds: float) -> None:
        """Make lines for about so long."""
        end = perf_counter() + seconds
        while not self.whole and perf_counter() < end:
            self._make()

    def _make(self) -> None:
        piece = next(self._pieces, None)
        self.whole = piece is None
        self._made.extend(piece or ())

    def _make_all(self) -> list[Line]:
        while not self.whole:
            self._make()
        return self._made

    def __len__(self) -> int:
        """How many lines there are."""
        return len(self._make_all())

    @overload
    def __getitem__(self, at: int) -> Line: ...

    @overload
    def __getitem__(self, at: slice) -> Sequence[Line]: ...

    def __getitem__(self, at: int | slice) -> Line | Sequence[Line]:
        """A line or some, made where they are not yet."""
        last = at.stop if isinstance(at, slice) else at + 1
        if last is None or last <= 0:
            self._make_all()
        else:
            self.reach(last)
        return self._made[at]
