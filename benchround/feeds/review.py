"""What a season taught, in figures: what came up, what was lost and why, what was had.

Only what somebody counted is counted; what was not is named.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from enum import StrEnum

from benchround.core.batch.batch import Batch
from benchround.core.batch.telling import Telling
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import BEFORE, ENDED, WAITING, Stage
from benchround.core.numbers.shares import wilson
from benchround.core.record import Kind
from benchround.core.season import Season
from benchround.core.seed.final_count import final_count
from benchround.core.seed.waiting import place_on, places_of
from benchround.feeds.tables import Table


class By(StrEnum):
    """What a figure is told apart by."""

    CROP = "crop"
    PACKET = "packet"
    PLACE = "place"
    CAUSE = "cause"


@dataclass(frozen=True, slots=True)
class CameUp:
    """How much of the seed of one crop, packet or place came up."""

    name: str
    batches: int
    sown: int
    up: int

    @property
    def share(self) -> float:
        """Share of the seed that came up."""
        return self.up / self.sown

    @property
    def limits(self) -> tuple[float, float]:
        """The range the share lies in, 95 % score interval (Wilson 1927, from memory)."""
        return wilson(self.up, self.sown)


@dataclass(frozen=True, slots=True)
class Lost:
    """How many plants of one crop, packet or place were lost to one cause.

    Attributes:
        times: how often such a loss was written down.
        count: plants; 0 where nobody had counted them before.
    """

    name: str
    cause: str
    times: int
    count: int


@dataclass(frozen=True, slots=True)
class Loss:
    """One loss as it was written down.

    Attributes:
        batch: what was lost of.
        cause: why.
        place: code of the place where it stood that day.
        count: plants, all that were alive where it was not said; 0 where nobody had counted before.
    """

    batch: Batch
    cause: str
    place: str
    count: int


@dataclass(frozen=True, slots=True)
class Had:
    """Plants wanted of a batch, and plants had: planted out, or alive where none is yet."""

    batch: str
    crop: str
    variety: str
    wanted: int
    had: int
    planted: bool


def came_up(season: Season, by: By) -> tuple[CameUp, ...]:
    """What came up by crop, packet or place of sowing, by name; batches not counted are left out.

    A batch sown without a packet or place belongs to none.
    """
    sums: dict[str, tuple[int, int, int]] = {}
    for batch in season.batches.values():
        counted = counted_of(season, batch)
        name = _name_of(season, batch, by) if counted else ""
        if counted and name:
            up, sown = counted
            batches, total, risen = sums.get(name, (0, 0, 0))
            sums[name] = (batches + 1, total + sown, risen + up)
    return tuple(CameUp(name, *sums[name]) for name in sorted(sums))


def counted_of(season: Season, batch: Batch) -> tuple[int, int] | None:
    """(up, sown) of a batch whose emergence is over and was counted; else None."""
    found = final_count(batch, season.crop(batch.crop))
    return None if found.up is None else (found.up, found.sown)


def seeds_sown(batch: Batch) -> int:
    """Seeds sown, those sown again included; 0 where it was not said."""
    again = batch.sowing.again_seeds if batch.sowing else 0
    return (batch.tally.sown or 0) + again


def not_counted(season: Season) -> tuple[str, ...]:
    """Batches that were sown by number and have no final count, by id."""
    return tuple(
        name
        for name in sorted(season.batches)
        if seeds_sown(season.batches[name]) and counted_of(season, season.batches[name]) is None
    )


def losses(season: Season, by: By) -> tuple[Lost, ...]:
    """What was lost by crop, packet, place (where it stood that day) or cause alone; most first."""
    return added_up(season, every_loss(season), by)


def added_up(season: Season, found: Iterable[Loss], by: By) -> tuple[Lost, ...]:
    """Losses added up by crop, packet, place or cause alone; most first."""
    sums: dict[tuple[str, str], tuple[int, int]] = {}
    for loss in found:
        if by is By.PLACE:
            name = _place_name(season, loss.place)
        else:
            name = loss.cause if by is By.CAUSE else _name_of(season, loss.batch, by)
        if name:
            times, lost = sums.get((name, loss.cause), (0, 0))
            sums[name, loss.cause] = (times + 1, lost + loss.count)
    ordered = sorted(sums.items(), key=lambda item: (-item[1][1], item[0]))
    return tuple(Lost(*names, *figures) for names, figures in ordered)


def every_loss(season: Season) -> Iterator[Loss]:
    """Every loss of the season, batch by batch."""
    for batch in season.batches.values():
        yield from losses_of(batch)


def losses_of(batch: Batch) -> Iterator[Loss]:
    """Every loss of a batch, in story order; its records are told once up to the last of them."""
    lost = [number for number, record in enumerate(batch.records) if record.kind is Kind.LOST]
    telling: Telling | None = None
    for record in batch.records[: lost[-1] + 1] if lost else ():
        if telling is None:
            telling = Telling.begin(record, batch.id)
            continue
        if record.kind is Kind.LOST:
            name = record.text("part")
            part = next(part for part in telling.parts if part.name == name)
            count = record.count()
            gone = (part.alive or 0) if count is None else count
            yield Loss(batch, record.text("cause") or "unknown", part.place, gone)
        telling.take(record)


def wanted_had(season: Season) -> tuple[Had, ...]:
    """Wanted and had of every batch that says what is wanted and is past sowing, by id."""
    found: list[Had] = []
    for name in sorted(season.batches):
        batch = season.batches[name]
        if not batch.wanted or batch.main.stage in BEFORE | WAITING | {Stage.CANCELLED}:
            continue
        planted = batch.tally.planted
        alive = sum(part.alive or 0 for part in batch.parts if part.stage not in ENDED)
        had = alive if planted is None else planted
        crop = season.crop(batch.crop).name
        found.append(Had(name, crop, batch.variety, batch.wanted, had, planted is not None))
    return tuple(found)


def review_table(season: Season) -> Table:
    """Everything above in one table; `about` says which figure a row holds."""
    columns = ("about", "name", "cause", "batches", "sown", "up", "share", "low", "high", "lost")
    rows: list[tuple[str | int | float | None, ...]] = []
    for by in (By.CROP, By.PACKET, By.PLACE):
        for one in came_up(season, by):
            low, high = one.limits
            shares = (round(one.share, 4), round(low, 4), round(high, 4))
            figures = (one.batches, one.sown, one.up, *shares)
            rows.append((f"germination by {by}", one.name, None, *figures, None, None, None))
    found = tuple(every_loss(season))
    for by in By:
        for lost in added_up(season, found, by):
            about = f"losses by {by}"
            rows.append((about, lost.name, lost.cause, *[None] * 6, lost.count, None, None))
    for had in wanted_had(season):
        name = " ".join(filter(None, (had.batch, had.crop, had.variety)))
        rows.append(("wanted and had", name, None, *[None] * 7, had.wanted, had.had))
    return Table("review", (*columns, "wanted", "had"), tuple(rows))


def _name_of(season: Season, batch: Batch, by: By) -> str:
    if by is By.CROP:
        return season.crop(batch.crop).name
    if by is By.PACKET:
        return batch.sowing.packet if batch.sowing else ""
    sown_on = batch.sowing.day if batch.sowing else batch.begun
    return _place_name(season, place_on(places_of(batch, batch.main), sown_on))


def _place_name(season: Season, code: str) -> str:
    place = season.place(code)
    return place.name if place else code
