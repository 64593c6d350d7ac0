"""How much water a tray holds this morning: the books run from when it was full, looks heeded."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta

from benchround.core.batch.batch import Batch, Part
from benchround.core.place_log import PlaceLog, place_log_of
from benchround.core.record import Kind, Record
from benchround.core.season import Season
from benchround.core.water.balance import TrayWater
from benchround.core.water.canopy import Canopy
from benchround.core.water.fit import WET_BELOW, Moisture
from benchround.core.water.run import DayPart, next_watering, run_balance
from benchround.core.water.tray_filled import (
    Filled,
    domed_until,
    filled,
    stays,
)
from benchround.core.water.tray_fit import day_at, days_in, learnt_factor, said_of
from benchround.core.water.tray_holder import compost_of
from benchround.core.water.tray_kept import Level, Seen, Stays

ROUNDING_ML = 1e-9


class Books:
    """What a tray's books are kept with.

    Attributes:
        leaves: the leaves over it as they grow.
        stays: where it stood lately, oldest first.
        alike: what was reckoned of trays like it.
    """

    __slots__ = ("alike", "batch", "factor", "leaves", "part", "season", "share", "stays", "tray")

    def __init__(
        self,
        season: Season,
        batch: Batch,
        part: Part,
        tray: TrayWater,
        share: float,
        factor: float,
        leaves: Canopy,
    ) -> None:
        self.season, self.batch, self.part = season, batch, part
        self.tray, self.share, self.factor, self.leaves = tray, share, factor, leaves
        self.stays = stays(batch, part)
        self.alike = season.trays.alike(tray, share, leaves)

    @property
    def floor_ml(self) -> float:
        """The level at which the allowed water is gone, ml."""
        return self.tray.capacity_ml - self.tray.allowed_ml(self.share)

    def stood(self, since: date) -> Stays:
        """Where it stood from a day on, and how fast it dries there."""
        here = (since, self.part.place, self.factor)
        if self.stays[-1][0] <= since:
            return (here,)
        found: list[tuple[date, str, float]] = []
        for day, place in reversed(self.stays):
            if not found:
                found.append((max(day, since), *here[1:]))
            else:
                found.append((max(day, since), place, self._factor_at(place)))
            if day <= since:
                break
        found[-1] = (since, *found[-1][1:])
        return tuple(reversed(found))

    def _factor_at(self, place: str) -> float:
        there = replace(self.part, place=place)
        return learnt_factor(self.season, self.batch, there, compost_of(self.season)).factor


def level_on(books: Books, day: date) -> tuple[Filled, Level]:
    """Since when a tray's water is reckoned, and how it stands on the morning of a day."""
    season = books.season
    full = filled(books.part, books.stays, lambda code: place_log_of(season, code), day)
    return full, _level(books, full, day)


def _level(books: Books, full: Filled, day: date) -> Level:
    """How it stands on the morning of a day, by when it was full and the last look since."""
    look = _latest_look(books, full, day)
    seen = (look.day, said_of(look)) if look is not None else None
    stood, dome = books.stood(full.day), domed_until(books.part)
    kept, key = books.alike.levels, ((stood, dome), full.day, seen, day)
    found = kept.get(key)
    if found is None:
        found = kept[key] = _level_afresh(books, stood, seen, day)
    return found


def _level_afresh(books: Books, stood: Stays, seen: Seen | None, day: date) -> Level:
    tray, begin = books.tray, stood[0][0]
    level_ml: float = tray.capacity_ml
    dry: date | None = None
    if seen is not None:
        looked, said = seen
        level_ml, dry = _run(books, stood, begin, looked, level_ml, None)
        begin = looked
        if said is Moisture.ALREADY_DRY:
            level_ml, dry = min(level_ml, books.floor_ml), dry or looked
        else:
            wet_ml = tray.capacity_ml - WET_BELOW * tray.allowed_ml(books.share)
            level_ml, dry = max(level_ml, wet_ml), None
    level_ml, dry = _run(books, stood, begin, day, level_ml, dry)
    return Level(level_ml, dry, None if dry else _gone_by(books, day, level_ml))


def _gone_by(books: Books, day: date, level_ml: float) -> DayPart | None:
    """The part of a day by which the allowed water is gone, rain that may come not counted."""
    today, _ = day_at(books.season, books.part, books.leaves, day, books.factor, rain_counts=False)
    due = next_watering(books.tray, (today,), books.share, level_ml)
    return due.part if due is not None else None


def _run(
    books: Books, stood: Stays, begin: date, until: date, level_ml: float, dry: date | None
) -> tuple[float, date | None]:
    dry_ml = books.floor_ml + ROUNDING_ML
    days = tuple(days_in(books.season, books.part, books.leaves, begin, until, stood))
    for number, state in enumerate(run_balance(books.tray, days, level_ml)):
        level_ml = state.end_ml
        gone = level_ml <= dry_ml
        dry = (dry or begin + timedelta(days=number)) if gone else None
    return level_ml, dry


def _latest_look(books: Books, full: Filled, day: date) -> Record | None:
    """The last look at its moisture since it was full; a look the watering answered is over."""
    part = books.part
    looks = [part.last[Kind.MOISTURE]] if Kind.MOISTURE in part.last else []
    looks += _looks_around(books)
    if not looks:
        return None
    watered = part.last.get(Kind.WATERED)
    since = [
        record
        for record in looks
        if said_of(record) is not None
        and record.day <= day
        and (
            record.day > full.day
            or (watered is not None and watered.day == full.day and record.order > watered.order)
        )
    ]
    return max(since, key=lambda record: record.order, default=None)


def _looks_around(books: Books) -> Iterator[Record]:
    """What was said of whole places while it stood there."""
    until = date.max
    for since, place in reversed(books.stays):
        for record in place_log_of(books.season, place).looks:
            if since <= record.day <= until:
                yield record
        until = since


def look_on(part: Part, log: PlaceLog, day: date) -> Moisture | None:
    """What the grower said of the tray, or of its whole place, on a day; None where nothing."""
    looks = [part.last[Kind.MOISTURE]] if Kind.MOISTURE in part.last else []
    if not looks and not log.looks:
        return None
    said = [said_of(record) for record in (*looks, *log.looks) if record.day == day]
    return next((words for words in reversed(said) if words is not None), None)
