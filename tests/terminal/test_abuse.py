"""What terminals and hands do to it: nothing recorded is lost, the terminal is left clean."""

from __future__ import annotations

import os
import signal
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from benchround.clock import SampleClock
from benchround.core.record import Record
from benchround.desk import Desk
from benchround.screens.widgets.line_edit import MOST_TYPED
from tests.sample.story import records
from tests.screens.stage import MACHINE, write_season
from tests.terminal.program import Program, program

COLUMNS, LINES = 100, 30
LEFT_ON = {"7": True, "25": True}
"""Modes on in a terminal as one finds it: lines wrap, the caret shows (DECAWM, DECTCEM)."""
SCREEN_OF_ITS_OWN = "1049"
"""The alternate screen of xterm's control sequences; mouse 1000 to 1015, focus 1004, paste 2004."""
A_MEGABYTE = 1_000_000
PASTED = b"\x1b[200~%b\x1b[201~"
TICKED = "u takes it back"


@pytest.fixture
def season(tmp_path: Path) -> Path:
    return write_season(tmp_path / "season", records())


@pytest.fixture
def screens(season: Path) -> Iterator[Program]:
    command = [sys.executable, "-m", "tests.screens.leaving_app", str(season)]
    with program(command, COLUMNS, LINES) as opened:
        opened.wait_for("all keys")
        opened.settle()
        assert opened.cells.modes[SCREEN_OF_ITS_OWN]
        yield opened


def on_disk(season: Path) -> tuple[Record, ...]:
    desk = Desk.open(season, today=SampleClock(), machine=MACHINE, read_only=True)
    found = desk.folder.records()
    desk.close()
    return found


def tick_one(screens: Program) -> None:
    """Tick the first task that needs no figure and no reading first."""
    for _ in range(20):
        screens.answer(b" ")
        if TICKED in screens.cells.text:
            return
        if "save" in screens.cells.text.splitlines()[-1]:  # a sheet opened instead
            screens.answer(b"\x1b")
        screens.answer(b"\x1b[B")
    raise AssertionError(f"nothing could be ticked:\n{screens.cells.text}")


def assert_clean(screens: Program) -> None:
    """The terminal is as it was found: no mode of the program's own is left on."""
    on = {mode: True for mode, is_on in screens.cells.modes.items() if is_on}
    assert {mode: True for mode in on if mode not in LEFT_ON} == {}
    assert screens.cells.modes["25"], "the caret is shown again"
    assert screens.cells.modes[SCREEN_OF_ITS_OWN] is False
    assert b"Traceback" not in screens.sent


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP], ids=lambda n: n.name)
def test_a_signal_after_a_tick_leaves_disk_and_terminal_right(
    screens: Program, season: Path, number: signal.Signals
) -> None:
    before = len(on_disk(season))
    tick_one(screens)
    screens.process.send_signal(number)
    assert screens.end() == 128 + number
    assert_clean(screens)
    assert len(on_disk(season)) > before


def test_a_closed_window_ends_the_program_and_keeps_what_was_ticked(
    screens: Program, season: Path
) -> None:
    before = len(on_disk(season))
    tick_one(screens)
    assert screens.hang_up() == 128 + signal.SIGHUP
    assert len(on_disk(season)) > before
    command = [sys.executable, "-m", "tests.screens.leaving_app", str(season)]
    with program(command, COLUMNS, LINES) as again:
        again.wait_for("all keys")
        again.settle()
        tick_one(again)


def test_a_terminal_of_one_cell_and_back_again(screens: Program, season: Path) -> None:
    first = screens.cells.text
    for columns, lines in ((1, 1), (2, 40), (200, 1), (1, 1)):
        screens.resize(columns, lines)
        screens.settle()
        screens.write(b"\x1b[B\x1b[A")
        screens.settle()
        assert screens.process.poll() is None
    screens.resize(COLUMNS, LINES)
    screens.wait_for("all keys")
    screens.settle()
    assert screens.cells.text == first
    before = len(on_disk(season))
    tick_one(screens)
    assert len(on_disk(season)) > before
    os.write(screens.master, b"\x11")
    assert screens.end() == 0
    assert_clean(screens)


def test_pasting_over_the_round_does_nothing_but_say_so(screens: Program, season: Path) -> None:
    before, first = on_disk(season), screens.cells.text.splitlines()
    keys = (b" \r u f p s r \x11 g y e w m > . q\n" * (A_MEGABYTE // 36))[:A_MEGABYTE]
    screens.write(PASTED % keys)
    screens.wait_for("Pasted text is only taken in a field")
    screens.settle()
    assert screens.process.poll() is None
    assert screens.cells.text.splitlines()[:10] == first[:10]
    assert on_disk(season) == before
    tick_one(screens)


@pytest.mark.parametrize(
    ("keys", "where"),
    [
        ((b"s",), "a field with choices"),
        ((b"s", b"\t"), "a field of words"),
        ((b"s", b"\t", b"\t"), "a figure"),
        ((b"\t", b"\t", b"\t", b"\t", b"r"), "a record sheet"),
        ((b"\t", b"\t", b"\t", b"\t", b"p"), "a day"),
        ((b"/",), "the search"),
        ((b"g", b"w", b"o"), "the line of the outlook"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_a_megabyte_pasted_into_a_field_is_cut_and_the_sheet_goes_on(
    screens: Program, season: Path, keys: tuple[bytes, ...], where: str
) -> None:
    before = on_disk(season)
    for key in keys:
        screens.answer(key)
    screens.write(PASTED % ("\N{LATIN SMALL LETTER E WITH ACUTE}b " * (A_MEGABYTE // 4)).encode())
    screens.wait_for(f"field takes {MOST_TYPED:,} letters")
    screens.settle()
    screens.answer(b"\x15")  # ctrl+u empties the field
    screens.answer(b"\x1b")
    assert on_disk(season) == before
    os.write(screens.master, b"\x11")
    assert screens.end() == 0, where
    assert_clean(screens)
