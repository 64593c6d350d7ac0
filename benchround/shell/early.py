"""Showing a picture on the terminal while the program is still being read.

The terminal is put into the state the screens will want: the other sheet of it, no cursor, no echo,
keys taken as they come. What is typed meanwhile waits for the screens. Whatever ends the program
before they take over, the terminal is left as it was.
"""

from __future__ import annotations

import os
import shutil
import signal
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from types import FrameType

from benchround.shell.terminal import SERVED

OTHER_SHEET, NO_CURSOR, CLEAR = "\x1b[?1049h", "\x1b[?25l", "\x1b[2J"
AS_IT_WAS = "\x1b[0m\x1b[?2004l\x1b[?1004l\x1b[<u\x1b[?25h\x1b[?1049l"
"""Takes back what the screens may have begun with too: brackets around pastes, focus, all keys."""

Picture = Callable[[int, int], str]
"""Gives what to send to a terminal of so many columns and lines; empty where nothing is to be."""


@contextmanager
def shown_early(picture: Picture) -> Iterator[None]:
    """Show a picture until what is done meanwhile draws over it; none where there is no terminal.

    Args:
        picture: asked once.
    """
    if not _on_a_terminal():
        yield
        return
    drawn = picture(*shutil.get_terminal_size())  # as Textual asks for it
    if not drawn:
        yield
        return
    with _keys_unseen(), _left_clean():
        _send(f"{OTHER_SHEET}{NO_CURSOR}{CLEAR}{drawn}")
        yield


def _on_a_terminal() -> bool:
    """Whether what is drawn is seen and keys are typed on a terminal that can be kept still."""
    streams = (sys.__stdin__, sys.__stderr__)
    served = os.environ.get(SERVED)
    return (
        os.name == "posix"
        and not served
        and all(one is not None and one.isatty() for one in streams)
    )


@contextmanager
def _keys_unseen() -> Iterator[None]:
    """Have keys wait as they are typed, without a trace on the screen."""
    import termios  # not on every system

    keyboard = sys.__stdin__
    assert keyboard is not None  # it is a terminal
    before, silent = termios.tcgetattr(keyboard), termios.tcgetattr(keyboard)
    silent[0] &= ~(termios.IXON | termios.IXOFF | termios.ICRNL | termios.INLCR | termios.IGNCR)
    silent[3] &= ~(termios.ECHO | termios.ICANON | termios.IEXTEN)
    termios.tcsetattr(keyboard, termios.TCSANOW, silent)
    try:
        yield
    finally:
        with suppress(termios.error):  # the terminal may be gone
            termios.tcsetattr(keyboard, termios.TCSANOW, before)


@contextmanager
def _left_clean() -> Iterator[None]:
    """Give the terminal back where something ends the program before the screens can."""
    before = {number: signal.signal(number, _leave) for number in (signal.SIGTERM, signal.SIGHUP)}
    try:
        yield
    except BaseException:
        with suppress(OSError):
            _send(AS_IT_WAS)
        raise
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)


def _leave(number: int, _: FrameType | None) -> None:
    raise SystemExit(128 + number)


def _send(text: str) -> None:
    """Send to the stream that Textual draws on."""
    stream = sys.__stderr__
    if stream is not None:
        stream.write(text)
        stream.flush()
