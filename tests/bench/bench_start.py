"""How soon the round is printed and painted, against bare Python and the smallest Textual program.

    python -m tests.bench.bench_start [runs]

Programs run by turns, so that what slows the machine slows all; the first run of each is thrown
away, as it may write bytecode. A ratio is the middle one of the runs; so are the milliseconds.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from tests.bench.bench_screens import ROOT, SMALLEST, _paint_once
from tests.sample.story import records
from tests.screens.stage import write_season

BARE = (sys.executable, "-c", "0")
TODAY = (sys.executable, "-m", "benchround", "today", "--sample")
GOAL_MS = 120
GOAL_RATIO = 1.4


def took_s(command: tuple[str, ...]) -> float:
    """Seconds from the start of a program to its end."""
    env = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    began = time.perf_counter()
    subprocess.run(command, cwd=ROOT, env=env, capture_output=True, check=True)
    return time.perf_counter() - began


def today(runs: int) -> None:
    """Print how much longer the round of the sample takes than Python alone."""
    pairs = [(took_s(TODAY), took_s(BARE)) for _ in range(runs + 1)][1:]
    ratio = statistics.median(ours / bare for ours, bare in pairs)
    over_ms = statistics.median(ours - bare for ours, bare in pairs) * 1000
    least_ms = (min(ours for ours, _ in pairs) - min(bare for _, bare in pairs)) * 1000
    print(
        f"today --sample   {ratio:.1f} x bare Python, {over_ms:.0f} ms over it "
        f"({least_ms:.0f} ms at the least; goal {GOAL_MS} ms)"
    )


def paint(runs: int) -> None:
    """Print how much later the round is painted than the smallest program's one word."""
    with tempfile.TemporaryDirectory() as home:
        smallest = Path(home) / "smallest.py"
        smallest.write_text(SMALLEST, "utf-8")
        pairs = []
        for number in range(runs + 1):
            season = write_season(Path(home) / f"paint-{number}", records())
            ours = [sys.executable, "-m", "tests.screens.leaving_app", str(season)]
            pairs.append(_paint_once(ours, [sys.executable, str(smallest)]))
    ratio = statistics.median(ours / small for ours, small in pairs[1:])
    ours_ms = statistics.median(ours for ours, _ in pairs[1:]) * 1000
    print(f"first paint      {ratio:.2f} x the smallest, {ours_ms:.0f} ms (goal {GOAL_RATIO} x)")


if __name__ == "__main__":
    how_often = int(sys.argv[1]) if len(sys.argv) > 1 else 9
    today(how_often)
    paint(how_often)
