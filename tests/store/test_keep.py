from __future__ import annotations

import errno
import json
import os
import zipfile
from datetime import date, timedelta
from pathlib import Path

import pytest

from benchround.core.errors import SeasonError
from benchround.core.record import Record
from benchround.store.codec import encode
from benchround.store.errors import SeasonDamagedError
from benchround.store.journal import line_of
from benchround.store.keep import files_in
from benchround.store.naming import first_name
from tests.store.builders import DAY, Scribe, filled_season, journal, new_season, page, reopen
from tests.store.disks import FailingDisk


def kept_names(path: Path) -> list[str]:
    return sorted(p.name for p in (path / "keep").iterdir())


def test_a_kept_copy_holds_every_file_as_it_stands(tmp_path: Path) -> None:
    path = tmp_path / "s"
    filled_season(path, 5)
    (path / "records" / "desktop-2027-04-001 2.json").write_bytes(b'{"records": {')
    with reopen(path) as season:
        made = season.keep_today(DAY)
    assert made == path / "keep" / "2027-04-03-laptop.zip"
    with zipfile.ZipFile(made) as bundle:  # source: the zip module of the standard library
        assert bundle.testzip() is None
        assert {name: bundle.read(name) for name in bundle.namelist()} == {
            "benchround.json": (path / "benchround.json").read_bytes(),
            "records/laptop-2027-04-001.json": page(path).read_bytes(),
            "records/desktop-2027-04-001 2.json": b'{"records": {',
        }


def test_a_day_has_one_copy(tmp_path: Path) -> None:
    scribe = Scribe()
    with new_season(tmp_path / "s") as season:
        season.append(scribe.records(1))
        first = season.keep_today(DAY)
        assert first is not None
        data = first.read_bytes()
        season.append(scribe.records(1))
        assert season.keep_today(DAY) is None
        assert first.read_bytes() == data
        first.write_bytes(data[: len(data) // 2])
        assert season.keep_today(DAY) == first


def test_the_ten_latest_copies_of_this_computer_are_kept(tmp_path: Path) -> None:
    with new_season(tmp_path / "s") as season:
        (tmp_path / "s" / "keep").mkdir()
        others = ["2026-01-01-desktop.zip", "before-format-1.zip", "2026-02-30-laptop.zip", "x.zip"]
        for name in others:
            (tmp_path / "s" / "keep" / name).write_bytes(b"theirs")
        for n in range(13):
            season.keep_today(DAY + timedelta(days=n))
        days = [DAY + timedelta(days=n) for n in range(3, 13)]
        assert kept_names(tmp_path / "s") == sorted(
            [*others, *(f"{day.isoformat()}-laptop.zip" for day in days)]
        )
        assert [kept.day for kept in season.list_kept()] == [*reversed(days), date(2026, 1, 1)]


def test_with_the_clock_set_back_the_new_copy_stays(tmp_path: Path) -> None:
    path = tmp_path / "s"
    with new_season(path) as season:
        for n in range(12):
            season.keep_today(date(2099, 1, 1) + timedelta(days=n))
        for n in range(3):
            kept = season.keep_today(DAY + timedelta(days=n))
            assert kept is not None
            assert kept.exists()
            assert len(season.list_kept()) == 10


def test_of_copies_kept_under_a_wrong_clock_the_fullest_is_the_newest(tmp_path: Path) -> None:
    path, scribe = tmp_path / "s", Scribe()
    with new_season(path) as season:
        season.append(scribe.records(2))
        season.keep_today(date(2099, 1, 1))
        season.append(scribe.records(2))
        season.keep_today(DAY)
        good = season.newest_good(page(path).name)
    assert good is not None
    assert (good.kept.day, len(good.page.records)) == (DAY, 4)


@pytest.mark.parametrize(
    ("name", "first"),
    [
        ("shed-2027-04-001.json", "shed-2027-04-001.json"),
        ("shed-2027-04-001 (rescued).json", "shed-2027-04-001.json"),
        ("shed-2027-04-001 (kept 2027-04-04 2) (rescued 3).json", "shed-2027-04-001.json"),
        ("shed-2027-04-001 (shed's conflicted copy).json", None),
        ("(rescued).json", None),
    ],
)
def test_a_page_brought_back_is_known_by_its_first_name(name: str, first: str | None) -> None:
    assert first_name(name) == (first or name)


def test_no_copy_is_let_go_while_a_page_is_damaged(tmp_path: Path) -> None:
    filled_season(tmp_path / "s", 3)
    with reopen(tmp_path / "s") as season:
        season.keep_today(DAY)
        page(tmp_path / "s").write_bytes(b"rubbish")
        season.reload_if_changed()
        for n in range(1, 15):
            season.keep_today(DAY + timedelta(days=n))
        assert len(season.list_kept()) == 15
        copy = season.newest_good("laptop-2027-04-001.json")
        assert copy is not None
        assert copy.kept.day == DAY


def test_a_copy_that_cannot_be_written_leaves_the_earlier_ones(tmp_path: Path) -> None:
    class Full(FailingDisk):
        def write(self, handle: int, data: bytes) -> None:
            if self.failing:
                raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
            super().write(handle, data)

    disk = Full("write", errno.ENOSPC)
    with new_season(tmp_path / "s", disk=disk) as season:
        season.append(Scribe().records(2))
        season.keep_today(DAY)
        disk.failing = True
        with pytest.raises(SeasonError, match="is full"):
            season.keep_today(DAY + timedelta(days=1))
        assert kept_names(tmp_path / "s") == ["2027-04-03-laptop.zip"]


def season_with_copies(path: Path) -> tuple[tuple[Record, ...], tuple[Record, ...]]:
    """A season of two days, a copy after each; the records of the first and of both days."""
    scribe = Scribe()
    with new_season(path) as season:
        season.append(scribe.records(3))
        first = season.records()
        season.keep_today(DAY)
        season.append(scribe.records(2))
        season.keep_today(DAY + timedelta(days=1))
        return first, season.records()


def test_the_newest_good_copy_of_a_page_is_found(tmp_path: Path) -> None:
    path = tmp_path / "s"
    first, both = season_with_copies(path)
    page(path).write_bytes(page(path).read_bytes()[:200])
    with reopen(path) as season:
        (name,) = season.damaged
        season.keep_today(DAY + timedelta(days=2))  # holds the damaged page
        copy = season.newest_good(name)
        assert copy is not None
        assert (copy.kept.day, copy.page.records) == (DAY + timedelta(days=1), both)
        copy.kept.path.write_bytes(copy.kept.path.read_bytes()[:-40])
        older = season.newest_good(name)
        assert older is not None
        assert (older.kept.day, older.page.records) == (DAY, first)
        assert season.newest_good("laptop-2027-04-009.json") is None


def test_bringing_back_is_shown_before_it_is_done(tmp_path: Path) -> None:
    path = tmp_path / "s"
    _, both = season_with_copies(path)
    page(path).unlink()
    with reopen(path) as season:
        latest = season.list_kept()[0]
        shown = season.restore(latest)
        assert shown.records == both
        assert shown.files == ("laptop-2027-04-001.json",)
        assert season.records() == ()
        assert not page(path).exists()
        done = season.restore(latest, preview=False)
        assert done == shown
        assert season.records() == both
        assert season.problems == ()
        assert season.restore(latest).records == ()
    assert reopen(path).records() == both


def test_bringing_back_overwrites_nothing_and_takes_nothing_away(tmp_path: Path) -> None:
    path = tmp_path / "s"
    _, both = season_with_copies(path)
    page(path).write_bytes(page(path).read_bytes()[:200])
    half = page(path).read_bytes()
    later = Scribe("later").records(2)
    with reopen(path) as season:
        season.append(later)
        before = set(season.records())
        done = season.restore(season.list_kept()[0], preview=False)
        assert done.files == ("laptop-2027-04-001 (kept 2027-04-04).json",)
        assert set(done.records) == set(both) - before
        assert set(season.records()) == {*both, *later}
        assert page(path).read_bytes() == half
        season.append(Scribe("more").records(1))
    assert len(reopen(path).records()) == len(both) + 3


def test_an_older_copy_brings_back_only_what_is_missing(tmp_path: Path) -> None:
    path = tmp_path / "s"
    _, both = season_with_copies(path)
    with reopen(path) as season:
        assert season.restore(season.list_kept()[1], preview=False).files == ()
        assert season.records() == both


def test_records_this_program_cannot_read_come_back_too(tmp_path: Path) -> None:
    path = tmp_path / "s"
    filled_season(path, 2)
    tables = json.loads(page(path).read_bytes())
    tables["records"]["3"] = {"id": "n1", "day": "2027-04-03", "kind": "grafted"}
    page(path).write_text(json.dumps(tables))
    with reopen(path) as season:
        season.keep_today(DAY)
        page(path).unlink()
        shown = season.restore(season.list_kept()[0], preview=False)
        assert (len(shown.records), shown.unread) == (2, 1)
    assert json.loads(page(path).read_bytes())["records"] == tables["records"]


def test_a_copy_that_cannot_be_read_brings_nothing_back(tmp_path: Path) -> None:
    path = tmp_path / "s"
    season_with_copies(path)
    with reopen(path) as season:
        kept = season.list_kept()[0]
        data = bytearray(kept.path.read_bytes())
        data[120:140] = b"\0" * 20
        kept.path.write_bytes(data)
        with pytest.raises(SeasonDamagedError, match="choose another one"):
            season.restore(kept, preview=False)


def test_a_copy_made_elsewhere_writes_only_into_the_records_folder(tmp_path: Path) -> None:
    path = tmp_path / "s"
    filled_season(path, 1)
    evil = json.dumps({"records": {"1": {"id": "e1", "day": "2027-04-03", "kind": "sown"}}})
    (path / "keep").mkdir()
    with zipfile.ZipFile(path / "keep" / "2027-04-01-laptop.zip", "w") as bundle:
        for name in ("../e.json", "/e.json", "records/../../e.json", "records/.e.json", "e.json"):
            bundle.writestr(name, evil)
    with reopen(path) as season:
        assert season.restore(season.list_kept()[0], preview=False).files == ()
    assert not list(tmp_path.glob("**/*e.json.part"))
    assert [p.name for p in tmp_path.iterdir()] == ["s"]


def test_a_damaged_page_is_set_aside_with_nothing_lost(tmp_path: Path) -> None:
    path = tmp_path / "s"
    filled_season(path, 4)
    page(path).write_bytes(page(path).read_bytes()[:400])
    half = page(path).read_bytes()
    with reopen(path) as season:
        readable = season.records()
        assert len(readable) > 0
        moved = season.set_aside("laptop-2027-04-001.json")
        assert moved == path / "aside" / "laptop-2027-04-001.json"
        assert moved.read_bytes() == half
        assert season.records() == readable
        assert season.problems == ()
        with pytest.raises(SeasonError, match="not among the damaged"):
            season.set_aside("laptop-2027-04-001.json")
        season.append(Scribe("b").records(1))
        page(path).write_bytes(half)
        season.reload_if_changed()
        assert season.set_aside(page(path).name) != moved
    assert moved.read_bytes() == half


def test_the_seasons_own_file_comes_back_from_a_copy(tmp_path: Path) -> None:
    path = tmp_path / "s"
    _, both = season_with_copies(path)
    (path / "benchround.json").write_bytes(b"rubbish")
    with reopen(path) as season:
        assert season.read_only
        done = season.restore(season.list_kept()[0], preview=False)
        assert done.files == ("benchround.json",)
    assert (path / "aside" / "benchround.json").read_bytes() == b"rubbish"
    with reopen(path) as season:
        assert (season.name, season.records()) == ("Test year", both)
        season.append(Scribe("b").records(1))


def test_a_copy_kept_while_recording_holds_the_open_page_whole(tmp_path: Path) -> None:
    path, scribe = tmp_path / "s", Scribe()
    with new_season(path) as season:
        records = scribe.records(3)
        season.append(records)
        made = season.keep_today(DAY)
        assert made is not None
        assert set(files_in(made)) == {"benchround.json", "records/laptop-2027-04-001.json"}
        assert not season.reload_if_changed()
        assert season.problems == ()
        season.append(scribe.records(1))
        assert len(season.records()) == 4
    assert len(reopen(path).records()) == 4


def test_records_in_a_journal_of_a_copy_come_back_into_a_page(tmp_path: Path) -> None:
    path = tmp_path / "s"
    filled_season(path, 2)
    desktop = reopen(path, "desktop")
    theirs = Scribe("desktop").records(3)
    desktop.append(theirs)
    page(path, 7, "desktop").write_bytes(page(path).read_bytes().replace(b"mjmx", b"mjmy"))
    other = page(path, 7, "desktop").with_suffix(".jsonl")
    other.write_bytes(line_of(map(encode, Scribe("tablet").records(1))))
    with reopen(path) as season:
        season.keep_today(DAY)
        before = season.records()
        good = season.newest_good("desktop-2027-04-001.json")
        assert good is not None
        assert good.page.records == theirs
        assert good.page.name == "desktop-2027-04-001.jsonl"
        for file in (path / "records").glob("desktop-*"):
            file.unlink()
        shown = season.restore(season.list_kept()[0], preview=False)
        assert shown.files == ("desktop-2027-04-001.json", "desktop-2027-04-007.json")
        assert season.records() == before
        assert season.problems == ()
        assert season.restore(season.list_kept()[0]).records == ()


def test_a_journal_set_aside_twice_overwrites_nothing(tmp_path: Path) -> None:
    path = tmp_path / "s"
    new_season(path).close()
    for text in (b"rubbish\n", b"more rubbish\n"):
        journal(path).write_bytes(text)
        with reopen(path) as season:
            season.set_aside(journal(path).name)
    found = {p.name: p.read_bytes() for p in (path / "aside").iterdir()}
    assert found == {
        "laptop-2027-04-001.jsonl": b"rubbish\n",
        "laptop-2027-04-001 (again).jsonl": b"more rubbish\n",
    }
