"""The journal in front of a page: actions are added at its end, one line each.

Adding a line and forcing it to the disk is several times cheaper than replacing a page. A line
holds all records of one action and a sum over them, so an action is there whole or not at all:

    {"check": "5d3c90a1", "records": [{"id": ..., "day": ..., "kind": ...}, {"id": ...}]}

A line at the end that was not finished belongs to an action nobody was told was recorded. It is
passed over. Any other line that is not as it was written is damage, and what can be read of it is
given up one record at a time.
"""

from __future__ import annotations

import json
from binascii import crc32
from collections.abc import Iterable, Iterator

from benchround.core.frozen import dataclass
from benchround.store.codec import Document
from benchround.store.tables import BYTE_ORDER_MARK, as_json

_START, _MIDDLE, _END = b'{"check": "', b'", "records": ', b"}"
_DIGITS = 8
_PAYLOAD = len(_START) + _DIGITS + len(_MIDDLE)
_REPLACED = "\ufffd"
"""What stands in a decoded text for bytes that are none."""

_A_RECORD = '{"id": '
"""How a record begins. Inside a text the quotes would have a stroke before them."""


@dataclass(frozen=True, slots=True)
class Journal:
    """What a journal holds.

    Attributes:
        documents: the records as they stand, those on damaged lines included.
        damaged: how many lines are not as they were written.
        unfinished: whether something stands after the last line end, so that no line can follow.
    """

    documents: tuple[Document, ...]
    damaged: int = 0
    unfinished: bool = False


def line_of(documents: Iterable[Document]) -> bytes:
    """The line for one action."""
    payload = as_json(list(documents)).encode()
    return b"%b%08x%b%b%b\n" % (_START, crc32(payload), _MIDDLE, payload, _END)


def parse_journal(data: bytes) -> Journal:
    """What stands in a journal's bytes, whatever state they are in."""
    *lines, rest = data.removeprefix(BYTE_ORDER_MARK.encode()).split(b"\n")
    documents: list[Document] = []
    damaged = 0
    for line in lines:
        whole = _records_on(line)
        documents += _rescued(line) if whole is None else whole
        damaged += whole is None
    documents += _records_on(rest) or ()
    return Journal(tuple(documents), damaged, bool(rest))


def _records_on(line: bytes) -> list[Document] | None:
    """The records on a line, None if it is not as it was written."""
    line = line.rstrip(b"\r")
    if not line:
        return []
    payload = line[_PAYLOAD : -len(_END)]
    if line != b"%b%08x%b%b%b" % (_START, crc32(payload), _MIDDLE, payload, _END):
        return None
    try:
        documents = json.loads(payload)
    except (ValueError, RecursionError):
        return None
    if isinstance(documents, list) and set(map(type, documents)) <= {dict}:
        return documents
    return None


def _rescued(line: bytes) -> Iterator[Document]:
    """The records on a damaged line that can be read by themselves."""
    text = line.decode(errors="replace")
    garbled = text.count(_REPLACED) > line.count(_REPLACED.encode())
    read = json.JSONDecoder().raw_decode
    start = text.find(_A_RECORD)
    while start >= 0:
        try:
            document, end = read(text, start)
        except (ValueError, RecursionError):
            end = start + 1
        else:
            if "kind" in document and not (garbled and _REPLACED in text[start:end]):
                yield document
        start = text.find(_A_RECORD, end)
