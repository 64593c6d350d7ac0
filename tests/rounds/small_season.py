"""Small seasons made by hand, for tests of lids, watering and airing. All names are invented."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date, time

from benchround.core.crop.crop import (
    Covering,
    Crop,
    Germination,
    Growing,
    Hardening,
    Hardiness,
    PlantClass,
    Raising,
)
from benchround.core.record import Draft, Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.task import Family, Task
from benchround.rounds.build import build_round
from tests.folding import fold_season

DAY = date(2026, 5, 27)
LONDON: dict[str, Figure] = {
    "lat_deg": 52.5,
    "lon_deg": -1.0,
    "altitude_m": 60,
    "timezone": "Europe/London",
    "last_frost": "05-11",
    "last_frost_safe": "05-30",
    "first_frost": "10-12",
}
GLASS: dict[str, Figure] = {
    "name": "Frame A",
    "kind": "frame",
    "glazing": "glass",
    "length_m": 1.8,
    "width_m": 0.9,
}


def crop(key: str, hardiness: Hardiness, covering: Covering = Covering.COMPOST) -> Crop:
    return Crop(
        key=key,
        name=key.capitalize(),
        latin="",
        plant_class=PlantClass.HALF_HARDY_ANNUAL,
        hardiness=hardiness,
        raising=Raising.CELLS,
        germination=Germination(5, 18, 35, 30, 60, 20, covering=covering),
        growing=Growing(feed=False),
        hardening=Hardening(days=18, least_days=18),
    )


CROPS = {
    "tenderling": crop("tenderling", Hardiness.TENDER),
    "halfling": crop("halfling", Hardiness.HALF_HARDY),
    "hardling": crop("hardling", Hardiness.HARDY),
    "dustling": crop("dustling", Hardiness.HARDY, Covering.NONE),
}


class Story:
    """Records told one after another."""

    def __init__(self) -> None:
        self.records: list[Record] = []

    def tell(self, day: date, kind: Kind, about: str = "", /, **figures: Figure) -> Record:
        return self.tell_at(None, day, kind, about, **figures)

    def tell_at(
        self, at: time | None, day: date, kind: Kind, about: str = "", /, **figures: Figure
    ) -> Record:
        number = len(self.records) + 1
        record = Record(f"R{number:06d}", day, kind, about, dict(figures), at=at)
        self.records.append(record)
        return record

    def tick(self, task: Task, day: date) -> tuple[Record, ...]:
        return tuple(self._take(draft, day) for draft in task.ticks)

    def _take(self, draft: Draft, day: date) -> Record:
        return self.tell_at(draft.at, day, draft.kind, draft.about, **draft.figures)

    def undo(self, records: Iterable[Record], day: date) -> None:
        for record in records:
            self.tell(day, Kind.WITHDRAWN, record=record.id)

    def season(self) -> Season:
        return fold_season(self.records, CROPS)

    def tasks(self, day: date, *families: Family) -> list[Task]:
        return [t for t in build_round(self.season(), day).tasks if t.family in families]


def place(story: Story, code: str, /, **figures: Figure) -> None:
    story.tell(date(2026, 1, 1), Kind.PLACE, code, **{"order": 1, **figures})


def begin(site: dict[str, Figure] | None = None) -> Story:
    story = Story()
    story.tell(date(2026, 1, 1), Kind.SITE, **(LONDON if site is None else site))
    return story


def outlook(story: Story, day: date, low: float, high: float, /, **figures: Figure) -> None:
    said: dict[str, Figure] = {"min_c": low, "max_c": high}
    story.tell(day, Kind.OUTLOOK, **{**said, **figures})


def sown(
    story: Story, name: str, crop_key: str, day: date, where: str, /, **figures: Figure
) -> Record:
    said: dict[str, Figure] = {"crop": crop_key, "place": where, "raising": "cells", "cells": 40}
    return story.tell(day, Kind.SOWN, name, **{**said, **figures})


def figures_of(tasks: Iterable[Task]) -> Iterator[str]:
    for task in tasks:
        yield from task.why.figures
