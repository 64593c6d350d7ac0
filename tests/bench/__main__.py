"""Every ratio of speed and size in one run: `python -m tests.bench [--write]`.

With `--write` the table goes to docs/measured.md as well. It takes about five minutes; what else
the machine does meanwhile shows, though both sides of a ratio are measured by turns.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

from tests.bench import bench_round, bench_screens, bench_start, bench_store
from tests.bench.figures import HEAD, Figure, machine

PAGE = Path(__file__).parents[2] / "docs" / "measured.md"
MADE = "<!-- measured from here on -->\n"
"""What stands above it in the page was written by hand and stays."""
STARTS, KEYS = 9, 12
"""How often programs are started, and how many ticks are timed."""


def figures() -> Iterator[Figure]:
    """The whole round, starts, ticks on the disk, keys."""
    yield from bench_round.figures()
    yield from bench_start.figures(STARTS)
    yield from bench_store.figures()
    yield from bench_screens.figures(KEYS, with_nursery=True, with_opening=False)


def main() -> None:
    """Print the table as it is found, and write it where that is asked for."""
    lines = [f"{machine()}.", "", *HEAD.splitlines()]
    print("\n".join(lines))
    for figure in figures():
        lines.append(figure.row)
        print(figure.row, flush=True)
    if "--write" in sys.argv[1:]:
        by_hand = PAGE.read_text("utf-8").partition(MADE)[0]
        PAGE.write_text(by_hand + MADE + "\n" + "\n".join(lines) + "\n", "utf-8")


if __name__ == "__main__":
    main()
