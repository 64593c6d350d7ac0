"""Take off heat and cover, and into the light, the day the first seedling shows."""

from __future__ import annotations

from collections.abc import Iterator

from benchround.core.dates import number_of_days, say_day
from benchround.core.lifecycle import SEEDLING
from benchround.core.record import Kind
from benchround.core.site import PlaceKind
from benchround.core.task import Ask, Family, Harm, Why
from benchround.rounds.proposal import Proposal, draft, window
from benchround.rounds.view import BatchView

INTO_LIGHT = (PlaceKind.GREENHOUSE, PlaceKind.BENCH, PlaceKind.WINDOWSILL)
"""Kinds of place a seedling just off heat can stand in; our proposal."""
SOURCE = (
    "Independent Tribune extension column 2021 and a garden firm's note on hardy crops "
    "(off heat, cool and light)"
)


def propose(view: BatchView) -> Iterator[Proposal]:
    """Off heat and cover: due the day of first emergence, and drawn from the next day on."""
    if view.first_up is None or not to_be_uncovered(view):
        return
    heated = _heated(view)
    covered = _covered(view)
    days = (view.day - view.first_up).days
    off = " and ".join(word for word, on in (("heat", heated), ("cover", covered or heated)) if on)
    yield Proposal(
        Family.UNCOVER,
        window(view.first_up),
        Harm.SPOILS_THIS_WEEK,
        f"Off {off}, into full light, cooler by 3 to 6 C",
        Why(
            "warm and dim makes drawn seedlings: off the day the first one shows",
            (f"first up {say_day(view.first_up)}, {number_of_days(days)} ago",),
            SOURCE,
        ),
        (draft(view, Kind.UNCOVERED, off_heat=heated, cover_off=covered or heated),),
        asks=_where_to(view),
    )


def to_be_uncovered(view: BatchView) -> bool:
    """Whether seedlings are up and still on heat or under their cover, by the books."""
    if view.stage not in SEEDLING or view.first_up is None or view.since(Kind.UNCOVERED):
        return False
    return _heated(view) or _covered(view)


def _heated(view: BatchView) -> bool:
    place = view.place
    return place is not None and (place.kind is PlaceKind.PROPAGATOR or place.heated)


def _covered(view: BatchView) -> bool:
    sown = view.part.first.get(Kind.SOWN)
    return sown is not None and sown.flag("covered")


def _where_to(view: BatchView) -> tuple[Ask, ...]:
    """Out of a propagator it has to be carried; anywhere else it stays where it stands."""
    if view.place is None or view.place.kind is not PlaceKind.PROPAGATOR:
        return ()
    return (Ask("place", "stands then", _light_place(view), whole=False, opens=True),)


def _light_place(view: BatchView) -> str:
    """The first place on the walk that suits a seedling out of the propagator, or where it stands.

    Unheated before heated, under glass and unshaded; a frame or a bed is no place for it yet.
    """
    fit = [place for place in view.season.places if place.kind in INTO_LIGHT]
    fit.sort(key=lambda place: (place.shade_share > 0, place.heated, place.order))
    return fit[0].code if fit else view.part.place
