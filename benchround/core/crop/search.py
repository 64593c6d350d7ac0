"""Finding a crop by a few letters of any of its names."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator
from typing import Protocol, TypeVar


class Named(Protocol):
    """Whatever has a crop's names: a `Crop`, or its line in the library's list."""

    @property
    def key(self) -> str:
        """The short name in the library."""

    @property
    def name(self) -> str:
        """The common name."""

    @property
    def latin(self) -> str:
        """The Latin name."""

    @property
    def synonyms(self) -> tuple[str, ...]:
        """Other names it goes by."""


AnyNamed = TypeVar("AnyNamed", bound=Named)

INSIDE = 8
"""Rank of letters found only inside a word, behind every kind of beginning."""


def find_crops(letters: str, crops: Iterable[AnyNamed]) -> list[AnyNamed]:
    """The crops whose names hold these letters, the likeliest first.

    The whole common name comes first, then the beginning of one, then a whole synonym or Latin
    name, then the beginning of those, then the beginning of a word, then letters inside a word; at
    each step the common name comes before synonyms and those before the Latin name. Capitals,
    accents and hyphens make no difference.

    Args:
        letters: what was typed; nothing typed finds every crop.
        crops: where to look.

    Returns:
        The crops found; those of equal rank by common name.
    """
    wanted = folded(letters)
    ranked = ((rank_of(wanted, crop), folded(crop.name), crop) for crop in crops)
    found = [(rank, name, crop) for rank, name, crop in ranked if rank is not None]
    found.sort(key=lambda entry: entry[:2])
    return [crop for _, _, crop in found]


def rank_of(wanted: str, crop: Named) -> int | None:
    """How well folded letters fit a crop, 0 best; None if none of its names hold them."""
    names = list(_names(crop))
    if any(name == wanted and place == 0 for place, name in names):
        return 0
    starts = [place for place, name in names if name.startswith(wanted)]
    if 0 in starts:
        return 1
    if any(name == wanted for _, name in names):
        return 2
    if starts:
        return 2 + min(starts)
    words = [5 + place for place, name in names if f" {wanted}" in f" {name}"]
    if words:
        return min(words)
    return INSIDE if any(wanted in name for _, name in names) else None


def folded(text: str) -> str:
    """The text without capitals and accents, hyphens and runs of spaces as one space."""
    apart = unicodedata.normalize("NFKD", text.casefold().replace("-", " "))
    return " ".join("".join(sign for sign in apart if not unicodedata.combining(sign)).split())


def _names(crop: Named) -> Iterator[tuple[int, str]]:
    """Every name with its place: 0 common, 1 synonym or key, 2 Latin."""
    yield 0, folded(crop.name)
    yield from ((1, folded(name)) for name in (*crop.synonyms, crop.key))
    yield 2, folded(crop.latin)
