"""The sowings that follow one another, where a grower plans them: sheet, crop card, year."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from benchround.core.batch.batch import Batch
from benchround.core.crop.crop import Crop
from benchround.core.dates import say_day
from benchround.core.lifecycle import BEFORE
from benchround.core.planning.planned_time import wished_span
from benchround.core.planning.row_in_turn import row_here
from benchround.core.planning.schedule import sowing_day, window_day
from benchround.core.season import Season
from benchround.screens.text import BLANK, Line, Role, paragraph

MOST_DAYS = 5
"""Days named where there is no room for all."""


def turn_line(season: Season, crop: Crop, sown: date, width: int) -> Iterator[Line]:
    """The row in a sentence; nothing where the crop is sown once."""
    row = row_here(season, crop, sown)
    said = row.words(MOST_DAYS) if row is not None else ""
    if said:
        yield from paragraph(f"{said[0].upper()}{said[1:]}", width, Role.QUIET, "  ")


def short_turn(season: Season, crop: Crop, sown: date) -> str:
    """The row in a few words, to stand behind the sowing window; empty where there is none."""
    row = row_here(season, crop, sown)
    return row.short() if row is not None else ""


def turn_lines(season: Season, crop: Crop, day: date, width: int) -> Iterator[Line]:
    """Every sowing of the row with its days, on what they rest, and the source.

    Counted from the crop's last sowing of this growing year, planned or done; else from the next
    day that is good for it.
    """
    sown, why = _start(season, crop, day)
    row = row_here(season, crop, sown)
    if row is None:
        return
    yield BLANK
    yield from paragraph("Sown in turn", width, Role.HEADING)
    yield from paragraph(f"after {say_day(sown)} ({why})", width, Role.INK)
    for turn in row.turns:
        first = say_day(turn.first)
        span = first if turn.first == turn.best else f"{first} to {say_day(turn.best)}"
        yield from paragraph(f"  sow again {span}", width, Role.STRONG)
    if row.too_late is not None:
        words = f"  {say_day(row.too_late)} is too late: {row.because}"
        yield from paragraph(words, width, Role.LATE)
    yield from paragraph(f"{row.how}; counted from the later day each time", width, Role.QUIET)
    yield from paragraph(f"source: {row.source}", width, Role.QUIET)


def batch_turn(season: Season, batch: Batch, day: date, width: int) -> Iterator[Line]:
    """What follows a batch, where it is the last sowing of its crop."""
    crop = season.crop(batch.crop)
    if crop.succession_days is None or _last(season, crop, day) is not batch:
        return
    yield from turn_line(season, crop, _sown(season, batch, crop, day)[0], width)


def _sown(season: Season, batch: Batch, crop: Crop, day: date) -> tuple[date, str]:
    """The day a batch was sown, the last time where it was sown anew; or is planned for."""
    again = batch.sowing.again_on if batch.sowing is not None else None
    if again is not None:
        return again, f"sown anew {say_day(again)}"
    return sowing_day(season, batch, crop, day)


def _start(season: Season, crop: Crop, day: date) -> tuple[date, str]:
    last, year = _last(season, crop, day), season.site.year
    if last is not None:
        sown, why = _sown(season, last, crop, day)
        this = year.midwinter(day.year)
        if sown > (this if this <= day else year.midwinter(day.year - 1)):
            return sown, f"{last.id}, {why}"
    return window_day(season, crop, day)


def _last(season: Season, crop: Crop, day: date) -> Batch | None:
    """The batch of a crop sown last, or planned for the latest day."""
    planned = [
        (wished.opens, batch)
        for batch in season.batches.values()
        if batch.crop == crop.key and batch.main.stage in BEFORE
        if (wished := wished_span(season, batch, batch.main, day)) is not None
    ]
    if planned:
        return max(planned, key=lambda one: one[0])[1]
    return season.batches.get(season.last_sown.get(crop.key, ""))
