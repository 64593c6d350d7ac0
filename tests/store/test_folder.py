from __future__ import annotations

import json
from datetime import date, datetime
from pathlib import Path

import pytest

from benchround.core.errors import InputError, SeasonError
from benchround.core.record import Kind, Record
from benchround.store import SeasonReadOnlyError
from benchround.store.folder import SeasonFolder
from tests.store.builders import DAY, Scribe, filled_season, new_season, page, reopen


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


def test_a_full_page_is_followed_by_a_new_one(tmp_path: Path) -> None:
    scribe = Scribe()
    with new_season(tmp_path / "s") as season:
        for _ in range(3):
            season.append(scribe.records(90))
        assert page_names(tmp_path / "s") == ["laptop-2027-04-001.json"]
        season.append(scribe.records(1))
        assert page_names(tmp_path / "s") == ["laptop-2027-04-001.json", "laptop-2027-04-002.json"]
    with reopen(tmp_path / "s") as season:
        season.append(scribe.records(1))
        assert len(season.records()) == 272
    assert len(json.loads(page(tmp_path / "s", 2).read_bytes())["records"]) == 2


def test_an_action_is_never_split_over_pages(tmp_path: Path) -> None:
    with new_season(tmp_path / "s") as season:
        season.append(Scribe().records(1000))
    assert page_names(tmp_path / "s") == ["laptop-2027-04-001.json"]


def test_a_new_month_begins_a_new_page(tmp_path: Path) -> None:
    scribe, months = Scribe(), [datetime(2027, 4, 30, 23, 59), datetime(2027, 5, 1)]
    with new_season(tmp_path / "s") as season:
        season.close()
    season = SeasonFolder.open(tmp_path / "s", "laptop", clock=lambda: months[0])
    season.append(scribe.records(1))
    months.pop(0)
    season.append(scribe.records(1))
    assert page_names(tmp_path / "s") == ["laptop-2027-04-001.json", "laptop-2027-05-001.json"]


def test_repeating_an_action_adds_nothing(tmp_path: Path) -> None:
    records = Scribe().records(3)
    with new_season(tmp_path / "s") as season:
        season.append(records)
        before = page(tmp_path / "s").read_bytes()
        season.append(records)
        season.append((records[0], records[0]))
        assert season.records() == records
        assert page(tmp_path / "s").read_bytes() == before


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
