"""The year as one picture: what the screen shows line by line."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from benchround.core.dates import Span as Days
from benchround.drawing.canvas import UNICODE, Glyphs, Line
from benchround.drawing.year import axis_lines, legend_lines, rows
from benchround.drawing.year_strips import Order, YearStrip


def year_lines(
    strips: Sequence[YearStrip],
    days: Days,
    today: date,
    width: int,
    glyphs: Glyphs = UNICODE,
    order: Order = Order.PLACE,
) -> tuple[Line, ...]:
    """The whole picture: axis, a row for each strip, and what the letters mean."""
    shown = {
        stretch.phase
        for strip in strips
        for stretch in strip.stretches
        if stretch.closes >= days.opens and stretch.opens <= days.closes
    }
    return (
        *axis_lines(days, today, width, glyphs, order),
        *rows(strips, days, today, width, glyphs, order),
        *legend_lines(width, glyphs, shown),
    )
