"""Sizes of paper, and sizes as they are typed: millimetres, width before height."""

from __future__ import annotations

import re

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass

_SIZE = re.compile(r"([0-9]+(?:[.,][0-9]+)?) ?[x*\u00d7] ?([0-9]+(?:[.,][0-9]+)?)(?: ?mm)?")


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet of paper, upright."""

    name: str
    width_mm: float
    height_mm: float


PAPERS = {
    paper.name.lower(): paper
    for paper in (
        Paper("A3", 297, 420),
        Paper("A4", 210, 297),
        Paper("A5", 148, 210),
        Paper("A6", 105, 148),
        Paper("Letter", 215.9, 279.4),
        Paper("Legal", 215.9, 355.6),
    )
}
"""The sizes offered: A3 to A6 by ISO 216; Letter is 8.5 x 11, Legal 8.5 x 14 inches."""
PAPER_WORDS = f"{', '.join(paper.name for paper in PAPERS.values())} or 100x150 (mm)"
"""What may be typed for a paper, for the help of commands."""


def paper_named(name: str) -> Paper:
    """A paper by its name, or one of its own size written as 100x150.

    Raises:
        InputError: no paper has that name.
    """
    found = PAPERS.get(name.strip().lower())
    if found is not None:
        return found
    if _SIZE.fullmatch(name.strip().lower()):
        width, height = read_size(name)
        if 20 <= width <= 1200 and 20 <= height <= 1200:
            return Paper(f"{width:g}x{height:g}", width, height)
    raise InputError(f"'{name[:30]}' is no paper: write {PAPER_WORDS}, 20 to 1200 mm a side.")


def read_size(text: str) -> tuple[float, float]:
    """Two lengths in millimetres, written as 100x13.

    Raises:
        InputError: they are not written so.
    """
    found = _SIZE.fullmatch(text.strip().lower())
    if found is None:
        raise InputError(
            f"'{text[:30]}' is no size: write width and height in millimetres, as 100x13."
        )
    width, height = (float(part.replace(",", ".")) for part in found.groups())
    return width, height
