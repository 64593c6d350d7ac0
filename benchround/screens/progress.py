"""Long work: how far it is, what remains, and a key to stop it. The work runs beside the screen."""

from __future__ import annotations

import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from threading import Event
from typing import Any

from textual.app import ComposeResult
from textual.screen import ModalScreen
from textual.worker import Worker, WorkerState

from benchround.core.errors import BenchroundError, StoppedError
from benchround.core.progress import Progress, progress_words
from benchround.screens.base import BenchScreen
from benchround.screens.key_screens import PROGRESS
from benchround.screens.keys import bindings
from benchround.screens.text import BLANK, Line, Role, line, paragraph
from benchround.screens.widgets.key_bar import KeyBar
from benchround.screens.widgets.status import Status
from benchround.screens.widgets.told import Told

REDRAW_S = 0.1
BAR_WIDE = 40
STOPPING = "Stopping at the next place where it does no harm."


@dataclass(frozen=True, slots=True)
class LongWork:
    """Work that may take more than a moment.

    Attributes:
        does: is given whom to tell how far it is, and gives what came of it. It runs in a thread of
            its own; the screens beneath wait.
        what: what is being done, such as "Reading".
        unit: what is counted, such as "rows".
        left: what to say of what was not done where it was stopped.
        whole: whether it is done all at once and cannot be stopped on the way.
    """

    does: Callable[[Progress], Any]
    what: str
    unit: str
    left: str = "Nothing was recorded."
    whole: bool = False


@dataclass(frozen=True, slots=True)
class Ended:
    """What came of the work: a value, or the error that ended it."""

    value: Any = None
    error: BenchroundError | None = None


class ProgressScreen(BenchScreen[Ended], ModalScreen[Ended], inherit_bindings=False):
    """Does the work and closes by itself.

    Args:
        work: what is to be done.
    """

    CSS_PATH = ["progress.tcss"]  # noqa: RUF012 - as Textual has it
    BINDINGS = bindings(PROGRESS)
    KEYS_OF = PROGRESS

    def __init__(self, work: LongWork) -> None:
        super().__init__()
        self._work = work
        self._stop = Event()
        self._far = (0, 0)
        self._began = time.monotonic()

    def compose(self) -> ComposeResult:
        """What is done, how far it is, status, foot."""
        yield Told("far", self.far_lines)
        yield Status()
        yield KeyBar(self.KEYS_OF)

    def on_mount(self) -> None:
        """Begin."""
        self._began = time.monotonic()
        self.set_interval(REDRAW_S, self._retell)
        self.run_worker(self._do, thread=True, exit_on_error=False)

    def on_unmount(self) -> None:
        """Whatever closed the screen: the work does not go on unseen."""
        self._stop.set()

    def _retell(self) -> None:
        self.query_one("#far", Told).rewrite()

    def far_lines(self, width: int) -> Sequence[Line]:
        """How far it is, in words and as a bar."""
        done, of = self._far
        work = self._work
        seconds = time.monotonic() - self._began
        words = progress_words(work.what, work.unit, done, of, seconds) if of else work.what
        wide = min(BAR_WIDE, max(0, width - 2))
        full = wide * done // of if of else 0
        stop = (
            "All is written at once: it cannot be stopped half way."
            if work.whole
            else (f"esc stops it. {work.left}")
        )
        return [
            *paragraph(words, width, Role.HEADING),
            line(("#" * full, Role.STRONG), ("." * (wide - full), Role.QUIET)),
            BLANK,
            *paragraph(stop, width, Role.QUIET),
        ]

    def _progress(self, done: int, of: int) -> None:
        """Taken from the working thread: plain values only, no widget is touched."""
        self._far = (done, of)
        if self._stop.is_set() and done < of and not self._work.whole:
            raise StoppedError(f"Stopped after {done} of {of} {self._work.unit}. {self._work.left}")

    def _do(self) -> Ended:
        try:
            return Ended(self._work.does(self._progress))
        except BenchroundError as error:
            return Ended(error=error)

    def on_worker_state_changed(self, event: Worker.StateChanged) -> None:
        """Close when the work has ended."""
        if event.state is WorkerState.SUCCESS:
            self.dismiss(event.worker.result)
        elif event.state is WorkerState.ERROR and event.worker.error is not None:
            raise event.worker.error

    def action_stop(self) -> None:
        """Stop it at the next place where that does no harm."""
        if self._work.whole:
            raise BenchroundError("All is written at once: it cannot be stopped half way.")
        self._stop.set()
        self.say(STOPPING)
