"""A season of any size: batches at every stage, each with its history, and a year of weather.

The story of a batch is that of `bench_round`; on top of it every batch is watered every other day,
which is where most records of a busy season come from. All batches are alive, so nothing can be
left out when the round is made.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, time, timedelta
from pathlib import Path

from benchround.core.record import Figure, Kind, Record
from benchround.store import IdMaker, SeasonFolder
from benchround.store.codec import encode
from benchround.store.naming import page_name
from benchround.store.pages import FULL
from benchround.store.seal import format_page
from tests.bench.bench_round import AGES, DAY, events

BATCHES = {12_000: 257, 120_000: 3_084}
"""How many batches make a season of so many records."""
MACHINE = "nursery"
WATERED_EVERY = timedelta(days=2)

Event = tuple[date, Kind, str, dict[str, Figure]]


def waterings(batches: int) -> Iterator[Event]:
    """The waterings that `bench_round` leaves out: one of each batch every other day."""
    for number in range(batches):
        day = DAY - timedelta(days=AGES[number % len(AGES)]) + WATERED_EVERY
        while day < DAY:
            yield day, Kind.WATERED, f"b{number:04d}", {}
            day += WATERED_EVERY


def records(batches: int, today: date) -> tuple[Record, ...]:
    """The season's records in story order, told so that it stands as it would today.

    Args:
        batches: how many; about forty records each.
        today: the day the story is told up to.
    """
    ids, moved = IdMaker(), today - DAY
    told = sorted([*events(batches), *waterings(batches)], key=lambda event: event[0])
    return tuple(
        Record(ids.next(), day + moved, kind, about, figures, "", time(7, 30), MACHINE)
        for day, kind, about, figures in told
    )


def write(path: Path, batches: int, today: date) -> int:
    """Write the season as the store would have left it; how many records it has."""
    told = records(batches, today)
    SeasonFolder.create(path, "Nursery", MACHINE, today).close()
    for number, start in enumerate(range(0, len(told), FULL), start=1):
        page = told[start : start + FULL]
        documents = {str(n): encode(record) for n, record in enumerate(page, start=1)}
        name = page_name(MACHINE, f"{page[-1].day:%Y-%m}", number)
        (path / "records" / name).write_bytes(format_page({"records": documents}))
    return len(told)
