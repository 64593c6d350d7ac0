"""Tables written out and taken in again: nothing is lost, and what is none is refused."""

from __future__ import annotations

import csv
import io
import json
import shutil
from pathlib import Path

import pandas as pd
import pytest

from benchround.cli import main
from benchround.core.errors import InputError
from benchround.core.record import Kind, Record, live
from benchround.feeds.review import review_table
from benchround.feeds.table_in import OurTable, our_table, readings_in, records_in
from benchround.feeds.table_rows import batches_table, readings_table, records_table
from benchround.feeds.tables import Table, csv_text, json_text, json_value
from benchround.store.codec import decode
from benchround.whereabouts import sample_folder
from tests.feeds.seasons import hostile_records, many_records, sample_season
from tests.sample.story import records


def texts(table: Table) -> tuple[str, str]:
    return csv_text(table)[0], json_text(json_value(table))


def ours(text: str) -> OurTable:
    table = our_table(text)
    assert table is not None
    return table


def keepable() -> tuple[Record, ...]:
    """The hostile records a season can hold: none with a control character."""
    return tuple(r for r in hostile_records() if str(r.figures.get("variety", "")).isprintable())


@pytest.mark.parametrize(
    "told", [records(), keepable(), many_records()], ids=["sample", "hostile", "3,000 batches"]
)
def test_records_come_back_as_they_were(told: tuple[Record, ...]) -> None:
    for text in texts(records_table(told)):
        assert records_in(ours(text), decode) == tuple(sorted(told, key=lambda r: r.id))


def test_records_come_back_from_another_programs_csv() -> None:
    """pandas reads the table and writes it again, as a spreadsheet does."""
    text, _ = csv_text(records_table(records()))
    frame = pd.read_csv(io.StringIO(text), dtype=str, keep_default_na=False)
    again = frame.to_csv(index=False, sep=";", lineterminator="\r\n")
    assert records_in(ours(again), decode) == tuple(sorted(records(), key=lambda r: r.id))


def test_readings_come_back_as_they_were() -> None:
    readings = [r for r in live(tuple(records())) if r.kind is Kind.READING]
    for text in texts(readings_table(records())):
        drafts = readings_in(ours(text))
        assert len(drafts) == len(readings) > 5
        for draft, record in zip(drafts, readings, strict=True):
            assert (draft.day, draft.at, draft.about) == (record.day, record.at, record.about)
            assert dict(draft.figures) == dict(record.figures)


def test_sums_are_refused_and_other_tables_left_to_others() -> None:
    for table in (batches_table(sample_season()), review_table(sample_season())):
        for text in texts(table):
            with pytest.raises(InputError, match="sums of records"):
                our_table(text)
    assert our_table("crop,sown\nCosmos,12 apr\n") is None
    assert our_table("") is None


HEAD = "id,day,at,kind,about,figures,note,computer,stands\n"
READING = "day,at,place,min_c,max_c,sun_h,rain_mm,rain_hour_mm,gust_kmh\n"
FAULTS = [
    (HEAD + "a,2026-13-01,,sown,b01,,,shed,yes\n", "line 2: .*cannot be read .*month"),
    (HEAD + "a,2026-05-01,,sown,b01,{,,shed,yes\n", "line 2: "),
    (HEAD + "a,2026-05-01,,sung,b01,,,shed,yes\n", "line 2: .*sung"),
    (HEAD + "a,2026-05-01,,sown,b01,,,x,\na,2026-05-02,,sown,b01,,,x,\n", "line 3: a is the id"),
    (READING + "2026-05-01,,,cold,,,,,\n", "line 2 is no reading"),
    (READING + "2026-05-01,,,999,,,,,\n", "line 2 is no reading .min_c 999 is not from"),
    (READING + "2026-05-01,,,,,,,,\n", "line 2 is no reading .it has no figure"),
    (READING + "May,,,1,,,,,\n", "line 2 is no reading"),
    (
        HEAD + "a,2026-05-01,,sown\nb,2026-05-01,,sown,b01,,,x,\n",
        "line 2 is cut off, it has no about, computer, figures",
    ),
    (READING + "2026-05-01,,,1,,,,,\n2026-05-02,,\n", "line 3 is cut off, it has no gust_kmh"),
    (HEAD + f"a,2026-05-01,,sown,b01,{'[' * 100_000},,shed,yes\n", "line 2: "),
    (HEAD + "a,2026-05-01,,sown,b01,[1],,shed,yes\n", "line 2: .*cannot be read"),
    ("[" * 100_000, "no whole JSON"),
    ("[1]", "Row 1 of that JSON"),
    ("[{", "no whole JSON"),
]


ROW = {name: None for name in HEAD.strip().split(",")} | {"id": "a", "day": "2026-05-01"}
FIGURES: list[object] = [{"crop": "cosmos"}, ["crop"], 3, True]


@pytest.mark.parametrize("figures", FIGURES, ids=repr)
def test_figures_that_are_not_one_text_are_refused(figures: object) -> None:
    text = json.dumps([{**ROW, "kind": "sown", "about": "b01", "figures": figures}])
    with pytest.raises(InputError, match="line 1: its figures are not written as one text"):
        records_in(ours(text), decode)


def test_a_row_of_json_without_a_column_is_named() -> None:
    text = json.dumps([{**ROW, "kind": "sown"}, {"id": "b"}])
    with pytest.raises(InputError, match="line 2 is cut off, it has no about"):
        ours(text)


@pytest.mark.parametrize(("text", "said"), FAULTS, ids=[said for _, said in FAULTS])
def test_a_row_that_cannot_be_is_named(text: str, said: str) -> None:
    with pytest.raises(InputError, match=said):
        table = ours(text)
        _ = readings_in(table) if table.what == "readings" else records_in(table, decode)


def test_a_season_moves_by_its_table_of_records(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    shutil.copytree(sample_folder(), "old", ignore=shutil.ignore_patterns("*.lock"))
    assert main(["tables", "old", "--what", "records", "--out", "records.csv"]) == 0
    assert main(["tables", "--take-in", "records.csv", "new"]) == 0
    assert main(["tables", "new", "--what", "records", "--out", "again.csv"]) == 0
    assert Path("again.csv").read_bytes() == Path("records.csv").read_bytes()
    assert main(["tables", "--take-in", "records.csv", "new"]) == 0
    assert " records are not in new yet" in capsys.readouterr().err


def test_readings_are_taken_in_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "home"))
    assert main(["tables", "--sample", "--what", "readings", "--out", "r.csv"]) == 0
    assert main(["new", "s"]) == 0
    words = ["tables", "--take-in", "r.csv", "s", "--on", "2026-05-27"]
    assert [main(words), main([*words, "--yes"]), main([*words, "--yes"])] == [0, 0, 0]
    said = capsys.readouterr().err
    rows = len(list(csv.reader(io.StringIO(Path("r.csv").read_text(encoding="utf-8"))))) - 1
    assert f"{rows} readings were recorded" in said
    assert "0 readings were recorded" in said


def test_the_samples_own_readings_taken_back_in_say_nothing_new(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    shutil.copytree(sample_folder(), "s", ignore=shutil.ignore_patterns("*.lock"))
    assert main(["tables", "s", "--what", "readings", "--out", "r.csv"]) == 0
    words = ["tables", "--take-in", "r.csv", "s", "--on", "2026-05-27"]
    assert main([*words, "--yes"]) == 0
    assert "0 readings were recorded" in capsys.readouterr().err


def test_a_reading_that_stands_twice_in_a_file_is_recorded_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "home"))
    rows = "2026-05-20,,,8,,,,,\n2026-05-20,,,8.0,,,,,\n2026-05-21,,,8,,,,,\n"
    Path("r.csv").write_text(READING + rows, encoding="utf-8")
    assert main(["new", "s"]) == 0
    assert main(["tables", "--take-in", "r.csv", "s", "--on", "2026-05-27", "--yes"]) == 0
    assert "2 readings were recorded" in capsys.readouterr().err
