"""Lines of words as the strips Textual draws."""

from __future__ import annotations

from collections.abc import Callable

from rich.segment import Segment
from rich.style import Style
from textual.strip import Strip

from benchround.screens.text import Line, Role, spans

StyleOf = Callable[[Role], Style]


def strip(words: Line, width: int, style_of: StyleOf, *, whole: Role | None = None) -> Strip:
    """A line as it is drawn: cleaned, cut or padded to the width.

    Args:
        words: the spans of the line.
        width: columns.
        style_of: gives the style of a role.
        whole: one role for the whole line, such as the cursor's; None: each span its own.
    """
    return Strip(
        [Segment(text, style_of(role)) for text, role in spans(words, width, whole)], width
    )
