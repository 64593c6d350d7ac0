"""Long work in the shell: a line that says how far it is, and ctrl+c as a way to stop it.

The line is drawn on a terminal only; what is piped or written to a file gets none. While the work
is watched, ctrl+c does not break it off in the middle: it stops at the next place where that does
no harm, or is passed over where everything is written at once.
"""

from __future__ import annotations

import signal
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from types import FrameType
from typing import TextIO

from benchround.core.errors import StoppedError
from benchround.core.progress import Progress, progress_words

REDRAW_S = 0.1
"""Seconds between two drawings of the line; a reader follows no more (our proposal)."""
CLEAR = "\r\x1b[K"


@contextmanager
def watched(what: str, unit: str, stopped: str, *, out: TextIO | None = None) -> Iterator[Progress]:
    """Progress that is shown, and stops the work after ctrl+c.

    Args:
        what: what is being done, such as "reading".
        unit: what is counted, such as "rows".
        stopped: what to say of what was not done, after "Stopped after 5 of 9 rows: ".
        out: where the line is drawn; standard error where it is not said.
    """
    line = _Line(what, unit, out or sys.stderr)
    asked = threading.Event()

    def progress(done: int, of: int) -> None:
        line.draw(done, of)
        if asked.is_set() and done < of:
            raise StoppedError(f"Stopped after {done} of {of} {unit}: {stopped}")

    def stop(number: int, frame: FrameType | None) -> None:
        asked.set()

    here = threading.current_thread() is threading.main_thread()
    before = signal.signal(signal.SIGINT, stop) if here else None
    try:
        yield progress
    finally:
        line.clear()
        if before is not None:
            signal.signal(signal.SIGINT, before)


class _Line:
    """The one line, drawn over and over."""

    def __init__(self, what: str, unit: str, out: TextIO) -> None:
        self._what, self._unit, self._out = what, unit, out
        self._shows = out.isatty()
        self._began = time.monotonic()
        self._drawn = 0.0

    def draw(self, done: int, of: int) -> None:
        if done >= of:
            self.clear()
            return
        now = time.monotonic()
        if not self._shows or now - self._drawn < REDRAW_S:
            return
        self._drawn = now
        words = progress_words(self._what, self._unit, done, of, now - self._began)
        self._out.write(f"{CLEAR}{words}; ctrl+c stops")
        self._out.flush()

    def clear(self) -> None:
        if self._drawn:
            self._out.write(CLEAR)
            self._out.flush()
            self._drawn = 0.0
