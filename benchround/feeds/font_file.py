"""Whether a file is a typeface that can be written into a PDF.

OpenType font files and collections (the OpenType specification, from memory): a file begins with a
tag of four bytes and a table of tables, sixteen bytes each: tag, checksum, offset, length. A
collection begins with `ttcf` and, from byte 12 on, the offsets of the fonts in it.
"""

from __future__ import annotations

import struct
from pathlib import Path
from typing import BinaryIO

TRUETYPE, POSTSCRIPT, COLLECTION = (b"\x00\x01\x00\x00", b"true"), b"OTTO", b"ttcf"
LETTERS = b"cmap"
"""The table of which letter has which outline."""
OUTLINES = frozenset({b"glyf", b"CFF "})
"""The tables of outlines a PDF takes; a typeface of coloured pictures has neither."""
MOST_TABLES = 200


def is_typeface(path: Path) -> bool:
    """Whether the file, or the first font of a collection, has letters with outlines.

    One that cannot be read, is cut off or is something else is none.
    """
    try:
        with path.open("rb") as file:
            tables = _tables(file, path.stat().st_size)
    except (OSError, struct.error):
        return False
    return LETTERS in tables and bool(OUTLINES & tables)


def _tables(file: BinaryIO, size: int) -> set[bytes]:
    """Tags of the tables that lie whole in the file; empty where it is no typeface."""
    tag = file.read(4)
    if tag == COLLECTION:
        file.seek(12)
        file.seek(*struct.unpack(">I", file.read(4)))
        tag = file.read(4)
    if tag not in (*TRUETYPE, POSTSCRIPT):
        return set()
    (count,) = struct.unpack(">H6x", file.read(8))
    if count > MOST_TABLES:
        return set()
    entries = [struct.unpack(">4s4xII", file.read(16)) for _ in range(count)]
    whole = all(offset + length <= size for _, offset, length in entries)
    return {name for name, _, _ in entries} if whole else set()
