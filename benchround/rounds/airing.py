"""Stock that stands the winter under cover: air on every mild day, a look through it each week."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.dates import say_day
from benchround.core.frame.lid_words import LidLimits
from benchround.core.lifecycle import Stage
from benchround.core.place_log import place_log_of
from benchround.core.record import Draft, Kind
from benchround.core.site import PlaceKind
from benchround.core.sky.known_day import KnownDay, known_day, warm_season
from benchround.core.task import Family, Harm, Slot, Why, Window
from benchround.rounds.proposal import Proposal, draft
from benchround.rounds.view import BatchView

MILD_C = LidLimits().bright_air_c
"""A day whose highest is above this is mild enough for open lids."""
CALM_KMH = LidLimits().latch_kmh
LOOK_EVERY_DAYS = 7
AIR_SOURCE = (
    f"UC Santa Cruz, Unit 1.3 Supplement 1: air before warmth (read); {MILD_C:g} C: our proposal"
)
LOOK_SOURCE = "common practice, no source"


def propose(view: BatchView) -> Iterator[Proposal]:
    """Air today if it is mild and calm; a look through the stock where a week has passed."""
    if view.stage is not Stage.OVERWINTERING or not _under_cover(view):
        return
    known = known_day(view.season.weather, view.season.site, view.day)
    air = _mild(known) and not _lids_say_so(view)
    looked = _last_look(view)
    look_due = view.day >= looked + timedelta(days=LOOK_EVERY_DAYS)
    if air or look_due:
        yield _proposal(view, known, air, looked if look_due else None)


def _under_cover(view: BatchView) -> bool:
    place = view.place
    return place is not None and (place.lidded or place.kind is PlaceKind.GREENHOUSE)


def _mild(known: KnownDay) -> bool:
    calm = known.gust_kmh is None or known.gust_kmh <= CALM_KMH
    return calm and known.max_c > MILD_C


def _lids_say_so(view: BatchView) -> bool:
    """Whether lids are opened anyway: in the warm half of the year, or ticked as moved today."""
    if view.place is None or not view.place.lidded:
        return False
    moved = view.day in place_log_of(view.season, view.part.place).lids
    return moved or warm_season(view.season.site, view.day)


def _last_look(view: BatchView) -> date:
    looked = view.since(Kind.LOOKED)
    return max(looked, view.part.since) if looked is not None else view.part.since


def _proposal(view: BatchView, known: KnownDay, air: bool, looked: date | None) -> Proposal:
    words, figures, sources = [], [], []
    if air:
        words.append("air well in the middle of the day, shut before the sun goes")
        figures.append(
            f"{known.basis}: {known.min_c:g} to {known.max_c:g} C, mild above {MILD_C:g}"
        )
        sources.append(AIR_SOURCE)
    if looked is not None:
        words.append("look through it: mouldy leaves, mice, heave, standing water")
        figures.append(f"last looked through {say_day(looked)}, every {LOOK_EVERY_DAYS} days")
        sources.append(LOOK_SOURCE)
    line = "; ".join(words)
    best = view.day if looked is None else looked + timedelta(days=LOOK_EVERY_DAYS)
    return Proposal(
        Family.AIR,
        Window(best, best, view.day),
        Harm.SPOILS_THIS_WEEK if air else Harm.GETS_LATE,
        line[:1].upper() + line[1:],
        Why(
            "stock at rest rots in still damp air sooner than it freezes",
            (*figures, *known.assumed),
            "; ".join(sources),
        ),
        tuple(_ticks(view, looked is not None)),
        slot=Slot.MIDDAY,
    )


def _ticks(view: BatchView, look: bool) -> Iterator[Draft]:
    if look:
        yield draft(view, Kind.LOOKED)
    yield draft(view, Kind.DONE, family=str(Family.AIR))
