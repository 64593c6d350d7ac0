from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tinydb import TinyDB, where
from tinydb.storages import JSONStorage

from benchround.core.errors import SeasonError
from benchround.store.disk import give_name, make_folder
from benchround.store.errors import SeasonDamagedError
from benchround.store.storage import AtomicStorage
from benchround.store.tables import format_tables, parse_tables
from tests.store.builders import HOSTILE, Scribe, filled_season, new_season, page
from tests.store.disks import WatchedDisk

TEXT = st.text(st.sampled_from('a"\\{}[],: \n\t\r\x1b\x7fé🌱\u2028\u202e\ufeff0'), max_size=12)
SCALARS = st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | TEXT
JSON = SCALARS | st.lists(SCALARS, max_size=3) | st.dictionaries(TEXT, SCALARS, max_size=3)
DOCUMENTS = st.dictionaries(TEXT, JSON, max_size=3)
NUMBERS = st.integers(1, 10**6).map(str)
TABLES = st.dictionaries(TEXT, st.dictionaries(NUMBERS, DOCUMENTS, max_size=4), max_size=3)


@given(TABLES)
def test_tables_are_json_as_the_standard_library_reads_it(tables: dict[str, Any]) -> None:
    data = format_tables(tables)
    assert json.loads(data) == tables
    assert parse_tables(data) == tables


def test_every_document_stands_on_a_line_of_its_own() -> None:
    documents = {str(n): {"note": text} for n, text in enumerate(HOSTILE, 1)}
    lines = format_tables({"records": documents}).decode().split("\n")
    assert lines[:2] == ["{", '"records": {']
    assert lines[-3:] == ["}", "}", ""]
    for (number, document), line in zip(documents.items(), lines[2:-3], strict=True):
        assert json.loads("{" + line.removesuffix(",") + "}") == {number: document}


def test_tinydb_works_on_it_as_on_its_own_storage(tmp_path: Path) -> None:
    ours = TinyDB(tmp_path / "a.json", storage=AtomicStorage)
    theirs = TinyDB(tmp_path / "b.json")  # source: TinyDB's own JSONStorage
    for database in (ours, theirs):
        database.insert_multiple({"n": n, "text": text} for n, text in enumerate(HOSTILE))
        database.update({"text": "changed"}, where("n") == 2)
        database.remove(where("n") == 3)
        database.table("other").insert({"x": 1.5})
    assert ours.all() == theirs.all()
    assert ours.tables() == theirs.tables()
    assert json.loads((tmp_path / "a.json").read_bytes()) == json.loads(
        (tmp_path / "b.json").read_bytes()
    )


def test_a_page_is_read_by_tinydbs_own_storage(tmp_path: Path) -> None:
    records = filled_season(tmp_path / "s", 5)
    with TinyDB(page(tmp_path / "s"), storage=JSONStorage, access_mode="r") as database:
        names = [document["id"] for document in database.table("records")]
    assert names == [record.id for record in records]


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"\0" * 4096,
        b" \n",
        b"{",
        b"[]",
        b"3",
        b'{"records": []}',
        b'{"records": {"one": {}}}',
        b'{"records": {"1": []}}',
        b'{"records": {"\xff": {}}}',
        b'{"records": {"1": {"n": 1' + b"0" * 5000 + b"}}}",
        b"[" * 100_000,
    ],
    ids=lambda data: repr(data[:20]),
)
def test_what_is_not_tables_is_told(data: bytes) -> None:
    with pytest.raises(SeasonDamagedError):
        parse_tables(data)


def test_a_file_saved_by_an_editor_with_a_byte_order_mark_is_read() -> None:
    assert parse_tables(b'\xef\xbb\xbf{"records": {}}') == {"records": {}}


def test_a_damaged_file_is_not_replaced_by_an_empty_one(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    path.write_bytes(b'{"_default": {"1": {"n"')
    with TinyDB(path, storage=AtomicStorage) as database, pytest.raises(SeasonDamagedError):
        database.insert({"n": 2})
    assert path.read_bytes() == b'{"_default": {"1": {"n"'


def test_bytes_are_forced_before_the_name_and_the_name_before_the_answer(tmp_path: Path) -> None:
    disk = WatchedDisk()
    with TinyDB(tmp_path / "a.json", storage=AtomicStorage, disk=disk) as database:
        database.insert({"n": 1})
    # Source: fsync(2) manual page: a file's fsync does not bring its folder entry to the disk.
    calls = [(event.call, event.path.name) for event in disk.events]
    assert calls == [
        ("create", ".a.json.part"),
        ("write", ".a.json.part"),
        ("fsync", ".a.json.part"),
        ("replace", ".a.json.part"),
        ("sync folder", tmp_path.name),
    ]


def calls(disk: WatchedDisk) -> list[tuple[str, str]]:
    return [(event.call, event.path.name) for event in disk.events]


def test_the_first_action_makes_the_journals_name_safe_before_it_writes(tmp_path: Path) -> None:
    disk = WatchedDisk()
    with new_season(tmp_path / "s", disk=disk) as season:
        disk.events.clear()
        season.append(Scribe().records(2))
        journal = "laptop-2027-04-001.jsonl"
        assert calls(disk) == [
            ("create new", journal),
            ("sync folder", "records"),
            ("open", journal),
            ("write", journal),
            ("fsync", journal),
        ]


def test_an_action_of_many_records_is_one_line_forced_once(tmp_path: Path) -> None:
    disk, scribe = WatchedDisk(), Scribe()
    with new_season(tmp_path / "s", disk=disk) as season:
        season.append(scribe.records(1))
        disk.events.clear()
        season.append(scribe.records(40))
        assert [call for call, _ in calls(disk)] == ["open", "write", "fsync"]
        assert disk.events[1].data.count(b"\n") == 1


def test_the_page_is_safe_before_its_journal_goes(tmp_path: Path) -> None:
    disk, scribe = WatchedDisk(), Scribe()
    with new_season(tmp_path / "s", disk=disk) as season:
        season.append(scribe.records(1))
        disk.events.clear()
        season.append(scribe.records(199))
        part = ".laptop-2027-04-001.json.part"
        assert calls(disk) == [
            *((call, part) for call in ("create", "write", "fsync", "replace")),
            ("sync folder", "records"),
            ("remove", "laptop-2027-04-001.jsonl"),
        ]


def test_nothing_is_left_beside_the_pages(tmp_path: Path) -> None:
    filled_season(tmp_path / "s", 3)
    assert {p.name for p in (tmp_path / "s" / "records").iterdir()} == {page(tmp_path).name}
    assert {p.name for p in (tmp_path / "s").iterdir()} == {"benchround.json", "records"}


def test_a_page_whose_numbers_hide_documents_is_not_written_again(tmp_path: Path) -> None:
    path = tmp_path / "a.json"
    data = b'{\n"_default": {\n"1": {"n": 1},\n"1": {"n": 2}\n}\n}\n'
    path.write_bytes(data)
    with (
        TinyDB(path, storage=AtomicStorage) as database,
        pytest.raises(SeasonDamagedError, match="used twice"),
    ):
        database.insert({"n": 3})
    assert path.read_bytes() == data


def test_new_folders_are_on_the_disk_with_all_the_new_ones_above_them(tmp_path: Path) -> None:
    disk = WatchedDisk()
    make_folder(tmp_path / "a" / "b" / "c", disk)
    forced = [event.path for event in disk.events if event.call == "sync folder"]
    assert forced == [tmp_path, tmp_path / "a", tmp_path / "a" / "b"]
    disk.events.clear()
    make_folder(tmp_path / "a" / "b" / "c", disk)
    assert disk.events == []


def test_the_name_of_a_folder_is_on_the_disk_when_it_was_given(tmp_path: Path) -> None:
    disk = WatchedDisk()
    (tmp_path / "rough").mkdir()
    give_name(tmp_path / "rough", tmp_path / "season", disk)
    assert [(event.call, event.path) for event in disk.events] == [
        ("replace", tmp_path / "rough"),
        ("sync folder", tmp_path),
    ]
    assert (tmp_path / "season").is_dir()
    with pytest.raises(SeasonError, match="nothing was recorded"):
        give_name(tmp_path / "rough", tmp_path / "other", disk)
