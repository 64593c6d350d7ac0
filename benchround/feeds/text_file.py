"""Reading a text file nobody vouches for: bounded in size, UTF-8 or Latin-1, never binary."""

from __future__ import annotations

from pathlib import Path

from benchround.core.errors import InputError

MOST_BYTES = 20_000_000
ENCODINGS = ("utf-8-sig", "latin-1")
"""UTF-8 with or without its mark; what is not UTF-8 is read as Latin-1."""


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
    if b"\x00" not in raw:
        for encoding in ENCODINGS:
            try:
                return raw.decode(encoding)
            except UnicodeDecodeError:
                continue
    raise InputError(f"{name} is no text file: save the table as CSV in UTF-8.")
