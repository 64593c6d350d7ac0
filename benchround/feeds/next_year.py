"""What to sow when next year, from what this year's sowings did.

The day is the last sowing's day a year on, moved later by as long as the plants stood ready for
want of weather or room (our proposal); the number is the one the sowing sheet and the round reckon
for the plants wanted. Each line says what it rests on.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date, timedelta

from benchround.core.batch.batch import Batch
from benchround.core.crop.crop import Raising
from benchround.core.dates import year_on
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import Stage
from benchround.core.numbers.shares import wilson
from benchround.core.record import Kind
from benchround.core.season import Season
from benchround.core.seed.needed import needed_again
from benchround.feeds.review import seeds_sown

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
    for batch in season.batches.values():
        if batch.sowing is not None and batch.main.stage is not Stage.CANCELLED:
            yield _advice(season, batch, day)


def in_order(found: Iterable[Advice]) -> tuple[Advice, ...]:
    """In order of days, then by crop and variety."""
    return tuple(sorted(found, key=lambda advice: (advice.day, advice.crop, advice.variety)))


def enough_for(season: Season, batch: Batch) -> int | None:
    """Seeds that give the plants wanted of a batch nine times in ten; None where nothing tells.

    Clumps and drilled rows are left out: they are sown thick, and thinned or kept as they come.
    """
    sowing = batch.sowing
    if sowing is None or sowing.raising in (Raising.CLUMPS, Raising.DRILL):
        return None
    amount = needed_again(season, batch).amount
    return amount.seeds if amount is not None else None


def _advice(season: Season, batch: Batch, today: date) -> Advice:
    crop = season.crop(batch.crop)
    sown = batch.sowing.day if batch.sowing else batch.begun
    stood = _stood_ready(batch)
    later = stood if stood > STOOD_READY_DAYS else 0
    seeds, enough, number = _seeds(season, batch)
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
        rests=(_day_words(batch, stood, later), number, *_loss_words(batch)),
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


def _seeds(season: Season, batch: Batch) -> tuple[int | None, str, str]:
    """How many seeds, for what they are enough, and on what that rests."""
    before, found = seeds_sown(batch) or None, needed_again(season, batch)
    if found.amount is None or found.known is None:
        return before, "", "seeds as last time" if before else "thinly"
    known, said = found.known, str(found.known)
    if known.batches:
        low, high = wilson(known.up, known.sown)
        said += f", {known.up} up ({low:.0%} to {high:.0%})"
    return found.amount.seeds, f"enough for {batch.wanted} plants nine times in ten", said


def _loss_words(batch: Batch) -> Iterator[str]:
    if batch.main.stage is Stage.LOST:
        yield "all of it was lost last time"
    for cause, count in sorted(batch.tally.losses.items(), key=lambda item: -item[1])[:1]:
        if count:
            yield f"{count} lost last time: {cause}"
