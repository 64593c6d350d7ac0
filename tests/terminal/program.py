"""A program in a pseudo-terminal: keys go in, what it draws is taken down and read."""

from __future__ import annotations

import fcntl
import os
import pty
import select
import subprocess
import termios
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

from tests.terminal.sheet_of_cells import STEERED, SheetOfCells

ROOT = Path(__file__).parents[2]
PATIENCE_S = 30.0
QUIET_S = 0.1
"""A program that draws nothing for so long has drawn all it was going to."""
AT_ONCE = 1 << 16
SIZE_AS_IT_IS = {"COLUMNS": "", "LINES": ""}
"""Names that would be believed before the terminal is asked; the readline library sets them."""
OTHER_SHEET = b"\x1b[?1049h"
"""How a program asks for the alternate screen (xterm's control sequences)."""
LEAST_DRAWN = 40
"""Bytes: less is the pointer's shape or the caret's place, and the answer is still to come."""


class Program:
    """One program in a pseudo-terminal.

    Args:
        command: the words it is started with.
        columns: of the terminal.
        lines: of the terminal.
        env: names set besides those of this process; an empty one is taken away.
    """

    def __init__(
        self,
        command: Sequence[str],
        columns: int = 80,
        lines: int = 24,
        env: dict[str, str] | None = None,
    ) -> None:
        self.master, slave = pty.openpty()
        termios.tcsetwinsize(slave, (lines, columns))
        self.sent = bytearray()
        self.cells = SheetOfCells(columns, lines)
        around = {**os.environ, "TERM": "xterm-256color", "NO_COLOR": "", **SIZE_AS_IT_IS}
        around |= {"PYTHONDONTWRITEBYTECODE": "", **(env or {})}
        self.began = time.perf_counter()
        self.process = subprocess.Popen(
            list(command),
            stdin=slave,
            stdout=slave,
            stderr=slave,
            cwd=ROOT,
            env={name: value for name, value in around.items() if value},
            start_new_session=True,
            preexec_fn=_own_terminal,
        )
        os.close(slave)

    def take(self, patience_s: float) -> bool:
        """Take what is drawn within a time; False where nothing was."""
        ready, _, _ = select.select([self.master], [], [], patience_s)
        if not ready:
            return False
        try:
            more = os.read(self.master, AT_ONCE)
        except OSError:  # the program has let go of the terminal
            return False
        self.sent += more
        self.cells.feed(more)
        return bool(more)

    def settle(self, quiet_s: float = QUIET_S) -> None:
        """Take what is drawn until nothing is any more."""
        end = time.perf_counter() + PATIENCE_S
        while self.take(quiet_s) and time.perf_counter() < end:
            continue

    def wait_for(self, words: str, patience_s: float = PATIENCE_S) -> float:
        """Seconds from the start of the program until the words stand on the screen.

        Raises:
            TimeoutError: they did not come.
        """
        end = time.perf_counter() + patience_s
        while words not in self.cells.text:
            if time.perf_counter() > end:
                raise TimeoutError(f"{words!r} was not drawn:\n{self.cells.text}")
            self.take(0.5)
        return time.perf_counter() - self.began

    def painted(self, words: bytes) -> float:
        """Seconds from the start of the program until the words were drawn, wherever.

        Raises:
            TimeoutError: they did not come.
        """
        end = time.perf_counter() + PATIENCE_S
        while words not in STEERED.sub(b"", self.sent):
            if time.perf_counter() > end:
                raise TimeoutError(f"{words!r} was not drawn: {bytes(self.sent[-500:])!r}")
            self.take(0.5)
        return time.perf_counter() - self.began

    def taken_over(self) -> None:
        """Wait until Textual's screen stands where a picture was drawn before it was read.

        Raises:
            TimeoutError: it did not come.
        """
        end = time.perf_counter() + PATIENCE_S
        while self.sent.count(OTHER_SHEET) < 2:
            if time.perf_counter() > end:
                raise TimeoutError(f"Textual did not begin:\n{self.cells.text}")
            self.take(0.5)
        self.settle(0.3)

    def write(self, keys: bytes) -> None:
        """Type; what is drawn meanwhile is taken, so that neither side waits for the other."""
        os.set_blocking(self.master, False)
        left = memoryview(keys)
        end = time.perf_counter() + PATIENCE_S
        while left and time.perf_counter() < end:
            _, ready, _ = select.select([], [self.master], [], 0.05)
            if ready:
                left = left[os.write(self.master, left[: 1 << 12]) :]
            while self.take(0):
                continue
        os.set_blocking(self.master, True)

    def answer(self, key: bytes, quiet_s: float = QUIET_S) -> float:
        """Seconds from a key to the last of what is drawn for it; the program was quiet before.

        Raises:
            TimeoutError: nothing was drawn for it.
        """
        start = last = time.perf_counter()
        os.write(self.master, key)
        patience_s, drawn = PATIENCE_S, []
        while select.select([self.master], [], [], patience_s)[0]:
            drawn.append(os.read(self.master, AT_ONCE))
            last = time.perf_counter()
            if sum(map(len, drawn)) >= LEAST_DRAWN:
                patience_s = quiet_s
        if not drawn:
            raise TimeoutError(f"no answer to {key!r}:\n{self.cells.text}")
        for more in drawn:  # read once nothing has to be timed any more
            self.sent += more
            self.cells.feed(more)
        return last - start

    def resize(self, columns: int, lines: int) -> None:
        """Give the terminal another size, of which the program is told by the system."""
        self.settle()
        self.cells.resize(columns, lines)
        termios.tcsetwinsize(self.master, (lines, columns))

    def end(self) -> int:
        """Wait for its end and take the last of what it drew; the exit status."""
        end = time.perf_counter() + PATIENCE_S
        while self.process.poll() is None and time.perf_counter() < end:
            self.take(0.05)
        while self.take(0.05):
            continue
        return self.process.wait(1)

    def hang_up(self) -> int:
        """Close the terminal, as when its window is closed; the exit status."""
        os.close(self.master)
        self.master = -1
        return self.process.wait(PATIENCE_S)

    def close(self) -> None:
        """End the program, whatever it does."""
        if self.process.poll() is None:
            self.process.kill()
            self.process.wait()
        if self.master >= 0:
            os.close(self.master)


def _own_terminal() -> None:
    """Make the terminal the program's own, so that it is told when the terminal goes away."""
    fcntl.ioctl(0, termios.TIOCSCTTY, 0)


@contextmanager
def program(
    command: Sequence[str], columns: int = 80, lines: int = 24, env: dict[str, str] | None = None
) -> Iterator[Program]:
    """A program that is ended in any case."""
    opened = Program(command, columns, lines, env)
    try:
        yield opened
    finally:
        opened.close()
