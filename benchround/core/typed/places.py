"""Several places typed in one line: "Bench 1; Frame A; Shed window: windowsill"."""

from __future__ import annotations

import re
from collections.abc import Iterable

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.place_words import PLACE_FIGURES, free_code, kind_of_place
from benchround.core.record import Draft, Figure, Kind
from benchround.core.site import PlaceKind
from benchround.core.typed.figures import read_note, shown
from benchround.core.walk import ORDER

MOST_PLACES = 60
LONGEST = int(PLACE_FIGURES["name"].high)
KINDS = ", ".join(PlaceKind)
_PARTED = re.compile("[;,]")


@dataclass(frozen=True, slots=True)
class TypedPlace:
    """A place as it was typed."""

    name: str
    kind: PlaceKind


def read_places(text: str) -> tuple[TypedPlace, ...]:
    """The places of a line, in walking order; none where nothing was typed.

    Args:
        text: places parted by semicolons or commas, each a name, or a name, a colon and the kind.
            A name without a kind must hold the word of one, as "Frame A" does.

    Raises:
        InputError: a piece has no name or no kind, or a name comes twice.
    """
    pieces = [piece.strip() for piece in _PARTED.split(text) if piece.strip()]
    if len(pieces) > MOST_PLACES:
        raise InputError(f"{len(pieces)} places are more than {MOST_PLACES}.")
    found = tuple(_place(piece) for piece in pieces)
    names = [place.name.casefold() for place in found]
    twice = next((place.name for place in found if names.count(place.name.casefold()) > 1), None)
    if twice is not None:
        raise InputError(f"'{shown(twice)}' is there twice: give each place its own name.")
    return found


def _place(piece: str) -> TypedPlace:
    name, colon, kind = piece.rpartition(":")
    if colon:
        label = read_note(name, LONGEST)
        if not label:
            raise InputError(f"'{shown(piece)}' has no name before the colon.")
        return TypedPlace(label, kind_of_place(kind))
    label = read_note(piece, LONGEST)
    told = _kind_in(label)
    if told is None:
        raise InputError(
            f"'{shown(label)}' does not say what it is: such as ': bench', ': frame', ': bed' "
            f"after it; all kinds: {KINDS}."
        )
    return TypedPlace(label, told)


def _kind_in(name: str) -> PlaceKind | None:
    """The only kind whose word stands in a name; a greenhouse is one by its first word."""
    words = name.casefold().replace("-", " ").split()
    said = {kind for kind in PlaceKind if str(kind).split()[0] in words}
    if PlaceKind.GREENHOUSE in said:
        said.discard(PlaceKind.BENCH)
    return said.pop() if len(said) == 1 else None


def place_drafts(places: Iterable[TypedPlace]) -> tuple[Draft, ...]:
    """The records that set the places up, numbered in the order given."""
    drafts: list[Draft] = []
    for number, place in enumerate(places, start=1):
        code = free_code(place.name, [draft.about for draft in drafts])
        figures: dict[str, Figure] = {
            "name": place.name,
            "kind": str(place.kind),
            ORDER: number,
        }
        drafts.append(Draft(Kind.PLACE, code, figures))
    return tuple(drafts)
