"""A sowing or a count that was read, in words: what the grower looks at before it is recorded."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date

from benchround.core.batch.batch import Batch
from benchround.core.record import Draft, Figure, Kind
from benchround.core.season import Season
from benchround.core.typed.date import say_full

COUNTS: Mapping[str, tuple[str, str]] = {
    "wanted": ("wanted", "wanted"),
    "seeds": ("seed", "seeds"),
    "cells": ("cell", "cells"),
    "per_cell": ("seed a cell", "seeds a cell"),
    "trays": ("tray", "trays"),
}
OTHERS: Mapping[str, str] = {
    "depth_mm": "{} mm deep",
    "heat_c": "at {} C",
    "row_m": "{} m of row",
    "container": "in {}",
    "packet": "packet {}",
    "raising": "sown in {}",
    "covering": "covered with {}",
}


def sowing_words(draft: Draft, season: Season, today: date, *, far: bool = True) -> str:
    """Crop, variety, day, numbers, container, place and packet of a sowing or a plan.

    Args:
        draft: what was read.
        season: knows crops and places by name.
        today: the grower's day.
        far: whether to say how far off the day is.
    """
    return ", ".join(_parts(draft, season, today, far))


def up_words(draft: Draft, batch: Batch | None, season: Season, today: date) -> str:
    """The batch by name, what was seen of it, and when.

    Args:
        draft: a count, a first seedling or a look at which nothing was up.
        batch: the batch; it may be one that is not on the books yet.
        season: knows the crop by name.
        today: the grower's day.
    """
    name = batch_words(batch, season) if batch is not None else ""
    count = draft.figures.get("count")
    seen = {Kind.FIRST_UP: "first up", Kind.LOOKED: "looked, none up"}.get(
        draft.kind, f"{count} up"
    )
    return ", ".join(filter(None, (name, f"{seen} {say_full(draft.day or today, today)}")))


def batch_words(batch: Batch, season: Season) -> str:
    """Crop and variety of a batch."""
    crop = season.crop(batch.crop).name
    return f"{crop} '{batch.variety}'" if batch.variety else crop


def _parts(draft: Draft, season: Season, today: date, far: bool) -> Iterator[str]:
    figures = draft.figures
    yield crop_words(draft, season)
    day = say_full(day_of(draft, today), today)
    yield f"{draft.kind} {day if far else day.partition(',')[0]}"
    yield from numbers_words(figures)
    place = season.place(str(figures.get("place", "")))
    if place is not None:
        yield f"place {place.name}"
    for name, words in OTHERS.items():
        if name in figures:
            yield words.format(_figure(figures[name]))
    if draft.note:
        yield f"note: {draft.note}"


def crop_words(draft: Draft, season: Season) -> str:
    """Crop and variety."""
    crop = season.crop(str(draft.figures.get("crop", ""))).name
    variety = draft.figures.get("variety", "")
    return f"{crop} '{variety}'" if variety else crop


def day_of(draft: Draft, today: date) -> date:
    """The day it was sown, or is planned for."""
    if draft.kind is Kind.PLANNED:
        return date.fromisoformat(str(draft.figures["sow_on"]))
    return draft.day or today


def numbers_words(figures: Mapping[str, Figure]) -> Iterator[str]:
    """Every number with what it counts."""
    for name in COUNTS:
        if name in figures:
            yield number_words(name, figures[name])


def number_words(name: str, number: Figure) -> str:
    """A number of `COUNTS` with what it counts."""
    one, many = COUNTS[name]
    return f"{number} {one if number == 1 else many}"


def _figure(value: Figure) -> str:
    return f"{value:g}" if isinstance(value, int | float) else value
