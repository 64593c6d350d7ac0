"""Leaving by key or by signal: the terminal is put right and everything is on disk."""

from __future__ import annotations

import asyncio
import os
import pty
import re
import select
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from benchround.clock import SampleClock
from benchround.core.record import Kind
from benchround.desk import Desk
from benchround.screens.app import BenchroundApp
from tests.screens.stage import MACHINE

ROOT = Path(__file__).parents[2]
PATIENCE_S = 30.0
ESCAPES = re.compile(rb"\x1b\[[0-?]*[ -/]*[@-~]|\x1b[=>]")
LEFT_ALTERNATE_SCREEN = b"\x1b[?1049l"
CURSOR_SHOWN = b"\x1b[?25h"


class Terminal:
    """The program in a terminal of its own."""

    def __init__(self, folder: Path) -> None:
        self.master, slave = pty.openpty()
        self.sent = b""
        env = {**os.environ, "TERM": "xterm-256color", "COLUMNS": "100", "LINES": "40"}
        self.process = subprocess.Popen(
            [sys.executable, "-m", "tests.screens.leaving_app", str(folder)],
            stdin=slave,
            stdout=slave,
            stderr=slave,
            cwd=ROOT,
            env=env,
            start_new_session=True,
        )
        os.close(slave)

    def wait_for(self, words: bytes) -> None:
        """Read until the words were drawn."""
        end = time.monotonic() + PATIENCE_S
        while words not in ESCAPES.sub(b"", self.sent):
            assert time.monotonic() < end, f"{words!r} was not drawn: {self.sent[-400:]!r}"
            assert self.read(), f"it ended before {words!r}: {self.sent[-2000:]!r}"

    def read(self) -> bool:
        """Take what was drawn; False when the program has closed the terminal."""
        ready, _, _ = select.select([self.master], [], [], 1.0)
        if not ready:
            return True
        try:
            more = os.read(self.master, 65536)
        except OSError:
            return False
        self.sent += more
        return bool(more)

    def end(self) -> int:
        """Read to the end; the exit status."""
        while self.read():
            if self.process.poll() is not None and not select.select([self.master], [], [], 0)[0]:
                break
        code = self.process.wait(PATIENCE_S)
        os.close(self.master)
        return code


@pytest.fixture
def terminal(folder: Path) -> Terminal:
    opened = Terminal(folder)
    opened.wait_for(b"all keys")
    return opened


@pytest.mark.parametrize(
    "number", [signal.SIGTERM, signal.SIGHUP, signal.SIGINT], ids=lambda n: n.name
)
def test_a_signal_leaves_the_terminal_as_it_was(terminal: Terminal, number: signal.Signals) -> None:
    terminal.process.send_signal(number)
    assert terminal.end() == 128 + number
    assert LEFT_ALTERNATE_SCREEN in terminal.sent
    assert terminal.sent.rindex(CURSOR_SHOWN) > terminal.sent.index(b"\x1b[?25l")
    assert b"Traceback" not in terminal.sent


async def test_a_signal_that_came_before_the_screens_could_take_it_is_heeded(
    still_desk: Desk,
) -> None:
    app = BenchroundApp(still_desk, asked=lambda: signal.SIGTERM)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.pause()
    assert app.return_code == 128 + signal.SIGTERM


def test_the_screens_are_read_where_a_terminal_gives_no_sign_when_it_goes() -> None:
    without = "import signal; del signal.SIGHUP; import benchround.opening"  # as on Windows
    apps = "import benchround.screens.app, benchround.screens.first_run_app"
    subprocess.run([sys.executable, "-c", f"{without}; {apps}"], check=True)


async def test_the_screens_open_where_the_loop_takes_no_signals(
    still_desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    def none_taken(*_: object) -> None:
        raise NotImplementedError  # as Python's documentation has it for Windows

    app = BenchroundApp(still_desk)
    monkeypatch.setattr(asyncio.get_running_loop(), "add_signal_handler", none_taken)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        assert app.return_code is None
        assert app.screen is app.round_screen


def test_what_was_ticked_is_on_disk_when_it_is_killed(terminal: Terminal, folder: Path) -> None:
    os.write(terminal.master, b"\t \x1b[B")
    terminal.wait_for(b"u takes it back")
    terminal.process.kill()
    terminal.end()
    desk = Desk.open(folder, today=SampleClock(), machine=MACHINE)
    last = desk.folder.records()[-1]
    desk.close()
    assert last.kind is not Kind.OUTLOOK
    assert last.machine == MACHINE


def test_the_key_for_leaving_leaves(terminal: Terminal) -> None:
    os.write(terminal.master, b"\x11")
    assert terminal.end() == 0
    assert LEFT_ALTERNATE_SCREEN in terminal.sent
