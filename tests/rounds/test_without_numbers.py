"""Every instruction reads as a sentence where no seed, count or wanted number was ever typed.

What a hole looks like is our own list: a doubled space, a bracket or a pronoun left where a number
should stand, a question mark that asks nothing, a None.
"""

from __future__ import annotations

import re
from datetime import date, timedelta

import pytest

from benchround.core.book import RecordBook
from benchround.core.errors import IllegalRecordError
from benchround.core.record import Figure, Kind, Record
from benchround.core.task import Family, Task
from benchround.crops.library import load_library
from tests.rounds.one_batch import batch_tasks
from tests.sample.story import PLACES, SITE

LIBRARY = load_library()
CROPS = (
    *("tomato", "leek", "sweet-pea", "foxglove", "lettuce", "carrot", "cosmos", "runner-bean"),
    *("petunia", "tulip", "dahlia", "primrose", "basil", "beetroot", "onion", "delphinium"),
    "unknown",
)
STEPS = (
    *(Kind.FIRST_UP, Kind.TRUE_LEAVES, Kind.PRICKED_OUT, Kind.POTTED_ON, Kind.HARDENING_BEGUN),
    *(Kind.HARDENED, Kind.PLANTED_OUT, Kind.FIRST_FLOWER, Kind.DEADHEADED, Kind.MARKED_FOR_SEED),
    *(Kind.SEED_RIPE, Kind.GOING_OVER),
)
HOLES = re.compile(
    r"  | of sown|\bthem (into|above|late|this|today)|hardening them|out them|\(sown\)|\(\)"
    r"|''|\bNone\b|\?(?! Then| On the books|$)|^\?| \?|up of those| ,| ;|: ;"
)
ALLOWED = "firm or soft?"
START = date(2026, 3, 1)
FOUND: set[Family] = set()


class Life:
    """A batch of which no number is ever typed."""

    def __init__(self, key: str, raising: str) -> None:
        self.book, self.number = RecordBook([], lambda _: LIBRARY), 0
        self.tell(START, Kind.SITE, "", dict(SITE))
        for order, (code, figures) in enumerate(PLACES, start=1):
            self.tell(START, Kind.PLACE, code, {**figures, "order": order})
        for day, low in ((50, 1.0), (90, 3.0)):
            cold: dict[str, Figure] = {"min_c": low, "max_c": 12.0}
            self.tell(START + timedelta(days=day), Kind.OUTLOOK, "", cold)
        sown: dict[str, Figure] = {"crop": key, "place": "bench-1", "raising": raising}
        kind = Kind.PLANTED_BULBS if raising == "bulb" else Kind.SOWN
        self.tell(START, kind, "b1", sown)

    def tell(self, day: date, kind: Kind, about: str, figures: dict[str, Figure]) -> None:
        self.number += 1
        record = Record(f"N{self.number:06d}", day, kind, about, figures)
        self.book.check([record])
        self.book.add([record])

    def tasks(self, day: date) -> tuple[Task, ...]:
        season = self.book.season
        return batch_tasks(season, season.batches["b1"], day)


def said_of(life: Life, day: date) -> list[str]:
    said = []
    for since in (0, 5, 10, 14, 20, 30, 45, 70):
        for task in life.tasks(day + timedelta(days=since)):
            FOUND.add(task.family)
            said += [task.instruction, *task.why.figures]
    return said


@pytest.mark.parametrize("raising", ["tray", "cells", "drill", "bulb"])
@pytest.mark.parametrize("key", CROPS)
def test_every_instruction_is_a_sentence_without_numbers(key: str, raising: str) -> None:
    life, day = Life(key, raising), START
    said = said_of(life, day)
    for step in STEPS:
        day += timedelta(days=14)
        try:
            life.tell(day, step, "b1", {})
        except IllegalRecordError:
            continue
        said += said_of(life, day)
    assert said
    holes = {line for line in said if HOLES.search(line.replace(ALLOWED, ""))}
    assert not holes


def test_the_families_with_numbers_in_their_words_were_met() -> None:
    """Else the test above would pass for want of anything said."""
    for key in CROPS:
        test_every_instruction_is_a_sentence_without_numbers(key, "tray")
        test_every_instruction_is_a_sentence_without_numbers(key, "cells")
    wanted = {Family.LOOK, Family.PRICK_OUT, Family.POT_ON, Family.HARDEN, Family.PLANT_OUT}
    assert wanted | {Family.PINCH, Family.COUNT, Family.RESOW, Family.LOCATE} <= FOUND
