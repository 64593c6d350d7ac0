"""The power goes at any moment: what was acknowledged is there, and every file can be read."""

from __future__ import annotations

import errno
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.core.errors import SeasonError
from benchround.store.disk import SYSTEM_DISK
from benchround.store.folder import SeasonFolder
from tests.store.builders import START_MS, Scribe, new_season, reopen
from tests.store.disks import AfterPowerCut, Event, FailingDisk, ForgetfulDisk, WatchedDisk

LATER = Scribe("later", START_MS + 86_400_000)

Acknowledged = tuple[int, frozenset[str]]
"""How many calls had been made when an action returned, and the ids it wrote."""


def write(root: Path, sizes: list[int], disk: WatchedDisk) -> list[Acknowledged]:
    """Write actions of these sizes; the season begins with one page almost full.

    So the calls hold the beginning of a journal, lines added to it, and a journal put into its page
    both in the midst of recording and at closing.
    """
    scribe = Scribe()
    acknowledged = []
    with new_season(root, disk=disk) as season:
        for size in (198, *sizes):
            records = scribe.records(size)
            season.append(records)
            acknowledged.append((len(disk.events), frozenset(r.id for r in records)))
    return acknowledged


def after(
    root: Path, elsewhere: Path, events: list[Event], names: int, share: float, zeros: bool = False
) -> SeasonFolder:
    """The season as it is found after the power went when these calls had been made."""
    cut = AfterPowerCut(events)
    cut.apply(names)
    for path, data in cut.files(share, zeros):
        if path.suffix == ".lock":  # names this very process, which a power cut would have ended
            continue
        target = elsewhere / path.relative_to(root)
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(data)
    looked_at = reopen(elsewhere, read_only=True)
    season = reopen(elsewhere)
    assert looked_at.records() == season.records()
    assert looked_at.damaged == season.damaged
    return season


def check(season: SeasonFolder, actions: list[Acknowledged], calls: int) -> None:
    """Every acknowledged action is there whole, at most the next one besides, nothing broken."""
    found = {record.id for record in season.records()}
    assert season.problems == ()
    done = [ids for made, ids in actions if made <= calls]
    begun = actions[len(done)][1] if len(done) < len(actions) else frozenset()
    assert found in (frozenset().union(*done), begun.union(*done))
    season.append((LATER.record(),))
    assert len(season.records()) == len(found) + 1


def first_action_end(actions: list[Acknowledged]) -> int:
    return actions[0][0]


@settings(max_examples=60, deadline=None)
@given(st.data(), st.lists(st.integers(1, 4), min_size=1, max_size=4))
def test_any_prefix_of_the_calls_is_a_valid_season(data: st.DataObject, sizes: list[int]) -> None:
    with tempfile.TemporaryDirectory() as made:
        root, elsewhere, disk = Path(made, "season"), Path(made, "after"), WatchedDisk()
        actions = write(root, sizes, disk)
        calls = data.draw(st.integers(first_action_end(actions), len(disk.events)))
        events = disk.events[:calls]
        names = data.draw(st.integers(0, len(AfterPowerCut(events).waiting)))
        share = data.draw(st.sampled_from([0.0, 0.01, 0.5, 0.99, 1.0]))
        zeros = data.draw(st.booleans())
        with after(root, elsewhere, events, names, share, zeros) as season:
            check(season, actions, calls)


def test_every_moment_of_three_actions(tmp_path: Path) -> None:
    disk = WatchedDisk()
    actions = write(tmp_path / "season", [1, 3, 2], disk)
    states = 0
    for calls in range(first_action_end(actions), len(disk.events) + 1):
        events = disk.events[:calls]
        for names in range(len(AfterPowerCut(events).waiting) + 1):
            for share, zeros in ((0.0, False), (0.5, False), (0.5, True)):
                elsewhere = tmp_path / f"after-{calls}-{names}-{share}-{zeros}"
                with after(tmp_path / "season", elsewhere, events, names, share, zeros) as season:
                    check(season, actions, calls)
                states += 1
    calls_made = {event.call for event in disk.events}
    assert calls_made >= {
        "create new",
        "open",
        "write",
        "fsync",
        "replace",
        "sync folder",
        "remove",
    }
    assert states > 100


@pytest.mark.parametrize("call", ["write", "fsync"])
def test_every_moment_of_a_line_that_was_taken_back(tmp_path: Path, call: str) -> None:
    disk, scribe, acknowledged = FailingDisk(call, errno.EIO, times=1), Scribe(), []
    with new_season(tmp_path / "season", disk=disk) as season:
        for number in range(4):
            records = scribe.records(2)
            disk.failing = number == 2
            try:
                season.append(records)
            except SeasonError:
                assert number == 2
            else:
                acknowledged.append((len(disk.events), frozenset(r.id for r in records)))
    told_off = disk.events.index(next(e for e in disk.events if e.call == "truncate")) + 2
    for calls in range(told_off, len(disk.events) + 1):
        for share in (0.0, 0.5, 1.0):
            elsewhere = tmp_path / f"after-{calls}-{share}"
            events = disk.events[:calls]
            with after(tmp_path / "season", elsewhere, events, 99, share) as season:
                check(season, acknowledged, calls)


def test_the_check_notices_bytes_that_were_not_forced(tmp_path: Path) -> None:
    disk = ForgetfulDisk()
    actions = write(tmp_path / "season", [1], disk)
    calls = actions[1][0]
    season = after(tmp_path / "season", tmp_path / "after", disk.events[:calls], 99, 0.5)
    with season, pytest.raises(AssertionError):
        check(season, actions, calls)


def test_the_real_disk_forces_files_and_folders(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    forced: list[int] = []
    monkeypatch.setattr("os.fsync", forced.append)
    handle = SYSTEM_DISK.create(tmp_path / "x")
    SYSTEM_DISK.fsync(handle)
    SYSTEM_DISK.close(handle)
    SYSTEM_DISK.sync_folder(tmp_path)
    assert len(forced) == 2
    assert forced[0] == handle
