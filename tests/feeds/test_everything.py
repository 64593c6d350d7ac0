"""Everything out of a season and into another, without loss."""

from __future__ import annotations

import json
import shutil
from datetime import time
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from benchround.cli import main
from benchround.core.errors import InputError
from benchround.core.record import Kind, Record
from benchround.desk import Desk
from benchround.feeds.everything_json import Everything, everything_from, everything_text
from benchround.store import SeasonFolder
from benchround.store.codec import decode, encode
from benchround.whereabouts import sample_folder
from tests.feeds.seasons import hostile_records, many_records
from tests.sample.story import DAY_0, records

FORBIDDEN = "".join(map(chr, (*range(0x20), *range(0x7F, 0xA0))))
LINE = st.text(st.characters(exclude_categories=["Cs"], exclude_characters=FORBIDDEN), max_size=40)
LINES = st.text(
    st.characters(exclude_categories=["Cs"], exclude_characters=FORBIDDEN.replace("\n", "")),
    max_size=60,
)
FIGURE = st.one_of(
    LINES,
    st.booleans(),
    st.integers(-(2**53), 2**53),
    st.floats(allow_nan=False, allow_infinity=False),
)
RECORD = st.builds(
    Record,
    id=LINE.filter(bool),
    day=st.dates(),
    kind=st.sampled_from(Kind),
    about=LINE,
    figures=st.dictionaries(LINE, FIGURE, max_size=5),
    note=LINES,
    at=st.one_of(st.none(), st.times()),
    machine=LINE,
)
SEASONS = st.builds(
    Everything,
    name=LINE,
    begun=st.one_of(st.none(), st.dates()),
    records=st.lists(RECORD, max_size=12, unique_by=lambda record: record.id).map(
        lambda found: tuple(sorted(found, key=lambda record: record.id))
    ),
)


@settings(deadline=None)
@given(SEASONS)
def test_whatever_a_season_holds_comes_back(season: Everything) -> None:
    back = everything_from(everything_text(season, encode), decode)
    assert back == season
    for one, other in zip(season.records, back.records, strict=True):
        assert dict(one.figures) == dict(other.figures)
        assert [type(value) for value in one.figures.values()] == [
            type(value) for value in other.figures.values()
        ]
        assert (one.day, one.at, one.note, one.machine) == (
            other.day,
            other.at,
            other.note,
            other.machine,
        )


@settings(deadline=None)
@given(SEASONS)
def test_any_json_reader_reads_it_and_finds_the_documented_names(season: Everything) -> None:
    value = json.loads(everything_text(season, encode))
    assert list(value) == ["form", "version", "season", "records"]
    assert [document["id"] for document in value["records"]] == [r.id for r in season.records]
    known = {"id", "day", "kind", "about", "figures", "note", "at", "machine"}
    assert all(set(document) <= known for document in value["records"])


@settings(
    max_examples=15, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(season=SEASONS)
def test_it_comes_back_through_a_folder_on_disk(season: Everything, tmp_path: Path) -> None:
    target = tmp_path / "taken"
    shutil.rmtree(target, ignore_errors=True)
    folder = SeasonFolder.create(target, "n", "shed", DAY_0)
    folder.append(everything_from(everything_text(season, encode), decode).records)
    folder.close()
    again = SeasonFolder.open(target, "other", read_only=True)
    assert {r.id: encode(r) for r in again.records()} == {r.id: encode(r) for r in season.records}


@pytest.mark.parametrize("told", [records(), hostile_records(), many_records()], ids=len)
def test_whole_seasons_come_back(told: tuple[Record, ...]) -> None:
    season = Everything("s", DAY_0, tuple(sorted(told, key=lambda record: record.id)))
    assert everything_from(everything_text(season, encode), decode) == season


GOOD = json.loads(
    everything_text(
        Everything("s", DAY_0, (Record("a1", DAY_0, Kind.FED, "b01", at=time(7, 30)),)), encode
    )
)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"form": "something else"}, "not everything of a season"),
        ({"version": 2}, "newer"),
        ({"version": None}, "newer"),
        ({"season": []}, "lost its season"),
        ({"season": {"name": 3}}, "no name"),
        ({"season": {"name": "s", "begun": "May"}}, "first day"),
        ({"records": {}}, "lost its season or its records"),
        ({"records": [3]}, "Record 1"),
        ({"records": [{"id": "x"}]}, "Record 1"),
        ({"records": [{"id": "x", "day": "2026-05-27", "kind": "eaten"}]}, "Record 1"),
        (
            {
                "records": [
                    {"id": "x", "day": "2026-05-27", "kind": "fed", "about": "b01"},
                    {"id": "x", "day": "2026-05-28", "kind": "fed", "about": "b01"},
                ]
            },
            "Record 2 of that text has the id of another",
        ),
    ],
    ids=lambda value: str(value)[:50],
)
def test_what_is_not_whole_is_refused_by_what_is_wrong(
    change: dict[str, object], words: str
) -> None:
    with pytest.raises(InputError, match=words):
        everything_from(json.dumps({**GOOD, **change}), decode)


@settings(deadline=None)
@given(st.text(max_size=80))
def test_any_other_text_is_refused(text: str) -> None:
    with pytest.raises(InputError):
        everything_from(text, decode)


def test_deep_nesting_is_refused() -> None:
    with pytest.raises(InputError):
        everything_from("[" * 100_000, decode)


def run(*words: str) -> int:
    return main(list(words))


def test_the_shell_moves_a_season(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out, target = tmp_path / "all.json", tmp_path / "new"
    assert run("tables", "--what", "everything", "--json", "--sample", "--out", str(out)) == 0
    assert run("tables", "--take-in", str(out), str(target)) == 0
    desks = [
        Desk.open(folder, today=lambda: DAY_0, read_only=True)
        for folder in (sample_folder(), target)
    ]
    first, second = (desk.folder.records() for desk in desks)
    assert [encode(record) for record in first] == [encode(record) for record in second]
    assert desks[0].round() == desks[1].round()
    assert desks[0].folder.name == desks[1].folder.name
    assert desks[0].folder.created == desks[1].folder.created

    assert run("tables", "--take-in", str(out), str(target)) == 0
    assert "0 of 218 records are not in" in capsys.readouterr().err


def test_into_a_season_only_what_is_missing_is_added_and_only_when_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    target, out = tmp_path / "season", tmp_path / "all.json"
    shutil.copytree(sample_folder(), target, ignore=shutil.ignore_patterns("*.lock"))
    more = Record("0T1", DAY_0, Kind.FED, "b16")
    out.write_text(everything_text(Everything("s", None, (*records(), more)), encode))
    assert run("tables", "--take-in", str(out), str(target)) == 0
    assert "1 of 219" in capsys.readouterr().err
    assert count(target) == 218
    assert run("tables", "--take-in", str(out), str(target), "--yes") == 0
    assert count(target) == 219


def count(folder: Path) -> int:
    season = SeasonFolder.open(folder, "other", read_only=True)
    return len(season.records())


def test_nothing_is_begun_with_a_record_that_cannot_be_kept(tmp_path: Path) -> None:
    out, target = tmp_path / "all.json", tmp_path / "new"
    value = {
        **GOOD,
        "records": [
            *GOOD["records"],
            {**GOOD["records"][0], "id": "a2", "figures": {"count": 2**60}},
        ],
    }
    out.write_text(json.dumps(value))
    assert run("tables", "--take-in", str(out), str(target)) == 1
    assert not target.exists()


@pytest.mark.parametrize("data", [b"", b"\x00\x01", b"{\xff}", b"{}"])
def test_files_that_are_nothing_of_the_kind_are_refused(
    tmp_path: Path, data: bytes, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "x"
    out.write_bytes(data)
    shutil.copytree(sample_folder(), tmp_path / "s", ignore=shutil.ignore_patterns("*.lock"))
    assert run("tables", "--take-in", str(out), str(tmp_path / "s")) == 1
    assert capsys.readouterr().err.startswith("benchround: ")
    assert run("tables", "--take-in", str(tmp_path / "none"), str(tmp_path / "s")) == 1
