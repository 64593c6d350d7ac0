"""Days on a line of cells. The calendar itself is the reference; column numbers are by hand."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.core.dates import Span as Days
from benchround.core.site import Site
from benchround.drawing.canvas import ASCII, UNICODE, plain
from benchround.drawing.scale import (
    Scale,
    growing_year,
    month_line,
    span_label,
    tick_line,
)

YEAR = Days(date(2026, 1, 1), date(2026, 12, 31))


def test_one_cell_a_week_over_52_weeks() -> None:
    scale = Scale(Days(date(2026, 1, 5), date(2027, 1, 3)), 52)  # Monday to Sunday, 364 days
    for week in range(52):
        monday = date(2026, 1, 5) + timedelta(weeks=week)
        assert scale.column(monday) == scale.column(monday + timedelta(days=6)) == week
        assert scale.span_of(week) == Days(monday, monday + timedelta(days=6))


@settings(deadline=None)
@given(days=st.integers(1, 800), columns=st.integers(1, 300), opens=st.dates(date(1990, 1, 1)))
def test_every_day_lies_in_the_cell_it_falls_into(days: int, columns: int, opens: date) -> None:
    opens = min(opens, date(9990, 1, 1))
    scale = Scale(Days(opens, opens + timedelta(days=days - 1)), columns)
    for ahead in range(days):
        day = opens + timedelta(days=ahead)
        column = scale.column(day)
        assert scale.holds(column)
        assert day in scale.span_of(column)
    assert scale.column(opens - timedelta(days=1)) < 0
    assert scale.column(opens + timedelta(days=days)) >= columns


@pytest.mark.parametrize(
    ("lat_deg", "day", "first", "last"),
    [
        # year begins with the month after the winter solstice: 21 December north, 21 June south
        (52.0, date(2026, 5, 27), date(2026, 1, 1), date(2026, 12, 31)),
        (52.0, date(2028, 2, 29), date(2028, 1, 1), date(2028, 12, 31)),
        (-41.0, date(2026, 5, 27), date(2025, 7, 1), date(2026, 6, 30)),
        (-41.0, date(2026, 7, 1), date(2026, 7, 1), date(2027, 6, 30)),
    ],
)
def test_growing_year_follows_the_hemisphere(
    lat_deg: float, day: date, first: date, last: date
) -> None:
    assert growing_year(Site(lat_deg=lat_deg), day) == Days(first, last)


def test_months_stand_in_the_order_of_the_days() -> None:
    north = plain([month_line(Scale(YEAR, 60))]).split()
    assert north == [
        "Jan",
        "Feb",
        "Mar",
        "Apr",
        "May",
        "Jun",
        "Jul",
        "Aug",
        "Sep",
        "Oct",
        "Nov",
        "Dec",
    ]
    south = growing_year(Site(lat_deg=-41.0), date(2026, 5, 27))
    assert plain([month_line(Scale(south, 60))]).split() == north[6:] + north[:6]
    assert span_label(south) == "Jul 2025 - Jun 2026"
    assert span_label(YEAR) == "2026"


@pytest.mark.parametrize("columns", [6, 13, 20, 26, 40, 52, 80, 130, 180, 280])
def test_month_names_begin_where_their_month_does(columns: int) -> None:
    scale = Scale(YEAR, columns)
    line = plain([month_line(scale)])
    ticks = plain([tick_line(scale, date(2030, 1, 1), ASCII)])
    assert len(ticks) == columns
    for at, sign in enumerate(line):
        if sign != " " and (at == 0 or line[at - 1] == " "):
            assert ticks[at] == ASCII.tick
            assert any(scale.column(date(2026, month, 1)) == at for month in range(1, 13))


def test_today_is_marked_on_the_axis_only_where_it_is_in_sight() -> None:
    scale = Scale(YEAR, 73)  # five days a cell
    line = plain([tick_line(scale, date(2026, 5, 27), UNICODE)])
    assert line.index(UNICODE.pointer) == 29  # day 147 of the year, (147 - 1) // 5
    assert UNICODE.pointer not in plain([tick_line(scale, date(2027, 5, 27), UNICODE)])
