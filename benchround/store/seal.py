"""The sum at the end of a page: says at once whether the page is, byte for byte, as it was written.

Such a page need not be examined record by record, which is what most of the time of reading would
go into. It stands in a table of its own, so that the page is TinyDB's all the same:

    "check": {
    "1": {"sum": "5d3c90a1"}
    }

A page whose sum is wrong or missing was changed by a hand, a merge or a fault, or holds records
that are not in order. It is examined and taken as it stands.
"""

from __future__ import annotations

from binascii import crc32
from collections.abc import Mapping
from typing import Any

from benchround.core.errors import InputError
from benchround.store.decoder import Decoder
from benchround.store.layout import RECORDS
from benchround.store.tables import format_tables

CHECK = "check"
"""Name of the table."""

_CLOSE = b"\n}\n"
_SEAL = b',\n"check": {\n"1": {"sum": "%08x"}\n}\n}\n'
_LENGTH = len(_SEAL % 0)


def format_page(tables: Mapping[str, Mapping[Any, Any]]) -> bytes:
    """Tables as the bytes of a page, with their sum if all records in them are in order."""
    page = format_tables(tables)
    refused: list[InputError] = []
    Decoder().records(tables.get(RECORDS, {}).values(), refused.append)
    return page if refused or RECORDS not in tables else _sealed(page)


def _sealed(page: bytes) -> bytes:
    body = page.removesuffix(_CLOSE)
    return body + _SEAL % crc32(body)


def is_sealed(page: bytes) -> bool:
    """Whether these bytes are just as `format_page` left them."""
    return page.endswith(_SEAL % crc32(memoryview(page)[:-_LENGTH]))


def holds_controls(data: bytes) -> bool:
    """Whether sound JSON in UTF-8 may hold characters that cannot be printed.

    They would have to be written with a stroke, as U+007F, or begin with the byte C2.
    """
    return b"\\" in data or b"\x7f" in data or b"\xc2" in data
