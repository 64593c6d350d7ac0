"""A grower who ticks only what the round offers gets every crop into the ground.

Property over the crop library: nothing is recorded but the sowing and the ticks of the round's own
tasks. That the way leads on is the trade's (stages in order: common practice, no source).
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta

import pytest

from benchround.core.book import RecordBook
from benchround.core.crop.crop import Crop, PlantClass, Raising
from benchround.core.dates import Span
from benchround.core.lifecycle import OUT
from benchround.core.record import Figure, Kind, Record
from benchround.core.task import Ask, Family, Task
from benchround.crops.library import load_library
from benchround.rounds.answers import drafts_for
from benchround.rounds.build import batch_tasks
from tests.sample.story import PLACES, SITE

LIBRARY = load_library()
START = date(2026, 1, 1)
LONGEST_DAYS = 430
LEFT_ALONE = (Family.RESOW, Family.SPARES, Family.LOCATE, Family.WATER, Family.CLEAR)


def raised(crop: Crop) -> bool:
    return (
        crop.plant_class is not PlantClass.BULB
        and crop.raising not in (Raising.DRILL, Raising.BULB)
        and crop.germination is not None
    )


KEYS = [key for key in sorted(LIBRARY) if raised(LIBRARY[key])][::3]


def answer(task: Task, ask: Ask) -> str:
    if ask.into == "count" and task.family is Family.LOOK:
        return "24"
    if ask.into == "place" and task.family is Family.PLANT_OUT:
        return "Bed 4"
    return {"stem_mm": "9", "count": "20"}.get(ask.into, ask.default)


def sow_day(book: RecordBook, crop: Crop) -> date:
    year = book.season.site.year
    spans: list[Span] = [
        span for window in crop.windows if (span := year.span(window, START)) is not None
    ]
    return min(spans, key=lambda span: span.opens).opens if spans else START + timedelta(days=100)


@pytest.mark.parametrize("key", KEYS)
def test_ticks_alone_lead_from_sowing_to_planting(key: str) -> None:
    crop = LIBRARY[key]
    book = RecordBook([], lambda _: LIBRARY)
    number = 0

    def tell(day: date, of: Kind, about: str, figures: Mapping[str, Figure]) -> None:
        nonlocal number
        number += 1
        book.add([Record(f"T{number:06d}", day, of, about, figures)])

    tell(START, Kind.SITE, "", SITE)
    for order, (code, figures) in enumerate(PLACES, start=1):
        tell(START, Kind.PLACE, code, {**figures, "order": order})
    day = sow_day(book, crop)
    tell(day, Kind.SOWN, "b1", {"crop": key, "seeds": 40, "wanted": 20, "place": "bench-1"})
    for _ in range(LONGEST_DAYS):
        day += timedelta(days=1)
        batch = book.season.batches["b1"]
        if batch.main.stage in OUT and batch.tally.planted:
            return
        for task in batch_tasks(book.season, batch, day):
            today = book.season.batches["b1"]
            early = task.window.best > day or task.hold is not None
            if early or task.family in LEFT_ALONE or not task.ticks:
                continue
            now = next((t for t in batch_tasks(book.season, today, day) if t.key == task.key), None)
            if now is None:
                continue
            answers = {ask.into: answer(now, ask) for ask in now.asks}
            for draft in drafts_for(now, answers, book.season):
                tell(draft.day or day, draft.kind, draft.about, draft.figures)
    stage = book.season.batches["b1"].main.stage
    assert stage in OUT, f"{key} never got out: still '{stage}' after {LONGEST_DAYS} days"
