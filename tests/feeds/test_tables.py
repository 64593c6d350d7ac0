"""Tables as CSV and JSON: whole, and never a formula."""

from __future__ import annotations

import csv
import io
import json

import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.record import Kind
from benchround.feeds.review import By, came_up, review_table
from benchround.feeds.table_rows import batches_table, readings_table, records_table
from benchround.feeds.tables import (
    Cell,
    Table,
    csv_text,
    guarded,
    json_text,
    json_value,
    unguarded,
)
from tests.feeds.seasons import (
    HOSTILE,
    empty_season,
    hostile_records,
    hostile_season,
    many_records,
    many_season,
    sample_season,
)
from tests.sample.story import records

STARTS_A_FORMULA = "=+-@\t\r"
"""OWASP, CSV injection: the signs that start a formula in a spreadsheet (from memory)."""

TEXT = st.text(
    alphabet=st.one_of(st.sampled_from("=+-@\t\r\n',;\" ab"), st.characters()), max_size=40
)
CELL = st.one_of(st.none(), st.booleans(), st.integers(), st.floats(allow_nan=False), TEXT)


@given(TEXT)
def test_no_text_starts_a_formula_and_the_guard_comes_off_again(text: str) -> None:
    cell = guarded(text)
    assert cell[:1] not in STARTS_A_FORMULA or not cell
    assert unguarded(cell) == text


@pytest.mark.parametrize(
    ("text", "cell"),
    [
        ("=1+1", "'=1+1"),
        ("+44", "'+44"),
        ("-2", "'-2"),
        ("@SUM(A1)", "'@SUM(A1)"),
        ("\tx", "'\tx"),
        ("\rx", "'\rx"),
        ("'=1", "''=1"),
        ("'tis", "'tis"),
        ("a=1", "a=1"),
        ("", ""),
    ],
)
def test_what_is_guarded(text: str, cell: str) -> None:
    assert guarded(text) == cell


@given(st.lists(st.tuples(CELL, CELL), max_size=8))
def test_a_table_comes_back_from_csv_as_it_was(rows: list[tuple[Cell, Cell]]) -> None:
    """Read back with the standard library's reader, set to RFC 4180."""
    text, _ = csv_text(Table("t", ("a", "b"), tuple(rows)))
    back = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    assert back[0] == ["a", "b"]
    for row, cells in zip(rows, back[1:], strict=True):
        for cell, said in zip(row, cells, strict=True):
            if isinstance(cell, str):
                assert unguarded(said) == cell
            elif isinstance(cell, bool):
                assert said == ("yes" if cell else "no")
            elif cell is None:
                assert said == ""
            else:
                assert float(said) == float(cell)


def test_numbers_are_not_guarded_and_guards_are_counted() -> None:
    text, count = csv_text(Table("t", ("a", "b"), ((-5, "-5"), (1.5, "x"), (None, "=A1"))))
    assert text == "a,b\r\n-5,'-5\r\n1.5,x\r\n,'=A1\r\n"
    assert count == 2


TABLES = {
    "batches": lambda: batches_table(hostile_season()),
    "records": lambda: records_table(hostile_records()),
    "review": lambda: review_table(hostile_season()),
}


@pytest.mark.parametrize("name", TABLES)
def test_hostile_names_in_every_table(name: str) -> None:
    table = TABLES[name]()
    text, _ = csv_text(table)
    for row in csv.reader(io.StringIO(text, newline="")):
        assert all(cell[:1] not in STARTS_A_FORMULA for cell in row if cell and not number(cell))
    back = json.loads(json_text(json_value(table)))
    assert [tuple(row.values()) for row in back] == list(table.rows)


def number(cell: str) -> bool:
    try:
        float(cell)
    except ValueError:
        return False
    return True


def test_pandas_reads_the_batches() -> None:
    text, _ = csv_text(batches_table(sample_season()))
    frame = pd.read_csv(io.StringIO(text))
    assert len(frame) == len(sample_season().batches) == 33
    cosmos = frame.set_index("batch").loc["b01"]
    assert (cosmos["seeds"], cosmos["up"], cosmos["alive"], cosmos["wanted"]) == (40, 35, 32, 24)
    assert cosmos["sown_on"] == "2026-04-09"


def test_every_record_is_in_the_table_and_withdrawn_ones_are_marked() -> None:
    table = records_table(records())
    assert len(table.rows) == len(records())
    assert {row[-1] for row in table.rows} == {True}
    figures = table.columns.index("figures")
    sown = next(row for row in table.rows if row[table.columns.index("kind")] == Kind.SOWN)
    assert json.loads(str(sown[figures]))["crop"]


def test_readings_are_the_thermometers_own() -> None:
    table = readings_table(records())
    outside = [row for row in table.rows if row[2] == ""]
    assert len(outside) == 6
    assert outside[-1] == ("2026-05-26", None, "", 4.0, 19.0, 12.0, 0.0, None, 18.0)


def test_names_of_a_table_are_fit_for_a_heading() -> None:
    for table in (batches_table(sample_season()), records_table(()), readings_table(())):
        assert len(set(table.columns)) == len(table.columns)
        assert all(name.isidentifier() for name in table.columns)


def test_an_empty_season_has_headings_and_no_rows() -> None:
    season = empty_season()
    for table in (
        batches_table(season),
        records_table(()),
        readings_table(()),
        review_table(season),
    ):
        text, count = csv_text(table)
        assert text.count("\r\n") == 1
        assert (count, json_value(table)) == (0, [])


def test_three_thousand_batches() -> None:
    assert len(batches_table(many_season()).rows) == 3000
    assert len(records_table(many_records()).rows) == len(many_records())
    rows = review_table(many_season()).rows
    shares = [row for row in rows if row[0] == "germination by crop"]
    assert sum(int(str(row[3])) for row in shares) == sum(
        one.batches for one in came_up(many_season(), By.CROP)
    )


def test_hostile_names_are_many() -> None:
    assert len(batches_table(hostile_season()).rows) == len(HOSTILE)
