"""Adding a line at the end of a file so that a power cut leaves all of it or nothing.

The file's name is forced to the disk while it is still empty, so that later only the line has to
be. Should the disk refuse the line, what got there of it is taken away again. That the bytes before
the line stay as they are when the power goes in the middle of writing it is left to the disk, as
it is by everything that writes at the end of a file.
"""

from __future__ import annotations

import contextlib
import os
from pathlib import Path
from typing import NoReturn

from benchround.store.disk import Disk
from benchround.store.errors import changed_meanwhile, unreachable, unsure, unwritten
from benchround.store.naming import Mark, mark_of


def begin_file(path: Path, disk: Disk) -> Mark:
    """Make an empty file whose name is on the disk when this returns.

    Raises:
        SeasonError: it could not be made.
    """
    try:
        disk.create_new(path)
    except OSError as error:
        raise unwritten(path, error) from error
    try:
        disk.sync_folder(path.parent)
        return mark_of(os.stat(path))
    except OSError as error:
        with contextlib.suppress(OSError):
            disk.remove(path)
        raise unwritten(path, error) from error


def add_line(path: Path, line: bytes, seen: Mark, disk: Disk) -> Mark | None:
    """Add a line to a file; on return it is on the disk.

    Args:
        path: the file, whose last line is finished.
        line: the line with its line end.
        seen: the state in which the file was read.
        disk: where it is written.

    Returns:
        The state of the file now; None if it is in another one than was seen, and nothing was
        written.

    Raises:
        SeasonError: it could not be written; the file is as it was.
        SeasonUnsureError: it may or may not be there after a power cut.
    """
    try:
        handle = disk.open_end(path)
    except OSError as error:
        raise unwritten(path, error) from error
    try:
        if mark_of(os.fstat(handle)) != seen:
            return None
        _write(path, handle, line, seen, disk)
    finally:
        with contextlib.suppress(OSError):  # the line is on the disk, or the failure is told
            disk.close(handle)
    return _confirmed(path, seen, len(line))


def _write(path: Path, handle: int, line: bytes, seen: Mark, disk: Disk) -> None:
    try:
        disk.write(handle, line)
        disk.fsync(handle)
    except OSError as error:
        _take_back(path, handle, seen[1], disk, error)


def _take_back(path: Path, handle: int, length: int, disk: Disk, error: OSError) -> NoReturn:
    try:
        disk.truncate(handle, length)
        disk.fsync(handle)
    except OSError:
        raise unsure(path, error) from error
    raise unwritten(path, error) from error


def _confirmed(path: Path, seen: Mark, added: int) -> Mark:
    """The mark of the file, if the name still stands for the file that was written."""
    _, size, number = seen
    try:
        mark = mark_of(os.stat(path))
    except OSError as error:
        raise changed_meanwhile(path) from error
    if mark[1:] != (size + added, number):
        raise changed_meanwhile(path)
    return mark


def mark_on_disk(path: Path) -> Mark | None:
    """The mark of a file as it is now, None if there is none.

    Raises:
        SeasonError: it cannot be reached.
    """
    try:
        return mark_of(os.stat(path))
    except FileNotFoundError:
        return None
    except OSError as error:
        raise unreachable(path, error) from error
