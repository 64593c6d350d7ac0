"""Files in the folder are not what they were: the season opens, nothing is lost or overwritten."""

from __future__ import annotations

import json
import os
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from benchround.core.record import Record
from benchround.store import SeasonNewerError, SeasonReadOnlyError
from benchround.store.codec import encode
from benchround.store.journal import line_of
from tests.store.builders import Scribe, filled_season, journal, new_season, page, reopen


def page_names(path: Path) -> list[str]:
    return sorted(p.name for p in (path / "records").iterdir())


def test_a_damaged_page_is_named_left_alone_and_not_written_to(tmp_path: Path) -> None:
    path, records = tmp_path / "s", filled_season(tmp_path / "s", 6)
    whole = page(path).read_bytes()
    page(path).write_bytes(whole[: len(whole) // 2])
    half = page(path).read_bytes()
    with reopen(path) as season:
        kept = season.records()
        assert 0 < len(kept) < 6
        assert set(kept) < set(records)
        assert season.damaged == ("laptop-2027-04-001.json",)
        (problem,) = season.problems
        assert problem.startswith("laptop-2027-04-001.json is damaged: it breaks off")
        season.append(Scribe("other").records(1))
    assert page(path).read_bytes() == half
    assert page_names(path) == ["laptop-2027-04-001.json", "laptop-2027-04-002.json"]
    assert len(reopen(path).records()) == len(kept) + 1


def test_a_page_that_cannot_be_opened_does_not_keep_the_rest_away(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    records = filled_season(tmp_path / "s", 3)
    bad = tmp_path / "s" / "records" / "zz.json"
    bad.write_bytes(b"{}")
    real = Path.read_bytes

    def refusing(path: Path) -> bytes:
        if path == bad:
            raise PermissionError(13, "Permission denied")
        return real(path)

    monkeypatch.setattr(Path, "read_bytes", refusing)
    season = reopen(tmp_path / "s")
    assert season.records() == records
    assert "zz.json is damaged: it could not be opened" in season.problems[0]


def test_unknown_kinds_survive_the_page_being_written_again(tmp_path: Path) -> None:
    path, scribe = tmp_path / "s", Scribe()
    filled_season(path, 2)
    tables = json.loads(page(path).read_bytes())
    newer = {"id": "n1", "day": "2027-04-03", "kind": "grafted", "on": ["a", None], "x": 1e300}
    stranger = {"id": "n2", "day": "no day", "kind": "sown", "machine": "laptop"}
    tables["records"] |= {"7": newer, "8": stranger}
    tables["records"]["1"]["photo"] = "p.jpg"
    tables["newer table"] = {"1": {"a": 1}}
    page(path).write_text(json.dumps(tables))
    scribe.records(5)
    with reopen(path) as season:
        assert len(season.records()) == 2
        assert season.problems == (
            "laptop-2027-04-001.json: record 'n2' cannot be read (Invalid isoformat string:"
            " 'no day'); it is kept in the file but not shown",
            "laptop-2027-04-001.json: 1 of kind 'grafted' kept in the file but not shown;"
            " a newer benchround wrote them and can show them",
        )
        season.append(scribe.records(1))
    after = json.loads(page(path).read_bytes())
    assert set(after["records"]) == {"1", "2", "7", "8", "9"}
    assert {n: after["records"][n] for n in "1278"} == tables["records"]
    assert after["newer table"] == tables["newer table"]


def test_the_same_id_told_two_ways_is_remarked_and_the_longer_shown(tmp_path: Path) -> None:
    path, (record, *_) = tmp_path / "s", filled_season(tmp_path / "s", 2)
    copy = path / "records" / "a copy.json"
    text = page(path).read_text().replace("look 0", "look nought")
    copy.write_text(text)
    season = reopen(path)
    assert season.records()[0].note == "look nought"
    assert season.problems == (
        f"record {record.id} is told in two ways in a copy.json, laptop-2027-04-001.json;"
        " the longer one is shown",
    )


def test_files_of_other_programs_in_the_folder_are_left_alone(tmp_path: Path) -> None:
    path, records = tmp_path / "s", filled_season(tmp_path / "s", 2)
    strangers = ["._laptop-2027-04-001.json", ".hidden.json", "notes.txt", ".desktop-x.json.part"]
    for name in strangers:
        (path / "records" / name).write_bytes(b"\0\1\2")
    (path / "records" / "folder.json").mkdir()
    with reopen(path) as season:
        assert season.records() == records
        assert season.problems == ()
        season.append(Scribe("other").records(1))
    assert set(strangers) < set(page_names(path))


def test_a_half_written_file_of_this_computer_is_swept_away(tmp_path: Path) -> None:
    path = tmp_path / "s"
    filled_season(path, 2)
    ours = path / "records" / ".laptop-2027-04-001.json.part"
    theirs = path / "records" / ".laptop-2-2027-04-001.json.part"
    for part in (ours, theirs):
        part.write_bytes(b"{")
    reopen(path).close()
    assert not ours.exists()
    assert theirs.exists()


def test_a_half_written_file_under_another_name_is_swept_away_when_a_day_old(
    tmp_path: Path,
) -> None:
    path = tmp_path / "s"
    filled_season(path, 1)
    part = path / "records" / ".stick-2027-04-001 (kept 2027-04-03).json.part"
    part.write_bytes(b"{")
    reopen(path).close()
    assert part.exists()  # the other computer may be about to finish it
    day_ago_s = time.time() - 25 * 60 * 60
    os.utime(part, (day_ago_s, day_ago_s))
    reopen(path, read_only=True).close()
    assert part.exists()
    reopen(path).close()
    assert not part.exists()


def test_a_damaged_own_file_leaves_the_season_readable(tmp_path: Path) -> None:
    path, records = tmp_path / "s", filled_season(tmp_path / "s", 2)
    for damage in (b"{", b"{}", b'{"season": {"1": {"format": "one"}}}', None):
        (path / "benchround.json").unlink()
        if damage is not None:
            (path / "benchround.json").write_bytes(damage)
        with reopen(path) as season:
            assert season.records() == records
            assert season.read_only
            assert season.name == "s"
            assert season.created is None
            assert "benchround.json is" in season.problems[0]
            with pytest.raises(SeasonReadOnlyError):
                season.append(Scribe().records(1))
        (path / "benchround.json").write_bytes(b"")


def test_a_season_of_a_newer_program_is_refused_and_let_go(tmp_path: Path) -> None:
    path = tmp_path / "s"
    filled_season(path, 1)
    own = path / "benchround.json"
    own.write_text(own.read_text().replace('"format": 1', '"format": 2'))
    with pytest.raises(SeasonNewerError, match="format 2; this one knows 1"):
        reopen(path)
    assert not list(path.glob("*.lock"))


def test_a_season_without_its_records_folder_as_git_brings_it_opens(tmp_path: Path) -> None:
    new_season(tmp_path / "s").close()
    (tmp_path / "s" / "records").rmdir()
    assert reopen(tmp_path / "s", read_only=True).records() == ()
    with reopen(tmp_path / "s") as season:
        season.append(Scribe().records(1))
        assert len(season.records()) == 1


def test_records_removed_from_outside_are_told_until_they_are_back(tmp_path: Path) -> None:
    path = tmp_path / "s"
    filled_season(path, 3)
    with reopen(path) as season:
        data = page(path).read_bytes()
        page(path).unlink()
        assert season.reload_if_changed()
        assert season.records() == ()
        assert "3 records are missing since" in season.problems[0]
        page(path).write_bytes(data)
        assert season.reload_if_changed()
        assert len(season.records()) == 3
        assert season.problems == ()
        assert not season.reload_if_changed()


def test_a_page_changed_from_outside_is_read_before_it_is_written(tmp_path: Path) -> None:
    path, scribe = tmp_path / "s", Scribe()
    with new_season(path) as season:
        season.append(scribe.records(1))
    with reopen(path) as season:
        season.append(scribe.records(1))
        tables = json.loads(page(path).read_bytes())
        tables["records"]["9"] = {"id": "by hand", "day": "2027-04-01", "kind": "noted"}
        page(path).write_text(json.dumps(tables))
        season.append(scribe.records(1))
        assert len(season.records()) == 4
    again = reopen(path)
    assert [r.id for r in again.records()][-1] == "by hand"
    assert len(again.records()) == 4


def test_a_page_that_appeared_from_outside_is_not_written_over(tmp_path: Path) -> None:
    path, records = tmp_path / "s", filled_season(tmp_path / "other", 2)
    with new_season(path) as season:
        page(path).write_bytes(page(tmp_path / "other").read_bytes())
        season.append(Scribe("desktop").records(1))
        assert set(records) < set(season.records())
        assert len(season.records()) == 3


@pytest.mark.parametrize("file", [page, journal])
def test_a_file_changed_into_rubbish_while_open_is_not_written_over(
    tmp_path: Path, file: Callable[[Path], Path]
) -> None:
    path = tmp_path / "s"
    filled_season(path, 1)
    rubbish = b"rubbish\n"
    with reopen(path) as season:
        season.append(Scribe("b").records(1))
        file(path).write_bytes(rubbish)
        season.append(Scribe("c").records(1))
        assert file(path).read_bytes() == rubbish
        assert journal(path, 2).exists()
        assert season.damaged == (file(path).name,)
        assert len(season.records()) == 2
    assert file(path).read_bytes() == rubbish
    assert page(path, 2).exists()


def journal_of_three(path: Path) -> tuple[tuple[Record, ...], bytes]:
    """Three actions of two records left over in a journal, as after a crash."""
    scribe = Scribe()
    records = scribe.records(6)
    new_season(path).close()
    actions = (records[:2], records[2:4], records[4:])
    data = b"".join(line_of(map(encode, action)) for action in actions)
    journal(path).write_bytes(data)
    return records, data


def test_a_damaged_journal_is_named_left_alone_and_not_written_to(tmp_path: Path) -> None:
    path = tmp_path / "s"
    records, data = journal_of_three(path)
    hurt = data.replace(b"look 2", b"l\xff\xfek 2")
    journal(path).write_bytes(hurt)
    with reopen(path) as season:
        assert season.records() == (*records[:2], *records[3:])
        assert season.damaged == (journal(path).name,)
        (problem,) = season.problems
        assert problem.startswith(
            "laptop-2027-04-001.jsonl is damaged: a line in it is not as written; 5 records"
        )
        season.append(Scribe("other").records(1))
        assert page_names(path) == ["laptop-2027-04-001.jsonl", "laptop-2027-04-002.jsonl"]
    assert journal(path).read_bytes() == hurt
    with reopen(path) as season:
        before = season.records()
        assert len(before) == 6
        moved = season.set_aside(journal(path).name)
        assert moved == path / "aside" / journal(path).name
        assert moved.read_bytes() == hurt
        assert season.records() == before
        assert season.problems == ()
    assert page_names(path) == [
        "laptop-2027-04-001 (rescued).json",
        "laptop-2027-04-002.json",
    ]


def test_a_journal_changed_by_hand_is_shown_and_told(tmp_path: Path) -> None:
    path = tmp_path / "s"
    records, data = journal_of_three(path)
    journal(path).write_bytes(data.replace(b"look 2", b"look again"))
    season = reopen(path)
    assert season.records()[2].note == "look again"
    assert len(season.records()) == len(records)
    assert season.damaged == (journal(path).name,)


def test_a_journal_before_a_damaged_page_waits_until_that_is_set_aside(tmp_path: Path) -> None:
    path = tmp_path / "s"
    records, data = journal_of_three(path)
    page(path).write_bytes(b"rubbish")
    with reopen(path) as season:
        assert season.records() == records
        season.append(Scribe("other").records(1))
    assert journal(path).read_bytes() == data
    assert page(path).read_bytes() == b"rubbish"
    with reopen(path) as season:
        season.set_aside(page(path).name)
    with reopen(path) as season:
        assert page_names(path) == ["laptop-2027-04-001.json", "laptop-2027-04-002.json"]
        assert len(season.records()) == 7


def test_numbers_used_twice_in_a_page_are_not_lost_when_a_journal_waits(tmp_path: Path) -> None:
    path = tmp_path / "s"
    records, data = journal_of_three(path)
    page(path).write_text(
        '{\n"records": {\n'
        '"1": {"id": "a", "day": "2027-04-03", "kind": "noted"},\n'
        '"1": {"id": "b", "day": "2027-04-03", "kind": "noted"}\n}\n}\n'
    )
    joined = page(path).read_bytes()
    with reopen(path) as season:
        assert len(season.records()) == len(records) + 2
    assert page(path).read_bytes() == joined
    assert journal(path).read_bytes() == data


def test_unknown_kinds_in_a_journal_come_into_the_page_word_for_word(tmp_path: Path) -> None:
    path = tmp_path / "s"
    new_season(path).close()
    newer = {"id": "n1", "day": "2027-04-03", "kind": "grafted", "on": ["a", None], "x": 1e300}
    journal(path).write_bytes(line_of([newer, {"no": "id"}]))
    with reopen(path) as season:
        assert season.records() == ()
        assert "1 of kind 'grafted' kept in the file" in season.problems[1]
    assert json.loads(page(path).read_bytes()) == {"records": {"1": newer, "2": {"no": "id"}}}


def test_records_of_a_journal_removed_from_outside_are_told(tmp_path: Path) -> None:
    path, scribe = tmp_path / "s", Scribe()
    with new_season(path) as season:
        season.append(scribe.records(3))
        data = journal(path).read_bytes()
        journal(path).unlink()
        season.append(scribe.records(1))
        assert len(season.records()) == 1
        assert "3 records are missing since" in season.problems[0]
        journal(path).with_name("laptop-2027-04-001 2.jsonl").write_bytes(data)
        assert season.reload_if_changed()
        assert len(season.records()) == 4
        assert season.problems == ()
