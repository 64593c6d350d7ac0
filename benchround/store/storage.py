"""TinyDB's seam to the disk: reads a file whole, writes it whole or not at all.

A file is one JSON document with every TinyDB document on a line of its own, so that a version
control tool can merge it line by line and a broken file still gives up its whole lines.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from tinydb.storages import Storage

from benchround.store.disk import SYSTEM_DISK, Disk, write_whole
from benchround.store.errors import SeasonDamagedError

Tables = dict[str, dict[str, dict[str, Any]]]
"""Table name -> document number -> document, as TinyDB keeps them."""

_write_json = json.JSONEncoder(ensure_ascii=False, check_circular=False).encode


class AtomicStorage(Storage):
    """One TinyDB file, replaced whole at every write."""

    def __init__(self, path: Path, disk: Disk = SYSTEM_DISK) -> None:
        self.path = path
        self.disk = disk

    def read(self) -> Tables | None:
        """The file's tables, or None where there is no file yet.

        Raises:
            SeasonDamagedError: the file does not hold TinyDB tables.
        """
        try:
            data = self.path.read_bytes()
        except FileNotFoundError:
            return None
        return parse_tables(data)

    def write(self, data: Mapping[str, Mapping[Any, Any]]) -> None:
        """Put the tables on the disk; on return they are there.

        Raises:
            SeasonError: nothing was written.
            SeasonUnsureError: written, but not confirmed by the disk.
        """
        write_whole(self.path, format_tables(data), self.disk)


def format_tables(tables: Mapping[str, Mapping[Any, Any]]) -> bytes:
    """The tables as JSON text in UTF-8, one document to a line."""
    lines = ["{"]
    for name, table in tables.items():
        lines.append(f"{_write_json(name)}: {{")
        lines += [f'"{number}": {_write_json(document)},' for number, document in table.items()]
        _end_list(lines)
        lines.append("},")
    _end_list(lines)
    lines.append("}\n")
    return "\n".join(lines).encode()


def _end_list(lines: list[str]) -> None:
    lines[-1] = lines[-1].removesuffix(",")


def parse_tables(data: bytes) -> Tables:
    """The tables in a file's bytes.

    Raises:
        SeasonDamagedError: the bytes are not JSON, or not tables of numbered documents.
    """
    if not data.strip(b"\0 \r\n\t"):
        raise SeasonDamagedError("it is empty")
    try:
        tables = json.loads(data.decode().removeprefix("\ufeff"))
    except UnicodeDecodeError as error:
        raise SeasonDamagedError("it is not readable text") from error
    except (ValueError, RecursionError) as error:
        raise SeasonDamagedError("it breaks off or is garbled") from error
    if not isinstance(tables, dict) or not all(map(_is_table, tables.values())):
        raise SeasonDamagedError("it does not hold numbered documents")
    return tables


def _is_table(table: object) -> bool:
    """Whether this is a mapping of numbers to documents; asked of all numbers in one go."""
    if not isinstance(table, dict):
        return False
    numbers = "".join(table)
    return ((numbers.isdecimal() and numbers.isascii() and "" not in table) or not table) and all(
        document.__class__ is dict for document in table.values()
    )
