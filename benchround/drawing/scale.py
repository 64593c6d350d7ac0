"""Days along a line of cells: a month axis, and which cell a day falls into."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from itertools import pairwise

from benchround.core.dates import Span as Days
from benchround.core.frozen import dataclass
from benchround.core.site import Site
from benchround.core.typed.date import MONTH_NAMES
from benchround.drawing.canvas import Glyphs, Inked, Line, Role

ONE_DAY = timedelta(days=1)
QUARTERS = (1, 4, 7, 10)


@dataclass(frozen=True, slots=True)
class Scale:
    """So many cells for a span of days.

    Attributes:
        days: the days, both ends included.
        columns: cells, at least 1.
    """

    days: Days
    columns: int

    def column(self, day: date) -> int:
        """The cell a day falls into; below 0 or from `columns` on where it lies outside."""
        offset = (day - self.days.opens).days
        return ((offset + 1) * self.columns - 1) // max(1, self.days.days)

    def day_at(self, column: int) -> date:
        """The first day of a cell."""
        return self.days.opens + timedelta(days=column * self.days.days // self.columns)

    def span_of(self, column: int) -> Days:
        """The days of a cell; where cells are shorter than days, the day it belongs to."""
        first = self.day_at(column)
        return Days(first, max(first, self.day_at(column + 1) - ONE_DAY))

    def holds(self, column: int) -> bool:
        """Whether the cell is on the line."""
        return 0 <= column < self.columns


def growing_year(site: Site, day: date) -> Days:
    """The year around a day from the month after midwinter on: January north, July south."""
    month = site.year.midwinter(day.year).month % 12 + 1
    year = day.year if day.month >= month else day.year - 1
    return Days(date(year, month, 1), date(year + 1, month, 1) - ONE_DAY)


def span_label(days: Days) -> str:
    """The years of a span: "2026", or "Jul 2026 - Jun 2027"."""
    first, last = days.opens, days.closes
    if first.year == last.year:
        return str(first.year)
    return f"{_name(first.month, 3)} {first.year} - {_name(last.month, 3)} {last.year}"


def month_line(scale: Scale) -> Line:
    """The names of the months, in as many letters as there is room for."""
    starts = list(_months(scale))
    width = min(
        (after[1] - month[1] for month, after in pairwise(starts[1:])),
        default=scale.columns,
    )
    letters = 9 if width >= 11 else 3 if width >= 4 else 1
    if width < 2:
        starts = [start for start in starts if start[0].month in QUARTERS]
    text = ""
    ends = [column for _, column in starts[1:]] + [scale.columns + 1]
    for (month, column), end in zip(starts, ends, strict=True):
        name = _name(month.month, letters)
        if column + len(name) < end:
            text = text.ljust(column) + name
    return (Inked(text.ljust(scale.columns), Role.AXIS),)


def tick_line(scale: Scale, today: date, glyphs: Glyphs) -> Line:
    """The axis: a tick where a month begins, a pointer on today."""
    signs = [glyphs.rule] * scale.columns
    for month, column in _months(scale):
        if month >= scale.days.opens and scale.holds(column):
            signs[column] = glyphs.tick
    now = scale.column(today)
    if not scale.holds(now):
        return (Inked("".join(signs), Role.AXIS),)
    before, after = "".join(signs[:now]), "".join(signs[now + 1 :])
    return (Inked(before, Role.AXIS), Inked(glyphs.pointer, Role.NOW), Inked(after, Role.AXIS))


def _months(scale: Scale) -> Iterator[tuple[date, int]]:
    """The months of a scale with the cell each begins in; the first may have begun before."""
    month = scale.days.opens.replace(day=1)
    while month <= scale.days.closes:
        yield month, max(0, scale.column(month))
        month = date(month.year + month.month // 12, month.month % 12 + 1, 1)


def _name(month: int, letters: int) -> str:
    return MONTH_NAMES[month - 1][:letters].capitalize()
