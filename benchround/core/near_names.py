"""The names near a mistyped one, for messages that help."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import SequenceMatcher

from benchround.core.crop.search import folded

MOST = 5
LIKENESS = 0.6
"""How alike two names must be, 0 to 1, by difflib; its own usual cut."""
CONFUSED = str.maketrans("oli", "011")
"""Letters taken for figures."""


def near_names(text: str, names: Iterable[str], most: int = MOST) -> tuple[str, ...]:
    """The names that begin with the text, hold it, or are spelled much like it, nearest first.

    Capitals, accents and hyphens make no difference.
    """
    wanted = folded(text)
    if not wanted:
        return ()
    by_fold = {folded(name): name for name in names}
    begins = [name for fold, name in by_fold.items() if fold.startswith(wanted)]
    holds = [name for fold, name in by_fold.items() if wanted in fold]
    alike = [by_fold[fold] for fold in _alike(wanted, by_fold)]
    return tuple(dict.fromkeys([*begins, *alike, *holds]))[:most]


def _alike(wanted: str, folds: Iterable[str]) -> list[str]:
    """The names spelled much like a wanted one; letters in their own places decide between them."""
    typed = wanted.translate(CONFUSED)
    ranked: list[tuple[float, int, str]] = []
    for fold in folds:
        name = fold.translate(CONFUSED)
        likeness = SequenceMatcher(None, name, typed).ratio()
        if likeness >= LIKENESS:
            in_place = sum(a == b for a, b in zip(name, typed, strict=False))
            ranked.append((-likeness, -in_place, fold))
    return [fold for _, _, fold in sorted(ranked)]


def near_words(text: str, names: Iterable[str], otherwise: str = "") -> str:
    """The names near a text as the end of a sentence: "near it: bench-1, bench-2"."""
    found = near_names(text, names)
    return f"near it: {', '.join(found)}" if found else otherwise


def shown(text: str) -> str:
    """A typed text cut short, for a message."""
    plain = " ".join(text.split())
    return f"'{plain[:38]}..'" if len(plain) > 40 else f"'{plain}'"
