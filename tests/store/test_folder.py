from __future__ import annotations

import json
from datetime import date, datetime
from pathlib import Path

import pytest

from benchround.core.errors import InputError, SeasonError
from benchround.core.record import Kind, Record
from benchround.store import SeasonReadOnlyError
from benchround.store.codec import encode
from benchround.store.folder import SeasonFolder
from benchround.store.journal import line_of
from tests.store.builders import DAY, Scribe, filled_season, journal, new_season, page, reopen


def page_names(path: Path) -> list[str]:
    return sorted(p.name for p in (path / "records").iterdir())


def test_a_new_season_is_empty_and_knows_its_name_and_day(tmp_path: Path) -> None:
    with new_season(tmp_path / "deep" / "s") as season:
        assert season.records() == ()
        assert (season.name, season.created) == ("Test year", DAY)
        assert season.problems == ()
        assert not season.read_only
    again = reopen(tmp_path / "deep" / "s")
    assert (again.name, again.created, again.records()) == ("Test year", DAY, ())


def test_a_season_is_not_begun_over_another(tmp_path: Path) -> None:
    records = filled_season(tmp_path / "s", 2)
    with pytest.raises(SeasonError, match="holds a season already"):
        new_season(tmp_path / "s")
    assert reopen(tmp_path / "s").records() == records


def test_a_folder_without_a_season_is_told(tmp_path: Path) -> None:
    for path in (tmp_path, tmp_path / "missing"):
        with pytest.raises(SeasonError, match="there is no season in"):
            reopen(path)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("machine", ["", "Laptop", "a/b", "../x", "-x", "a b", "x" * 33, "ü"])
def test_a_short_name_that_cannot_stand_in_a_file_name_is_refused(
    tmp_path: Path, machine: str
) -> None:
    with pytest.raises(InputError):
        new_season(tmp_path / "s", machine)
    assert list(tmp_path.iterdir()) == []


def test_records_come_back_after_reopening_sorted_by_id(tmp_path: Path) -> None:
    scribe = Scribe()
    records = scribe.records(7)
    with new_season(tmp_path / "s") as season:
        season.append(records[4:])
        assert season.records() == records[4:]
        season.append(records[:2])
        season.append(records[2:4])
        assert season.records() == records
        assert season.last_id == records[-1].id
    again = reopen(tmp_path / "s")
    assert again.records() == records
    assert again.last_id == records[-1].id


def test_the_last_id_passes_over_names_that_are_no_ids(tmp_path: Path) -> None:
    record = Scribe().record()
    with new_season(tmp_path / "s") as season:
        assert season.last_id == ""
        season.append((record, Record("zzz", DAY, Kind.NOTED)))
        assert season.last_id == record.id


def test_an_action_of_no_records_writes_nothing(tmp_path: Path) -> None:
    with new_season(tmp_path / "s") as season:
        season.append(())
    assert page_names(tmp_path / "s") == []


PAGES = ["laptop-2027-04-001.json", "laptop-2027-04-002.json"]


def test_an_action_is_one_line_in_the_journal(tmp_path: Path) -> None:
    scribe = Scribe()
    with new_season(tmp_path / "s") as season:
        for size in (1, 4, 2):
            season.append(scribe.records(size))
        assert page_names(tmp_path / "s") == ["laptop-2027-04-001.jsonl"]
        lines = journal(tmp_path / "s").read_bytes().splitlines()
        assert [len(json.loads(line)["records"]) for line in lines] == [1, 4, 2]


def test_closing_puts_the_journal_into_its_page(tmp_path: Path) -> None:
    scribe = Scribe()
    for size in (3, 2):
        with new_season(tmp_path / "s") if size == 3 else reopen(tmp_path / "s") as season:
            season.append(scribe.records(size))
        assert page_names(tmp_path / "s") == PAGES[:1]
    assert list(json.loads(page(tmp_path / "s").read_bytes())["records"]) == [
        "1",
        "2",
        "3",
        "4",
        "5",
    ]


def test_the_action_that_fills_a_page_takes_the_journal_into_it(tmp_path: Path) -> None:
    scribe = Scribe()
    with new_season(tmp_path / "s") as season:
        for _ in range(199):
            season.append(scribe.records(1))
        assert page_names(tmp_path / "s") == ["laptop-2027-04-001.jsonl"]
        season.append(scribe.records(1))
        assert page_names(tmp_path / "s") == PAGES[:1]
        season.append(scribe.records(1))
        assert page_names(tmp_path / "s") == [PAGES[0], "laptop-2027-04-002.jsonl"]
        assert len(season.records()) == 201
        assert not season.reload_if_changed()
        assert season.problems == ()
    assert page_names(tmp_path / "s") == PAGES
    sizes = [len(json.loads(page(tmp_path / "s", n).read_bytes())["records"]) for n in (1, 2)]
    assert sizes == [200, 1]
    with reopen(tmp_path / "s") as season:
        season.append(scribe.records(1))
        assert len(season.records()) == 202
    assert len(json.loads(page(tmp_path / "s", 2).read_bytes())["records"]) == 2


def test_a_journal_left_over_is_put_into_its_page_at_the_next_opening(tmp_path: Path) -> None:
    path, scribe = tmp_path / "s", Scribe()
    held = new_season(path)
    records = scribe.records(3)
    held.append(records)
    left = journal(path).read_bytes()
    held.close()
    page(path).unlink()
    for tail in (b"", left[:-30], left[:1], b"\0" * 4096, left[:-1]):  # unfinished lines
        journal(path).write_bytes(left + tail)
        looked_at = reopen(path, read_only=True)
        assert looked_at.records() == records
        assert page_names(path)[-1] == "laptop-2027-04-001.jsonl"
        with reopen(path) as season:
            assert page_names(path) == PAGES[:1]
            assert season.records() == records
            assert season.problems == ()
        assert len(json.loads(page(path).read_bytes())["records"]) == 3


def test_journals_of_other_months_and_copies_of_journals_are_told_apart(tmp_path: Path) -> None:
    path, scribes = tmp_path / "s", [Scribe(name) for name in ("a", "b", "c")]
    new_season(path).close()
    names = ("laptop-2027-03-004.jsonl", "laptop-2027-04-001 2.jsonl", "desktop-2027-04-001.jsonl")
    for name, scribe in zip(names, scribes, strict=True):
        line = line_of(map(encode, scribe.records(2)))
        (path / "records" / name).write_bytes(line)
    with reopen(path) as season:
        assert len(season.records()) == 6
        assert page_names(path) == sorted([*names[1:], "laptop-2027-03-004.json"])
        season.append(Scribe("d").records(1))
    assert page_names(path) == sorted(
        [*names[1:], "laptop-2027-03-004.json", "laptop-2027-04-002.json"]
    )


def test_an_action_is_never_split_over_pages(tmp_path: Path) -> None:
    with new_season(tmp_path / "s") as season:
        season.append(Scribe().records(1000))
        assert page_names(tmp_path / "s") == PAGES[:1]


def test_a_new_month_begins_a_new_page(tmp_path: Path) -> None:
    scribe, months = Scribe(), [datetime(2027, 4, 30, 23, 59), datetime(2027, 5, 1)]
    with new_season(tmp_path / "s") as season:
        season.close()
    season = SeasonFolder.open(tmp_path / "s", "laptop", clock=lambda: months[0])
    season.append(scribe.records(1))
    months.pop(0)
    season.append(scribe.records(1))
    names = ["laptop-2027-04-001.json", "laptop-2027-05-001.json"]
    assert page_names(tmp_path / "s") == [f"{name}l" for name in names]
    season.close()
    assert page_names(tmp_path / "s") == names


def test_repeating_an_action_adds_nothing(tmp_path: Path) -> None:
    records = Scribe().records(3)
    with new_season(tmp_path / "s") as season:
        season.append(records)
        before = journal(tmp_path / "s").read_bytes()
        season.append(records)
        season.append((records[0], records[0]))
        assert season.records() == records
        assert journal(tmp_path / "s").read_bytes() == before
    with reopen(tmp_path / "s") as season:
        season.append(records)
        assert page_names(tmp_path / "s") == PAGES[:1]


def test_an_id_cannot_be_given_to_another_record(tmp_path: Path) -> None:
    first, second = Scribe().records(2)
    other = Record(first.id, DAY, Kind.NOTED, note="another")
    with new_season(tmp_path / "s") as season:
        season.append((first,))
        with pytest.raises(InputError, match=f"the id {first.id} is taken"):
            season.append((second, other))
        with pytest.raises(InputError, match="is taken"):
            season.append((second, Record(second.id, DAY, Kind.NOTED)))
        assert season.records() == (first,)


def test_an_action_with_one_record_that_cannot_be_kept_writes_none(tmp_path: Path) -> None:
    scribe = Scribe()
    with new_season(tmp_path / "s") as season:
        with pytest.raises(InputError):
            season.append((scribe.record(), scribe.record(note="\x1b")))
        assert season.records() == ()
    assert page_names(tmp_path / "s") == []


def test_a_season_opened_for_reading_cannot_be_written_and_holds_nothing(tmp_path: Path) -> None:
    records = filled_season(tmp_path / "s", 2)
    season = reopen(tmp_path / "s", read_only=True)
    assert season.read_only
    assert season.records() == records
    with pytest.raises(SeasonReadOnlyError):
        season.append(Scribe().records(1))
    assert season.keep_today(DAY) is None
    assert sorted(p.name for p in (tmp_path / "s").iterdir()) == ["benchround.json", "records"]


def test_a_closed_season_can_be_read_and_not_written(tmp_path: Path) -> None:
    season = new_season(tmp_path / "s")
    records = Scribe().records(2)
    season.append(records)
    season.close()
    season.close()
    assert season.records() == records
    with pytest.raises(SeasonError, match="closed"):
        season.append(Scribe().records(1))
    with pytest.raises(SeasonError, match="closed"):
        season.set_aside("x")


def test_days_far_off_and_old_names_are_kept(tmp_path: Path) -> None:
    record = Record("r1", date(1, 1, 1), Kind.NOTED, note="long ago")
    with new_season(tmp_path / "s") as season:
        season.append((record,))
    assert reopen(tmp_path / "s").records() == (record,)
