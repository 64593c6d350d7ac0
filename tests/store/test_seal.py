"""The sum at the end of a page: what it vouches for, and that it lets nothing odd through."""

from __future__ import annotations

import json
import zlib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given

from benchround.core.record import Record
from benchround.store.codec import encode
from benchround.store.journal import line_of
from benchround.store.pages import page_from
from benchround.store.seal import format_page, is_sealed
from benchround.store.storage import AtomicStorage
from benchround.store.tables import format_tables
from tests.store.builders import HOSTILE, Scribe, filled_season, journal, page, reopen
from tests.store.test_codec import RECORDS, exact

MARK = (0, 0, 0)
PLAIN = {"id": "r1", "day": "2027-04-03", "kind": "sown"}


def forged(*documents: dict[str, Any]) -> bytes:
    """A page with the right sum over documents nobody looked at; sum source: zlib's CRC-32."""
    body = format_tables({"records": dict(enumerate(documents, 1))}).removesuffix(b"\n}\n")
    return body + b',\n"check": {\n"1": {"sum": "%08x"}\n}\n}\n' % zlib.crc32(body)


def test_a_page_the_store_wrote_is_sealed_and_plain_json(tmp_path: Path) -> None:
    filled_season(tmp_path / "s", 3)
    data = page(tmp_path / "s").read_bytes()
    assert is_sealed(data)
    assert list(json.loads(data)) == ["records", "check"]
    assert list(json.loads(data)["records"]) == ["1", "2", "3"]
    assert data == forged(*json.loads(data)["records"].values())


@given(RECORDS)
def test_sealed_or_not_the_same_record_is_read(record: Record) -> None:
    tables = {"records": {"1": encode(record)}}
    sealed, bare = format_page(tables), format_tables(tables)
    assert is_sealed(sealed)
    assert not is_sealed(bare)
    (one,), (other,) = (page_from("x.json", MARK, data).records for data in (sealed, bare))
    assert exact(one) == exact(other) == exact(record)


def test_hostile_text_in_a_sealed_page_comes_back_exactly() -> None:
    scribe = Scribe()
    for text in HOSTILE:
        record = scribe.record(note=text, figures={"x": text})
        data = format_page({"records": {"1": encode(record)}})
        assert is_sealed(data)
        assert page_from("x.json", MARK, data).records == (record,)


def test_a_page_changed_in_any_byte_is_not_sealed(tmp_path: Path) -> None:
    filled_season(tmp_path / "s", 2)
    data = page(tmp_path / "s").read_bytes()
    for place in range(len(data)):
        assert not is_sealed(data[:place] + bytes([data[place] ^ 1]) + data[place + 1 :])
        assert not is_sealed(data[:place])


def test_a_page_edited_by_hand_is_taken_as_it_stands(tmp_path: Path) -> None:
    path = tmp_path / "s"
    filled_season(path, 2)
    page(path).write_text(page(path).read_text().replace("look 1", "look one"))
    with reopen(path) as season:
        assert season.records()[1].note == "look one"
        assert season.problems == ()
        season.append(Scribe("b").records(1))
    assert is_sealed(page(path).read_bytes())
    assert "look one" in [record.note for record in reopen(path).records()]


@pytest.mark.parametrize(
    "change",
    [
        {"note": "\x1b]0;title\x07"},
        {"note": "\x7f"},
        {"note": "\x9b31m"},
        {"about": "\x1b[31m"},
        {"about": "\x9b"},
        {"about": "\x7f"},
        {"figures": {"x": "\x9b"}},
        {"figures": {"\x7f": 1}},
        {"id": "\x9b"},
        {"at": "07:30+02:00"},
        {"day": "2027-02-30"},
    ],
)
def test_a_right_sum_does_not_bring_in_what_cannot_be_printed(change: dict[str, Any]) -> None:
    data = forged({**PLAIN, **change}, {**PLAIN, "id": "r2"})
    assert is_sealed(data)
    found = page_from("x.json", MARK, data)
    assert [record.id for record in found.records] == ["r2"]
    assert "cannot be read" in found.remarks[0]


def test_records_that_are_not_in_order_are_never_sealed(tmp_path: Path) -> None:
    path = tmp_path / "s"
    filled_season(path, 1)
    odd = [{**PLAIN, "figures": {"x": [1]}}, {**PLAIN, "id": "r2", "figures": {"x": None}}]
    journal(path).write_bytes(line_of(odd))
    for _ in range(2):
        with reopen(path) as season:
            assert len(season.records()) == 1
            assert len(season.problems) == 2
        assert not journal(path).exists()
        assert not is_sealed(page(path).read_bytes())
    assert list(json.loads(page(path).read_bytes())["records"].values())[1:] == odd


def test_the_sum_is_kept_from_tinydb(tmp_path: Path) -> None:
    filled_season(tmp_path / "s", 1)
    assert "check" in json.loads(page(tmp_path / "s").read_bytes())
    tables = AtomicStorage(page(tmp_path / "s")).read()
    assert tables is not None
    assert list(tables) == ["records"]
