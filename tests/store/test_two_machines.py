"""Two computers, one folder: whatever order files travel in, all tell the same story."""

from __future__ import annotations

import random
import shutil
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.core.record import Kind, Record, live
from benchround.store.codec import encode
from benchround.store.ids import IdMaker
from benchround.store.journal import line_of
from benchround.store.merging import merge
from tests.store.builders import (
    DAY,
    START_MS,
    Clock,
    Scribe,
    journal,
    new_season,
    page,
    reopen,
)

RECORDS = st.lists(
    st.builds(
        Record,
        id=st.sampled_from(["a", "b", "c", "d", "e"]),
        day=st.just(DAY),
        kind=st.sampled_from([Kind.SOWN, Kind.LOST]),
        figures=st.dictionaries(st.just("count"), st.sampled_from([1, 1.0, True, "1"])),
        note=st.sampled_from(["", "x", "y", "longer"]),
    ),
    max_size=6,
).map(tuple)


def told(records: tuple[Record, ...]) -> list[str]:
    """Records with the types of their figures, which `==` on numbers passes over."""
    return [repr(record) for record in records]


@given(RECORDS, RECORDS)
def test_merging_does_not_depend_on_who_comes_first(
    a: tuple[Record, ...], b: tuple[Record, ...]
) -> None:
    assert told(merge(a, b).records) == told(merge(b, a).records)
    assert merge(a, b).disagreements == merge(b, a).disagreements


@given(RECORDS, RECORDS, RECORDS)
def test_merging_three_does_not_depend_on_which_two_meet_first(
    a: tuple[Record, ...], b: tuple[Record, ...], c: tuple[Record, ...]
) -> None:
    left = merge(merge(a, b).records, c).records
    assert told(left) == told(merge(a, merge(b, c).records).records)


@given(RECORDS)
def test_merging_with_itself_changes_nothing(a: tuple[Record, ...]) -> None:
    once = merge(a, ()).records
    assert told(merge(once, once).records) == told(once)
    assert merge(once, once).disagreements == ()


def test_merging_is_the_union_of_ids() -> None:
    a, b = Scribe("laptop").records(3), Scribe("desktop").records(2)
    merged = merge(a, (*b, a[1]))
    assert set(merged.records) == {*a, *b}
    assert merged.disagreements == ()
    assert [r.id for r in merged.records] == sorted(r.id for r in (*a, *b))


COPY_NAMES = (
    "{stem} (conflicted copy 2027-05-27){ending}",
    "{stem} (shed's conflicted copy 2027-05-27 1){ending}",
    "{stem}.sync-conflict-20270527-101112-ABCDEF7{ending}",
    "{stem}-shed{ending}",
    "{stem} 2{ending}",
    "{stem}_conf(1){large_ending}",
)
"""Names of the sorts that services leave behind which keep folders alike. Common practice."""


def copy_of(file: Path, pattern: str, before: str = "") -> Path:
    """The name a service gives to a second copy of a file."""
    ending = file.suffix
    copy = pattern.format(stem=file.stem, ending=ending, large_ending=ending.upper())
    return file.with_name(f"{before}{copy}")


CLOSE = 0
"""Stands for closing and opening again, which puts the journal into its page."""


@settings(max_examples=40, deadline=None)
@given(
    actions=st.lists(
        st.tuples(st.sampled_from(["laptop", "desktop"]), st.sampled_from([CLOSE, 1, 2, 3])),
        max_size=8,
    ),
    travel=st.randoms(use_true_random=False),
)
def test_files_copied_in_any_order_give_the_same_records(
    actions: list[tuple[str, int]], travel: random.Random
) -> None:
    with tempfile.TemporaryDirectory() as made:
        root = Path(made)
        scribes = {name: Scribe(name) for name in ("laptop", "desktop")}
        seasons = {name: new_season(root / name, name) for name in scribes}
        written: list[Record] = []
        snapshots: list[tuple[str, bytes]] = []
        for name, size in actions:
            if size == CLOSE:
                seasons[name].close()
                seasons[name] = reopen(root / name, name)
            records = scribes[name].records(size)
            seasons[name].append(records)
            written += records
            for file in (root / name / "records").iterdir():
                snapshots.append((file.name, file.read_bytes()))
        new_season(root / "meeting", "tablet").close()
        travel.shuffle(snapshots)
        for arrival, (name, data) in enumerate(snapshots):
            target = root / "meeting" / "records" / name
            if target.exists():
                target = copy_of(target, travel.choice(COPY_NAMES), f"{arrival} ")
            assert not target.exists()
            target.write_bytes(data)
        with reopen(root / "meeting", "tablet") as meeting:
            assert meeting.problems == ()
            assert meeting.records() == tuple(sorted(written, key=lambda r: r.id))


@pytest.mark.parametrize("pattern", COPY_NAMES)
def test_conflict_copies_are_read_and_never_written_to(tmp_path: Path, pattern: str) -> None:
    path, scribe = tmp_path / "s", Scribe()
    common = scribe.records(2)
    with new_season(path) as season:
        season.append(common)
    before = page(path).read_bytes()
    ours, theirs = scribe.records(1), scribe.records(1)
    with reopen(path) as season:
        season.append(ours)
    new_season(tmp_path / "away").close()
    page(tmp_path / "away").write_bytes(before)
    with reopen(tmp_path / "away") as away:
        away.append(theirs)
    copy = copy_of(page(path), pattern)
    shutil.copy(page(tmp_path / "away"), copy)
    data = copy.read_bytes()
    with reopen(path) as season:
        assert season.records() == (*common, *ours, *theirs)
        assert season.problems == ()
        season.append(scribe.records(1))
    assert copy.read_bytes() == data
    assert len(reopen(path).records()) == 5


@pytest.mark.parametrize("pattern", COPY_NAMES)
def test_conflict_copies_of_a_journal_are_read_and_never_written_to(
    tmp_path: Path, pattern: str
) -> None:
    path, scribe = tmp_path / "s", Scribe()
    common, ours, theirs = scribe.records(2), scribe.records(1), scribe.records(2)
    season = new_season(path)
    season.append(common)
    copy = copy_of(journal(path), pattern)
    data = journal(path).read_bytes() + line_of(map(encode, theirs))
    season.append(ours)
    copy.write_bytes(data)
    assert season.reload_if_changed()
    assert season.records() == (*common, *ours, *theirs)
    last = scribe.records(1)
    season.append(last)
    season.close()
    assert copy.read_bytes() == data
    with reopen(path) as again:
        assert again.records() == (*common, *ours, *theirs, *last)
        assert again.problems == ()
    assert copy.read_bytes() == data


@pytest.mark.parametrize("mark", [".conflict1", "~", ".orig", "~HEAD", " (copy)"])
def test_copies_with_a_mark_behind_the_ending_are_told(tmp_path: Path, mark: str) -> None:
    path, scribe = tmp_path / "s", Scribe()
    with new_season(path) as season:
        season.append(scribe.records(1))
    copy = page(path).with_name(page(path).name + mark)
    new_season(tmp_path / "away").close()
    with reopen(tmp_path / "away") as away:
        away.append(scribe.records(1))
    shutil.copy(page(tmp_path / "away"), copy)
    with reopen(path) as season:
        assert season.problems[0].startswith(f"{copy.name} lies among the records and is not read")
        copy.rename(copy.with_name(f"{copy.name}.json"))
        assert season.reload_if_changed()
        assert (season.problems, len(season.records())) == ((), 2)


def test_two_computers_write_in_one_folder_at_once_and_see_each_other(tmp_path: Path) -> None:
    path = tmp_path / "s"
    laptop = new_season(path, "laptop")
    desktop = reopen(path, "desktop")
    assert not laptop.read_only
    assert not desktop.read_only
    one, two = Scribe("laptop").records(2), Scribe("desktop").records(2)
    laptop.append(one)
    desktop.append(two)
    assert laptop.reload_if_changed()
    assert desktop.reload_if_changed()
    assert not laptop.reload_if_changed()
    assert laptop.records() == desktop.records() == tuple(sorted((*one, *two), key=lambda r: r.id))
    names = ["desktop-2027-04-001.json", "laptop-2027-04-001.json"]
    assert sorted(p.name for p in (path / "records").iterdir()) == [f"{n}l" for n in names]
    laptop.close()
    assert desktop.reload_if_changed()
    assert desktop.problems == ()
    assert desktop.records() == laptop.records()
    third = Scribe("third").records(1)
    desktop.append(third)
    desktop.close()
    assert sorted(p.name for p in (path / "records").iterdir()) == names
    assert set(reopen(path).records()) == {*one, *two, *third}


def test_a_journal_that_went_before_its_page_arrived_is_told_so(tmp_path: Path) -> None:
    path = tmp_path / "s"
    laptop = new_season(path, "laptop")
    laptop.append(Scribe("laptop").records(2))
    with reopen(path, "desktop") as desktop:
        laptop.close()
        whole = page(path).read_bytes()
        page(path).unlink()  # as a service may have it, which brings the removal first
        assert desktop.reload_if_changed()
        assert "its page may still be on the way" in desktop.problems[0]
        page(path).write_bytes(whole)
        assert desktop.reload_if_changed()
        assert desktop.problems == ()


def test_a_withdrawal_on_a_computer_whose_clock_is_slow_holds(tmp_path: Path) -> None:
    path = tmp_path / "s"
    laptop = new_season(path, "laptop")
    sown = Scribe("laptop").record(Kind.SOWN)
    laptop.append((sown,))
    desktop = reopen(path, "desktop")
    slow = Clock(START_MS - 86_400_000)
    ids = IdMaker(desktop.last_id, slow, random.Random(2).randbytes)
    undo = Record(ids.next(), DAY, Kind.WITHDRAWN, figures={"record": sown.id})
    desktop.append((undo,))
    redo = Record(ids.next(), DAY, Kind.WITHDRAWN, figures={"record": undo.id})
    assert live(desktop.records()) == ()
    desktop.append((redo,))
    laptop.reload_if_changed()
    assert live(laptop.records()) == (sown,)
