"""How far long work has come, told as it goes; whoever is told may stop it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sized
from typing import Protocol, TypeVar

Progress = Callable[[int, int], None]
"""Told how many of how many are done. To stop the work it raises `StoppedError`; it is only told
where stopping does no harm."""
Item = TypeVar("Item", covariant=True)
Piece = TypeVar("Piece")
EVERY = 50
"""Items between two tellings: a thousandth of a second or so of the work here."""


class Counted(Sized, Iterable[Item], Protocol[Item]):
    """Items that are counted before they are gone through."""


def unheard(done: int, of: int) -> None:
    """Progress that nobody listens to."""


def told(items: Counted[Piece], progress: Progress, every: int = EVERY) -> Iterator[Piece]:
    """The items one by one, told every so often before an item is given, and at the end.

    Args:
        items: what is gone through.
        progress: who is told.
        every: items between two tellings.
    """
    of = len(items)
    for number, item in enumerate(items):
        if number % every == 0:
            progress(number, of)
        yield item
    progress(of, of)


def progress_words(what: str, unit: str, done: int, of: int, seconds: float) -> str:
    """How far it is, and how long the rest will take at this pace.

    Args:
        what: what is being done.
        unit: what is counted.
        done: how many are done.
        of: how many there are.
        seconds: how long it took so far.
    """
    words = f"{what}: {done} of {of} {unit}".rstrip()
    if not done or done >= of or seconds < 1.0:
        return words
    left = round(seconds / done * (of - done))
    return f"{words}, about {left} s left" if left else words
