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

PLURALS = (("ies", "y"), ("oes", "o"), ("es", ""), ("s", ""))
"""Endings of a plural, and what stands there for one."""
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
    known = tuple(crops)
    found = _ranked(folded(letters), known)
    if found:
        return found
    for spelling in spellings(letters)[1:]:
        found = _ranked(spelling, known)
        if found:
            return found
    key = key_spelled(letters, known)
    return [crop for crop in known if crop.key == key]


def _ranked(wanted: str, crops: Iterable[AnyNamed]) -> list[AnyNamed]:
    ranked = ((rank_of(wanted, crop), folded(crop.name), crop) for crop in crops)
    found = [(rank, name, crop) for rank, name, crop in ranked if rank is not None]
    found.sort(key=lambda entry: entry[:2])
    return [crop for _, _, crop in found]


def spellings(text: str) -> tuple[str, ...]:
    """A name as it was typed, folded, and as one of a kind where it may be a plural."""
    wanted = folded(text)
    others = [
        wanted.removesuffix(ending) + single
        for ending, single in PLURALS
        if wanted.endswith(ending) and not wanted.endswith("ss") and len(wanted) > len(ending) + 1
    ]
    return (wanted, *others)


def key_spelled(text: str, crops: Iterable[Named]) -> str | None:
    """The key of the only crop of which a text is a name, a plural, or a name run together.

    A name as typed goes before its other spellings. None where there is none or more than one.
    """
    known = [(crop.key, {name for _, name in _names(crop)}) for crop in crops]
    for spelling in spellings(text):
        keys = {key for key, names in known if spelling in names}
        if keys:
            return keys.pop() if len(keys) == 1 else None
    for spelling in spellings(text):
        together = spelling.replace(" ", "")
        keys = {
            key for key, names in known if any(name.replace(" ", "") == together for name in names)
        }
        if keys and together:
            return keys.pop() if len(keys) == 1 else None
    return None


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
