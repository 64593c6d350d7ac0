"""TinyDB's tables as bytes and back.

A file is one JSON document with every TinyDB document on a line of its own, so that a version
control tool can merge it line by line and a broken file still gives up its whole lines.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from benchround.store.errors import SeasonDamagedError

Tables = dict[str, dict[str, dict[str, Any]]]
"""Table name -> document number -> document, as TinyDB keeps them."""

BYTE_ORDER_MARK = "\ufeff"
"""What some editors put before a text they save."""

as_json = json.JSONEncoder(ensure_ascii=False, check_circular=False).encode
"""A value as JSON text on one line."""


def format_tables(tables: Mapping[str, Mapping[Any, Any]]) -> bytes:
    """The tables as JSON text in UTF-8, one document to a line."""
    lines = ["{"]
    for name, table in tables.items():
        lines.append(f"{as_json(name)}: {{")
        lines += [f'"{number}": {as_json(document)},' for number, document in table.items()]
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
        tables = json.loads(data.decode().removeprefix(BYTE_ORDER_MARK))
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
    numbered = numbers.isdecimal() and numbers.isascii() and "" not in table
    return (numbered or not table) and set(map(type, table.values())) <= {dict}


def lines_outnumber(data: bytes, tables: Tables) -> bool:
    """Whether documents with the same number hide each other, as JSON reads them."""
    entries = [len(table) for table in tables.values()]
    if data.endswith(b"\n}\n}\n") and data.count(b"\n") == sum(entries) + 2 * len(entries) + 2:
        return False  # laid out as we do it, a line for every document: the usual case
    return data.count(b'\n"') > sum(entries) + len(entries)
