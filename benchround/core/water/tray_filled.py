"""Since when a tray's water is reckoned: its last watering, or what is taken without one."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable
from datetime import date, timedelta

from benchround.core.batch.batch import Batch, Part
from benchround.core.batch.nouns import Moves
from benchround.core.crop.crop import Covering, Crop
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import WAITING, Stage
from benchround.core.place_log import PlaceLog
from benchround.core.record import Kind
from benchround.core.seed.waiting import places_of
from benchround.core.water.balance import RootStage

WATERED_IN = (Kind.SOWN, Kind.RESOWN, Kind.PRICKED_OUT, Kind.POTTED_ON)
"""Work that ends with a good watering, so the tray is full after it (common practice)."""
COVER_OFF = (Kind.UNCOVERED, Kind.PRICKED_OUT, Kind.POTTED_ON)
"""Records after which a tray has no cover of its own any more."""
SEEN_UP = (Kind.FIRST_UP, Kind.COUNTED, Kind.SEED_LEAVES, Kind.TRUE_LEAVES)
"""Records that say that seedlings were seen."""
MOST_DAYS_BACK = 30
"""Waterings further back say nothing: the books are not kept up for that tray."""
BELIEVED_DRY_DAYS = 3
"""A tray dry by the books for longer, with no watering written, may have been watered; ours."""
NO_HANDS = frozenset(
    {Kind.PLANNED, Kind.NOTED, Kind.PUT_OFF, Kind.DONE, Kind.MOISTURE, Kind.WEIGHED}
    | {Kind.LABEL_LOST, Kind.STALLED}
    | {Kind.MOVED, Kind.HARDENING_BEGUN, Kind.HARDENING_STEP, Kind.HARDENED, Kind.READY}
)
"""Records that do not say that somebody watered the tray: it is only carried, or looked at."""
LogOf = Callable[[str], PlaceLog]
"""A place's records by its code."""
ROOTED_DAYS = 14
"""After so many days in its pot a plant's roots reach all of it; our proposal."""
DEPENDS = WAITING | {Stage.EMERGING, Stage.GROWING_ON, Stage.POTTED_ON}
"""Stages in which roots reach as far as the seed's cover or the days say."""
REACH = {
    **{stage: RootStage.FULL for stage in Stage if stage not in DEPENDS},
    **dict.fromkeys((Stage.SEED_LEAF, Stage.TRUE_LEAF, Stage.PRICKED_OUT), RootStage.SEEDLING),
}
"""How far roots reach in the other stages."""


@dataclass(frozen=True, slots=True)
class Filled:
    """When a tray was last full.

    Attributes:
        day: the morning it was full, or the last day anything of it is known.
        written: whether a watering of it was written down within the last month.
        worked: the last day seed or plants were watered in; None where not known.
    """

    day: date
    written: bool
    worked: date | None

    @property
    def known(self) -> bool:
        """Whether it is known to have been full then, and not only that it was looked after."""
        return self.written or self.day == self.worked


def stays(batch: Batch, part: Part) -> Moves:
    """Where the part stood in the month before it came to where it stands, and there, oldest first.

    What stood longer ago than that says nothing of its water.
    """
    moves = places_of(batch, part)
    if len(moves) == 1:  # as most
        return moves
    first, arrived = len(moves) - 1, moves[-1][0]
    while first > 0 and (arrived - moves[first][0]).days <= MOST_DAYS_BACK:
        first -= 1
    return moves[first:]


def filled(part: Part, stood: Moves, log_of: LogOf, day: date) -> Filled:
    """When the tray was last full by the records up to a day.

    A watering of a whole place counts while the part stood there, wherever it was carried since.
    Where waterings go unwritten it is taken as full on the last day anything is known of it, and
    from then on it stays what it is until something is written down.

    Args:
        part: the part.
        stood: where it stood lately, by `stays`.
        log_of: gives a place's records.
        day: the day.
    """
    worked = part.last_day(*WATERED_IN)
    latest, whole = part.last_day(Kind.WATERED), _whole_place(stood, log_of, day)
    if whole is not None and (latest is None or whole > latest):
        latest = whole
    if latest is not None and (day - latest).days <= MOST_DAYS_BACK:
        return Filled(max(latest, worked) if worked is not None else latest, True, worked)
    seen = [rec.day for kind, rec in part.last.items() if kind not in NO_HANDS and rec.day <= day]
    return Filled(max(seen, default=day - timedelta(days=1)), False, worked)


def _whole_place(stood: Moves, log_of: LogOf, day: date) -> date | None:
    """The last day up to this one on which a whole place was watered, the part standing there."""
    until = day
    for since, place in reversed(stood):
        watered = log_of(place).watered
        earlier = bisect_right(watered, until)
        if earlier and watered[earlier - 1] >= since:
            return watered[earlier - 1]
        until = min(until, since)
    return None


def root_stage(batch: Batch, part: Part, crop: Crop, day: date) -> RootStage:
    """How far roots reach, from the stage, what covers the seed, and the days in a pot."""
    stage = part.stage
    reach = REACH.get(stage)
    if reach is not None:
        return reach
    days = (day - part.since).days
    if stage in WAITING:
        return RootStage.BARE_SEED if uncovered(batch, crop) else RootStage.COVERED_SEED
    if stage is Stage.EMERGING:
        young = days < crop.growing.true_leaf_days
        return RootStage.COVERED_SEED if young else RootStage.SEEDLING  # whether noted or not
    if stage is Stage.GROWING_ON:
        return RootStage.SEEDLING if just_thinned(part, day) else RootStage.ROOTED
    return RootStage.ROOTED if days < ROOTED_DAYS else RootStage.FULL


def just_thinned(part: Part, day: date) -> bool:
    """Whether it only came to grow on by being thinned lately: its roots are a seedling's still."""
    thinned = part.first_day(Kind.THINNED)
    if part.stage is not Stage.GROWING_ON or thinned is None or thinned != part.since:
        return False
    return (day - thinned).days < ROOTED_DAYS


def uncovered(batch: Batch, crop: Crop) -> bool:
    """Whether the seed lies on the surface."""
    said = batch.sowing.covering if batch.sowing else ""
    if not said and crop.germination is not None:
        said = crop.germination.covering
    return said == Covering.NONE


def domed_on(part: Part, day: date) -> bool:
    """Whether the tray had a cover of its own over it, as its sowing said, until it came off."""
    until = domed_until(part)
    return until is not None and day < until


def domed_until(part: Part) -> date | None:
    """The day its own cover came off, the last day there is while it is on; None without one.

    Where that was not written down it is taken as off from the day seedlings were seen, the day it
    is to come off: a tray looked at too soon is none the worse for it.
    """
    sown = part.first.get(Kind.SOWN)
    if sown is None or "covered" not in sown.figures or not sown.flag("covered"):
        return None
    told = part.last_day(*COVER_OFF)
    if told is not None:
        return told
    seen = [day for kind in SEEN_UP if (day := part.first_day(kind)) is not None]
    return min(seen, default=date.max)
