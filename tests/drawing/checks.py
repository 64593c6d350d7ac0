"""What every picture must keep to, whatever it is drawn from."""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence

from rich.cells import cell_len

from benchround.drawing.canvas import ASCII, UNICODE, Glyphs, Line, Role, line_width, plain

SETS = (UNICODE, ASCII)
CONTROL = frozenset({"Cc", "Cf", "Cs", "Zl", "Zp"})


def must_hold(lines: Sequence[Line], width: int, glyphs: Glyphs) -> None:
    """No line wider than the width, no control character, ASCII where ASCII was asked for."""
    for line in lines:
        text = "".join(span.text for span in line)
        assert line_width(line) <= width, (width, text)
        # rich is the referee: it is what the screens measure with
        assert cell_len(text) <= width, (width, text)
        assert not [sign for sign in text if unicodedata.category(sign) in CONTROL], repr(text)
        assert not glyphs.ascii_only or text.isascii(), repr(text)
        assert all(isinstance(span.role, Role) for span in line)


def must_be_sayable(words: str) -> None:
    """Sentences for a screen reader: there are some, and no control character is among them."""
    assert words.strip()
    assert not [sign for sign in words if unicodedata.category(sign) in CONTROL], repr(words)


def text_of(lines: Sequence[Line]) -> list[str]:
    """Lines as plain text."""
    return plain(lines).split("\n")
