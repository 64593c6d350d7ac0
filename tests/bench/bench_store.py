"""How long the store takes: `python -m tests.bench.bench_store [folder]`.

Prints, for seasons of 1,000, 12,000 and 120,000 records, the time of one durable append beside
that of one line added to a plain file and forced to the disk, and the time to read the season.
The folder should lie on the disk of interest; a temporary one is used otherwise.
"""

from __future__ import annotations

import os
import statistics
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from datetime import date, datetime, timedelta
from functools import partial
from pathlib import Path

from benchround.core.record import Kind, Record
from benchround.store import SeasonFolder
from benchround.store.codec import encode
from benchround.store.disk import write_whole
from benchround.store.naming import page_name
from benchround.store.pages import FULL
from benchround.store.tables import format_tables
from tests.store.builders import Scribe

SIZES = (1_000, 12_000, 120_000)
APPENDS = 400
READS = 5
FIRST = date(2027, 1, 1)


def typical(scribe: Scribe, number: int) -> Record:
    """A record of the usual size: two figures, every third with a short note."""
    return Record(
        scribe.ids.next(),
        FIRST + timedelta(days=number // 350),
        (Kind.COUNTED, Kind.WATERED, Kind.READING)[number % 3],
        f"tomato-{number % 400}",
        {"count": number % 60, "temp_c": 12.5 + number % 9},
        "the outer row is drawn" if number % 3 == 0 else "",
        None,
        scribe.machine,
    )


def write_season(path: Path, count: int, scribe: Scribe) -> None:
    """A season of full pages, laid out as the store would have written them over the year."""
    SeasonFolder.create(path, "Bench", scribe.machine, FIRST).close()
    for number, start in enumerate(range(0, count, FULL)):
        documents = {
            str(n + 1): encode(typical(scribe, start + n)) for n in range(min(FULL, count - start))
        }
        month = f"2026-{1 + number * 12 * FULL // count:02d}"
        name = page_name(scribe.machine, month, number + 1)
        (path / "records" / name).write_bytes(format_tables({"records": documents}))


def median_ms(action: Callable[[], object], times: int) -> float:
    """The middle one of the times an action takes, in milliseconds."""
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        action()
        taken.append((time.perf_counter() - start) * 1000)
    return statistics.median(taken)


def raw_append_ms(folder: Path) -> float:
    """One line added to a plain file and forced to the disk."""
    handle = os.open(folder / "raw.txt", os.O_WRONLY | os.O_CREAT | os.O_APPEND)

    def add() -> None:
        os.write(handle, b"x" * 180 + b"\n")
        os.fsync(handle)

    taken = median_ms(add, APPENDS)
    os.close(handle)
    return taken


def raw_replace_ms(folder: Path) -> float:
    """A file of half a page replaced whole, without any work of ours on what stands in it."""
    data = b"x" * 90 * FULL
    return median_ms(lambda: write_whole(folder / "whole.txt", data), APPENDS)


def add_next(season: SeasonFolder, records: Iterator[Record]) -> None:
    """One tick: a single record, on the disk when this returns."""
    season.append((next(records),))


def main() -> None:
    """Print the table."""
    with tempfile.TemporaryDirectory(dir=sys.argv[1] if len(sys.argv) > 1 else None) as made:
        folder = Path(made)
        print(f"one line, forced to disk      {raw_append_ms(folder):8.3f} ms")
        print(f"half a page replaced, forced  {raw_replace_ms(folder):8.3f} ms")
        print("records   append ms   line ms   ratio   read s   us a record")
        for count in SIZES:
            scribe, path = Scribe(), folder / str(count)
            write_season(path, count, scribe)

            def read(path: Path = path) -> int:
                return len(SeasonFolder.open(path, "laptop", read_only=True).records())

            assert read() == count
            read_ms = median_ms(read, READS)
            with SeasonFolder.open(path, "laptop", clock=datetime.now) as season:
                adding = (typical(scribe, count + n) for n in range(APPENDS))
                line_ms = raw_append_ms(folder)
                append_ms = median_ms(partial(add_next, season, adding), APPENDS)
            print(
                f"{count:7,}   {append_ms:9.3f}   {line_ms:7.3f}   {append_ms / line_ms:5.1f}"
                f"   {read_ms / 1000:6.3f}   {read_ms * 1000 / count:11.2f}"
            )


if __name__ == "__main__":
    main()
