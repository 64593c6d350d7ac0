"""The disk refuses: a plain sentence, nothing half written, the same records in memory."""

from __future__ import annotations

import errno
import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from benchround.core.errors import SeasonError
from benchround.store.codec import encode
from benchround.store.disk import write_whole
from benchround.store.errors import SeasonReadOnlyError, SeasonUnsureError
from benchround.store.folder import SeasonFolder
from benchround.store.journal import line_of
from tests.store.builders import Scribe, filled_season, journal, new_season, page, reopen
from tests.store.disks import FailingDisk, WatchedDisk

ROOT = Path(__file__).parents[2]

LINE, PAGE = 3, 200
"""Sizes of actions: one that becomes a line in the journal, one that fills the page."""

REFUSALS = [
    (LINE, "write", errno.ENOSPC, "is full; free some room"),
    (LINE, "write", errno.EDQUOT, "is full"),
    (LINE, "write", errno.EIO, "check the disk"),
    (LINE, "fsync", errno.ENOSPC, "is full"),
    (LINE, "fsync", errno.EIO, "check the disk"),
    (LINE, "open", errno.EROFS, "can only be read"),
    (LINE, "open", errno.EACCES, "you may not write"),
    (LINE, "open", errno.ENOENT, "is gone; reconnect"),
    (PAGE, "write", errno.ENOSPC, "is full; free some room"),
    (PAGE, "write", errno.EIO, "check the disk"),
    (PAGE, "fsync", errno.ENOSPC, "is full"),
    (PAGE, "fsync", errno.EIO, "check the disk"),
    (PAGE, "create", errno.EROFS, "can only be read"),
    (PAGE, "create", errno.EACCES, "you may not write"),
    (PAGE, "create", errno.ENOENT, "is gone; reconnect"),
    (PAGE, "create", errno.ENOSPC, "is full"),
    (PAGE, "replace", errno.EACCES, "you may not write"),
    (PAGE, "replace", errno.EROFS, "can only be read"),
    (PAGE, "replace", errno.EIO, "check the disk"),
]


def files(path: Path) -> dict[str, bytes]:
    found = (p for p in path.rglob("*") if p.is_file() and p.suffix != ".lock")
    return {p.relative_to(path).as_posix(): p.read_bytes() for p in found}


@pytest.mark.parametrize(("size", "call", "number", "sentence"), REFUSALS)
def test_a_refused_write_changes_nothing(
    tmp_path: Path, size: int, call: str, number: int, sentence: str
) -> None:
    disk, scribe = FailingDisk(call, number, times=1), Scribe()
    path = tmp_path / "s"
    with new_season(path, disk=disk) as season:
        season.append(scribe.records(2))
        before, on_disk = season.records(), files(path)
        refused = scribe.records(size)
        disk.failing = True
        with pytest.raises(SeasonError, match=sentence) as refusal:
            season.append(refused)
        assert not isinstance(refusal.value, SeasonUnsureError)
        assert season.records() == before
        assert files(path) == on_disk
        assert not season.reload_if_changed()
        season.append(refused)
        assert season.records() == before + refused
        assert not season.reload_if_changed()
    assert reopen(path).records() == before + refused


@pytest.mark.parametrize("call", ["create new", "sync folder"])
def test_a_journal_that_cannot_be_begun_is_not_left_behind(tmp_path: Path, call: str) -> None:
    disk, records = FailingDisk(call, errno.EIO, times=1), Scribe().records(2)
    path = tmp_path / "s"
    with new_season(path, disk=disk) as season:
        disk.failing = True
        with pytest.raises(SeasonError, match="nothing was recorded") as refusal:
            season.append(records)
        assert not isinstance(refusal.value, SeasonUnsureError)
        assert list((path / "records").iterdir()) == []
        season.append(records)
        assert season.records() == records
    assert reopen(path).records() == records


@pytest.mark.parametrize(("size", "call"), [(LINE, "fsync"), (PAGE, "sync folder")])
def test_a_disk_that_does_not_confirm_is_told_apart_and_the_action_may_be_repeated(
    tmp_path: Path, size: int, call: str
) -> None:
    disk, scribe = FailingDisk(call, errno.EIO), Scribe()
    with new_season(tmp_path / "s", disk=disk) as season:
        season.append(scribe.records(1))
        before, action = season.records(), scribe.records(size)
        disk.failing = True
        with pytest.raises(SeasonUnsureError, match="look whether the record is there"):
            season.append(action)
        assert season.records() == before
        with pytest.raises(SeasonError):
            season.append(action)
        disk.failing = False
        disk.events.clear()
        season.append(action)
        assert season.records() == before + action
        forced = [(event.call, event.path.name) for event in disk.events]
        assert forced.index(("fsync", ".laptop-2027-04-001.json.part")) < forced.index(
            ("sync folder", "records")
        )
    assert reopen(tmp_path / "s").records() == before + action


def test_a_line_that_cannot_be_taken_back_is_never_written_behind(tmp_path: Path) -> None:
    disk, scribe, path = FailingDisk("write", errno.ENOSPC), Scribe(), tmp_path / "s"
    disk.calls.add("truncate")
    season = new_season(path, disk=disk)
    season.append(scribe.records(2))
    before = season.records()
    disk.failing = True
    with pytest.raises(SeasonUnsureError):
        season.append(scribe.records(2))
    half = (path / "records" / "laptop-2027-04-001.jsonl").read_bytes()
    assert not half.endswith(b"\n")
    disk.failing = False
    later = scribe.records(1)
    season.append(later)
    assert season.records() == before + later
    assert season.problems == ()
    copied = shutil.copytree(path, tmp_path / "copied", ignore=shutil.ignore_patterns("*.lock"))
    assert reopen(copied).records() == before + later
    season.close()


@pytest.mark.parametrize("size", [LINE, PAGE])
def test_after_an_unconfirmed_write_another_look_shows_what_is_on_the_disk(
    tmp_path: Path, size: int
) -> None:
    disk = FailingDisk("sync folder" if size == PAGE else "fsync", errno.EIO)
    disk.calls.add("truncate")
    with new_season(tmp_path / "s", disk=disk) as season:
        season.append(Scribe("b").records(1))
        before = season.records()
        disk.failing = True
        action = Scribe().records(size)
        with pytest.raises(SeasonUnsureError):
            season.append(action)
        assert season.reload_if_changed()
        assert set(season.records()) == {*before, *action}


def test_a_journal_replaced_while_a_line_is_added_is_told_and_the_action_may_be_repeated(
    tmp_path: Path,
) -> None:
    journal = tmp_path / "s" / "records" / "laptop-2027-04-001.jsonl"

    class Meddling(WatchedDisk):
        meddle = False

        def fsync(self, handle: int) -> None:
            super().fsync(handle)
            if self.meddle:
                self.meddle = False
                other = journal.with_name("other")
                other.write_bytes(before)
                other.replace(journal)

    disk, scribe = Meddling(), Scribe()
    with new_season(tmp_path / "s", disk=disk) as season:
        season.append(scribe.records(1))
        before = journal.read_bytes()
        disk.meddle = True
        action = scribe.records(2)
        with pytest.raises(SeasonUnsureError, match="changed from outside while it was written"):
            season.append(action)
        season.append(action)
        assert len(season.records()) == 3
    assert reopen(tmp_path / "s").records() == season.records()


def test_no_line_is_added_behind_an_unfinished_one(tmp_path: Path) -> None:
    path, scribe = tmp_path / "s", Scribe()
    new_season(path).close()
    records = scribe.records(2)
    journal(path).write_bytes(line_of(map(encode, records)) + b'{"check": "00')
    disk = FailingDisk("create", errno.ENOSPC, times=1)
    disk.failing = True
    season = reopen(path, disk=disk)  # the journal cannot be put into its page
    assert journal(path).exists()
    added = scribe.records(1)
    season.append(added)
    assert season.records() == records + added
    copied = shutil.copytree(path, tmp_path / "copied", ignore=shutil.ignore_patterns("*.lock"))
    season.close()
    for folder in (path, copied):
        with reopen(folder) as again:
            assert again.records() == records + added
            assert again.problems == ()


def test_a_journal_changed_just_before_a_line_is_added_is_read_first(tmp_path: Path) -> None:
    foreign = Scribe("b").records(1)

    class Meddling(WatchedDisk):
        meddle = False

        def open_end(self, path: Path) -> int:
            if self.meddle:
                self.meddle = False
                path.write_bytes(path.read_bytes() + line_of(map(encode, foreign)))
            return super().open_end(path)

    disk, records = Meddling(), Scribe().records(3)
    with new_season(tmp_path / "s", disk=disk) as season:
        season.append(records[:1])
        disk.meddle = True
        season.append(records[1:])
        assert set(season.records()) == {*records, *foreign}
    assert reopen(tmp_path / "s").records() == season.records()


def test_what_a_left_over_journal_holds_is_told_when_it_comes_into_its_page(tmp_path: Path) -> None:
    path = tmp_path / "s"
    filled_season(path, 1)
    (known,) = json.loads(page(path).read_bytes())["records"].values()
    newer = {"id": "n1", "day": "2027-04-03", "kind": "grafted"}
    journal(path).write_bytes(line_of([known, newer]))
    disk = FailingDisk("create", errno.ENOSPC, times=1)
    disk.failing = True
    with reopen(path, disk=disk) as season:  # the journal cannot be put into its page yet
        season.append(Scribe("b").records(PAGE))
        assert "1 of kind 'grafted'" in season.problems[0]
        assert season.reload_if_changed()
        assert season.problems[0].startswith("laptop-2027-04-001.json: 1 of kind 'grafted'")
        assert len(season.records()) == PAGE + 1
    assert len(json.loads(page(path).read_bytes())["records"]) == PAGE + 2


def test_a_journal_that_cannot_be_removed_tells_nothing_twice(tmp_path: Path) -> None:
    disk, scribe, path = FailingDisk("remove", errno.EACCES), Scribe(), tmp_path / "s"
    disk.failing = True
    with new_season(path, disk=disk) as season:
        season.append(scribe.records(2))
        season.append(scribe.records(PAGE))
        season.append(scribe.records(1))
        assert len(season.records()) == PAGE + 3
        assert season.problems == ()
    left = sorted(p.name for p in (path / "records").iterdir())
    numbers = ("001", "002")
    assert left == [f"laptop-2027-04-{n}.json{end}" for n in numbers for end in ("", "l")]
    with reopen(path) as season:
        assert len(season.records()) == PAGE + 3
        season.append(scribe.records(1))
    assert sorted(p.suffix for p in (path / "records").iterdir()) == [".json", ".json"]
    assert json.loads(page(path, 2).read_bytes())["records"].keys() == {"1", "2"}


def test_a_full_disk_at_closing_leaves_the_records_in_the_journal(tmp_path: Path) -> None:
    disk, path = FailingDisk("create", errno.ENOSPC), tmp_path / "s"
    records = Scribe().records(3)
    with new_season(path, disk=disk) as season:
        season.append(records)
        disk.failing = True
    assert [p.suffix for p in (path / "records").iterdir()] == [".jsonl"]
    with reopen(path, disk=disk) as season:
        assert season.records() == records
        assert season.problems == ()
    with reopen(path) as season:
        assert season.records() == records
        assert [p.suffix for p in (path / "records").iterdir()] == [".json"]


def test_a_folder_that_cannot_be_forced_is_no_failure(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    real = os.fsync

    def picky(handle: int) -> None:
        if os.path.isdir(f"/proc/self/fd/{handle}"):
            raise OSError(errno.EINVAL, "Invalid argument")
        real(handle)

    monkeypatch.setattr("os.fsync", picky)
    write_whole(tmp_path / "x", b"text")
    assert (tmp_path / "x").read_bytes() == b"text"


def test_a_folder_that_vanished_is_told_and_not_made_anew(tmp_path: Path) -> None:
    scribe, path = Scribe(), tmp_path / "s"
    with new_season(path) as season:
        season.append(scribe.records(2))
        shutil.move(path, tmp_path / "away")
        before = season.records()
        with pytest.raises(SeasonError, match=r"gone|reached"):
            season.append(scribe.records(1))
        with pytest.raises(SeasonError, match="reconnect the disk"):
            season.reload_if_changed()
        assert season.records() == before
        assert not path.exists()
        shutil.move(tmp_path / "away", path)
        season.append(scribe.records(1))
        assert len(season.records()) == 3


def test_a_season_on_a_disk_that_cannot_be_written_opens_for_reading(tmp_path: Path) -> None:
    records = filled_season(tmp_path / "s", 2)

    class Refusing(FailingDisk):
        def create(self, path: Path) -> int:
            raise OSError(errno.EROFS, os.strerror(errno.EROFS))

    season = reopen(tmp_path / "s", disk=Refusing("create", errno.EROFS))
    assert season.records() == records
    assert season.read_only
    assert "can only be read" in season.problems[0]
    with pytest.raises(SeasonReadOnlyError, match="can only be read"):
        season.append(Scribe().records(1))


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write everywhere")
def test_a_folder_without_permission_opens_for_reading(tmp_path: Path) -> None:
    records = filled_season(tmp_path / "s", 2)
    (tmp_path / "s").chmod(0o555)
    try:
        season = reopen(tmp_path / "s")
        assert season.records() == records
        assert season.read_only
    finally:
        (tmp_path / "s").chmod(0o755)


FILL = """
import sys
from pathlib import Path
from benchround.core.errors import SeasonError
from tests.store.builders import Scribe, new_season, reopen

path = Path(sys.argv[1]) / "season"
scribe, written, refusal = Scribe(), [], ""
season = new_season(path)
for _ in range(2000):
    action = tuple(scribe.record(note="x" * 9000) for _ in range(3))
    try:
        season.append(action)
    except SeasonError as error:
        refusal = str(error)
        break
    written += action
assert "is full; free some room" in refusal, refusal
assert season.records() == tuple(written)
season.close()
parts = list((path / "records").glob(".*"))
assert parts == [], parts
again = reopen(path)
assert again.records() == tuple(written), again.problems
assert again.damaged == ()
print("actions", len(written) // 3)
"""

READ_ONLY = """
import sys
from pathlib import Path
from tests.store.builders import reopen

season = reopen(Path(sys.argv[1]) / "season")
assert season.read_only
assert "can only be read" in season.problems[0], season.problems
assert len(season.records()) == 4
print("read", len(season.records()))
"""


def in_small_disk(
    mount: Path, options: str, before: str, program: str
) -> subprocess.CompletedProcess[str]:
    """Run a program with a small disk of its own mounted, which nobody else sees."""
    steps = f'mount -t tmpfs -o size=1m tmpfs "$0" && {before} {options} && exec "$1" -c "$2" "$0"'
    return subprocess.run(
        ["unshare", "-m", "sh", "-c", steps, str(mount), sys.executable, program],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )


def can_mount() -> bool:
    if os.geteuid() != 0 or shutil.which("unshare") is None:
        return False
    probe = 'mount -t tmpfs -o size=1m tmpfs "$0"'
    asked = ["unshare", "-m", "sh", "-c", probe, "/tmp"]
    return subprocess.run(asked, capture_output=True, check=False).returncode == 0


needs_mount = pytest.mark.skipif(not can_mount(), reason="a small disk needs root to mount")


@needs_mount
def test_a_disk_that_really_fills_up(tmp_path: Path) -> None:
    run = in_small_disk(tmp_path, "true", "true &&", FILL)
    assert run.stdout.startswith("actions "), run.stderr
    assert int(run.stdout.split()[1]) > 3


@needs_mount
def test_a_disk_that_really_is_read_only(tmp_path: Path) -> None:
    mount, made = tmp_path / "mount", tmp_path / "made"
    mount.mkdir()
    filled_season(made / "season", 4)
    run = in_small_disk(
        mount, 'mount -o remount,ro "$0"', f'cp -r "{made}/season" "$0" &&', READ_ONLY
    )
    assert run.stdout == "read 4\n", run.stderr


def test_the_sentence_for_a_page_that_grows_too_large(tmp_path: Path) -> None:
    program = (
        "import resource, signal, sys\n"
        "from pathlib import Path\n"
        "from benchround.core.errors import SeasonError\n"
        "from tests.store.builders import Scribe, new_season\n"
        "season, scribe = new_season(Path(sys.argv[1]) / 's'), Scribe()\n"
        "season.append(scribe.records(1))\n"
        "signal.signal(signal.SIGXFSZ, signal.SIG_IGN)\n"
        "resource.setrlimit(resource.RLIMIT_FSIZE, (2000, 2000))\n"
        "try:\n"
        "    season.append(scribe.records(100))\n"
        "except SeasonError as error:\n"
        "    print(error, len(season.records()))\n"
    )
    asked = [sys.executable, "-c", program, str(tmp_path)]
    run = subprocess.run(asked, cwd=ROOT, capture_output=True, text=True, check=True)
    assert "is full" in run.stdout
    assert run.stdout.rstrip().endswith(" 1")
    (journal,) = (tmp_path / "s" / "records").iterdir()
    assert journal.name == "laptop-2027-04-001.jsonl"
    assert journal.read_bytes().count(b"\n") == 1
    assert len(reopen(tmp_path / "s").records()) == 1


def test_a_new_season_that_cannot_be_begun_says_why(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    with pytest.raises(SeasonError, match="nothing was recorded"):
        SeasonFolder.create(tmp_path / "file" / "s", "x", "laptop", Scribe().record().day)
