"""Words a grower types for one of several things: a place by its name, or one of a few choices.

Capitals, accents and hyphens make no difference, and letters that only one begins with are enough.
What could mean more than one is refused, never guessed.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TypeVar

from benchround.core.crop.search import folded
from benchround.core.errors import InputError
from benchround.core.near_names import near_words
from benchround.core.site import Place
from benchround.core.typed.figures import shown

Thing = TypeVar("Thing")


def meant(
    text: str, things: Iterable[tuple[Thing, Sequence[str]]], *, whole: bool = False
) -> tuple[Thing, ...]:
    """The things a text can mean: those spelled so, else those that read so, else that begin so.

    Args:
        text: as typed; nothing typed means nothing.
        things: each with its names.
        whole: whether the beginning of a name is not enough.
    """
    spelled, read = text.strip().casefold(), folded(text)
    if not read:
        return ()
    known = [
        (thing, [name.casefold() for name in names], [folded(name) for name in names])
        for thing, names in things
    ]
    found = [thing for thing, names, _ in known if spelled in names]
    found = found or [thing for thing, _, names in known if read in names]
    if not whole:
        found = found or [t for t, _, names in known if any(n.startswith(read) for n in names)]
    return tuple(found)


def read_place(text: str, places: Iterable[Place], *, whole: bool = False) -> str:
    """A place's code by its code, its name, or letters only one begins with; empty for none typed.

    Raises:
        InputError: no place, or more than one, answers to it.
    """
    if not text.strip():
        return ""
    known = tuple(places)
    near = meant(text, ((place, (place.code, place.name)) for place in known), whole=whole)
    if len(near) == 1:
        return near[0].code
    which = "more than one place" if near else "no place"
    listed = ", ".join(place.name for place in (near or known)) or "none set up yet"
    raise InputError(f"{which} answers to '{shown(text.strip())}': {listed}.")


def read_choice(text: str, choices: Sequence[str]) -> str:
    """One of several words, or letters only one of them begins with.

    Raises:
        InputError: it is none of them, or could be more than one; all are named, the near ones too.
    """
    found = meant(text, ((choice, (choice,)) for choice in choices))
    if len(found) == 1:
        return str(found[0])
    near = near_words(text, choices)
    raise InputError(
        f"'{shown(text.strip())}' is not one of {', '.join(choices)}{f'; {near}' if near else ''}."
    )
