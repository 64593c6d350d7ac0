"""From which size of the terminal a screen is laid out how; the style sheets name the classes."""

from __future__ import annotations

from collections.abc import Sequence

Sizes = Sequence[tuple[int, str]]
"""From how many columns or lines on a class holds, smallest first."""

NARROW, WIDE = "-narrow", "-wide"
LOW, MIDDLE, HIGH = "-low", "-middle", "-high"
WIDTHS: Sizes = ((0, NARROW), (110, WIDE))
HEIGHTS: Sizes = ((0, LOW), (23, MIDDLE), (34, HIGH))


def size_class(length: int, sizes: Sizes) -> str:
    """The class of a length.

    Args:
        length: columns or lines, 0 or more.
        sizes: `WIDTHS` or `HEIGHTS`.
    """
    return [name for least, name in sizes if length >= least][-1]
