"""TinyDB's seam to the disk: reads a file whole, writes it whole or not at all."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from tinydb.storages import Storage

from benchround.store.disk import SYSTEM_DISK, Disk, read_whole, write_whole
from benchround.store.errors import SeasonDamagedError
from benchround.store.seal import CHECK, format_page
from benchround.store.tables import Tables, lines_outnumber, parse_tables


class AtomicStorage(Storage):
    """One TinyDB file, replaced whole at every write."""

    def __init__(self, path: Path, disk: Disk = SYSTEM_DISK) -> None:
        self.path = path
        self.disk = disk

    def read(self) -> Tables | None:
        """The file's tables, or None where there is no file yet.

        Raises:
            SeasonDamagedError: the file does not hold TinyDB tables, or documents hide each other.
        """
        try:
            data = read_whole(self.path)
        except FileNotFoundError:
            return None
        tables = parse_tables(data)
        if lines_outnumber(data, tables):  # writing it again would lose the hidden ones
            raise SeasonDamagedError("numbers are used twice in it")
        tables.pop(CHECK, None)
        return tables

    def write(self, data: Mapping[str, Mapping[Any, Any]]) -> None:
        """Put the tables on the disk; on return they are there.

        Raises:
            SeasonError: nothing was written.
            SeasonUnsureError: written, but not confirmed by the disk.
        """
        write_whole(self.path, format_page(data), self.disk)
