"""A grower who ticks only what the round offers gets every crop into the ground, wherever it is.

Property over the crop library and three sites: nothing is recorded but the sowing and the ticks of
the round's own tasks. That the way leads on is the trade's (stages in order: common practice, no
source). By default each crop is followed at one of the sites, which one goes by its name; with
BENCHROUND_WHOLE_LIVES=all in the environment every crop is followed at every site.
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from datetime import date, timedelta

import pytest

from benchround.core.book import RecordBook
from benchround.core.crop.crop import Crop, PlantClass, Raising, SowingWindow
from benchround.core.dates import Span
from benchround.core.lifecycle import OUT
from benchround.core.planning.last_sowing import first_frost_from
from benchround.core.record import Figure, Kind, Record
from benchround.core.site import Site
from benchround.core.task import Ask, Family, Task
from benchround.crops.library import load_library
from benchround.rounds.answers import drafts_for
from tests.rounds.one_batch import batch_tasks
from tests.sample.story import PLACES, SITE

LIBRARY = load_library()
START = date(2026, 1, 1)
LONGEST_DAYS = 430
LEFT_ALONE = (Family.RESOW, Family.SPARES, Family.LOCATE, Family.WATER, Family.CLEAR)
NOT_TICKED = (*LEFT_ALONE, Family.SOW_AGAIN)
MOST_TASKS = 8
"""More than this of one batch on one morning nobody does (our own limit)."""
SITES: dict[str, dict[str, Figure]] = {
    "52 N": SITE,
    "38 S": {
        **SITE,
        "lat_deg": -38.0,
        "lon_deg": 145.0,
        "timezone": "Australia/Melbourne",
        "last_frost": "09-20",
        "last_frost_safe": "10-15",
        "first_frost": "05-10",
    },
    "65 N": {
        **SITE,
        "lat_deg": 65.0,
        "lon_deg": 25.0,
        "timezone": "Europe/Helsinki",
        "last_frost": "06-05",
        "last_frost_safe": "06-20",
        "first_frost": "08-28",
    },
}
STANDS = {"heat": "propagator", "cover": "bench-1", "shade": "bench-2", "outdoors": "frame-a"}


def raised(crop: Crop) -> bool:
    return (
        crop.plant_class is not PlantClass.BULB
        and crop.raising not in (Raising.DRILL, Raising.BULB)
        and crop.germination is not None
    )


KEYS = [key for key in sorted(LIBRARY) if raised(LIBRARY[key])]
LIVES = [
    (site, key)
    for number, site in enumerate(SITES)
    for key in KEYS
    if os.environ.get("BENCHROUND_WHOLE_LIVES") == "all" or sum(map(ord, key)) % 3 == number
]


def answer(task: Task, ask: Ask) -> str:
    if ask.into == "count" and task.family is Family.LOOK:
        return "24"
    if ask.into == "place" and task.family is Family.PLANT_OUT:
        return "Bed 4"
    if ask.into == "place" and task.family is Family.UNCOVER:
        return ask.default or "Bench 1"
    return {"stem_mm": "9", "count": "20"}.get(ask.into, ask.default)


def first_window(site: Site, crop: Crop) -> tuple[SowingWindow, Span] | None:
    found = [(w, span) for w in crop.windows if (span := site.year.span(w, START)) is not None]
    return min(found, key=lambda pair: pair[1].opens, default=None)


class Life:
    """One sowing, led by ticks."""

    def __init__(self, key: str, site: Mapping[str, Figure]) -> None:
        self.key, self.crop, self.number = key, LIBRARY[key], 0
        self.book = RecordBook([], lambda _: LIBRARY)
        self.tell(START, Kind.SITE, "", site)
        for order, (code, figures) in enumerate(PLACES, start=1):
            self.tell(START, Kind.PLACE, code, {**figures, "order": order})
        found = first_window(self.book.season.site, self.crop)
        self.day = found[1].opens if found else START + timedelta(days=100)
        place = STANDS[found[0].where] if found else "bench-1"
        sown: dict[str, Figure] = {"crop": key, "seeds": 40, "wanted": 20, "place": place}
        self.tell(self.day, Kind.SOWN, "b1", sown)

    def tell(self, day: date, of: Kind, about: str, figures: Mapping[str, Figure]) -> None:
        self.number += 1
        self.book.add([Record(f"T{self.number:06d}", day, of, about, figures)])

    def tasks(self) -> tuple[Task, ...]:
        return batch_tasks(self.book.season, self.book.season.batches["b1"], self.day)

    @property
    def planted(self) -> bool:
        batch = self.book.season.batches["b1"]
        return batch.main.stage in OUT and bool(batch.tally.planted)

    def morning(self) -> None:
        self.day += timedelta(days=1)
        tasks = self.tasks()
        said = f"{self.key}, {self.day}: {[str(task.family) for task in tasks]}"
        assert len(tasks) <= MOST_TASKS, said
        done: set[str] = set()
        while (task := self._next(done)) is not None:
            assert task.overdue_days == 0, f"{said}, {task.family} was never due"
            done.add(task.key)
            answers = {ask.into: answer(task, ask) for ask in task.asks}
            for draft in drafts_for(task, answers, self.book.season):
                self.tell(draft.day or self.day, draft.kind, draft.about, draft.figures)

    def _next(self, done: set[str]) -> Task | None:
        """The next task to tick; a tick may bring another the same morning, never itself."""
        for task in self.tasks():
            waits = task.window.best > self.day or task.hold is not None or not task.ticks
            if not waits and task.family not in NOT_TICKED:
                assert task.key not in done, f"{self.day}: {task.key} is back after its tick"
                return task
        return None


@pytest.mark.parametrize(("site", "key"), LIVES)
def test_ticks_alone_lead_from_sowing_to_planting(site: str, key: str) -> None:
    life = Life(key, SITES[site])
    for _ in range(LONGEST_DAYS):
        life.morning()
        if life.planted:
            break
    stage = life.book.season.batches["b1"].main.stage
    assert life.planted, f"{key} never got out: still '{stage}' after {LONGEST_DAYS} days"
    assert_no_frost_ahead(life)


def assert_no_frost_ahead(life: Life) -> None:
    """What dies of frost is set out between the safe last-frost day and the first frost."""
    if life.crop.planting.least_night_c is None:
        return
    site = life.book.season.site
    safe = date(life.day.year, *site.last_frost_safe)
    if safe > life.day:
        safe = date(life.day.year - 1, *site.last_frost_safe)
    frost = first_frost_from(site.year, safe)
    assert safe <= life.day < frost, f"{life.key} set out on {life.day}, frost from {frost}"


def test_every_crop_is_followed_and_every_site_has_its_share() -> None:
    assert {key for _, key in LIVES} == set(KEYS)
    for site in SITES:
        assert len([key for name, key in LIVES if name == site]) > len(KEYS) // 5
