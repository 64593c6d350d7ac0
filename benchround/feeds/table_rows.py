"""The season as tables: batches, records, readings."""

from __future__ import annotations

from collections.abc import Iterable

from benchround.core.batch.batch import Batch
from benchround.core.lifecycle import ENDED
from benchround.core.record import Kind, Record, live
from benchround.core.season import Season
from benchround.feeds.tables import Cell, Table, flat

BATCH_COLUMNS = (
    *("batch", "crop", "crop_name", "variety", "stage", "place", "begun", "sown_on", "seeds"),
    *("sown_again", "cells", "packet", "up", "pricked_out", "planted", "flowered", "alive"),
    *("wanted", "lost", "composted"),
)
RECORD_COLUMNS = ("id", "day", "at", "kind", "about", "figures", "note", "computer", "stands")
READING_FIGURES = ("min_c", "max_c", "sun_h", "rain_mm", "rain_hour_mm", "gust_kmh")
READING_COLUMNS = ("day", "at", "place", *READING_FIGURES)


def batches_table(season: Season) -> Table:
    """One row a batch, by id."""
    rows = (_batch_row(season, season.batches[name]) for name in sorted(season.batches))
    return Table("batches", BATCH_COLUMNS, tuple(rows))


def records_table(records: Iterable[Record]) -> Table:
    """One row a record as it was written, by id; `stands` is no where it was withdrawn."""
    kept = tuple(sorted(records, key=lambda record: record.id))
    standing = {record.id for record in live(kept)}
    rows = tuple(
        (
            record.id,
            record.day.isoformat(),
            record.at.isoformat("auto") if record.at else None,
            str(record.kind),
            record.about,
            flat(record.figures),
            record.note,
            record.machine,
            record.id in standing,
        )
        for record in kept
    )
    return Table("records", RECORD_COLUMNS, rows)


def readings_table(records: Iterable[Record]) -> Table:
    """One row a reading that stands, by day; an empty place is outside."""
    rows = tuple(
        (
            record.day.isoformat(),
            record.at.isoformat("auto") if record.at else None,
            record.about,
            *(record.number(name) for name in READING_FIGURES),
        )
        for record in live(tuple(records))
        if record.kind is Kind.READING
    )
    return Table("readings", READING_COLUMNS, rows)


def _batch_row(season: Season, batch: Batch) -> tuple[Cell, ...]:
    sowing, tally = batch.sowing, batch.tally
    alive = [part.alive for part in batch.parts if part.stage not in ENDED]
    known = [count for count in alive if count is not None]
    return (
        batch.id,
        batch.crop,
        season.crop(batch.crop).name,
        batch.variety,
        str(batch.main.stage),
        batch.main.place,
        batch.begun.isoformat(),
        sowing.day.isoformat() if sowing else None,
        tally.sown,
        sowing.again_seeds if sowing and sowing.again_seeds else None,
        sowing.cells if sowing else None,
        sowing.packet if sowing else "",
        tally.up,
        tally.pricked_out,
        tally.planted,
        tally.flowered,
        sum(known) if known else None,
        batch.wanted,
        sum(tally.losses.values()),
        tally.surplus,
    )
