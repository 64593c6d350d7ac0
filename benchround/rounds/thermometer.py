"""Read the max-min thermometer and reset it."""

from __future__ import annotations

from collections.abc import Iterator

from benchround.core.record import Draft, Kind
from benchround.core.task import Ask, Family, Harm, Slot, Why, Window
from benchround.rounds.proposal import Proposal
from benchround.rounds.view import SiteView


def propose(view: SiteView) -> Iterator[Proposal]:
    """One reading a morning."""
    known = view.season.weather.on(view.day)
    if known is not None and known.basis == "reading":
        return
    yield Proposal(
        Family.THERMOMETER,
        Window(view.day, view.day, view.day),
        Harm.GETS_LATE,
        "Read the max-min thermometer and reset it",
        Why("lids, frost and seedlings are reckoned from it", ("no reading for today yet",)),
        (Draft(Kind.READING, "", {}),),
        slot=Slot.FIRST,
        asks=(
            Ask("min_c", "lowest, C", needed=True, whole=False),
            Ask("max_c", "highest, C", whole=False),
            Ask("rain_mm", "rain, mm", whole=False),
        ),
    )
