"""One page of records: reading it, whatever state it is in.

A page is a file in the season's `records` folder. Our own are named after the computer, the month
they were written in and a number; any other `.json` file there is read as well, because services
that keep folders alike on two computers leave such copies when both wrote.
"""

from __future__ import annotations

import json
import os
import re
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from benchround.core.errors import InputError
from benchround.core.record import Record
from benchround.store.codec import decode
from benchround.store.errors import SeasonDamagedError, UnknownKindError
from benchround.store.layout import RECORDS
from benchround.store.storage import Tables, parse_tables

FULL = 200
"""Records after which a new page is begun: small enough to rewrite whole at every tick."""

Mark = tuple[int, int, int]
"""Time of change, size and number of a file: another mark means another content."""

Document = dict[str, Any]

_NUMBER = re.compile(r"(\d{3,9})(?![\w-])")


@dataclass(frozen=True, slots=True)
class Page:
    """What one file of the records folder holds.

    Attributes:
        name: the file's name.
        mark: the state of the file this was read from.
        records: those that could be read, in the order they stand.
        kept: how many documents stand in it, records this program cannot read included.
        last: the highest number a document has.
        fault: what is wrong with the file as a whole; empty when it is sound. A file with a fault
            is never written to.
        remarks: sentences about single records that were passed over.
    """

    name: str
    mark: Mark
    records: tuple[Record, ...]
    kept: int = 0
    last: int = 0
    fault: str = ""
    remarks: tuple[str, ...] = ()


def page_name(machine: str, month: str, number: int) -> str:
    """The file name of a page, e.g. `laptop-2027-04-001.json`."""
    return f"{machine}-{month}-{number:03d}.json"


def page_number(name: str, machine: str, month: str) -> int | None:
    """The number of a page of this computer and month, or of a copy of one; None for others."""
    start = f"{machine}-{month}-"
    if not name.startswith(start):
        return None
    match = _NUMBER.match(name, len(start))
    return int(match[1]) if match else None


def is_page(name: str) -> bool:
    """Whether a file of the records folder is to be read.

    Files whose name begins with a point belong to the system or to a copying service at work.
    """
    return name.lower().endswith(".json") and not name.startswith(".")


def mark_of(state: os.stat_result) -> Mark:
    """The mark of a file."""
    return state.st_mtime_ns, state.st_size, state.st_ino


def read_page(path: Path, mark: Mark) -> Page:
    """Read one page; never fails, a page that cannot be read says so in its fault."""
    try:
        data = path.read_bytes()
    except OSError as error:
        return Page(path.name, mark, (), fault=f"it could not be opened ({error.strerror})")
    return page_from(path.name, mark, data)


def page_from(name: str, mark: Mark, data: bytes) -> Page:
    """The page in a file's bytes; of a damaged one, the lines that are whole."""
    try:
        tables = parse_tables(data)
    except SeasonDamagedError as error:
        return _rescued(name, mark, data, _merge_fault(data) or str(error))
    if _lines_outnumber(data, tables):
        return _rescued(name, mark, data, "it was joined from two copies, with numbers used twice")
    table = tables.get(RECORDS, {})
    records, remarks = _decode_all(name, table.values())
    last = max(map(int, table), default=0)
    return Page(name, mark, records, len(table), last, remarks=remarks)


def documents_in(data: bytes) -> tuple[Document, ...]:
    """The documents of a page as they stand, of a damaged one those on whole lines."""
    try:
        tables = parse_tables(data)
    except SeasonDamagedError:
        return tuple(_whole_lines(data))
    if _lines_outnumber(data, tables):
        return tuple(_whole_lines(data))
    return tuple(tables.get(RECORDS, {}).values())


def _lines_outnumber(data: bytes, tables: Tables) -> bool:
    """Whether documents with the same number hide each other, as JSON reads them."""
    return data.count(b'\n"') > sum(len(table) + 1 for table in tables.values())


def _merge_fault(data: bytes) -> str:
    if b"<<<<<<< " in data and b">>>>>>> " in data:
        return "it holds both sides of an unfinished git merge"
    return ""


def _rescued(name: str, mark: Mark, data: bytes, fault: str) -> Page:
    documents = list(_whole_lines(data))
    records, remarks = _decode_all(name, documents)
    return Page(name, mark, records, len(documents), fault=fault, remarks=remarks)


def _whole_lines(data: bytes) -> Iterable[Document]:
    """The documents on lines that can be read by themselves."""
    for line in data.split(b"\n"):
        line = line.strip().removesuffix(b",")
        if not line.startswith(b'"'):
            continue
        try:
            (document,) = json.loads(b"{" + line + b"}").values()
        except (ValueError, RecursionError):
            continue
        if isinstance(document, dict) and "id" in document:
            yield document


def _decode_all(
    name: str, documents: Iterable[Document]
) -> tuple[tuple[Record, ...], tuple[str, ...]]:
    records: list[Record] = []
    remarks: list[str] = []
    unknown: Counter[str] = Counter()
    for document in documents:
        try:
            records.append(decode(document))
        except UnknownKindError as error:
            unknown[error.kind] += 1
        except InputError as error:
            remarks.append(f"{name}: {error}; it is kept in the file but not shown")
    remarks += [
        f"{name}: {count} of kind {kind} kept in the file but not shown; a newer benchround"
        " wrote them and can show them"
        for kind, count in sorted(unknown.items())
    ]
    return tuple(records), tuple(remarks)
