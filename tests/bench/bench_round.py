"""How long a whole round takes: `python -m tests.bench.bench_round [batches]`.

Writes a season of 1,000 active batches at every stage, each with its full history, and two hundred
days of readings, lids and waterings. Prints the time to fold all its records and build the round
afresh, nothing remembered from the time before, and of one kept round after a tick, as ratios to
`json.load` of the same season's pages. The first look at a new day needs the whole round; after a
tick only what it touched is asked again.
"""

from __future__ import annotations

import gc
import json
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from datetime import date, timedelta
from itertools import count
from pathlib import Path

from benchround.core.book import RecordBook
from benchround.core.record import Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.task import Round
from benchround.crops.library import load_library
from benchround.rounds.build import BATCH_FAMILIES, build_round
from benchround.rounds.kept import KeptRound
from benchround.rounds.view import BatchView
from benchround.store.codec import encode
from benchround.store.naming import page_name
from benchround.store.pages import FULL
from benchround.store.tables import format_tables
from tests.bench.figures import Figure as Measured
from tests.bench.figures import ratio
from tests.sample.story import OUTLOOK, PLACES, SITE

DAY = date(2027, 5, 27)
BATCHES, ROUNDS, AIM = 1_000, 5, 10.0
CROPS = (
    "cosmos",
    "snapdragon",
    "zinnia",
    "wallflower",
    "foxglove",
    "delphinium",
    "leek",
    "lettuce",
    "beetroot",
    "cabbage",
    "sweet-pea",
    "larkspur",
    "aquilegia",
    "viola",
    "ammi",
    "dahlia",
    "nicotiana",
    "french-marigold",
    "cornflower",
    "runner-bean",
    "lupin",
    "honesty",
    "sweet-william",
    "verbena-bonariensis",
)
FRAMES = ("frame-a", "frame-b", "frame-c")
UNDER_COVER = ("propagator", "bench-1", "bench-2", *FRAMES)
AGES = (0, 4, 8, 14, 20, 27, 35, 44, 52, 60, 75, 95, 120)
"""Days since sowing: from just sown to in flower."""

Line = tuple[int, Kind, dict[str, Figure]]


def story(number: int) -> Iterator[Line]:
    """One batch's history up to its age, days counted from its plan."""
    age, crop = AGES[number % len(AGES)], CROPS[number % len(CROPS)]
    start, bench = UNDER_COVER[number % 3], UNDER_COVER[1 + number % 4]
    frame = FRAMES[number % 3]
    told: tuple[Line, ...] = (
        (-9, Kind.PLANNED, {"crop": crop, "variety": f"V{number % 50}", "wanted": 24}),
        (
            0,
            Kind.SOWN,
            {
                "seeds": 80,
                "cells": 40,
                "per_cell": 1,
                "raising": "tray",
                "covering": "vermiculite",
                "depth_mm": 3,
                "place": start,
                "container": "half tray",
                "packet": f"p{number % 60}",
            },
        ),
        (3, Kind.LOOKED, {}),
        (5, Kind.LOOKED, {}),
        (7, Kind.FIRST_UP, {"count": 4}),
        (8, Kind.UNCOVERED, {"off_heat": True, "place": bench}),
        (9, Kind.COUNTED, {"count": 30}),
        (11, Kind.COUNTED, {"count": 52}),
        (13, Kind.WATERED, {}),
        (15, Kind.COUNTED, {"count": 58 + number % 9, "final": True}),
        (19, Kind.TRUE_LEAVES, {}),
        (22, Kind.PRICKED_OUT, {"count": 40, "cells": 40, "container": "40-cell tray"}),
        (25, Kind.WATERED, {}),
        (29, Kind.TAKEN, {"count": 38}),
        (33, Kind.FED, {}),
        (37, Kind.LOST, {"count": 2, "cause": "slug"}),
        (40, Kind.POTTED_ON, {"count": 34, "pot_cm": 9, "container": "9 cm pot"}),
        (43, Kind.TURNED, {}),
        (45, Kind.PINCHED, {}),
        (50, Kind.HARDENING_BEGUN, {"place": frame}),
        *((50 + step, Kind.HARDENING_STEP, {}) for step in range(1, 9)),
        (68, Kind.HARDENED, {}),
        (69, Kind.PLANTED_OUT, {"count": 26, "place": f"bed-{1 + number % 4}"}),
        (90, Kind.FIRST_FLOWER, {}),
        *((92 + step, Kind.DEADHEADED, {}) for step in range(0, 27, 3)),
    )
    yield from (line for line in told if line[0] <= age)


def events(batches: int) -> Iterator[tuple[date, Kind, str, dict[str, Figure]]]:
    """Everything that happened in the season, in no order."""
    begin = DAY - timedelta(days=365)
    yield begin, Kind.SITE, "", SITE
    for order, (code, figures) in enumerate(PLACES, start=1):
        yield begin, Kind.PLACE, code, {**figures, "order": order}
    for number in range(60):
        yield (
            begin,
            Kind.PACKET,
            f"p{number}",
            {
                "crop": CROPS[number % len(CROPS)],
                "variety": f"V{number % 50}",
                "year": 2026,
                "seeds": 2000,
            },
        )
    for number in range(batches):
        sown = DAY - timedelta(days=AGES[number % len(AGES)])
        for offset, kind, figures in story(number):
            yield sown + timedelta(days=offset), kind, f"b{number:04d}", figures
    for back in range(1, 200):
        day, warm = DAY - timedelta(days=back), 16 - back // 14
        yield day, Kind.READING, "", {"min_c": warm - 6, "max_c": warm + 4, "rain_mm": back % 5}
        yield day, Kind.READING, "frame-a", {"min_c": warm - 4, "max_c": warm + 9}
        for place in FRAMES:
            yield day, Kind.LID, place, {"of_place": True, "plan": "08:00 first notch, 18:00 shut"}
        for place in UNDER_COVER:
            yield day, Kind.WATERED, place, {"of_place": True}
    for offset, figures in OUTLOOK:
        yield DAY + timedelta(days=offset), Kind.OUTLOOK, "", figures


def records(batches: int) -> tuple[Record, ...]:
    """The season's records in story order."""
    told = sorted(events(batches), key=lambda event: event[0])
    return tuple(
        Record(f"0BENCH{number:08d}", day, kind, about, figures, machine="bench")
        for number, (day, kind, about, figures) in enumerate(told)
    )


def write_pages(folder: Path, told: tuple[Record, ...]) -> list[Path]:
    """The records as full pages, laid out as the store folds them over the year."""
    files = []
    for number, start in enumerate(range(0, len(told), FULL)):
        page = told[start : start + FULL]
        documents = {str(n + 1): encode(record) for n, record in enumerate(page)}
        path = folder / page_name("bench", f"{page[-1].day:%Y-%m}", number + 1)
        path.write_bytes(format_tables({"records": documents}))
        files.append(path)
    return files


def load(files: list[Path]) -> int:
    """The same files read with the standard library alone."""
    read = 0
    for path in files:
        with path.open(encoding="utf-8") as handle:
            read += len(json.load(handle)["records"])
    return read


def forget() -> None:
    """Empty what functions remember between calls, so that nothing is found that was reckoned."""
    ours = [module for name, module in sys.modules.items() if name.startswith("benchround.")]
    for module in ours:
        for value in vars(module).values():
            if hasattr(value, "cache_clear"):
                value.cache_clear()


def by_turns(*actions: Callable[[], object], afresh: bool = True) -> list[tuple[float, ...]]:
    """The seconds each action takes in every turn, the collector off as in `timeit`.

    Args:
        actions: what is timed.
        afresh: whether each starts with nothing remembered, as in a program just started.
    """
    return [tuple(_seconds(action, afresh) for action in actions) for _ in range(ROUNDS)]


def _seconds(action: Callable[[], object], afresh: bool) -> float:
    if afresh:
        forget()
    gc.collect()
    gc.disable()
    start = time.process_time()
    action()
    taken = time.process_time() - start
    gc.enable()
    return taken


def figures() -> Iterator[Measured]:
    """The whole round afresh against reading the same season's pages."""
    told, library = records(BATCHES), load_library()

    def whole() -> Round:
        return build_round(RecordBook(told, lambda _: library).season, DAY)

    with tempfile.TemporaryDirectory() as made:
        files = write_pages(Path(made), told)
        pairs = [(ours, other) for ours, other in by_turns(whole, lambda: load(files))]
    what = f"{BATCHES:,} batches: folded, and the whole round, against `json.load` of their files"
    yield ratio(what, pairs, AIM)


def family_seconds(season: Season) -> dict[str, float]:
    """How long each family takes over every batch, the dearest first."""
    views = [
        BatchView(season, batch, part, season.crop(batch.crop), DAY)
        for batch in season.batches.values()
        for part in batch.parts
    ]
    taken = {}
    for family in BATCH_FAMILIES:
        start = time.process_time()
        for view in views:
            for _ in family(view):
                pass
        taken[family.__module__.rpartition(".")[2]] = time.process_time() - start
    return dict(sorted(taken.items(), key=lambda item: -item[1]))


def main() -> None:
    """Print the table, and which families take the time."""
    batches = int(sys.argv[1]) if len(sys.argv) > 1 else BATCHES
    told, library = records(batches), load_library()

    def fold() -> RecordBook:
        return RecordBook(told, lambda _: library)

    def whole() -> Round:
        return build_round(fold().season, DAY)

    tasks = len(whole().tasks)
    with tempfile.TemporaryDirectory() as made:
        files = write_pages(Path(made), told)
        assert load(files) == len(told)
        taken = by_turns(lambda: load(files), fold, whole)
    json_s, fold_s, whole_s = map(min, zip(*taken, strict=True))
    book, kept = fold(), KeptRound()
    kept.round(book.season, DAY)
    ids = count()

    def tick() -> Round:
        book.add([Record(f"1TICK{next(ids):04d}", DAY, Kind.WATERED, "b0003")])
        return kept.round(book.season, DAY)

    tick_s = min(seconds for (seconds,) in by_turns(tick, afresh=False))
    print(f"{batches:,} batches, {len(told):,} records in {len(files)} files, {tasks:,} tasks")
    print("                               ms   ratio")
    for words, seconds in (
        ("json.load of the files", json_s),
        ("fold all records", fold_s),
        ("fold and whole round", whole_s),
        ("a tick and the kept round", tick_s),
    ):
        print(f"{words:26} {seconds * 1000:7.1f} {seconds / json_s:7.1f}")
    print(f"aim below {AIM:g}: {'met' if whole_s / json_s < AIM else 'not met'}")
    dearest = list(family_seconds(fold().season).items())[:6]
    print("of it: " + ", ".join(f"{name} {taken / json_s:.1f}" for name, taken in dearest))


if __name__ == "__main__":
    main()
