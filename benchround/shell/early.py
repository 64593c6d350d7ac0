"""Showing a picture on the terminal while the program is still being read.

The terminal is put into the state the screens will want: the other sheet of it, no cursor, no echo,
keys taken as they come. What is typed meanwhile waits for the screens, all but ctrl+c. Whatever
ends the program before they take over, the terminal is left as it was, and what was typed goes to
no other program.
"""

from __future__ import annotations

import os
import shutil
import signal
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from types import FrameType

from benchround.shell.terminal import LEAVING, SERVED

OTHER_SHEET, NO_CURSOR, CLEAR = "\x1b[?1049h", "\x1b[?25l", "\x1b[2J"
AS_IT_WAS = "\x1b[0m\x1b[?7h\x1b[?2004l\x1b[?2048l\x1b[?1004l\x1b[<u\x1b[?25h\x1b[?1049l"
"""Takes back what the screens may have begun with too: long lines cut off, brackets around pastes,
the size told among the keys, focus, all keys."""

Picture = Callable[[int, int], str]
"""Gives what to send to a terminal of so many columns and lines; empty where nothing is to be."""


class Asked:
    """What asked the program to end while the screens could not yet; it is heeded once they can.

    Raised at once, the end would come in the midst of reading files, where it turns into a fault.
    """

    def __init__(self) -> None:
        self._number = 0

    def __call__(self) -> int:
        """The number of the signal; 0: none came."""
        return self._number

    def take(self, number: int, _: FrameType | None) -> None:
        """Note a signal.

        Raises:
            KeyboardInterrupt: ctrl+c came a second time, as reading takes too long.
        """
        if number == self._number == signal.SIGINT:
            raise KeyboardInterrupt
        self._number = number

    def heed(self) -> None:
        """End the program if it was asked to.

        Raises:
            KeyboardInterrupt: by ctrl+c.
            SystemExit: by another signal.
        """
        if self._number == signal.SIGINT:
            raise KeyboardInterrupt
        if self._number:
            raise SystemExit(128 + self._number)


@contextmanager
def shown_early(picture: Picture) -> Iterator[Asked]:
    """Show a picture until what is done meanwhile draws over it; none where there is no terminal.

    Args:
        picture: asked once.

    Yields:
        Whether the program was asked to end meanwhile, which is to be heeded.
    """
    asked = Asked()
    if not _on_a_terminal():
        yield asked
        return
    drawn = picture(*shutil.get_terminal_size())  # as Textual asks for it
    if not drawn:
        yield asked
        return
    with _heard(asked), _keys_unseen(), _left_clean():
        _send(f"{OTHER_SHEET}{NO_CURSOR}{CLEAR}{drawn}")
        yield asked


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
    for stopping in (termios.VSUSP, termios.VQUIT):  # they would leave the picture standing
        silent[6][stopping] = os.fpathconf(keyboard.fileno(), "PC_VDISABLE").to_bytes(1, "big")
    termios.tcsetattr(keyboard, termios.TCSANOW, silent)
    try:
        yield
    finally:
        with suppress(termios.error):  # the terminal may be gone
            termios.tcflush(keyboard, termios.TCIFLUSH)  # no shell is to take keys meant for us
            termios.tcsetattr(keyboard, termios.TCSANOW, before)


@contextmanager
def _heard(asked: Asked) -> Iterator[None]:
    """Note what asks the program to end."""
    before = {number: signal.signal(number, asked.take) for number in LEAVING}
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)


@contextmanager
def _left_clean() -> Iterator[None]:
    """Give the terminal back where something ends the program before the screens can."""
    try:
        yield
    except BaseException:
        with suppress(OSError):
            _send(AS_IT_WAS)
        raise


def _send(text: str) -> None:
    """Send to the stream that Textual draws on."""
    stream = sys.__stderr__
    if stream is not None:
        stream.write(text)
        stream.flush()
