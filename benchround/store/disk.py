"""Putting a whole file on disk so that a power cut leaves the old one or the new one.

The order matters: the new text goes to a file beside the old one and is forced to the disk before
it takes the old one's name, and the folder is forced to the disk before anybody is told. Forced
any later, a power cut could leave the name pointing at text that never arrived.
"""

from __future__ import annotations

import contextlib
import errno
import os
import stat
from pathlib import Path

from benchround.store.errors import unsure, unwritten

PART = ".part"
"""Ending of a file that is still being written; nothing reads it."""

_NO_FOLDER_SYNC = (errno.EINVAL, errno.ENOTSUP, errno.EBADF)
"""What file systems answer that cannot force a folder to disk (shares, some USB sticks)."""

LARGEST_BYTES = 300_000_000
"""Files beyond this are not read: a spoilt disk may give out any size, and memory ends somewhere.
A merge may put a whole season in one page, and 120,000 records take 20 MB."""

_ADDING = os.O_WRONLY | os.O_APPEND | getattr(os, "O_BINARY", 0)


class Disk:
    """Every call that changes a file, in one place, so that a test can watch or refuse it."""

    def create(self, path: Path) -> int:
        """Open an empty file for writing and return its descriptor."""
        flags = os.O_WRONLY | os.O_CREAT | os.O_TRUNC | getattr(os, "O_BINARY", 0)
        return os.open(path, flags, 0o666)

    def create_new(self, path: Path) -> None:
        """Make an empty file where none was before."""
        os.close(os.open(path, _ADDING | os.O_CREAT | os.O_EXCL, 0o666))

    def open_end(self, path: Path) -> int:
        """Open a file for adding to it and return its descriptor."""
        return os.open(path, _ADDING)

    def truncate(self, handle: int, length: int) -> None:
        """Take away what stands in a file beyond a length."""
        os.ftruncate(handle, length)

    def write(self, handle: int, data: bytes) -> None:
        """Hand all the bytes to the system; there is no buffer of ours left to flush."""
        rest = memoryview(data)
        while rest:
            rest = rest[os.write(handle, rest) :]

    def fsync(self, handle: int) -> None:
        """Wait until the file's bytes are on the disk."""
        os.fsync(handle)

    def close(self, handle: int) -> None:
        """Close a descriptor."""
        os.close(handle)

    def replace(self, source: Path, target: Path) -> None:
        """Give a file a name, in place of whatever had that name, in one step."""
        os.replace(source, target)

    def remove(self, path: Path) -> None:
        """Remove a file."""
        os.remove(path)

    def make_folder(self, path: Path) -> None:
        """Make a folder and the ones above it where they are missing."""
        path.mkdir(parents=True, exist_ok=True)

    def sync_folder(self, path: Path) -> None:
        """Wait until the names in a folder are on the disk, where the system can do that."""
        if os.name == "nt":
            return
        handle = os.open(path, os.O_RDONLY)
        try:
            os.fsync(handle)
        except OSError as error:
            if error.errno not in _NO_FOLDER_SYNC:
                raise
        finally:
            os.close(handle)


SYSTEM_DISK = Disk()


def read_whole(path: Path) -> bytes:
    """All that stands in a file.

    Raises:
        OSError: it cannot be read, or is larger than any file of a season, or no file.
    """
    state = path.stat()
    if not stat.S_ISREG(state.st_mode):  # reading a pipe would wait for ever
        raise OSError(errno.EINVAL, "it is no file")
    if state.st_size > LARGEST_BYTES:
        raise OSError(errno.EFBIG, "it is far too large")
    return path.read_bytes()


def write_whole(path: Path, data: bytes, disk: Disk = SYSTEM_DISK) -> None:
    """Replace a file's content, all of it or nothing; on return it is on the disk.

    Raises:
        SeasonError: it could not be written; the file is as it was.
        SeasonUnsureError: it was written, but the disk did not confirm the folder.
    """
    _put_in_place(path, data, disk, force=True)
    try:
        disk.sync_folder(path.parent)
    except OSError as error:
        raise unsure(path, error) from error


def write_unforced(path: Path, data: bytes, disk: Disk = SYSTEM_DISK) -> None:
    """Replace a file's content without waiting for the disk, for what a power cut makes void.

    Other programs see all of it or nothing; after a power cut anything may stand there.

    Raises:
        SeasonError: it could not be written; the file is as it was.
    """
    _put_in_place(path, data, disk, force=False)


def _put_in_place(path: Path, data: bytes, disk: Disk, *, force: bool) -> None:
    part = path.with_name(f".{path.name}{PART}")
    try:
        handle = disk.create(part)
        try:
            disk.write(handle, data)
            if force:
                disk.fsync(handle)
        finally:
            disk.close(handle)
        disk.replace(part, path)
    except OSError as error:
        with contextlib.suppress(OSError):
            disk.remove(part)
        raise unwritten(path, error) from error


def make_folder(path: Path, disk: Disk = SYSTEM_DISK) -> None:
    """Make a folder and those above it where they are missing, and force their names to the disk.

    Raises:
        SeasonError: it could not be made.
    """
    try:
        missing = [path, *(above for above in path.parents if not above.is_dir())]
        if path.is_dir():
            return
        disk.make_folder(path)
        for made in reversed(missing):
            disk.sync_folder(made.parent)
    except OSError as error:
        raise unwritten(path, error) from error


def give_name(made: Path, name: Path, disk: Disk = SYSTEM_DISK) -> None:
    """Give a folder that was made under another name its own; on return that is on the disk.

    Raises:
        SeasonError: it could not be done; the folder has its old name.
        SeasonUnsureError: it was done, but the disk did not confirm it.
    """
    try:
        disk.replace(made, name)
    except OSError as error:
        raise unwritten(name, error) from error
    try:
        disk.sync_folder(name.parent)
    except OSError as error:
        raise unsure(name, error) from error
