"""How soon the round is painted and keys are answered, against the smallest Textual program.

    python -m tests.bench.bench_screens [runs]

Both programs are started by turns in pseudo-terminals of the same size, so that what slows the
machine slows both. A ratio is the middle one of the runs. Bytecode must be there: the first run of
each is thrown away.
"""

from __future__ import annotations

import os
import pty
import re
import select
import signal
import statistics
import subprocess
import sys
import tempfile
import termios
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from tests.sample.story import records
from tests.screens.stage import write_season

ROOT = Path(__file__).parents[2]
SIZE = (120, 40)
PATIENCE_S = 30.0
QUIET_S = 0.15
ESCAPES = re.compile(
    rb"\x1b\[[0-?]*[ -/]*[@-~]|\x1b\][^\x07\x1b]*(?:\x07|\x1b\\)|\x1b[P_^X][^\x1b]*\x1b\\|\x1b[=>]"
)

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

KEYS: Mapping[str, tuple[bytes, ...]] = {
    "down": (b"\x1b[B",),
    "tick": (b"\t", b"\t", b"\t", b" "),
    "undo": (b"\t", b"\t", b"\t", b" ", b"u"),
    "next day": (b".",),
    "why": (b"w",),
    "help": (b"?",),
    "sowing sheet": (b"s",),
    "a letter in it": (b"s", b"c"),
    "the crop found": (b"s", b"c", b"o", b"s", b"m"),
}
"""Keys pressed one after another; the last one is measured."""


class Terminal:
    """One program in a pseudo-terminal."""

    def __init__(self, command: list[str]) -> None:
        self.master, slave = pty.openpty()
        termios.tcsetwinsize(slave, (SIZE[1], SIZE[0]))
        env = {**os.environ, "TERM": "xterm-256color"}
        env.pop("PYTHONDONTWRITEBYTECODE", None)
        env.pop("NO_COLOR", None)
        self.drawn = b""
        self.began = time.perf_counter()
        self.process = subprocess.Popen(
            command,
            stdin=slave,
            stdout=slave,
            stderr=slave,
            cwd=ROOT,
            env=env,
            start_new_session=True,
        )
        os.close(slave)

    def _read(self, patience_s: float) -> bool:
        ready, _, _ = select.select([self.master], [], [], patience_s)
        if ready:
            self.drawn += os.read(self.master, 1 << 16)
        return bool(ready)

    def painted(self, words: bytes) -> float:
        """Seconds from the start until the words are drawn."""
        end = time.perf_counter() + PATIENCE_S
        while words not in ESCAPES.sub(b"", self.drawn):
            if time.perf_counter() > end:
                raise TimeoutError(f"{words!r} was not drawn: {self.drawn[-500:]!r}")
            self._read(0.5)
        return time.perf_counter() - self.began

    def settle(self) -> None:
        """Wait until nothing is drawn any more."""
        while self._read(QUIET_S):
            continue

    def answered(self, key: bytes) -> float:
        """Seconds from a key until something is drawn."""
        self.settle()
        start = time.perf_counter()
        os.write(self.master, key)
        self._read(PATIENCE_S)
        return time.perf_counter() - start

    def close(self) -> None:
        """End the program."""
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()
        os.close(self.master)


@contextmanager
def terminal(command: list[str]) -> Iterator[Terminal]:
    """A program that is ended in any case."""
    opened = Terminal(command)
    try:
        yield opened
    finally:
        opened.close()


def main(runs: int) -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as home:
        smallest_file = Path(home) / "smallest.py"
        smallest_file.write_text(SMALLEST, "utf-8")
        smallest = [sys.executable, str(smallest_file)]
        ours = [sys.executable, "-m", "tests.screens.leaving_app"]
        paint: list[tuple[float, float]] = []
        for number in range(runs + 1):
            season = write_season(Path(home) / f"paint-{number}", records())
            pair = _paint_once([*ours, str(season)], smallest)
            if number:
                paint.append(pair)
        _tell("first paint of the round", paint)
        for name, keys in KEYS.items():
            pairs = []
            for number in range(runs):
                season = write_season(Path(home) / f"{name}-{number}", records())
                pairs.append(_key_once([*ours, str(season)], smallest, keys))
            _tell(f"answer to: {name}", pairs)


def _paint_once(ours: list[str], smallest: list[str]) -> tuple[float, float]:
    with terminal(ours) as app:
        mine = app.painted(b"Morning - ")
    with terminal(smallest) as app:
        return mine, app.painted(b"READY")


def _key_once(ours: list[str], smallest: list[str], keys: tuple[bytes, ...]) -> tuple[float, float]:
    with terminal(ours) as app:
        app.painted(b"all keys")
        mine = [app.answered(key) for key in keys][-1]
    with terminal(smallest) as app:
        app.painted(b"READY")
        return mine, [app.answered(key) for key in (b"a", b"b")][-1]


def _tell(what: str, pairs: list[tuple[float, float]]) -> None:
    ours = statistics.median(pair[0] for pair in pairs) * 1000
    theirs = statistics.median(pair[1] for pair in pairs) * 1000
    ratio = statistics.median(pair[0] / pair[1] for pair in pairs)
    print(f"{what:30} {ours:7.1f} ms   smallest {theirs:7.1f} ms   ratio {ratio:5.2f}")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 9)
