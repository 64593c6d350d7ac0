"""The crop a word on the command line means."""

from __future__ import annotations

from difflib import get_close_matches

from benchround.core.crop.crop import Crop
from benchround.core.crop.search import find_crops, folded, key_spelled
from benchround.core.errors import UnknownNameError
from benchround.crops.library import CropLibrary, CropNames, load_library

NAMED_AT_MOST = 5
LIKENESS = 0.7
"""How alike a name must be to be offered, 0 to 1, by difflib (our proposal)."""


def crop_named(text: str, library: CropLibrary | None = None) -> Crop:
    """The crop of a key, a name, a synonym or a Latin name.

    Raises:
        UnknownNameError: there is none or more than one; the message names those near.
    """
    crops = load_library() if library is None else library
    if text in crops:
        return crops[text]
    lines, wanted = crops.names(), folded(text)
    exact = [line for line in lines if wanted in _all_names(line)]
    if len(exact) == 1:
        return crops[exact[0].key]
    if not exact:
        key = key_spelled(text, lines)
        if key is not None:
            return crops[key]
    shown = text.strip()[:40]
    if exact:
        keys = ", ".join(line.key for line in exact)
        raise UnknownNameError(f"{shown!r} can be more than one crop: write one of {keys}.")
    near = _near(wanted, lines)
    hint = f"near it are {', '.join(near)}" if near else "look it up in docs/crops.md"
    raise UnknownNameError(f"No crop is called {shown!r}: {hint}.")


def _all_names(line: CropNames) -> set[str]:
    return {folded(name) for name in (line.key, line.name, line.latin, *line.synonyms)}


def _near(wanted: str, lines: tuple[CropNames, ...]) -> list[str]:
    found = [line.key for line in find_crops(wanted, lines)] if wanted else []
    by_name = {name: line.key for line in lines for name in sorted(_all_names(line))}
    close = [by_name[name] for name in get_close_matches(wanted, by_name, n=5, cutoff=LIKENESS)]
    return list(dict.fromkeys([*found, *close]))[:NAMED_AT_MOST]
