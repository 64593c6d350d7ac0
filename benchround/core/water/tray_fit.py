"""How fast a tray dries where it stands, learnt from looks at its moisture and from weighings.

Only what was said of this batch, or of its place as a whole, is used: a look at one tray moves no
other's. Say it of the place where all its trays were looked at.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta

from benchround.core.batch.batch import Batch, Part, fold_batch
from benchround.core.errors import IllegalRecordError
from benchround.core.place_log import PlaceLog, place_log_of
from benchround.core.record import Kind, Record
from benchround.core.season import Season
from benchround.core.seed.waiting import place_on, places_of
from benchround.core.sky.hour_curve import minute_of
from benchround.core.sky.known_day import KnownDay
from benchround.core.water.balance import ALLOWED_SHARE, Compost, TrayWater, ml_from_mm
from benchround.core.water.canopy import Canopy, canopy_of
from benchround.core.water.fit import (
    LEAST_FACTOR,
    MOST_FACTOR,
    Moisture,
    PlaceFactor,
    after_look,
    after_weighing,
)
from benchround.core.water.run import WaterDay, run_balance, share_dried_by
from benchround.core.water.tray_filled import MOST_DAYS_BACK, domed_on, filled, root_stage, stays
from benchround.core.water.tray_holder import holder_of
from benchround.core.water.tray_kept import Stays
from benchround.core.water.tray_place import water_day

LOOKS_KEPT = 12
MOST_USED_SHARE = 20.0
LEAST_WEIGHED_ML = 0.1
PLAIN = PlaceFactor()
SAID = {str(words): words for words in Moisture}


def said_of(record: Record) -> Moisture | None:
    """What a look said; None where its words are no known ones."""
    return SAID.get(record.text("said").strip().lower())


def learnt_factor(season: Season, batch: Batch, part: Part, compost: Compost) -> PlaceFactor:
    """How fast the tray dries against the model, by all that was seen of it at its place.

    Args:
        season: the season.
        batch: the batch.
        part: the part, with the place asked about as its place.
        compost: what it stands in.
    """
    log = place_log_of(season, part.place)
    if not log.looks and Kind.MOISTURE not in part.last and Kind.WEIGHED not in part.last:
        return PLAIN
    factor = PLAIN
    for record in _signs(batch, part, log):
        if record.kind is Kind.WEIGHED:
            factor = _weighed(season, batch, part, record, factor, compost)
        else:
            factor = _looked(season, batch, part, record, factor, compost)
    return factor


def _signs(batch: Batch, part: Part, log: PlaceLog) -> Iterator[Record]:
    own = [
        record
        for record in batch.records
        if record.kind in (Kind.MOISTURE, Kind.WEIGHED) and record.text("part") in ("", part.name)
    ]
    moves = places_of(batch, part)
    here = [
        record
        for record in (*own, *log.looks)
        if record.day >= batch.begun and place_on(moves, record.day) == part.place
    ]
    yield from sorted(here, key=lambda record: record.order)[-LOOKS_KEPT:]


def _then(batch: Batch, part: Part, record: Record) -> Part | None:
    """The part as it stood when a record was taken; None where it did not exist yet."""
    before = [past for past in batch.records if past.order < record.order]
    found, _ = fold_batch(batch.id, before)
    if found is None:
        return None
    try:
        return found.part(part.name)
    except IllegalRecordError:
        return found.main  # spares were part of the main one before they were left over


def day_at(
    season: Season, part: Part, leaves: Canopy, day: date, factor: float, *, rain_counts: bool
) -> tuple[WaterDay, KnownDay]:
    """What a day does to a part's tray where it stands now, and the weather behind it."""
    return water_day(
        season,
        part.place,
        day,
        rain_counts=rain_counts,
        factor=factor,
        domed=domed_on(part, day),
        cover=leaves.cover(day),
    )


def days_in(
    season: Season, part: Part, leaves: Canopy, since: date, until: date, stood: Stays
) -> Iterator[WaterDay]:
    """What the days from `since` up to, not with, `until` did to a tray, wherever it then stood."""
    leaving = (*(day for day, _, _ in stood[1:]), until)
    for (_, place, factor), end in zip(stood, leaving, strict=True):
        end = min(end, until)
        there = part if place == part.place else replace(part, place=place)
        if since < end:
            yield from days_at(season, there, leaves, since, end, factor)
            since = end


def days_at(
    season: Season, part: Part, leaves: Canopy, since: date, until: date, factor: float
) -> tuple[WaterDay, ...]:
    """What the days from `since` up to, not with, `until` did to a part's tray."""
    days = (since + timedelta(days=n) for n in range((until - since).days))
    return tuple(day_at(season, part, leaves, on, factor, rain_counts=True)[0] for on in days)


def _looked(
    season: Season,
    batch: Batch,
    part: Part,
    record: Record,
    factor: PlaceFactor,
    compost: Compost,
) -> PlaceFactor:
    said, then = said_of(record), _then(batch, part, record)
    if said is None or then is None:
        return factor
    stood = stays(batch, then)
    full = filled(then, stood, lambda code: _before(season, code, record.day), record.day)
    if not full.known or (record.day - full.day).days > MOST_DAYS_BACK:
        return factor
    if full.day < stood[-1][0]:
        return factor  # part of that time it stood elsewhere
    crop = season.crop(batch.crop)
    holder = holder_of(batch, then, crop, season.containers, compost)
    leaves = canopy_of(batch, then, crop, holder.pot)
    tray, allowed = holder.water, ALLOWED_SHARE[root_stage(batch, then, crop, record.day)]
    used = _used_ml(season, part, leaves, tray, full.day, record, factor.factor)
    return after_look(factor, said, min(MOST_USED_SHARE, used / tray.allowed_ml(allowed)))


def _before(season: Season, code: str, day: date) -> PlaceLog:
    log = place_log_of(season, code)
    return PlaceLog(log.lids, tuple(on for on in log.watered if on < day), log.looks)


def _used_ml(
    season: Season,
    part: Part,
    leaves: Canopy,
    tray: TrayWater,
    since: date,
    record: Record,
    factor: float,
) -> float:
    """What the model takes as gone when the grower looked, the lack beyond it included."""
    states = run_balance(tray, days_at(season, part, leaves, since, record.day, factor))
    gone = sum(state.short_ml for state in states)
    gone += tray.capacity_ml - (states[-1].end_ml if states else tray.capacity_ml)
    if record.at is not None:
        today, _ = day_at(season, part, leaves, record.day, factor, rain_counts=False)
        by_then = share_dried_by(minute_of(record.at) / 60.0)
        gone += ml_from_mm(today.loss_mm, tray.area_m2) * by_then
    return gone


def _weighed(
    season: Season,
    batch: Batch,
    part: Part,
    record: Record,
    factor: PlaceFactor,
    compost: Compost,
) -> PlaceFactor:
    """The factor after a weighing that makes a pair with the one before it; else unchanged."""
    first = _weighing_before(batch, part, record)
    later_g = record.number("grams")
    wet_g = first.number("grams") if first is not None else None
    if first is None or later_g is None or wet_g is None:
        return factor
    if _watered_between(season, batch, part, first, record):
        return factor
    crop = season.crop(batch.crop)
    holder = holder_of(batch, part, crop, season.containers, compost)
    leaves = canopy_of(batch, part, crop, holder.pot)
    days = days_at(season, part, leaves, first.day, record.day, 1.0)
    modelled = sum(ml_from_mm(day.loss_mm, holder.water.area_m2) for day in days)
    measured = wet_g - later_g
    if any(day.rain_mm > 0.0 for day in days) or modelled < LEAST_WEIGHED_ML:
        return factor
    if not LEAST_FACTOR <= measured / modelled <= MOST_FACTOR:
        return factor
    return after_weighing(factor, measured, modelled)


def _weighing_before(batch: Batch, part: Part, record: Record) -> Record | None:
    earlier = [
        past
        for past in batch.records
        if past.kind is Kind.WEIGHED
        and past.order < record.order
        and past.text("part") == record.text("part")
        and 0 < (record.day - past.day).days <= MOST_DAYS_BACK
    ]
    return earlier[-1] if earlier else None


def _watered_between(
    season: Season, batch: Batch, part: Part, first: Record, later: Record
) -> bool:
    own = any(
        record.kind is Kind.WATERED and first.order < record.order < later.order
        for record in batch.records
    )
    whole = place_log_of(season, part.place).watered
    return own or any(first.day < on <= later.day for on in whole)
