"""Where plants are hardened off: under lids, else in the open, never indoors."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from benchround.core.site import Place, PlaceKind


def place_to_harden(places: Iterable[Place], hardening: Mapping[str, int]) -> str:
    """The place to harden at: a frame or tunnel, else an unheated bench in the open; else empty.

    Plants are moved out of the warm in steps, which a windowsill, a propagator or a heated bench
    has none of (common practice, no source). A bed is where they are going, so it is taken only
    where something is being hardened there already. Of several, the one with most hardening, then
    the one with most room, then the first on the walk.

    Args:
        places: those of the season.
        hardening: how many batches are being hardened at a place, by its code.
    """
    fit = [place for place in places if _fits(place, hardening)]
    if not fit:
        return ""
    best = min(
        fit,
        key=lambda place: (
            not place.lidded,
            -hardening.get(place.code, 0),
            -_room(place),
            place.order,
            place.code,
        ),
    )
    return best.code


def hardens_at(place: Place | None) -> bool:
    """Whether a place is one to harden at, so that what stands there need not be moved."""
    if place is None:
        return False
    warm = place.heated or place.set_c is not None
    return place.lidded or place.outdoors or (place.kind is PlaceKind.BENCH and not warm)


def _fits(place: Place, hardening: Mapping[str, int]) -> bool:
    used = place.code in hardening
    return hardens_at(place) and (used or not place.outdoors)


def _room(place: Place) -> float:
    """A measure to compare places of one kind by: trays as told, else square metres."""
    if place.trays is not None:
        return place.trays
    length, width = place.size_m or (0.0, 0.0)
    return length * width
