"""The line that says how far long work is: on a terminal only, and ctrl+c stops it."""

from __future__ import annotations

import io
import signal

import pytest

from benchround.core.errors import StoppedError
from benchround.core.progress import progress_words, told
from benchround.shell.progress import watched


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_a_terminal_shows_it_and_is_left_clean() -> None:
    out = Terminal()
    with watched("reading", "rows", "nothing was recorded.", out=out) as progress:
        assert list(told(range(3), progress, every=1)) == [0, 1, 2]
    assert "reading: 0 of 3 rows; ctrl+c stops" in out.getvalue()
    assert out.getvalue().endswith("\r\x1b[K")


def test_a_pipe_gets_none() -> None:
    out = io.StringIO()
    with watched("reading", "rows", "nothing was recorded.", out=out) as progress:
        assert len(list(told(range(3), progress))) == 3
    assert out.getvalue() == ""


def test_ctrl_c_stops_at_the_next_telling_and_the_old_way_comes_back() -> None:
    before = signal.getsignal(signal.SIGINT)
    seen: list[int] = []
    with (
        pytest.raises(StoppedError, match=r"Stopped after 50 of 200 rows: nothing was recorded\."),
        watched("reading", "rows", "nothing was recorded.", out=io.StringIO()) as progress,
    ):
        for number in told(range(200), progress):
            seen.append(number)
            if number == 7:
                signal.raise_signal(signal.SIGINT)
    assert seen[-1] == 49
    assert signal.getsignal(signal.SIGINT) is before


def test_ctrl_c_when_all_is_done_changes_nothing() -> None:
    with watched("writing", "records", "", out=io.StringIO()) as progress:
        progress(0, 1)
        signal.raise_signal(signal.SIGINT)
        progress(1, 1)


@pytest.mark.parametrize(
    ("done", "of", "seconds", "words"),
    [
        (0, 10, 5.0, "reading: 0 of 10 rows"),
        (5, 10, 0.5, "reading: 5 of 10 rows"),  # too short to tell a pace
        (2, 10, 4.0, "reading: 2 of 10 rows, about 16 s left"),
        (10, 10, 4.0, "reading: 10 of 10 rows"),
    ],
)
def test_what_remains_is_said_once_a_pace_is_known(
    done: int, of: int, seconds: float, words: str
) -> None:
    assert progress_words("reading", "rows", done, of, seconds) == words
