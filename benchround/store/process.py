"""Telling whether the program that wrote something is still running on this computer.

A process number alone does not tell: after a crash the system may give the same number to another
program. So the moment the process started is kept with it, where the system says it; elsewhere a
file from before the computer was last started can only be a leftover.
"""

from __future__ import annotations

import os
import time
from pathlib import Path

_BOOT = Path("/proc/sys/kernel/random/boot_id")
_START_FIELD = 22
"""Field of /proc/<pid>/stat that holds the start time in ticks since the computer was started
(proc(5) manual page)."""

_SLACK_S = 60.0
"""Leeway for clocks that were set between the start of the computer and now."""


def host_name() -> str:
    """The full name of this computer."""
    if hasattr(os, "uname"):
        return os.uname().nodename
    import platform  # seldom needed, and not light

    return platform.node()


def start_mark(pid: int) -> str:
    """A text that differs for every process this computer has run; empty where none is to be had.

    Linux: this start of the computer and the tick within it in which the process began.
    """
    try:
        boot = _BOOT.read_text().strip()
        stat = Path(f"/proc/{pid}/stat").read_text()
    except OSError:
        return ""
    after_name = stat.rpartition(")")[2].split()  # the name itself may hold spaces and brackets
    return f"{boot}:{after_name[_START_FIELD - 3]}"


def is_of_this_start(mark: str) -> bool:
    """Whether a start mark is of this computer, and from since it was last started."""
    try:
        return mark.startswith(f"{_BOOT.read_text().strip()}:")
    except OSError:
        return False


def still_runs(pid: int, mark: str, written_s: float) -> bool:
    """Whether the process of that number and start mark is running on this computer.

    Args:
        pid: process number.
        mark: its start mark; empty if it was not to be had.
        written_s: when the process is known to have been running, seconds since 1970.
    """
    if not _number_in_use(pid):
        return False
    now = start_mark(pid)
    if mark and now:
        return mark == now
    return written_s >= _boot_time_s() - _SLACK_S


def _number_in_use(pid: int) -> bool:
    if pid <= 0:
        return False
    if os.name == "nt":  # there, asking with signal 0 would end the process
        return True
    try:
        os.kill(pid, 0)
    except PermissionError:
        return True
    except (ProcessLookupError, OverflowError):
        return False
    return True


def _boot_time_s() -> float:
    """When this computer was started, seconds since 1970.

    The counting clock is asked for by name where it can be: it runs on while a laptop sleeps.
    """
    clock = getattr(time, "CLOCK_BOOTTIME", getattr(time, "CLOCK_MONOTONIC", None))
    running = time.monotonic() if clock is None else time.clock_gettime(clock)
    return time.time() - running
