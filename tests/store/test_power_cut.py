"""The power goes at any moment: what was acknowledged is there, and every file can be read."""

from __future__ import annotations

import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.store.disk import SYSTEM_DISK
from benchround.store.folder import SeasonFolder
from tests.store.builders import Scribe, new_season, reopen
from tests.store.disks import AfterPowerCut, Event, ForgetfulDisk, WatchedDisk

Acknowledged = tuple[int, frozenset[str]]
"""How many calls had been made when an action returned, and the ids it wrote."""


def write(root: Path, sizes: list[int], disk: WatchedDisk) -> list[Acknowledged]:
    """Write actions of these sizes; the season begins with one page almost full."""
    scribe = Scribe()
    acknowledged = []
    with new_season(root, disk=disk) as season:
        for size in (198, *sizes):
            records = scribe.records(size)
            season.append(records)
            acknowledged.append((len(disk.events), frozenset(r.id for r in records)))
    return acknowledged


def after(
    root: Path, elsewhere: Path, events: list[Event], names: int, share: float
) -> SeasonFolder:
    """The season as it is found after the power went when these calls had been made."""
    cut = AfterPowerCut(events)
    cut.apply(names)
    for path, data in cut.files(share):
        if path.suffix == ".lock":  # names this very process, which a power cut would have ended
            continue
        target = elsewhere / path.relative_to(root)
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(data)
    return reopen(elsewhere)


def check(season: SeasonFolder, actions: list[Acknowledged], calls: int) -> None:
    """Every acknowledged action is there whole, at most the next one besides, nothing broken."""
    found = {record.id for record in season.records()}
    assert season.problems == ()
    done = [ids for made, ids in actions if made <= calls]
    begun = actions[len(done)][1] if len(done) < len(actions) else frozenset()
    assert found in (frozenset().union(*done), begun.union(*done))


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
        with after(root, elsewhere, events, names, share) as season:
            check(season, actions, calls)


def test_every_moment_of_three_actions(tmp_path: Path) -> None:
    disk = WatchedDisk()
    actions = write(tmp_path / "season", [1, 3, 2], disk)
    states = 0
    for calls in range(first_action_end(actions), len(disk.events) + 1):
        events = disk.events[:calls]
        for names in range(len(AfterPowerCut(events).waiting) + 1):
            for share in (0.0, 0.5):
                elsewhere = tmp_path / f"after-{calls}-{names}-{share}"
                with after(tmp_path / "season", elsewhere, events, names, share) as season:
                    check(season, actions, calls)
                states += 1
    assert states > 30


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
