"""Reading a text file nobody vouches for: bounded in size, in a usual encoding, never binary."""

from __future__ import annotations

from codecs import BOM_UTF16_BE, BOM_UTF16_LE
from pathlib import Path

from benchround.core.errors import InputError

MOST_BYTES = 20_000_000
ENCODINGS = ("utf-8-sig", "cp1252", "latin-1")
"""UTF-8 with or without its mark; what is not UTF-8 is read as Windows' Western letters, which hold
Latin-1's, and what is not that either as Latin-1."""
MARKED = (BOM_UTF16_LE, BOM_UTF16_BE)
"""How a file of two-byte letters begins, as a spreadsheet saves "Unicode text"."""


def read_text(path: Path) -> str:
    """The text of a file.

    Raises:
        InputError: it cannot be read, is too large, or is no text.
    """
    try:
        size = path.stat().st_size
        if size > MOST_BYTES:
            raise InputError(
                f"{path.name} has {size / 1e6:.0f} MB, more than the {MOST_BYTES / 1e6:.0f} MB "
                "that are read: cut it into years."
            )
        with path.open("rb") as file:
            raw = file.read(MOST_BYTES + 1)
    except OSError as error:
        raise InputError(f"{path} cannot be read: {error.strerror or error}.") from error
    return decoded(raw, path.name)


def decoded(raw: bytes, name: str = "the file") -> str:
    """The text in some bytes.

    Raises:
        InputError: there are too many, or they are no text.
    """
    if len(raw) > MOST_BYTES:
        raise InputError(f"{name}: more than {MOST_BYTES / 1e6:.0f} MB are not read.")
    marked = raw.startswith(MARKED)
    for encoding in ("utf-16",) if marked else ENCODINGS if b"\x00" not in raw else ():
        try:
            text = raw.decode(encoding)
        except UnicodeDecodeError:
            continue
        if "\x00" not in text:
            return text
    raise InputError(f"{name} is no text file: save the table as CSV in UTF-8.")
