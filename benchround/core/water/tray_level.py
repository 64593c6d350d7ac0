"""How much water a tray holds this morning: the books run from when it was full, looks heeded."""

from __future__ import annotations

from datetime import date, timedelta

from benchround.core.batch.batch import Batch, Part
from benchround.core.frozen import dataclass
from benchround.core.place_log import PlaceLog
from benchround.core.record import Kind, Record
from benchround.core.season import Season
from benchround.core.seed.waiting import places_of
from benchround.core.water.fit import WET_BELOW, Moisture
from benchround.core.water.run import run_balance
from benchround.core.water.tray_filled import (
    BELIEVED_DRY_DAYS,
    MOST_DAYS_BACK,
    Filled,
    domed_until,
    filled,
    taken_as_filled,
)
from benchround.core.water.tray_fit import days_at, said_of
from benchround.core.water.tray_holder import Holder

ROUNDING_ML = 1e-9


@dataclass(frozen=True, slots=True)
class Books:
    """What a tray's books are kept with."""

    season: Season
    batch: Batch
    part: Part
    holder: Holder
    share: float
    factor: float

    @property
    def floor_ml(self) -> float:
        """The level at which the allowed water is gone, ml."""
        tray = self.holder.water
        return tray.capacity_ml - tray.allowed_ml(self.share)


def level_on(books: Books, log: PlaceLog, day: date) -> tuple[Filled, float, date | None]:
    """How much water there is on the morning of a day.

    Returns:
        Since when it is reckoned, the easily available water in ml, and the day its allowed water
        was gone, where that is past.
    """
    full = filled(books.batch, books.part, log, day)
    if full is None:
        full = taken_as_filled(day, None)
    elif not full.written and (day - full.day).days > MOST_DAYS_BACK:
        full = taken_as_filled(day, full.worked)
    level_ml, dry = _level(books, log, full, day)
    if not full.written and dry is not None and (day - dry).days > BELIEVED_DRY_DAYS:
        full = taken_as_filled(day, full.worked)
        level_ml, dry = _level(books, log, full, day)
    return full, level_ml, dry


def _level(books: Books, log: PlaceLog, full: Filled, day: date) -> tuple[float, date | None]:
    """The level on the morning of a day, and the day its allowed water was gone, if it is."""
    tray = books.holder.water
    look = _latest_look(books, log, full, day)
    level_ml, begin, dry = tray.capacity_ml, full.day, None
    if look is not None:
        level_ml, dry = _run(books, begin, look.day, level_ml, None)
        begin = look.day
        if said_of(look) is Moisture.ALREADY_DRY:
            level_ml, dry = min(level_ml, books.floor_ml), dry or look.day
        else:
            wet_ml = tray.capacity_ml - WET_BELOW * tray.allowed_ml(books.share)
            level_ml, dry = max(level_ml, wet_ml), None
    return _run(books, begin, day, level_ml, dry)


def _run(
    books: Books, begin: date, until: date, level_ml: float, dry: date | None
) -> tuple[float, date | None]:
    part, kept = books.part, books.season.trays.runs
    where = (books.holder.water, part.place, books.factor, domed_until(part))
    key = (where, begin, until, level_ml, dry, books.floor_ml)
    found = kept.get(key)
    if found is None:
        found = kept[key] = _run_afresh(books, begin, until, level_ml, dry)
    return found


def _run_afresh(
    books: Books, begin: date, until: date, level_ml: float, dry: date | None
) -> tuple[float, date | None]:
    days = days_at(books.season, books.part, begin, until, books.factor)
    for number, state in enumerate(run_balance(books.holder.water, days, level_ml)):
        level_ml = state.end_ml
        gone = level_ml <= books.floor_ml + ROUNDING_ML
        dry = (dry or begin + timedelta(days=number)) if gone else None
    return level_ml, dry


def _latest_look(books: Books, log: PlaceLog, full: Filled, day: date) -> Record | None:
    """The last look at its moisture since it was full; a look the watering answered is over."""
    part = books.part
    looks = [part.last[Kind.MOISTURE]] if Kind.MOISTURE in part.last else []
    if log.looks:
        arrived = places_of(books.batch, part)[-1][0]
        looks += [record for record in log.looks if record.day >= arrived]
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


def look_on(part: Part, log: PlaceLog, day: date) -> Moisture | None:
    """What the grower said of the tray, or of its whole place, on a day; None where nothing."""
    looks = [part.last[Kind.MOISTURE]] if Kind.MOISTURE in part.last else []
    said = [said_of(record) for record in (*looks, *log.looks) if record.day == day]
    return next((words for words in reversed(said) if words is not None), None)
