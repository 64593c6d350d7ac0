"""Where labels lie on a sheet of paper: sizes, margins and columns as the grower sets them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from enum import StrEnum

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import whole, within
from benchround.feeds.papers import Paper

ROOM_MM = 0.05
"""Slack in adding up sizes that were rounded when they were measured."""
LEAST_PRINTED_MM = 10.0
"""What a foot must leave of a label's length."""


class Sides(StrEnum):
    """How front and back come together."""

    ONE = "one"  # everything on one side
    TWO = "two"  # fronts on one page, backs on the next, printed on both sides
    FOLDED = "folded"  # back above the front, upside down, to be folded over the top edge


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet of labels. Lengths in mm; left and top are the paper's margins.

    Attributes:
        width_mm, height_mm: one label as it will be read.
        foot_mm: length at the left end that goes into the compost and stays unprinted.
        cut: whether to draw lines to cut and fold along.
        first: the place of the first label, from 1, for a sheet of which some are used up.
    """

    paper: Paper
    width_mm: float
    height_mm: float
    columns: int
    rows: int
    left_mm: float
    top_mm: float
    gap_x_mm: float = 0.0
    gap_y_mm: float = 0.0
    foot_mm: float = 0.0
    sides: Sides = Sides.ONE
    cut: bool = False
    first: int = 1

    @property
    def laid_mm(self) -> float:
        """The height one label takes on the paper."""
        return self.height_mm * (2 if self.sides is Sides.FOLDED else 1)

    @property
    def places(self) -> int:
        """How many labels a sheet holds."""
        return self.columns * self.rows


@dataclass(frozen=True, slots=True)
class Spot:
    """The top left corner of one label, and of its back when both sides are printed."""

    sheet: int
    left_mm: float
    top_mm: float
    back_left_mm: float


def laid_out(
    paper: Paper,
    size_mm: tuple[float, float],
    *,
    columns: int | None = None,
    rows: int | None = None,
    left_mm: float = 0.0,
    top_mm: float = 0.0,
    gap_mm: tuple[float, float] = (0.0, 0.0),
    foot_mm: float = 0.0,
    sides: Sides = Sides.ONE,
    cut: bool = False,
    first: int = 1,
) -> Sheet:
    """A sheet whose sizes were looked at; columns and rows that are not given fill the paper.

    Raises:
        OutOfRangeError: a figure cannot be.
        InputError: the labels do not fit on the paper.
    """
    width = within("width of a label (mm)", size_mm[0], 15.0, 1000.0)
    height = within("height of a label (mm)", size_mm[1], 6.0, 1000.0)
    within("left margin (mm)", left_mm, 0.0, paper.width_mm)
    within("top margin (mm)", top_mm, 0.0, paper.height_mm)
    gap_x = within("gap between columns (mm)", gap_mm[0], 0.0, paper.width_mm)
    gap_y = within("gap between rows (mm)", gap_mm[1], 0.0, paper.height_mm)
    within("foot of a label (mm)", foot_mm, 0.0, width - LEAST_PRINTED_MM)
    laid = height * (2 if sides is Sides.FOLDED else 1)
    other = 2 if cut else 1  # strips are cut out of plain paper, whose other edge has a margin too
    across = _fitting(paper.width_mm - other * left_mm, width, gap_x)
    down = _fitting(paper.height_mm - other * top_mm, laid, gap_y)
    columns = across if columns is None else whole("columns", columns, 1, 100)
    rows = down if rows is None else whole("rows", rows, 1, 200)
    _check_fit("columns", columns, left_mm, width, gap_x, paper.width_mm, paper)
    _check_fit("rows", rows, top_mm, laid, gap_y, paper.height_mm, paper)
    whole("place of the first label", first, 1, columns * rows)
    placing = (columns, rows, left_mm, top_mm, gap_x, gap_y)
    return Sheet(paper, width, height, *placing, foot_mm, sides, cut, first)


def spots(sheet: Sheet, count: int) -> Iterator[Spot]:
    """The places of so many labels, row by row, sheet by sheet."""
    for number in range(sheet.first - 1, sheet.first - 1 + count):
        page, place = divmod(number, sheet.places)
        row, column = divmod(place, sheet.columns)
        left = sheet.left_mm + column * (sheet.width_mm + sheet.gap_x_mm)
        top = sheet.top_mm + row * (sheet.laid_mm + sheet.gap_y_mm)
        yield Spot(page, left, top, sheet.paper.width_mm - left - sheet.width_mm)


def _fitting(room: float, size: float, gap: float) -> int:
    return max(0, math.floor((room + gap + ROOM_MM) / (size + gap)))


def _check_fit(
    what: str, number: int, margin: float, size: float, gap: float, room: float, paper: Paper
) -> None:
    if number < 1:
        raise InputError(
            f"A label of {size:g} mm does not fit on {paper.name} paper ({room:g} mm) beside its "
            f"margins of {margin:g} mm: make the label or the margins smaller."
        )
    taken = margin + number * size + (number - 1) * gap
    if taken > room + ROOM_MM:
        raise InputError(
            f"{number} {what} take {taken:g} mm, but {paper.name} paper has {room:g} mm: "
            "make the labels, gaps or margins smaller, or ask for fewer."
        )
