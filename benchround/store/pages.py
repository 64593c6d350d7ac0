"""One file of the records folder: reading it, whatever state it is in.

It is a page or a journal. Our own are named after the computer, the month they were written in and
a number; any other file of these endings is read as well, because services that keep folders
alike on two computers leave such copies when both wrote.
"""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Collection, Iterable, Iterator
from pathlib import Path
from typing import NamedTuple

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.record import Record
from benchround.store.codec import Document
from benchround.store.decoder import Decoder
from benchround.store.disk import read_whole
from benchround.store.errors import SeasonDamagedError, UnknownKindError
from benchround.store.layout import RECORDS
from benchround.store.naming import Mark, is_journal
from benchround.store.seal import holds_controls, is_sealed
from benchround.store.tables import lines_outnumber, parse_tables

FULL = 200
"""Records after which a new page is begun: small enough to rewrite whole now and then."""


@dataclass(frozen=True, slots=True)
class Page:
    """What one file of the records folder holds.

    Attributes:
        name: the file's name.
        mark: the state of the file this was read from.
        records: those that could be read, in the order they stand.
        kept: how many documents stand in it, records this program cannot read included.
        fault: what is wrong with the file as a whole; empty when it is sound. A file with a fault
            is never written to.
        remarks: sentences about single records that were passed over.
        unfinished: whether it is a journal in which no line can follow the last one.
    """

    name: str
    mark: Mark
    records: tuple[Record, ...]
    kept: int = 0
    fault: str = ""
    remarks: tuple[str, ...] = ()
    unfinished: bool = False


def read_page(path: Path, mark: Mark, decoder: Decoder) -> Page:
    """Read one file; never fails, one that cannot be read says so in its fault."""
    try:
        data = read_whole(path)
    except OSError as error:
        return Page(path.name, mark, (), fault=f"it could not be opened ({error.strerror})")
    return page_from(path.name, mark, data, decoder)


def page_from(name: str, mark: Mark, data: bytes, decoder: Decoder | None = None) -> Page:
    """The page in a file's bytes; of a damaged one, what is whole."""
    found = _contents(name, data)
    refused: list[InputError] = []
    decode = decoder or Decoder()
    records = decode.records(found.documents, refused.append, examine=not found.in_order)
    remarks = tuple(_remarks(name, refused)) if refused else ()
    return Page(name, mark, records, len(found.documents), found.fault, remarks, found.unfinished)


def documents_in(name: str, data: bytes) -> tuple[Document, ...]:
    """The documents of a file as they stand, of a damaged one those that are whole."""
    return tuple(_contents(name, data).documents)


class _Contents(NamedTuple):
    """What stands in a file; `in_order` if none of it needs to be examined."""

    documents: Collection[Document]
    fault: str = ""
    unfinished: bool = False
    in_order: bool = False


def _contents(name: str, data: bytes) -> _Contents:
    if is_journal(name):
        return _in_journal(data)
    if is_sealed(data):
        tables = json.loads(data)
        return _Contents(tables[RECORDS].values(), in_order=not holds_controls(data))
    try:
        tables = parse_tables(data)
    except SeasonDamagedError as error:
        return _Contents(tuple(_whole_lines(data)), _merge_fault(data) or str(error))
    if lines_outnumber(data, tables):
        fault = "it was joined from two copies, with numbers used twice"
        return _Contents(tuple(_whole_lines(data)), fault)
    return _Contents(tables.get(RECORDS, {}).values())


def _in_journal(data: bytes) -> _Contents:
    from benchround.store.journal import parse_journal  # most seasons have none when read

    journal = parse_journal(data)
    fault = ""
    if journal.damaged:
        lines = "a line in it is" if journal.damaged == 1 else f"{journal.damaged} lines in it are"
        fault = _merge_fault(data) or f"{lines} not as written"
    return _Contents(journal.documents, fault, journal.unfinished)


def _merge_fault(data: bytes) -> str:
    if b"<<<<<<< " in data and b">>>>>>> " in data:
        return "it holds both sides of an unfinished git merge"
    return ""


def _whole_lines(data: bytes) -> Iterator[Document]:
    """The documents on lines of a page that can be read by themselves."""
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


def _remarks(name: str, refused: Iterable[InputError]) -> Iterator[str]:
    """A sentence for every record that was passed over, those of unknown kinds counted together."""
    unknown: Counter[str] = Counter()
    for error in refused:
        if isinstance(error, UnknownKindError):
            unknown[error.kind] += 1
        else:
            yield f"{name}: {error}; it is kept in the file but not shown"
    for kind, count in sorted(unknown.items()):
        yield (
            f"{name}: {count} of kind {kind} kept in the file but not shown; a newer benchround"
            " wrote them and can show them"
        )
