from __future__ import annotations

import json
from pathlib import Path

import pytest

from benchround.core.record import Record
from benchround.store.naming import page_name, page_number
from benchround.store.pages import documents_in, page_from
from tests.store.builders import HOSTILE, Scribe, filled_season, new_season, page, reopen

MARK = (0, 0, 0)


def page_bytes(tmp_path: Path, count: int) -> tuple[tuple[Record, ...], bytes]:
    records = filled_season(tmp_path / "made", count)
    return records, page(tmp_path / "made").read_bytes()


def test_a_page_broken_off_anywhere_gives_up_its_whole_lines(tmp_path: Path) -> None:
    records, data = page_bytes(tmp_path, 5)
    for length in range(len(data) - 2):
        found = page_from("x.json", MARK, data[:length])
        lines = data[:length].count(b'"machine": "laptop"}')
        assert found.fault != ""
        assert found.records == records[:lines]


def test_a_page_garbled_anywhere_gives_up_the_other_lines(tmp_path: Path) -> None:
    records, data = page_bytes(tmp_path, 5)
    lines = data.split(b"\n")
    for hurt, line in enumerate(lines[2:7], 2):
        for garble in (b"\xff\xfe" * 20, b"\0" * len(line), line[:-20], b"{" + line):
            broken = b"\n".join([*lines[:hurt], garble, *lines[hurt + 1 :]])
            found = page_from("x.json", MARK, broken)
            assert found.fault != ""
            assert set(found.records) == set(records) - {records[hurt - 2]}


@pytest.mark.parametrize("data", [b"", b"\0" * 4096, b"\x89PNG\r\n", b"[]", b'{"records": 5}'])
def test_a_file_that_is_no_page_is_a_fault_without_records(data: bytes) -> None:
    found = page_from("x.json", MARK, data)
    assert found.fault != ""
    assert found.records == ()


def test_a_page_laid_out_anew_by_another_program_is_sound(tmp_path: Path) -> None:
    records, data = page_bytes(tmp_path, 5)
    for indent in (None, 2):
        text = json.dumps(json.loads(data), indent=indent)
        found = page_from("x.json", MARK, text.encode())
        assert (found.fault, found.records, found.kept) == ("", records, 5)


def test_a_page_with_the_line_ends_of_another_system_is_sound(tmp_path: Path) -> None:
    records, data = page_bytes(tmp_path, 5)
    found = page_from("x.json", MARK, data.replace(b"\n", b"\r\n"))
    assert (found.fault, found.records) == ("", records)


def test_numbers_used_twice_hide_no_record(tmp_path: Path) -> None:
    ours, theirs = Scribe("laptop").records(3), Scribe("desktop").records(3)
    for machine, records in (("laptop", ours), ("desktop", theirs)):
        with new_season(tmp_path / machine) as season:
            season.append(records)
    first, second = (page(tmp_path / name).read_bytes() for name in ("laptop", "desktop"))
    joined = first[: first.rindex(b"}\n}")].rstrip() + b",\n" + second.partition(b"{\n")[2][12:]
    joined = joined[joined.index(b"{") :]
    json.loads(joined)  # JSON readers take it, and the later line hides the earlier
    found = page_from("x.json", MARK, joined)
    assert set(found.records) == {*ours, *theirs}
    assert "numbers used twice" in found.fault
    assert len(documents_in("x.json", joined)) == 6


def test_hostile_text_does_not_upset_the_reading_of_single_lines(tmp_path: Path) -> None:
    scribe = Scribe()
    records = tuple(scribe.record(note=text, figures={"x": text}) for text in HOSTILE)
    with new_season(tmp_path / "s") as season:
        season.append(records)
    assert reopen(tmp_path / "s").records() == records
    data = page(tmp_path / "s").read_bytes()
    assert page_from("x.json", MARK, data[:-3]).records == records


@pytest.mark.parametrize(
    ("name", "number"),
    [
        ("laptop-2027-04-001.json", 1),
        ("laptop-2027-04-1234.json", 1234),
        ("laptop-2027-04-007 (conflicted copy 2027-05-27).json", 7),
        ("laptop-2027-04-007.sync-conflict-20270527-101010-ABCDEFG.json", 7),
        ("laptop-2027-04-007 2.json", 7),
        ("laptop-2027-05-001.json", None),
        ("laptop-2-2027-04-001.json", None),
        ("laptop-2027-04-2027-04-001.json", None),
        ("desktop-2027-04-001.json", None),
        ("laptop-2027-04-.json", None),
    ],
)
def test_the_number_in_a_page_name(name: str, number: int | None) -> None:
    assert page_number(name, "laptop", "2027-04") == number


def test_page_names_carry_computer_month_and_number() -> None:
    assert page_name("laptop", "2027-04", 1) == "laptop-2027-04-001.json"
    assert page_name("laptop", "2027-04", 1000) == "laptop-2027-04-1000.json"
