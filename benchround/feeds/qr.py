"""QR codes, where the extra `qr` is installed."""

from __future__ import annotations

from functools import lru_cache

from benchround.core.errors import InputError
from benchround.core.extras import install_words

QUIET = 4
"""White squares around a code (ISO/IEC 18004, from memory)."""
LEAST_MODULE_MM = 0.33
"""Side of the smallest square a telephone's camera reads well (common practice, no source)."""


@lru_cache(maxsize=4096)
def qr_rows(text: str) -> tuple[tuple[bool, ...], ...]:
    """The squares of a code, row by row, without the white around it; True is black.

    Raises:
        InputError: the package for it is not installed, or the text is too long.
    """
    try:
        from qrcode.constants import ERROR_CORRECT_M  # type: ignore[import-untyped]  # has no types
        from qrcode.exceptions import DataOverflowError  # type: ignore[import-untyped]  # no types
        from qrcode.main import QRCode  # type: ignore[import-untyped]  # has no types
    except ImportError as error:
        raise InputError(
            f"QR codes need the package qrcode: {install_words('qr')}. Or leave out --qr."
        ) from error
    code = QRCode(error_correction=ERROR_CORRECT_M, border=0)
    code.add_data(text.encode("utf-8"))
    try:
        code.make(fit=True)
    except (DataOverflowError, ValueError) as error:
        raise InputError(f"'{text[:30]}...' is too long for a QR code.") from error
    return tuple(tuple(bool(square) for square in row) for row in code.get_matrix())
