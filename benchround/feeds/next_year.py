"""What to sow when next year, from what this year's sowings did.

The day is the last sowing's day a year on, moved later by as long as the plants stood ready for
want of weather or room; the number is reckoned for the plants wanted, from the share of this seed
that came up (the library's or the packet's figure and the own counts together). Both rules are our
proposal, and each line says what it rests on.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date, timedelta
from functools import lru_cache

from benchround.core.batch.batch import Batch
from benchround.core.crop.crop import Crop, Raising
from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.learning.figures import PRIOR_SEEDS, shrunk_share
from benchround.core.lifecycle import Stage
from benchround.core.numbers.shares import wilson
from benchround.core.record import Kind
from benchround.core.season import Season
from benchround.core.seed.quantity import SURVIVAL, WANTED_CHANCE, seeds_needed
from benchround.feeds.review import counted_of, seeds_sown

STOOD_READY_DAYS = 14
"""Plants may stand ready this long before it is called too early (our proposal)."""


@dataclass(frozen=True, slots=True)
class Advice:
    """One sowing to make again.

    Attributes:
        seeds: how many; None where neither was a number wanted nor one sown.
        enough: for what so many seeds are enough; empty where that is not reckoned.
        rests: on what day and number rest.
    """

    crop: str
    variety: str
    day: date
    seeds: int | None
    wanted: int | None
    enough: str
    rests: tuple[str, ...]

    @property
    def why(self) -> str:
        """All of it in one line."""
        return "; ".join((*((self.enough,) if self.enough else ()), *self.rests))


def next_year(season: Season, day: date) -> tuple[Advice, ...]:
    """Every sowing of the season a year on, or more where that is over by `day`, in order of days.

    Bulbs and cancelled plans are left out.
    """
    return in_order(each_advice(season, day))


def each_advice(season: Season, day: date) -> Iterator[Advice]:
    """What `next_year` says, each reckoned when it is asked for, batch by batch."""
    shares = shares_counted(season)
    for batch in season.batches.values():
        if batch.sowing is not None and batch.main.stage is not Stage.CANCELLED:
            yield _advice(season, batch, shares, day)


def in_order(found: Iterable[Advice]) -> tuple[Advice, ...]:
    """In order of days, then by crop and variety."""
    return tuple(sorted(found, key=lambda advice: (advice.day, advice.crop, advice.variety)))


def year_on(day: date) -> date:
    """The same day of the next year; the 28th for a leap day."""
    try:
        return day.replace(year=day.year + 1)
    except ValueError:
        return day.replace(year=day.year + 1, day=28)


Seed = tuple[str, str]
"""Crop and variety."""


def enough_for(season: Season, batch: Batch, shares: dict[Seed, tuple[int, int]]) -> int | None:
    """Seeds that give the plants wanted of a batch nine times in ten; None where nothing tells.

    Args:
        season: the season.
        batch: a sowing of it.
        shares: what `shares_counted` says of the season.
    """
    counted = shares.get((batch.crop, batch.variety))
    seeds, enough, _ = _seeds(season, batch, season.crop(batch.crop), counted)
    return seeds if enough else None


def shares_counted(season: Season) -> dict[Seed, tuple[int, int]]:
    """(up, sown) of every crop and variety that was counted."""
    sums: dict[Seed, tuple[int, int]] = {}
    for batch in season.batches.values():
        counted = counted_of(season, batch)
        if counted:
            seed = (batch.crop, batch.variety)
            up, sown = sums.get(seed, (0, 0))
            sums[seed] = (up + counted[0], sown + counted[1])
    return sums


def _advice(
    season: Season, batch: Batch, shares: dict[Seed, tuple[int, int]], today: date
) -> Advice:
    crop = season.crop(batch.crop)
    sown = batch.sowing.day if batch.sowing else batch.begun
    stood = _stood_ready(batch)
    later = stood if stood > STOOD_READY_DAYS else 0
    seeds, enough, number = _seeds(season, batch, crop, shares.get((batch.crop, batch.variety)))
    rests = (_day_words(batch, stood, later), *number, *_loss_words(batch))
    day = year_on(sown) + timedelta(days=later)
    while day < today:
        day = year_on(day)
    return Advice(
        crop=crop.name,
        variety=batch.variety,
        day=day,
        seeds=seeds,
        wanted=batch.wanted,
        enough=enough,
        rests=rests,
    )


def _stood_ready(batch: Batch) -> int:
    """Days plants stood ready before they were planted; 0 where that is not known."""
    days = [batch.main.first_day(kind) for kind in (Kind.READY, Kind.HARDENED)]
    ready = min((day for day in days if day is not None), default=None)
    planted = batch.main.first_day(Kind.PLANTED_OUT)
    return (planted - ready).days if ready and planted and planted > ready else 0


def _day_words(batch: Batch, stood: int, later: int) -> str:
    if later:
        return f"stood ready {stood} days, so that much later"
    planted = batch.main.first_day(Kind.PLANTED_OUT)
    return "planted out in time" if planted else "the day as last time"


def _seeds(
    season: Season, batch: Batch, crop: Crop, counted: tuple[int, int] | None
) -> tuple[int | None, str, tuple[str, ...]]:
    """How many seeds, for what they are enough, and on what that rests."""
    before = seeds_sown(batch) or None
    share, said = _believed(season, batch, crop, counted)
    if not batch.wanted or share is None or batch.sowing is None:
        return before, "", ("seeds as last time" if before else "thinly",)
    if batch.sowing.raising in (Raising.CLUMPS, Raising.DRILL):
        return before, "", ("seeds as last time" if before else "thinly", said)
    per_cell = _thinned_from(batch, crop)
    tested = PRIOR_SEEDS + (counted[1] if counted else 0)
    try:
        seeds = _enough(batch.wanted, round(share, 3), round(tested), per_cell)
    except OutOfRangeError:
        return before, "", ("seeds as last time",)
    return seeds, f"enough for {batch.wanted} plants nine times in ten", (said,)


def _thinned_from(batch: Batch, crop: Crop) -> int:
    """Seeds a cell that are thinned to one plant; 1 where all of a cell's plants are kept."""
    sowing = batch.sowing
    if sowing is None or crop.growing.keep_per_cell > 1:
        return 1
    all_kept = sowing.cells is not None and (batch.tally.planted or 0) > sowing.cells
    return 1 if all_kept else sowing.per_cell or 1


def _believed(
    season: Season, batch: Batch, crop: Crop, counted: tuple[int, int] | None
) -> tuple[float | None, str]:
    """The share of this seed to expect next year, and what it rests on."""
    packet = season.packets.get(batch.sowing.packet) if batch.sowing else None
    printed = packet.germination if packet else None
    library = crop.germination.share if crop.germination else None
    start = printed if printed is not None else library
    if start is None or not 0 < start <= 1:
        return None, ""
    name = "packet" if printed is not None else "library"
    if counted is None:
        return start, f"none counted here, {name}'s {start:.0%} taken"
    learned = max(shrunk_share(start, *counted), 0.01)
    low, high = wilson(*counted)
    here = f"{counted[0]} of {counted[1]} up here ({low:.0%} to {high:.0%})"
    return learned, f"{here}, {name}'s {start:.0%}: {learned:.0%} taken"


@lru_cache(maxsize=8192)
def _enough(wanted: int, share: float, tested: int, per_cell: int) -> int:
    return seeds_needed(wanted, share, float(tested), SURVIVAL, WANTED_CHANCE, per_cell)


def _loss_words(batch: Batch) -> Iterator[str]:
    if batch.main.stage is Stage.LOST:
        yield "all of it was lost last time"
    for cause, count in sorted(batch.tally.losses.items(), key=lambda item: -item[1])[:1]:
        if count:
            yield f"{count} lost last time: {cause}"
