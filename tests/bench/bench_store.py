"""How long the store takes: `python -m tests.bench.bench_store [folder]`.

Prints, for seasons of 1,000, 12,000 and 120,000 records, the time of one durable append beside
that of one line added to a plain file and forced to the disk, the slowest of the appends, which
puts a journal into its page, the time a new program takes to read the season, its memory when it
has, and by how many times the size of the files it grew.
The folder should lie on the disk of interest; a temporary one is used otherwise.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator, Mapping
from datetime import date, datetime, timedelta
from functools import partial
from pathlib import Path

from benchround.core.record import Kind, Record
from benchround.store import SeasonFolder
from benchround.store.codec import encode
from benchround.store.naming import page_name
from benchround.store.pages import FULL
from benchround.store.seal import format_page
from tests.bench.figures import Figure, ratio
from tests.store.builders import Scribe

TICK, FLAT = 2.0, 1.3
"""How many times a raw line a tick may take, and how many times as long in the largest season as in
the smallest."""
SIZES = (1_000, 12_000, 120_000)
APPENDS = 400
READS = 5
ROOT = Path(__file__).parents[2]
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
        (path / "records" / name).write_bytes(format_page({"records": documents}))


def timed_ms(action: Callable[[], object]) -> float:
    """How long an action takes, in milliseconds."""
    start = time.perf_counter()
    action()
    return (time.perf_counter() - start) * 1000


def raw_append(folder: Path) -> Callable[[], object]:
    """Adding one line to a plain file and forcing it to the disk."""
    handle = os.open(folder / "raw.txt", os.O_WRONLY | os.O_CREAT | os.O_APPEND)

    def add() -> None:
        os.write(handle, b"x" * 220 + b"\n")
        os.fsync(handle)

    return add


def appends_ms(path: Path, scribe: Scribe, count: int) -> tuple[list[float], list[float]]:
    """Times of single ticks, and of plain lines added in turn with them on the same disk."""
    ours, plain = [], []
    add_line = raw_append(path.parent)
    with SeasonFolder.open(path, "laptop", clock=datetime.now) as season:
        for number in range(APPENDS):
            action = (typical(scribe, count + number),)
            ours.append(timed_ms(partial(season.append, action)))
            plain.append(timed_ms(add_line))
    return ours, plain


READER = """
import resource, sys, time
from pathlib import Path
from benchround.store import SeasonFolder
before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
start = time.perf_counter()
records = SeasonFolder.open(Path(sys.argv[1]), "laptop", read_only=True).records()
taken = time.perf_counter() - start
after = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
print(len(records), taken, before / 1024, after / 1024)
"""


def read_afresh(path: Path) -> tuple[float, float, float]:
    """Seconds a new program takes to read the season, and its memory in MB before and after."""
    asked = [sys.executable, "-c", READER, str(path)]
    run = subprocess.run(asked, cwd=ROOT, capture_output=True, text=True, check=True)
    _, taken_s, before_mb, after_mb = map(float, run.stdout.split())
    return taken_s, before_mb, after_mb


IMPORTER = """
import benchround.core.season, time
start = time.perf_counter()
import benchround.store
print(time.perf_counter() - start)
"""


def import_ms() -> float:
    """Milliseconds to import the store in a program that has the core already."""
    asked = [sys.executable, "-c", IMPORTER]
    runs = [subprocess.run(asked, cwd=ROOT, capture_output=True, text=True) for _ in range(READS)]
    return min(float(run.stdout) for run in runs) * 1000


def figures() -> Iterator[Figure]:
    """What a durable tick takes against a line added to a plain file, from season to season."""
    with tempfile.TemporaryDirectory() as made:
        scribes = {count: Scribe() for count in SIZES}
        for count, scribe in scribes.items():
            path = Path(made) / str(count)
            write_season(path, count, scribe)
            ours, plain = appends_ms(path, scribe, count)
            what = f"{count:,} records: a tick on the disk, against a raw line forced there"
            yield _of_middles(what, ours, plain, TICK)
        least, most = SIZES[0], SIZES[-1]
        small, large = by_turns_ms(Path(made), scribes, least, most)
        what = f"A tick on the disk: {most:,} records against {least:,}"
        yield _of_middles(what, large, small, FLAT)


def by_turns_ms(
    home: Path, scribes: Mapping[int, Scribe], least: int, most: int
) -> tuple[list[float], list[float]]:
    """Times of single ticks in the smallest and the largest season, by turns on the same disk."""
    taken: dict[int, list[float]] = {least: [], most: []}
    with (
        SeasonFolder.open(home / str(least), "laptop") as small,
        SeasonFolder.open(home / str(most), "laptop") as large,
    ):
        for number in range(APPENDS):
            for count, season in ((least, small), (most, large)):
                action = (typical(scribes[count], count + APPENDS + number),)
                taken[count].append(timed_ms(partial(season.append, action)))
    return taken[least], taken[most]


def _of_middles(what: str, ours_ms: list[float], other_ms: list[float], limit: float) -> Figure:
    middle = statistics.median(ours_ms) / 1000, statistics.median(other_ms) / 1000
    return ratio(what, [middle], limit, f"middle of {APPENDS} each")


def main() -> None:
    """Print the table."""
    with tempfile.TemporaryDirectory(dir=sys.argv[1] if len(sys.argv) > 1 else None) as made:
        folder = Path(made)
        print(f"the store is imported in {import_ms():.1f} ms")
        print(
            "records   append ms   line ms   ratio   slowest ms   read s   us a record"
            "   files MB   memory MB   times the files"
        )
        for count in SIZES:
            scribe, path = Scribe(), folder / str(count)
            write_season(path, count, scribe)
            files_mb = sum(p.stat().st_size for p in (path / "records").iterdir()) / 2**20
            reads = sorted(read_afresh(path) for _ in range(READS))
            read_s, before_mb, after_mb = reads[len(reads) // 2]
            ours, plain = appends_ms(path, scribe, count)
            append_ms, line_ms = statistics.median(ours), statistics.median(plain)
            print(
                f"{count:7,}   {append_ms:9.3f}   {line_ms:7.3f}   {append_ms / line_ms:5.2f}"
                f"   {max(ours):10.2f}   {read_s:6.3f}   {read_s * 1e6 / count:11.2f}"
                f"   {files_mb:8.1f}   {after_mb:9.1f}   {(after_mb - before_mb) / files_mb:15.1f}"
            )


if __name__ == "__main__":
    main()
