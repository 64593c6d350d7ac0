"""What the screens need of the system: a terminal that shows them and takes keys, and signals."""

from __future__ import annotations

import os
import signal
import sys

from benchround.core.errors import BenchroundError

NO_TERMINAL = (
    "The screens need a terminal that shows them and takes keys, and here is none: 'benchround "
    "today' prints the round, 'benchround help' tells the other commands."
)
SERVED = "TEXTUAL_DRIVER"
"""Textual's own name for what draws instead of a terminal, such as a browser."""
LEAVING = tuple(
    getattr(signal, name) for name in ("SIGINT", "SIGTERM", "SIGHUP") if hasattr(signal, name)
)
"""Signals by which a program is asked to end; not every system has all."""


def require_terminal() -> None:
    """Refuse to open the screens where nobody would see them or could ever leave them.

    Raises:
        BenchroundError: input or the stream the screens are drawn on is no terminal.
    """
    if os.environ.get(SERVED):
        return
    drawn_on = sys.__stdout__ if os.name == "nt" else sys.__stderr__  # where Textual draws
    for stream in (sys.__stdin__, drawn_on):
        if stream is None or stream.closed or not stream.isatty():
            raise BenchroundError(NO_TERMINAL)
