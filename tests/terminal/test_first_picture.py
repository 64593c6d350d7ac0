"""The round stands on the terminal before Textual is read; what is typed meanwhile is not lost."""

from __future__ import annotations

import os
import re
import signal
import sys
import termios
from pathlib import Path

import pytest

from benchround.shell.early import shown_early
from tests.terminal.program import OTHER_SHEET, Program, program
from tests.terminal.sheet_of_cells import SheetOfCells
from tests.terminal.waiting_app import PICTURE

SAMPLE = [sys.executable, "-m", "benchround", "--sample"]
WAITING = [sys.executable, "-m", "tests.terminal.waiting_app"]
KEYBOARD, SIGNS = 3, 6
"""Where the terminal's own echo is switched, and its signs for stopping, in what termios gives."""
ENDING = [signal.SIGTERM, signal.SIGHUP, signal.SIGINT]


@pytest.fixture(autouse=True)
def own_home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME"):
        monkeypatch.setenv(name, str(tmp_path))


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 40)], ids=str)
@pytest.mark.parametrize("env", [{}, {"TERM": "linux"}, {"NO_COLOR": "1"}, {"LANG": "C"}], ids=str)
def test_the_screen_is_drawn_over_it_and_looks_the_same(
    size: tuple[int, int], env: dict[str, str]
) -> None:
    with program(SAMPLE, *size, env) as opened:
        opened.taken_over()
        first, second = (at.start() for at in _asked_for(opened, OTHER_SHEET))
        early = SheetOfCells(*size)
        early.feed(bytes(opened.sent[first:second]))
        assert early.text == opened.cells.text
        assert "to do" in early.text.splitlines()[0]


def _asked_for(opened: Program, sequence: bytes) -> list[re.Match[bytes]]:
    return list(re.finditer(re.escape(sequence), opened.sent))


def test_a_key_typed_over_it_is_taken_by_the_screen() -> None:
    with program(SAMPLE, 80, 24) as opened:
        opened.painted(b"to do")
        assert opened.sent.count(OTHER_SHEET) == 1, "Textual is not read yet"
        opened.write(b"\x1b[B\x1b[B")
        opened.wait_for("3 of ")
        opened.write(b"\x11")
        assert opened.end() == 0


def test_keys_typed_over_it_leave_no_trace_and_the_echo_comes_back() -> None:
    with program(WAITING, 80, 24) as opened:
        opened.wait_for(PICTURE)
        before = opened.cells.text
        opened.write(b"abc\r\x13\x11\x1a\x1c")
        opened.settle(0.3)
        assert opened.cells.text == before
        opened.process.send_signal(signal.SIGTERM)
        assert opened.end() == 128 + signal.SIGTERM
        assert termios.tcgetattr(opened.master)[KEYBOARD] & termios.ECHO


def test_it_is_asked_for_the_size_of_the_terminal() -> None:
    with program(WAITING, 97, 31) as opened:
        opened.wait_for(f"{PICTURE} at 97 by 31")


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP], ids=lambda n: n.name)
def test_a_signal_meanwhile_leaves_the_terminal_clean(number: signal.Signals) -> None:
    with program(WAITING, 80, 24) as opened:
        opened.wait_for(PICTURE)
        assert opened.cells.modes["1049"]
        opened.process.send_signal(number)
        assert opened.end() == 128 + number
        assert opened.cells.text.strip() == PICTURE + " at 80 by 24", "no fault is told"
        assert_clean(opened)


@pytest.mark.parametrize("sheets", [1, 2], ids=["picture", "screen"])
@pytest.mark.parametrize("number", ENDING, ids=lambda n: n.name)
def test_a_signal_at_any_moment_is_heeded(number: signal.Signals, sheets: int) -> None:
    with program(SAMPLE, 80, 24) as opened:
        while opened.sent.count(OTHER_SHEET) < sheets:
            assert opened.take(20), "nothing was drawn"
        opened.process.send_signal(number)
        assert opened.end() == 128 + number
        assert b"Traceback" not in opened.sent
        assert_clean(opened)


@pytest.mark.parametrize("sheets", [1, 2], ids=["picture", "screen"])
def test_closing_the_window_ends_the_sample_without_a_fault(sheets: int) -> None:
    with program(SAMPLE, 80, 24) as opened:
        while opened.sent.count(OTHER_SHEET) < sheets:
            assert opened.take(20), "nothing was drawn"
        assert opened.hang_up() == 128 + signal.SIGHUP


def test_the_terminal_does_not_stop_the_program_by_a_key() -> None:
    with program(WAITING, 80, 24) as opened:
        opened.wait_for(PICTURE)
        signs = termios.tcgetattr(opened.master)[SIGNS]
        none = os.fpathconf(opened.master, "PC_VDISABLE")  # POSIX: this sign is none
        assert [signs[one] for one in (termios.VSUSP, termios.VQUIT)] == [bytes([none])] * 2


def test_ctrl_c_ends_the_program_and_a_second_one_does_where_it_is_stuck() -> None:
    with program([*WAITING, "stuck"], 80, 24) as opened:
        opened.wait_for(PICTURE)
        opened.write(b"\x03")
        opened.settle(0.3)
        assert opened.process.poll() is None
        opened.write(b"\x03")
        assert opened.end() != 0
        assert_clean(opened)
    with program(SAMPLE, 80, 24) as opened:
        opened.painted(b"to do")
        opened.write(b"\x03")
        assert opened.end() == 128 + signal.SIGINT


def test_what_was_typed_over_it_does_not_reach_the_shell() -> None:
    failing = f"{sys.executable} -m tests.terminal.waiting_app fails"
    shell = ["sh", "-c", f'{failing}; IFS= read -r line; echo "the shell took <$line>"']
    with program(shell, 80, 24) as opened:
        opened.wait_for(PICTURE)
        opened.write(b"typed ahead\r")
        opened.wait_for("it could not go on")
        opened.write(b"after\r")
        opened.wait_for("the shell took <after>")


def test_a_failure_meanwhile_leaves_the_terminal_clean_and_is_told() -> None:
    with program([*WAITING, "fails"], 80, 24) as opened:
        assert opened.end() == 1
        assert "it could not go on" in opened.cells.text
        assert_clean(opened)


def assert_clean(opened: Program) -> None:
    """The terminal is as it was found: its own sheet, the caret shown, nothing else left on."""
    on = {mode for mode, is_on in opened.cells.modes.items() if is_on}
    assert on <= {"7", "25"}
    assert opened.cells.modes["25"]
    assert opened.cells.modes["1049"] is False


def test_nothing_is_sent_where_there_is_no_terminal(capfd: pytest.CaptureFixture[str]) -> None:
    asked: list[tuple[int, int]] = []

    def picture(columns: int, lines: int) -> str:
        asked.append((columns, lines))
        return "drawn"

    with shown_early(picture):
        pass
    assert asked == []
    assert capfd.readouterr().err == ""
