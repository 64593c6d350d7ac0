"""Writing what leaves the program: to a file that is whole or not there, or to standard output."""

from __future__ import annotations

import os
import sys
import tempfile
from pathlib import Path

from benchround.core.errors import InputError

STANDARD_OUTPUT = "-"


def write_out(name: str, data: bytes) -> None:
    """Write a file in one step, or to standard output where the name is '-'.

    Raises:
        InputError: it cannot be written there; what was there before is as it was.
    """
    if name == STANDARD_OUTPUT:
        sys.stdout.flush()
        binary = getattr(sys.stdout, "buffer", None)
        if binary is None:
            sys.stdout.write(data.decode("utf-8"))
        else:
            binary.write(data)
            binary.flush()
        return
    path = Path(name).expanduser()
    if path.is_dir():
        raise InputError(f"{path} is a folder: give the name of a file in it.")
    part = ""
    try:
        handle, part = tempfile.mkstemp(prefix=".", suffix=".part", dir=path.parent)
        with os.fdopen(handle, "wb") as file:
            file.write(data)
        os.chmod(part, 0o666 & ~_mask())
        os.replace(part, path)
    except OSError as error:
        if part and os.path.exists(part):
            os.remove(part)
        reason = error.strerror or str(error)
        raise InputError(f"{path} cannot be written ({reason}): give another name.") from error


def _mask() -> int:
    """The permissions this user's files leave out."""
    mask = os.umask(0)
    os.umask(mask)
    return mask
