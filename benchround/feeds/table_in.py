"""Tables of our own form read back: records and readings, from CSV or JSON.

The tables of batches and of the review are sums of records; they are told apart so that it can be
said where their figures come from.
"""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date, time
from typing import Any

from benchround.core.errors import BenchroundError, InputError
from benchround.core.frozen import dataclass
from benchround.core.record import Draft, Figure, Kind, Record
from benchround.core.record_figures import figure_rule
from benchround.feeds.table_rows import (
    BATCH_COLUMNS,
    READING_COLUMNS,
    READING_FIGURES,
    RECORD_COLUMNS,
)
from benchround.feeds.tables import unguarded

Decode = Callable[[dict[str, Any]], Record]
Row = Mapping[str, Any]
RECORDS, READINGS = "records", "readings"
OURS = {RECORDS: frozenset(RECORD_COLUMNS), READINGS: frozenset(READING_COLUMNS)}
SUMS = (frozenset(BATCH_COLUMNS), frozenset({"about", "name", "cause", "share"}))
"""Columns of the tables that cannot be taken in."""
LOOKED_AT = 10
"""Rows a table is known by: one of them may be cut off."""


@dataclass(frozen=True, slots=True)
class OurTable:
    """A table of ours: what it holds, and its rows with the numbers of their lines."""

    what: str
    rows: tuple[tuple[int, Row], ...]


def our_table(text: str) -> OurTable | None:
    """A table as it was written out; None where the text is another one.

    Raises:
        InputError: it is one of ours, but cannot be read, or holds sums only.
    """
    rows = tuple(_rows(text))
    names = frozenset(name for _, row in rows[:LOOKED_AT] for name in row)
    for what, columns in OURS.items():
        if columns <= names:
            return OurTable(what, _whole(rows, columns))
    if any(columns <= names for columns in SUMS):
        raise InputError(
            "The tables of batches and of the review are sums of records: take in the table of "
            "records, or everything."
        )
    return None


def records_in(table: OurTable, decode: Decode) -> tuple[Record, ...]:
    """The records of a table of records.

    Args:
        table: the table; `stands` is passed over, since withdrawals are records too.
        decode: reads the stored form of a record.

    Raises:
        InputError: a row is no record; the message names its line.
    """
    found: dict[str, Record] = {}
    for line, row in table.rows:
        try:
            record = decode(_document(row))
        except (BenchroundError, ValueError, RecursionError) as error:
            raise InputError(f"line {line}: {error}") from error
        if found.setdefault(record.id, record) != record:
            raise InputError(f"line {line}: {record.id} is the id of another record above it.")
    return tuple(found.values())


def readings_in(table: OurTable) -> tuple[Draft, ...]:
    """What a table of readings records.

    Raises:
        InputError: a row is no reading; the message names its line.
    """
    found: list[Draft] = []
    for line, row in table.rows:
        try:
            found.append(_reading(row))
        except ValueError as error:
            raise InputError(f"line {line} is no reading ({error}).") from error
    return tuple(found)


def _whole(
    rows: tuple[tuple[int, Row], ...], columns: frozenset[str]
) -> tuple[tuple[int, Row], ...]:
    """The rows, each of which must have every column."""
    for line, row in rows:
        missing = sorted(columns - row.keys())
        if missing:
            raise InputError(
                f"line {line} is cut off, it has no {', '.join(missing)}: "
                "write the table out again."
            )
    return rows


def _rows(text: str) -> Iterator[tuple[int, Row]]:
    plain = text.lstrip("\ufeff")
    if plain.lstrip().startswith("["):
        yield from _json_rows(plain)
        return
    heading = plain.partition("\n")[0]
    between = max(",;\t", key=heading.count)
    reader = csv.reader(io.StringIO(plain, newline=""), delimiter=between)
    try:
        columns: Sequence[str] = next(reader, [])
        for cells in reader:
            if any(cells):
                texts = [unguarded(cell) or None for cell in cells]
                yield reader.line_num, dict(zip(columns, texts, strict=False))
    except csv.Error as error:
        raise InputError(f"The table cannot be read ({error}).") from error


def _json_rows(text: str) -> Iterator[tuple[int, Row]]:
    try:
        value = json.loads(text)
    except (ValueError, RecursionError) as error:
        raise InputError(f"That is no whole JSON text ({error}): write it out again.") from error
    for number, row in enumerate(value, start=1):
        if not isinstance(row, Mapping):
            raise InputError(f"Row {number} of that JSON text is no row of a table.")
        yield number, row


def _document(row: Row) -> dict[str, Any]:
    """A row as a record is stored: what is empty is left out."""
    figures = row["figures"] or "{}"
    if not isinstance(figures, str):
        raise ValueError("its figures are not written as one text")
    document = {
        **{name: row[name] for name in ("id", "day", "at", "kind", "about", "note")},
        "machine": row["computer"],
        "figures": json.loads(figures),
    }
    return {name: value for name, value in document.items() if value not in (None, "", {})}


def _reading(row: Row) -> Draft:
    figures: dict[str, Figure] = {
        name: _measured(name, row[name]) for name in READING_FIGURES if row[name] not in (None, "")
    }
    if not figures:
        raise ValueError("it has no figure")
    return Draft(
        Kind.READING,
        str(row["place"] or ""),
        figures,
        day=date.fromisoformat(str(row["day"])),
        at=time.fromisoformat(str(row["at"])) if row["at"] else None,
    )


def _measured(name: str, text: object) -> float:
    value, rule = float(str(text)), figure_rule(Kind.READING, name)
    if not rule.low <= value <= rule.high:
        raise ValueError(f"{name} {value:g} is not from {rule.low:g} to {rule.high:g}")
    return value
