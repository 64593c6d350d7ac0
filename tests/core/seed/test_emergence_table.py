"""Days to emergence of Harrington & Minges 1954: foretelling cells that were left out.

The errors allowed here are regression limits, a little above what was measured; the figures
themselves stand in docs/emergence_accuracy.md.
"""

import pytest

from benchround.core.seed.emergence import days_at
from tests.bench.emergence_accuracy import (
    CHECK_10_C,
    CROPS,
    REPORT,
    TABLE,
    came_up,
    foretell,
    is_bracketed,
    model_without,
    nothing_line,
    quantile,
    remembered,
    report,
)
from tests.core.published import Seen

REMEMBERED = f"Harrington & Minges 1954, columns 10 and 25 C ({Seen.FROM_MEMORY})"
SOURCE = f"Harrington & Minges 1954 in Knott's Handbook 1997 ({Seen.READ})"


def test_the_table_is_whole() -> None:
    assert len(CROPS) == 24
    assert sum(cell.days is not None for cell in TABLE) == 96
    assert sum(cell.days is None for cell in TABLE) == 35


@pytest.mark.parametrize(
    ("temp_c", "median", "ninetieth"),
    [
        pytest.param(15.0, 0.10, 0.20, id=f"15 C left out: {SOURCE}"),
        pytest.param(20.0, 0.14, 0.28, id=f"20 C left out: {SOURCE}"),
        pytest.param(30.0, 0.10, 0.31, id=f"30 C left out: {SOURCE}"),
    ],
)
def test_a_column_left_out_is_foretold(temp_c: float, median: float, ninetieth: float) -> None:
    errors = [item.relative_error for item in foretell(came_up(temp_c))]
    assert quantile(errors, 0.5) <= median
    assert quantile(errors, 0.9) <= ninetieth


def test_ten_degrees_is_foretold_for_the_six_crops_read_elsewhere() -> None:
    found = foretell(CHECK_10_C)
    errors = [item.relative_error for item in found]
    assert len(found) == 6
    assert quantile(errors, 0.5) <= 0.10
    assert max(errors) <= 0.16


@pytest.mark.parametrize(
    ("temp_c", "cells"),
    [
        pytest.param(10.0, 16, id=f"10 C: {REMEMBERED}"),
        pytest.param(25.0, 24, id=f"25 C: {REMEMBERED}"),
    ],
)
def test_the_columns_never_fitted_are_within_a_tenth_or_a_day(temp_c: float, cells: int) -> None:
    found = foretell(remembered(temp_c, up=True))
    assert len(found) == cells
    tenth = quantile([item.relative_error for item in found], 0.5) <= 0.10
    assert tenth or quantile([item.days_off for item in found], 0.5) <= 1.0


def test_at_10_c_nothing_is_foretold_where_nothing_is_remembered_to_come_up() -> None:
    found = foretell(remembered(10.0, up=False))
    assert len(found) == 5
    assert all(item.days is None for item in found)


def test_cells_between_two_others_are_foretold() -> None:
    cells = [c for c in (*TABLE, *CHECK_10_C) if c.days is not None and is_bracketed(c)]
    found = foretell(cells)
    assert len(found) == 53
    assert quantile([item.relative_error for item in found], 0.5) <= 0.11
    assert sum(item.is_close for item in found) >= 34


def test_most_cells_where_nothing_came_up_are_told_as_nothing() -> None:
    right, tested = nothing_line()
    assert tested == 35
    assert right >= 30


@pytest.mark.parametrize("crop", CROPS)
def test_nothing_is_foretold_where_the_fitted_row_says_so(crop: str) -> None:
    model = model_without(crop, frozenset())
    for cell in TABLE:
        if cell.crop == crop and cell.days is None:
            assert days_at(model, cell.temp_c) is None


def test_the_report_is_up_to_date() -> None:
    assert REPORT.read_text(encoding="utf-8") == report()
