"""Moving from a made-up format 0, in which the records were called entries and had no kind."""

from __future__ import annotations

import errno
import json
import os
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from benchround.core.errors import SeasonError
from benchround.store import heading
from benchround.store.folder import SeasonFolder
from benchround.store.journal import line_of
from benchround.store.keep import files_in
from benchround.store.migrate import STEPS, Migration, Pages, migrate
from tests.store.builders import DAY, reopen
from tests.store.disks import FailingDisk

OLD_OWN_FILE = {"season": {"1": {"format": 0, "name": "Old year", "created": "2026-01-04"}}}


def entries_to_records(pages: Pages) -> Pages:
    """Rename the table, give every record its kind, join all pages of a computer into one."""
    moved: Pages = {}
    for name, tables in pages.items():
        records = moved.setdefault(f"{name.partition('-')[0]}-2026-01-001.json", {"records": {}})
        for entry in (*tables.get("entries", {}).values(), *tables.get("records", {}).values()):
            number = str(len(records["records"]) + 1)
            records["records"][number] = {**entry, "kind": "noted"}
    return moved


def entry(number: int) -> dict[str, Any]:
    return {"id": f"e{number}", "day": "2026-01-05", "note": f"note {number}"}


def old_season(path: Path) -> dict[str, bytes]:
    (path / "records").mkdir(parents=True)
    (path / "benchround.json").write_text(json.dumps(OLD_OWN_FILE))
    for page in range(3):
        entries = {str(n): entry(10 * page + n) for n in range(1, 5)}
        text = json.dumps({"entries": entries})
        (path / "records" / f"laptop-{page}.json").write_text(text)
    return {p.name: p.read_bytes() for p in (path / "records").iterdir()}


IDS = tuple(f"e{10 * page + n}" for page in range(3) for n in range(1, 5))


@pytest.fixture
def old_format_known(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(STEPS, 0, entries_to_records)


def ids(season: SeasonFolder) -> set[str]:
    return {record.id for record in season.records()}


@pytest.mark.usefixtures("old_format_known")
def test_an_old_season_is_moved_when_opened_and_kept_as_it_was(tmp_path: Path) -> None:
    path = tmp_path / "s"
    before = old_season(path)
    with reopen(path) as season:
        assert ids(season) == set(IDS)
        assert (season.name, season.created) == ("Old year", date(2026, 1, 4))
        assert season.problems == ()
    kept = files_in(path / "keep" / "before-format-1.zip")
    assert {name: kept[f"records/{name}"] for name in before} == before
    assert json.loads(kept["benchround.json"]) == OLD_OWN_FILE
    assert [p.name for p in (path / "records").iterdir()] == ["laptop-2026-01-001.json"]
    assert heading.read_heading(path).format == 1
    with reopen(path) as again:
        assert ids(again) == set(IDS)


@pytest.mark.usefixtures("old_format_known")
@pytest.mark.parametrize("call", ["create", "write", "fsync", "replace", "sync folder", "remove"])
def test_a_move_cut_short_anywhere_is_finished_at_the_next_opening(
    tmp_path: Path, call: str
) -> None:
    cuts = 0
    for after in range(40):
        path = tmp_path / str(after)
        old_season(path)
        (path / "records" / "laptop-3.jsonl").write_bytes(line_of([entry(31)]))
        disk = CutShort(call, after)
        try:
            reopen(path, disk=disk).close()
        except SeasonError:
            cuts += 1
            own = json.loads((path / "benchround.json").read_bytes())["season"]["1"]
            if own["format"] == 1 and "moving from" not in own:
                pages = [p.name for p in (path / "records").iterdir()]
                assert pages == ["laptop-2026-01-001.json"]
        disk.left = 10**6
        with reopen(path) as season:
            assert ids(season) == {*IDS, "e31"}
            assert season.problems == ()
            assert not season.read_only
        if not disk.was_cut:
            break
    assert cuts > 1


class CutShort(FailingDisk):
    """Refuses a kind of call, wherever it goes, once it has been made a number of times."""

    def __init__(self, call: str, after: int) -> None:
        super().__init__(call, errno.EIO)
        self.left = after
        self.was_cut = False

    def note(self, event: Any) -> None:
        super().note(event)
        if event.call in self.calls and ".lock" not in event.path.name:
            self.left -= 1
            if self.left < 0:
                self.was_cut = True
                raise OSError(errno.EIO, os.strerror(errno.EIO))


@pytest.mark.usefixtures("old_format_known")
def test_a_damaged_old_page_stays_where_it_is(tmp_path: Path) -> None:
    path = tmp_path / "s"
    old_season(path)
    (path / "records" / "laptop-2.json").write_bytes(b"rubbish")
    with reopen(path) as season:
        assert ids(season) == set(IDS[:8])
        assert season.damaged == ("laptop-2.json",)
    assert (path / "records" / "laptop-2.json").read_bytes() == b"rubbish"


@pytest.mark.usefixtures("old_format_known")
def test_records_still_in_a_journal_are_moved_too(tmp_path: Path) -> None:
    path = tmp_path / "s"
    old_season(path)
    folder = path / "records"
    (folder / "laptop-3.jsonl").write_bytes(line_of([entry(31), entry(32)]))
    (folder / "laptop-2.jsonl").write_bytes(line_of([entry(29)]) + b'{"check')
    left = {"laptop-4.jsonl": b"rubbish\n", "laptop-5.json": b"rubbish\n"}
    left["laptop-5.jsonl"] = line_of([{**entry(51), "kind": "noted"}])
    for name, data in left.items():
        (folder / name).write_bytes(data)
    with reopen(path) as season:
        assert ids(season) == {*IDS, "e29", "e31", "e32", "e51"}
        assert season.damaged == ("laptop-4.jsonl", "laptop-5.json")
    found = {p.name: p.read_bytes() for p in folder.iterdir()}
    assert found.pop("laptop-2026-01-001.json")
    assert found == left


def test_an_old_season_no_step_is_known_for_is_refused_and_untouched(tmp_path: Path) -> None:
    path = tmp_path / "s"
    before = old_season(path)
    with pytest.raises(SeasonError, match="in format 0, which this benchround cannot bring"):
        reopen(path)
    assert {p.name: p.read_bytes() for p in (path / "records").iterdir()} == before
    assert sorted(p.name for p in path.iterdir()) == ["benchround.json", "records"]


def test_an_old_season_opened_for_reading_is_refused(tmp_path: Path) -> None:
    old_season(tmp_path / "s")
    with pytest.raises(SeasonError, match="must be opened once for writing"):
        reopen(tmp_path / "s", read_only=True)


def test_a_season_of_today_is_not_touched(tmp_path: Path) -> None:
    own = heading.Heading("x", DAY)
    assert migrate(tmp_path, own, DAY, steps={}) is own
    assert list(tmp_path.iterdir()) == []


def test_there_is_a_step_from_every_format_there_was() -> None:
    first = 1
    assert sorted(STEPS) == list(range(first, heading.FORMAT))
    known: list[Migration] = list(STEPS.values())
    assert all(callable(step) for step in known)
