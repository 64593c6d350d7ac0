"""One writer per season and computer: whoever holds the file `held-<machine>.lock`.

Two computers sharing a folder never meet here: each has a lock of its own and writes files of its
own. On one computer a second program finds the lock and reads only. A lock whose process has ended
is taken over, also when its number has since gone to another program.
"""

from __future__ import annotations

import contextlib
import json
import os
from collections.abc import Iterator
from dataclasses import asdict
from datetime import datetime
from pathlib import Path

from benchround.core.errors import SeasonBusyError
from benchround.core.frozen import dataclass
from benchround.store.disk import SYSTEM_DISK, Disk, read_whole, write_unforced
from benchround.store.naming import Mark, mark_of
from benchround.store.process import host_name, is_of_this_start, start_mark, still_runs


@dataclass(frozen=True, slots=True)
class Holder:
    """Who holds a season for writing.

    Attributes:
        host: the full name of the computer.
        pid: number of the process.
        start: start mark of the process, empty where the system has none.
        since: local time the season was opened, for people to read.
        claim: tells apart two openings by one process.
    """

    host: str
    pid: int
    start: str
    since: str
    claim: str

    @property
    def sentence(self) -> str:
        """Who holds it, for the grower."""
        return f"process {self.pid} on {self.host}, since {self.since}"


class Lock:
    """A season held for writing by this program."""

    def __init__(self, path: Path, holder: Holder, disk: Disk) -> None:
        self.path = path
        self.holder = holder
        self._disk = disk
        self._mark: Mark | None = None  # of the lock file as we wrote it

    @classmethod
    def take(cls, folder: Path, machine: str, now: datetime, disk: Disk = SYSTEM_DISK) -> Lock:
        """Hold the season, taking over from a program that has ended.

        Raises:
            SeasonBusyError: a running program holds it; the message says which.
            SeasonError: the lock could not be written.
        """
        path = folder / f"held-{machine}.lock"
        pid = os.getpid()
        since = now.isoformat(" ", "minutes")
        claim = os.urandom(8).hex()
        lock = cls(path, Holder(host_name(), pid, start_mark(pid), since, claim), disk)
        with _alone_in(folder):
            lock._claim()
        return lock

    def confirm(self) -> None:
        """Make sure nobody else has taken the season since; put back a lock that was removed.

        Raises:
            SeasonBusyError: another program holds it now.
            SeasonError: the lock could not be put back.
        """
        if self._mark is not None and self._mark == _mark(self.path):
            return
        if read_holder(self.path) != self.holder:
            with _alone_in(self.path.parent):
                self._claim()

    def release(self) -> None:
        """Let go, unless somebody else holds it by now; a vanished folder is no reason to fail."""
        with _alone_in(self.path.parent), contextlib.suppress(OSError):
            if read_holder(self.path) == self.holder:
                self._disk.remove(self.path)

    def _claim(self) -> None:
        other = read_holder(self.path)
        if other is not None and other != self.holder and _is_held(self.path, other):
            raise SeasonBusyError(_busy(self.path, other, self.holder.host))
        write_unforced(self.path, json.dumps(asdict(self.holder)).encode(), self._disk)
        self._mark = _mark(self.path)


def _mark(path: Path) -> Mark | None:
    try:
        return mark_of(os.stat(path))
    except OSError:
        return None


def read_holder(path: Path) -> Holder | None:
    """Who a lock file names; None if there is none, or it names nobody."""
    try:
        fields = json.loads(read_whole(path))
        holder = Holder(**fields)
    except (OSError, ValueError, TypeError):
        return None
    return holder if isinstance(holder.pid, int) and isinstance(holder.start, str) else None


def _is_held(path: Path, holder: Holder) -> bool:
    if holder.host != host_name() and not is_of_this_start(holder.start):  # it may be renamed
        return True  # whether a process runs on another computer cannot be asked from here
    try:
        written_s = path.stat().st_mtime
    except OSError:
        return False
    return still_runs(holder.pid, holder.start, written_s)


def _busy(path: Path, holder: Holder, host: str) -> str:
    if holder.host == host:
        return (
            f"this season is already open ({holder.sentence}); it can be read here, not written:"
            " close it there first"
        )
    return (
        f"another computer of the same short name has this season open ({holder.sentence}); give"
        f" this computer another short name, or remove {path} if that computer is no longer in use"
    )


@contextlib.contextmanager
def _alone_in(folder: Path) -> Iterator[None]:
    """Keep other programs of this computer from claiming at the same moment.

    Systems and shares that cannot lock a folder go without: two programs would have to be started
    within the same millisecond to notice.
    """
    try:
        import fcntl

        handle = os.open(folder, os.O_RDONLY)
    except (ImportError, OSError):
        yield
        return
    try:
        with contextlib.suppress(OSError):
            fcntl.flock(handle, fcntl.LOCK_EX)
        yield
    finally:
        os.close(handle)
