"""How soon the round is printed and painted, against bare Python and the smallest Textual program.

    python -m tests.bench.bench_start [runs]

Programs run by turns, so that what slows the machine slows all; the first run of each is thrown
away, as it may write bytecode. The program is started as a grower starts it.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from datetime import date
from pathlib import Path

from tests.bench import nursery
from tests.bench.bench_screens import ROOT, SMALLEST, terminal
from tests.bench.figures import HEAD, Figure, machine, ratio

BARE = (sys.executable, "-c", "0")
OURS = (sys.executable, "-m", "benchround")
PAINTED, PAINTED_SMALLEST = b"Morning - ", b"READY"
"""Words that are drawn with the first picture of the round."""
HELP, ANSWERED = b"?", b"The round: all keys"
"""A key typed over that picture, and the words of the page it opens."""
OTHER, ANSWERED_SMALLEST = b"a", b"key a"
TODAY_MS, SAMPLE = 120, 1.4
SEASONS: Mapping[int, float] = {12_000: 2.0, 120_000: 6.0}
"""Records of a season, and how many times the smallest program its first picture may take."""
BASE_MB, TIMES_FILES = 60.0, 4.0


def took_s(command: Sequence[str]) -> float:
    """Seconds from the start of a program to its end."""
    env = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    began = time.perf_counter()
    subprocess.run(command, cwd=ROOT, env=env, capture_output=True, check=True)
    return time.perf_counter() - began


def today(runs: int) -> Figure:
    """How much longer the round of the sample takes than Python alone."""
    pairs = [(took_s((*OURS, "today", "--sample")), took_s(BARE)) for _ in range(runs + 1)][1:]
    ours_ms, bare_ms = (min(pair[n] for pair in pairs) * 1000 for n in (0, 1))
    return Figure(
        "`benchround today` on the sample, over bare Python",
        ours_ms - bare_ms,
        TODAY_MS,
        "ms",
        f"{ours_ms:.0f} ms against {bare_ms:.0f} ms",
    )


def paint(what: str, season: str, runs: int, limit: float, smallest: Path) -> Figure:
    """How much later the round is painted than the smallest program's one word."""
    ours, theirs = [*OURS, season], [sys.executable, str(smallest)]
    pairs = [
        (_painted_s(ours, PAINTED), _painted_s(theirs, PAINTED_SMALLEST)) for _ in range(runs + 1)
    ]
    return ratio(f"{what}: open to first painted round, against the smallest", pairs[1:], limit)


def _painted_s(command: list[str], words: bytes) -> float:
    with terminal(command) as app:
        return app.painted(words)


def answered(runs: int, smallest: Path) -> Figure:
    """How much later than the smallest program a key typed over the first picture is answered."""
    ours, theirs = [*OURS, "--sample"], [sys.executable, str(smallest)]
    pairs = [
        (
            _answered_s(ours, PAINTED, HELP, ANSWERED),
            _answered_s(theirs, PAINTED_SMALLEST, OTHER, ANSWERED_SMALLEST),
        )
        for _ in range(runs + 1)
    ]
    return ratio(
        "The sample: open to the first key answered, against the smallest", pairs[1:], None
    )


def _answered_s(command: list[str], words: bytes, key: bytes, answer: bytes) -> float:
    """Seconds from the start to the answer to a key that is typed once the words are drawn."""
    with terminal(command) as app:
        app.painted(words)
        app.write(key)
        return app.painted(answer)


def peak(folder: Path) -> Figure:
    """The most memory the screens over a season take, less a share of the size of its files."""
    files_mb = sum(path.stat().st_size for path in (folder / "records").iterdir()) / 2**20
    with terminal([*OURS, str(folder)]) as app:
        app.taken_over()
        status = Path(f"/proc/{app.process.pid}/status").read_text("utf-8")
    peak_mb = int(status.partition("VmHWM:")[2].split()[0]) / 1024
    return Figure(
        "120,000 records: peak memory with the round painted",
        peak_mb,
        round(TIMES_FILES * files_mb + BASE_MB),
        "MB",
        f"files {files_mb:.1f} MB; limit 4 x the files + 60 MB",
    )


@contextmanager
def own_home() -> Iterator[Path]:
    """A folder for everything that is written, the memory of the last season used too."""
    before = os.environ.get("XDG_DATA_HOME")
    with tempfile.TemporaryDirectory() as made:
        os.environ["XDG_DATA_HOME"] = str(Path(made) / "data")
        try:
            yield Path(made)
        finally:
            if before is None:
                del os.environ["XDG_DATA_HOME"]
            else:
                os.environ["XDG_DATA_HOME"] = before


def figures(runs: int) -> Iterator[Figure]:
    """All figures of a start, one after another."""
    with own_home() as home:
        smallest = home / "smallest.py"
        smallest.write_text(SMALLEST, "utf-8")
        yield paint("The sample", "--sample", runs, SAMPLE, smallest)
        yield answered(runs, smallest)
        for size, limit in SEASONS.items():
            folder = home / str(size)
            count = nursery.write(folder, nursery.BATCHES[size], date.today())
            what = f"{count:,} records, {nursery.BATCHES[size]:,} live batches"
            yield paint(what, str(folder), max(3, runs // 2), limit, smallest)
        yield today(runs)
        yield peak(folder)


if __name__ == "__main__":
    print(machine())
    print(HEAD)
    for figure in figures(int(sys.argv[1]) if len(sys.argv) > 1 else 9):
        print(figure.row, flush=True)
