"""Sowings from a spreadsheet."""

from __future__ import annotations

import re
import shutil
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.cli import main
from benchround.core.errors import InputError, StoppedError
from benchround.core.record import Kind, Record
from benchround.core.typed.date import DATE_ORDER, MONTH_FIRST
from benchround.crops.library import load_library
from benchround.desk import Desk
from benchround.feeds.sowing_sheet import COLUMNS, SheetRow, read_sheet
from benchround.feeds.text_file import decoded
from benchround.whereabouts import sample_folder
from tests.feeds.seasons import sample_season
from tests.folding import fold_season
from tests.sample.story import DAY_0, MACHINE
from tests.sample.story import records as sample_records

CROPS = load_library().names()
HEAD = "crop,variety,sown,seeds,cells,place,wanted\n"


def read(text: str) -> tuple[SheetRow, ...]:
    return read_sheet(text, sample_season(), load_library().names(), DAY_0, "b34")


def test_a_row_is_a_sowing_with_the_next_free_id() -> None:
    rows = read(HEAD + "Cosmos,Paper Lantern,12 apr,40,40,Bench 1,24\nleek,,2026-03-06,220,,,150\n")
    assert [row.fault for row in rows] == ["", ""]
    first, second = (row.draft for row in rows)
    assert first is not None
    assert second is not None
    assert (first.kind, first.about, first.day) == (Kind.SOWN, "b34", date(2026, 4, 12))
    assert first.figures == {
        "crop": "cosmos",
        "variety": "Paper Lantern",
        "seeds": 40,
        "cells": 40,
        "place": "bench-1",
        "wanted": 24,
    }
    assert (second.about, second.figures["crop"], second.figures["wanted"]) == ("b35", "leek", 150)


@pytest.mark.parametrize("between", [",", ";", "\t"])
def test_commas_semicolons_and_tabs(between: str) -> None:
    text = f"crop{between}seeds\r\ncosmos{between}40\r\n"
    (row,) = read(text)
    assert row.draft is not None
    assert row.draft.figures == {"crop": "cosmos", "seeds": 40}


def test_a_mark_at_the_start_and_empty_lines_are_passed_over() -> None:
    (row,) = read("\ufeffCrop,Per cell\n\n,,\nCosmos,2\n")
    assert row.draft is not None
    assert row.draft.figures["per_cell"] == 2
    assert row.line == 4


def test_a_day_to_come_is_a_plan() -> None:
    (row,) = read("crop,sown\nleek,2027-03-06\n")
    assert row.draft is not None
    assert (row.draft.kind, row.draft.day) == (Kind.PLANNED, DAY_0)
    assert row.draft.figures["sow_on"] == "2027-03-06"


def test_a_guarded_cell_is_the_text_it_stands_for() -> None:
    (row,) = read("crop,variety\ncosmos,'=1+1\n")
    assert row.draft is not None
    assert row.draft.figures["variety"] == "=1+1"


@pytest.mark.parametrize(
    ("line", "words"),
    [
        (",x,,,,,", "crop: it is empty"),
        ("nosuchcrop,,,,,,", "no crop of the library"),
        ("a,,,,,,", "more than one crop"),
        ("cosmos,,31 feb,,,,", "sown: '31 feb'"),
        ("cosmos,,12,,,,", "sown: '12' could be"),
        ("cosmos,,,-4,,,", "seeds: -4 is not between 0 and 1000000"),
        ("cosmos,,,1_0,,,", "seeds: '1_0' is not a whole number"),
        ("cosmos,,,4.5,,,", "seeds"),
        ("cosmos,,,99999999999,,,", "seeds"),
        ("cosmos,,,,,the moon,", "place: no place answers to 'the moon': Propagator P"),
        ("cosmos,,,,,,1,2", "there are 8 cells but 7 columns"),
        (f"cosmos,{'x' * 300},,,,,", "300 letters are too many"),
    ],
)
def test_a_row_that_cannot_be_is_named_and_the_others_are_read(line: str, words: str) -> None:
    bad, good = read(f"{HEAD}{line}\ncosmos,,,40,,,\n")
    assert words in bad.fault
    assert bad.draft is None
    assert bad.line == 2
    assert good.draft is not None


def test_every_fault_of_a_row_is_told_at_once() -> None:
    (row,) = read(HEAD + "kosmoz,,31/2/2026,ten,,bench 9,-3\n")
    for words in ("'kosmoz'", "'31/2/2026'", "seeds: 'ten'", "'bench 9'", "wanted: -3 is not"):
        assert words in row.fault, words


def test_ids_of_the_sheets_own_are_taken_once() -> None:
    first, again, old, free = read("batch,crop\nb34,cosmos\nb34,leek\nb01,leek\n,leek\n")
    assert first.draft is not None
    assert "b34 is on the books already" in again.fault
    assert "b01 is on the books already" in old.fault
    assert free.draft is not None
    assert free.draft.about == "b35"


@pytest.mark.parametrize("name", ["b\u00b2", "b 7", "b/7", "b\u0663", "b" * 41])
def test_a_name_no_batch_may_have_is_refused(name: str) -> None:
    (row,) = read(f"batch,crop,sown,seeds\n{name},cosmos,12 apr,40\n")
    assert "is no name of a batch" in row.fault and row.draft is None


@pytest.mark.parametrize("name", ["b77", "tray-7", "K\u00fcbel_1.a"])
def test_a_name_of_letters_and_numbers_is_kept(name: str) -> None:
    (row,) = read(f"batch,crop,sown,seeds\n{name},cosmos,12 apr,40\n")
    assert row.draft is not None and row.draft.about == name


def test_a_sowing_that_is_on_the_books_is_remarked() -> None:
    (row,) = read("crop,variety,sown\ncosmos,Paper Lantern,2026-04-09\n")
    assert row.remark == "like b01, which is on the books already"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "empty"),
        ("\n\n", "empty"),
        ("variety,seeds\nx,3\n", "no column 'crop'"),
        ("crop,colour\ncosmos,red\n", "'colour' is no column"),
        ("crop,crop\na,b\n", "twice"),
        ('crop\n"cos', "cannot be read"),
        ("crop\n" + "cosmos\n" * 20_001, "too many at once"),
    ],
    ids=lambda value: value[:20],
)
def test_a_table_that_cannot_be_read_is_refused(text: str, words: str) -> None:
    with pytest.raises(InputError, match=words):
        read(text)


@settings(deadline=None)
@given(st.text(max_size=200))
def test_any_table_is_rows_or_a_sentence(text: str) -> None:
    try:
        rows = read("crop,variety,sown,seeds\n" + text)
    except InputError:
        return
    for row in rows:
        assert (row.draft is None) is bool(row.fault)
        assert not (row.comes and row.fault)


@settings(deadline=None)
@given(
    variety=st.text(st.characters(exclude_categories=["C", "Z"]), min_size=1, max_size=30),
    seeds=st.integers(0, 1_000_000),
    day=st.dates(date(2020, 1, 1), DAY_0),
)
def test_what_was_put_in_comes_out(variety: str, seeds: int, day: date) -> None:
    from benchround.feeds.tables import Table, csv_text

    text, _ = csv_text(
        Table("t", ("crop", "variety", "sown", "seeds"), (("cosmos", variety, str(day), seeds),))
    )
    (row,) = read(text)
    assert row.draft is not None
    assert row.draft.figures["variety"] == variety
    assert (row.draft.figures["seeds"], row.draft.day) == (seeds, day)


@pytest.mark.parametrize("sign", ["|", ":", "^"])
def test_other_signs_between_the_columns_are_named(sign: str) -> None:
    with pytest.raises(InputError, match=re.escape(f"parted by '{sign}': save it as CSV")):
        read(f"crop{sign}variety{sign}sown\ncosmos{sign}x{sign}today\n")


def test_a_row_parted_otherwise_than_the_heading_is_named() -> None:
    bad, good = read("crop,variety,seeds\ncosmos;x;40\ncosmos,x,40\n")
    assert "not parted by commas as the heading is" in bad.fault
    assert good.comes


def test_days_are_read_in_the_growers_order() -> None:
    season = replace(sample_season(), settings={DATE_ORDER: MONTH_FIRST})
    (row,) = read_sheet("crop,date\ncosmos,4/12/2026\n", season, CROPS, DAY_0, "b34")
    assert row.draft is not None
    assert row.draft.day == date(2026, 4, 12)
    assert read("crop,day\ncosmos,4/12/2026\n")[0].draft is not None


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "cp1252", "utf-16"])
def test_usual_encodings_are_read(encoding: str) -> None:
    text = "crop,variety\ncosmos,\u00c4nnchen \u2018Weiss\u2019\n"
    (row,) = read(decoded(text.encode(encoding)))
    assert row.draft is not None
    assert row.draft.figures["variety"] == "\u00c4nnchen \u2018Weiss\u2019"


@pytest.mark.parametrize(
    "raw", [b"PK\x03\x04\x00\x00", b"\xff\xfe\x00", b"crop\x00", b"\xfe\xff\x00\x00"]
)
def test_what_is_no_text_is_refused_in_a_sentence(raw: bytes) -> None:
    with pytest.raises(InputError, match="is no text file: save the table as CSV"):
        decoded(raw)


def test_the_same_sheet_twice_doubles_nothing() -> None:
    text = "crop,variety,sown,seeds\ncosmos,A,1 may,40\ncosmos,A,1 may,40\nleek,B,1 aug,9\n"
    drafts = [row.draft for row in read(text) if row.draft is not None]
    records = tuple(
        Record(f"z{n}", draft.day or DAY_0, draft.kind, draft.about, dict(draft.figures))
        for n, draft in enumerate(drafts)
    )
    after = fold_season((*sample_records(), *records), load_library())
    again = read_sheet(text, after, CROPS, DAY_0, "b37")
    assert [row.known for row in again] == ["b34", "b35", "b36"]
    assert not any(row.comes for row in again)
    third = read_sheet(text.replace("leek", "cosmos,A,1 may,40\nleek"), after, CROPS, DAY_0, "b37")
    assert [row.comes for row in third] == [False, False, True, False]


def test_a_plan_that_was_taken_in_is_known_on_its_day_too() -> None:
    text = "crop,sown,seeds\nleek,2026-08-01,9\n"
    (row,) = read(text)
    assert row.draft is not None
    planned = Record("z1", DAY_0, row.draft.kind, row.draft.about, dict(row.draft.figures))
    after = fold_season((*sample_records(), planned), load_library())
    (later,) = read_sheet(text, after, CROPS, date(2026, 8, 2), "b35")
    assert later.known == "b34"


def test_reading_can_be_stopped_and_nothing_is_given() -> None:
    told: list[tuple[int, int]] = []

    def stop(done: int, of: int) -> None:
        told.append((done, of))
        if done >= 100:
            raise StoppedError("stopped")

    with pytest.raises(StoppedError):
        read_sheet("crop\n" + "cosmos\n" * 1000, sample_season(), CROPS, DAY_0, "b34", stop)
    assert told[0] == (0, 1000)
    assert told[-1] == (100, 1000)


def test_columns_are_those_of_the_guide() -> None:
    guide = (Path(__file__).parents[2] / "docs" / "leaving.md").read_text(encoding="utf-8")
    assert all(f"`{name}`" in guide for name in COLUMNS)


@pytest.fixture
def season(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr("benchround.desk.short_name", lambda host: MACHINE)
    folder = tmp_path / "season"
    shutil.copytree(sample_folder(), folder, ignore=shutil.ignore_patterns("*.lock"))
    return folder


def test_the_shell_shows_first_and_records_when_told(
    season: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    sheet = tmp_path / "sowings.csv"
    sheet.write_text(HEAD + "Cosmos,Night,12 apr,40,,bench-1,24\n", encoding="utf-8")
    words = ["tables", "--take-in", str(sheet), str(season), "--on", "2026-05-27"]
    assert main(words) == 0
    shown = capsys.readouterr()
    assert "line 2: b34 sown 2026-04-12" in shown.out
    assert "can be taken in" in shown.err
    assert "b34" not in batches(season)
    assert main([*words, "--yes"]) == 0
    assert batches(season)["b34"] == "Night"


def test_one_bad_row_keeps_all_of_it_out(
    season: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    sheet = tmp_path / "sowings.csv"
    sheet.write_text(HEAD + "cosmos,,,40,,,\nnope,,,,,,\ncosmos,,2010-01-01,4,,,\n")
    words = ["tables", "--take-in", str(sheet), str(season), "--on", "2026-05-27", "--yes"]
    assert main(words) == 1
    shown = capsys.readouterr()
    assert "! line 3: 'nope' is no crop" in shown.out
    assert "! line 4: sown: 2010-01-01 is too far off" in shown.out
    assert "2 of 3 rows cannot be taken in; none was" in shown.err
    assert "b34" not in batches(season)
    assert main([*words, "--only-good"]) == 0
    assert "1 sowings were recorded" in capsys.readouterr().err
    assert list(batches(season))[-1] == "b34"
    assert main([*words, "--only-good"]) == 0
    assert "1 of 3 rows are on the books already" in capsys.readouterr().err
    assert "b35" not in batches(season)


def batches(folder: Path) -> dict[str, str]:
    desk = Desk.open(folder, today=lambda: DAY_0, read_only=True)
    desk.close()
    return {name: batch.variety for name, batch in desk.season.batches.items()}
