"""What asks the program to end from outside, while the screens are open."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from contextlib import suppress

from benchround.shell.terminal import LEAVING


def heed_signals(leave: Callable[[int], None]) -> None:
    """Leave cleanly when the terminal goes away or the machine shuts down.

    Args:
        leave: called with the number of the signal, when the running loop has time for it.
    """
    loop = asyncio.get_running_loop()
    for number in LEAVING:
        with suppress(NotImplementedError):  # the loop of Windows takes none
            loop.add_signal_handler(number, leave, number)
