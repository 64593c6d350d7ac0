"""What happens when a season is opened or begun: hold it, read its own file, move old formats."""

from __future__ import annotations

import contextlib
import os
import time
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from benchround.core.errors import SeasonBusyError, SeasonError
from benchround.store.disk import PART, SYSTEM_DISK, Disk, make_folder
from benchround.store.errors import SeasonDamagedError, SeasonReadOnlyError
from benchround.store.heading import FORMAT, Heading, read_heading, write_heading
from benchround.store.layout import HEADING, KEEP, RECORDS
from benchround.store.machine import require_machine
from benchround.store.naming import is_page, month_in, own_journals, page_number

if TYPE_CHECKING:
    from benchround.store.lock import Lock

FORGOTTEN_S = 24 * 60 * 60
"""Age from which a half-written file under another computer's name is cleared away too."""
WORDED_READ_ONLY = "this season was opened for reading only; open it for writing to record"


class Opening:
    """A season that was opened.

    Attributes:
        heading: what its own file says, None if that is damaged.
        lock: held if this program may clear things up in the folder.
        closed: why nothing can be recorded; None if things can.
    """

    def __init__(self, path: Path, disk: Disk) -> None:
        self.path = path
        self.disk = disk
        self.heading: Heading | None = None
        self.lock: Lock | None = None
        self.closed: SeasonError | None = None


def begin_season(path: Path, name: str, day: date, disk: Disk = SYSTEM_DISK) -> None:
    """Make a new season in a folder that is missing or holds no season yet.

    Raises:
        InputError: the name cannot be kept.
        SeasonError: there is a season already, or the folder cannot be written.
    """
    if (path / HEADING).exists() or (path / RECORDS).exists():
        raise SeasonError(f"{path} holds a season already; open it, or choose another folder")
    make_folder(path, disk)
    write_heading(path, Heading(name, day), disk)
    make_folder(path / RECORDS, disk)


def open_season(
    path: Path, machine: str, now: datetime, disk: Disk = SYSTEM_DISK, *, read_only: bool = False
) -> Opening:
    """Open a season, for writing if nothing is in the way.

    Raises:
        InputError: the computer's short name cannot be used.
        SeasonNewerError: a newer program wrote the season.
        SeasonError: there is no season, or it is in an old format that cannot be moved.
    """
    require_machine(machine)
    if not (path / HEADING).exists() and not (path / RECORDS).is_dir():
        raise SeasonError(f"there is no season in {path}; check the folder, or begin one there")
    opening = Opening(path, disk)
    if read_only:
        opening.closed = SeasonReadOnlyError(WORDED_READ_ONLY)
    else:
        _hold(opening, machine, now)
    try:
        _read_own_file(opening, now.date())
        if opening.closed is None:
            make_folder(path / RECORDS, disk)
            _sweep(path, machine, disk)
            _fold_left_over(path / RECORDS, machine, disk)
    except BaseException:
        if opening.lock is not None:
            opening.lock.release()
        raise
    return opening


def _hold(opening: Opening, machine: str, now: datetime) -> None:
    from benchround.store.lock import Lock  # not needed for reading

    try:
        opening.lock = Lock.take(opening.path, machine, now, opening.disk)
    except SeasonBusyError as error:
        opening.closed = error
    except SeasonError as error:
        opening.closed = SeasonReadOnlyError(f"this season can only be read: {error}")


def _read_own_file(opening: Opening, day: date) -> None:
    try:
        heading = read_heading(opening.path)
    except SeasonDamagedError as error:
        opening.closed = opening.closed or SeasonReadOnlyError(
            f"{error}; the season can be read, and written again once a kept copy of that file has"
            " been brought back"
        )
        return
    if heading.format != FORMAT or heading.moving_from is not None:
        if opening.closed is not None:
            raise SeasonError(
                f"this season is in an older format and must be opened once for writing:"
                f" {opening.closed}"
            )
        from benchround.store.migrate import migrate  # seldom needed, and not light

        heading = migrate(opening.path, heading, day, opening.disk)
    opening.heading = heading


def _sweep(path: Path, machine: str, disk: Disk) -> None:
    """Remove what this computer was writing when it was cut off; nobody was told it was there."""
    for folder in (path, path / RECORDS, path / KEEP):
        with contextlib.suppress(FileNotFoundError, NotADirectoryError):
            for name in os.listdir(folder):
                whole = name.removeprefix(".").removesuffix(PART)
                if name != f".{whole}{PART}":
                    continue
                with contextlib.suppress(OSError):
                    if _is_ours(whole, machine) or _is_forgotten(folder / name):
                        disk.remove(folder / name)


def _is_forgotten(part: Path) -> bool:
    """Whether nobody has written to a file for so long that nobody is about to finish it."""
    return time.time() - part.stat().st_mtime > FORGOTTEN_S


def _fold_left_over(folder: Path, machine: str, disk: Disk) -> None:
    journals = own_journals(os.listdir(folder), machine)
    if journals:
        from benchround.store.folding import fold_journals  # brings in TinyDB

        fold_journals(folder, journals, disk)


def _is_ours(name: str, machine: str) -> bool:
    page = is_page(name) and page_number(name, machine, month_in(name, machine)) is not None
    return page or name == f"held-{machine}.lock" or name[10:] == f"-{machine}.zip"
