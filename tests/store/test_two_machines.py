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
from benchround.store.ids import IdMaker
from benchround.store.merging import merge
from tests.store.builders import DAY, START_MS, Clock, Scribe, new_season, page, reopen

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
    "{stem} (conflicted copy 2027-05-27).json",
    "{stem} (shed's conflicted copy 2027-05-27 1).json",
    "{stem}.sync-conflict-20270527-101112-ABCDEF7.json",
    "{stem}-shed.json",
    "{stem} 2.json",
    "{stem}_conf(1).JSON",
)
"""Names of the sorts that services leave behind which keep folders alike. Common practice."""


@settings(max_examples=40, deadline=None)
@given(
    actions=st.lists(
        st.tuples(st.sampled_from(["laptop", "desktop"]), st.integers(1, 3)), max_size=8
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
            records = scribes[name].records(size)
            seasons[name].append(records)
            written += records
            file = page(root / name, machine=name)
            snapshots.append((file.name, file.read_bytes()))
        new_season(root / "meeting", "tablet").close()
        travel.shuffle(snapshots)
        for arrival, (name, data) in enumerate(snapshots):
            target = root / "meeting" / "records" / name
            if target.exists():
                copy = travel.choice(COPY_NAMES).format(stem=target.stem)
                target = target.with_name(f"{arrival} {copy}")
            assert not target.exists()
            target.write_bytes(data)
        with reopen(root / "meeting", "tablet") as meeting:
            assert meeting.problems == ()
            assert meeting.records() == tuple(sorted(written, key=lambda r: r.id))


@pytest.mark.parametrize("pattern", COPY_NAMES)
def test_conflict_copies_are_read_and_never_written_to(tmp_path: Path, pattern: str) -> None:
    path, scribe = tmp_path / "s", Scribe()
    with new_season(path) as season:
        common = scribe.records(2)
        season.append(common)
        before = page(path).read_bytes()
        ours = scribe.records(1)
        season.append(ours)
    copy = page(path).with_name(pattern.format(stem=page(path).stem))
    with new_season(tmp_path / "away") as away:
        page(tmp_path / "away").write_bytes(before)
        away.reload_if_changed()
        theirs = scribe.records(1)
        away.append(theirs)
    shutil.copy(page(tmp_path / "away"), copy)
    data = copy.read_bytes()
    with reopen(path) as season:
        assert season.records() == (*common, *ours, *theirs)
        assert season.problems == ()
        season.append(scribe.records(1))
    assert copy.read_bytes() == data
    assert len(reopen(path).records()) == 5


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
    assert sorted(p.name for p in (path / "records").iterdir()) == [
        "desktop-2027-04-001.json",
        "laptop-2027-04-001.json",
    ]


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
