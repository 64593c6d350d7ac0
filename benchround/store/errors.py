"""What can go wrong with a season folder, each told apart because the answer differs."""

from __future__ import annotations

import errno
from pathlib import Path

from benchround.core.errors import InputError, SeasonError


class SeasonReadOnlyError(SeasonError):
    """The season was opened for reading only; nothing was recorded."""


class SeasonUnsureError(SeasonError):
    """The disk took a record but would not confirm it; it may or may not survive a power cut."""


class SeasonNewerError(SeasonError):
    """The season was written by a newer program, whose format this one does not know."""


class SeasonDamagedError(SeasonError):
    """A file of the season is there but does not hold what it should."""


class UnknownKindError(InputError):
    """A stored record is of a kind this program does not know."""

    def __init__(self, kind: str) -> None:
        super().__init__(f"records of kind {kind} need a newer benchround")
        self.kind = kind


_FULL = (errno.ENOSPC, errno.EDQUOT, errno.EFBIG)
_LOCKED = (errno.EACCES, errno.EPERM)
_GONE = (errno.ENOENT, errno.ENOTDIR, errno.ESTALE, errno.ENODEV, errno.ENOTCONN)


def unwritten(path: Path, error: OSError) -> SeasonError:
    """The plain sentence for a file that could not be written; the old one is untouched."""
    return SeasonError(f"nothing was recorded: {_reason(path, error)}")


def unsure(path: Path, error: OSError) -> SeasonUnsureError:
    """The plain sentence for a file that was written but not confirmed by the disk."""
    return SeasonUnsureError(
        f"the disk did not confirm {path.name} ({error.strerror}): look whether the record"
        " is there before you record it again, and make a copy of the season elsewhere"
    )


def changed_meanwhile(path: Path) -> SeasonUnsureError:
    """The plain sentence for a file that something else changed while it was written."""
    return SeasonUnsureError(
        f"{path.name} was changed from outside while it was written: look whether the record is"
        " there before you record it again"
    )


def unreachable(path: Path, error: OSError) -> SeasonError:
    """The plain sentence for a file that cannot even be looked at."""
    return SeasonError(
        f"{path} cannot be reached ({error.strerror}); reconnect the disk or share it lies on"
    )


def _reason(path: Path, error: OSError) -> str:
    folder = path.parent
    if error.errno in _FULL:
        return f"the disk holding {folder} is full; free some room and record it again"
    if error.errno == errno.EROFS:
        return f"{folder} is on a disk that can only be read; make it writable or copy the season"
    if error.errno in _LOCKED:
        return f"you may not write in {folder}; change its permissions or copy the season"
    if error.errno in _GONE:
        return f"the folder {folder} is gone; reconnect its disk or share and record it again"
    return f"{path.name} could not be written in {folder} ({error.strerror}); check the disk"
