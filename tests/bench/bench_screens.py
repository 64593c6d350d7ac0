"""How soon keys are answered, against the smallest Textual program.

    python -m tests.bench.bench_screens [rounds] [--no-nursery] [--no-opening]

Both programs are open at once in pseudo-terminals of the same size and are given keys by turns, so
that what slows the machine slows both. What is timed is from the key to the last byte that is drawn
for it. Screens are opened in a program just started, so that reading the screen's own code and
style sheet counts.
"""

from __future__ import annotations

import shutil
import sys
import tempfile
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from itertools import islice
from pathlib import Path

from benchround.screens.destinations import DESTINATIONS
from tests.bench import nursery
from tests.bench.bench_round import DAY
from tests.bench.figures import HEAD, Figure, machine, ratio
from tests.terminal.program import ROOT, Program, program

__all__ = ["ROOT", "SMALLEST", "terminal"]

COLUMNS, LINES = 120, 40
FIVE_HUNDRED_TASKS, NURSERY = 408, 3_084
"""How many batches the seasons have: one whose round has 500 tasks, and a nursery's."""
MOVE, TICK, NURSERY_TICK, OPENING = 1.3, 5.0, 8.0, 20.0
"""How many times the smallest program's time each may take."""
DOWN, UP, TAB, SPACE = b"\x1b[B", b"\x1b[A", b"\t", b" "
CTRL_G = b"\x07"
"""The list of screens from anywhere, sheets too."""
READY = "all keys"

SMALLEST = """
from textual.app import App
from textual.widget import Widget
class Paper(Widget):
    can_focus = True
    said = "READY"
    def render(self):
        return self.said
    def on_key(self, event):
        self.said = f"key {event.key}"
        self.refresh()
class Smallest(App):
    def compose(self):
        yield Paper()
Smallest().run()
"""

FROM_THE_ROUND: Mapping[str, bytes] = {
    "why": b"w",
    "all keys (?)": b"?",
    "the list of screens": b"g",
    "a task's sheet": b"\r",
    "a record sheet": b"r",
    "putting off": b"p",
}
"""Screens that are not gone to from the list of screens, and the key that opens each."""

Pair = tuple[float, float]


@contextmanager
def terminal(command: list[str]) -> Iterator[Program]:
    """A program in a terminal of the size measured on."""
    with program(command, COLUMNS, LINES) as opened:
        yield opened


class Course:
    """Where measurements are made: a season folder, and the smallest program.

    Args:
        home: a folder for everything that is written.
        batches: how many batches the season has.
    """

    def __init__(self, home: Path, batches: int) -> None:
        self.folder = home / f"season-{batches}"
        self.records = nursery.write(self.folder, batches, DAY)
        self.smallest = home / "smallest.py"
        self.smallest.write_text(SMALLEST, "utf-8")
        self._copies = 0

    @contextmanager
    def opened(self) -> Iterator[tuple[Program, Program]]:
        """Our program on a copy of the season, and the smallest one, both painted and quiet."""
        self._copies += 1
        copy = self.folder.with_name(f"{self.folder.name}-{self._copies}")
        shutil.copytree(self.folder, copy)
        ours = [sys.executable, "-m", "tests.bench.screens_on_a_day", str(copy), DAY.isoformat()]
        with terminal(ours) as mine, terminal([sys.executable, str(self.smallest)]) as least:
            mine.wait_for(READY)
            least.wait_for("READY")
            for one in (mine, least, mine):
                one.settle(0.3)
            yield mine, least
        shutil.rmtree(copy)

    def tasks(self) -> str:
        """How many tasks there are, as the head of the round says it."""
        with self.opened() as (mine, _):
            return mine.cells.text.partition("\n")[0].rpartition(" of ")[2].strip()


def by_turns(mine: Program, least: Program, key: bytes, other: bytes = b"a") -> Pair:
    """The times of a key in both programs."""
    return mine.answer(key), least.answer(other)


def moves(mine: Program, least: Program, rounds: int) -> list[Pair]:
    """Moving the cursor within what is in sight."""
    return [by_turns(mine, least, key) for _ in range(rounds) for key in (DOWN, DOWN, UP)]


def scrolls(mine: Program, least: Program, rounds: int) -> list[Pair]:
    """Moving the cursor where the list has to move with it."""
    for _ in range(2):
        mine.answer(b"\x1b[6~")
    return [by_turns(mine, least, DOWN) for _ in range(2 * rounds)]


def ticks(mine: Program, least: Program, rounds: int) -> tuple[list[Pair], list[Pair]]:
    """Ticking tasks one after another, and taking each back; what opens a sheet is passed over."""
    mine.answer(TAB)
    found = islice(_ticks(mine, least), rounds)
    done = list(found)
    return [tick for tick, _ in done], [undo for _, undo in done]


def _ticks(mine: Program, least: Program) -> Iterator[tuple[Pair, Pair]]:
    """Each is held against the smallest program's answer just after."""
    while True:
        tick = by_turns(mine, least, SPACE)
        if "Recorded: " in mine.cells.text:
            undo = by_turns(mine, least, b"u", b"b")
            yield tick, undo
        else:
            mine.answer(b"\x1b")
        mine.answer(DOWN)


def opening(course: Course, runs: int, keys: bytes) -> list[Pair]:
    """Opening a screen for the first time in a sitting: the last of the keys is timed."""
    found = []
    for _ in range(runs):
        with course.opened() as (mine, least):
            for key in (TAB, TAB, TAB, TAB, *(keys[n : n + 1] for n in range(len(keys) - 1))):
                mine.answer(key)
            least.answer(b"b")
            found.append(by_turns(mine, least, keys[-1:]))
    return found


def opening_again(course: Course, runs: int, keys: bytes) -> list[Pair]:
    """Opening a screen that was open before in the sitting."""
    with course.opened() as (mine, least):
        for key in (TAB, TAB, TAB, TAB):
            mine.answer(key)
        found = []
        for _ in range(runs + 1):
            for n in range(len(keys) - 1):
                mine.answer(keys[n : n + 1])
            found.append(by_turns(mine, least, keys[-1:]))
            for back in (CTRL_G, b"r") if len(keys) > 1 else (b"\x1b",):
                mine.answer(back)
        return found[1:]


def _screens() -> dict[str, bytes]:
    gone_to = {one.name: b"g" + one.letter.encode() for one in DESTINATIONS if one.screen}
    return {**gone_to, **FROM_THE_ROUND}


def on_the_round(course: Course, what: str, rounds: int, tick_limit: float) -> Iterator[Figure]:
    """Figures of the round itself."""
    told: tuple[tuple[str, float, Callable[[Program, Program, int], list[Pair]]], ...] = (
        ("moving the cursor", MOVE, moves),
        ("moving it where the list moves too", MOVE, scrolls),
    )
    for words, limit, action in told:
        with course.opened() as (mine, least):
            yield ratio(f"{what}: {words}", action(mine, least, rounds), limit)
    with course.opened() as (mine, least):
        done, taken_back = ticks(mine, least, rounds)
    yield ratio(f"{what}: a tick", done, tick_limit)
    yield ratio(f"{what}: taking it back", taken_back, tick_limit)


def figures(rounds: int, *, with_nursery: bool, with_opening: bool) -> Iterator[Figure]:
    """All figures, one after another."""
    with tempfile.TemporaryDirectory() as made:
        home = Path(made)
        course = Course(home, FIVE_HUNDRED_TASKS)
        what = f"{course.tasks()} tasks"
        yield from on_the_round(course, what, rounds, TICK)
        for name, keys in _screens().items() if with_opening else ():
            first = opening(course, max(3, rounds // 4), keys)
            yield ratio(f"{what}: opening {name} for the first time", first, OPENING)
            yield ratio(f"{what}: opening {name} again", opening_again(course, 5, keys), OPENING)
        if with_nursery:
            course = Course(home, NURSERY)
            what = f"{course.records:,} records, {NURSERY:,} batches"
            yield from on_the_round(course, what, rounds, NURSERY_TICK)


def main(words: list[str]) -> None:
    """Print the table."""
    rounds = next((int(word) for word in words if word.isdigit()), 12)
    print(machine())
    print(HEAD)
    shown = figures(
        rounds,
        with_nursery="--no-nursery" not in words,
        with_opening="--no-opening" not in words,
    )
    for figure in shown:
        print(figure.row, flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
