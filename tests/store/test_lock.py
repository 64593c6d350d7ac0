from __future__ import annotations

import json
import os
import platform
import select
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from benchround.core.errors import SeasonBusyError
from benchround.store.lock import Lock, read_holder
from benchround.store.process import start_mark, still_runs
from tests.store.builders import NOW, Scribe, filled_season, new_season, reopen

ROOT = Path(__file__).parents[2]
LOCK = "held-laptop.lock"


@pytest.fixture
def sleeper() -> Iterator[subprocess.Popen[bytes]]:
    """Another program that runs until the test is over."""
    process = subprocess.Popen([sys.executable, "-c", "input()"], stdin=subprocess.PIPE)
    yield process
    process.communicate(b"\n")


def write_lock(path: Path, **fields: Any) -> bytes:
    holder = {
        "host": platform.node(),
        "pid": os.getpid(),
        "start": start_mark(os.getpid()),
        "since": "2027-04-03 06:00",
        "claim": "x",
        **fields,
    }
    (path / LOCK).write_text(json.dumps(holder))
    return (path / LOCK).read_bytes()


def test_the_lock_is_there_while_the_season_is_open_and_names_the_holder(tmp_path: Path) -> None:
    with new_season(tmp_path / "s"):
        holder = read_holder(tmp_path / "s" / LOCK)
        assert holder is not None
        assert (holder.pid, holder.host) == (os.getpid(), platform.node())
        assert holder.since == "2027-04-03 07:30"
    assert not (tmp_path / "s" / LOCK).exists()


def test_a_second_opening_reads_only_and_says_who_holds_it(tmp_path: Path) -> None:
    path = tmp_path / "s"
    with new_season(path) as first:
        first.append(Scribe().records(2))
        with reopen(path) as second:
            assert second.read_only
            assert second.records() == first.records()
            assert f"already open (process {os.getpid()} on" in second.problems[0]
            assert "since 2027-04-03 07:30" in second.problems[0]
            with pytest.raises(SeasonBusyError, match=f"process {os.getpid()}"):
                second.append(Scribe("b").records(1))
        first.append(Scribe("c").records(1))
    with reopen(path) as third:
        assert not third.read_only


SECOND = """
import sys
from pathlib import Path
from benchround.store import SeasonFolder
season = SeasonFolder.open(Path(sys.argv[1]), "laptop")
print(season.read_only, *season.problems)
"""


def second_program(path: Path) -> str:
    asked = [sys.executable, "-c", SECOND, str(path)]
    return subprocess.run(asked, cwd=ROOT, capture_output=True, text=True, check=True).stdout


def test_a_second_program_reads_only_until_the_first_has_ended(tmp_path: Path) -> None:
    path = tmp_path / "s"
    with new_season(path):
        said = second_program(path)
        assert said.startswith("True this season is already open")
        assert f"process {os.getpid()}" in said
    assert second_program(path) == "False\n"  # and it ends without closing
    assert (path / LOCK).exists()
    with reopen(path) as season:
        assert not season.read_only


def test_the_lock_of_a_program_that_has_ended_is_taken_over(tmp_path: Path) -> None:
    filled_season(tmp_path / "s", 1)
    ended = subprocess.Popen([sys.executable, "-c", ""])
    ended.wait()
    write_lock(tmp_path / "s", pid=ended.pid, start="boot:1")
    with reopen(tmp_path / "s") as season:
        assert not season.read_only
        season.append(Scribe("b").records(1))


@pytest.mark.skipif(not start_mark(os.getpid()), reason="this system tells no start of a process")
def test_a_process_number_given_to_another_program_holds_nothing(
    tmp_path: Path, sleeper: subprocess.Popen[bytes]
) -> None:
    filled_season(tmp_path / "s", 1)
    boot = start_mark(sleeper.pid).partition(":")[0]
    write_lock(tmp_path / "s", pid=sleeper.pid, start=f"{boot}:1")
    with reopen(tmp_path / "s") as season:
        assert not season.read_only


def test_a_program_that_runs_holds_its_lock(
    tmp_path: Path, sleeper: subprocess.Popen[bytes]
) -> None:
    filled_season(tmp_path / "s", 1)
    before = write_lock(tmp_path / "s", pid=sleeper.pid, start=start_mark(sleeper.pid))
    with reopen(tmp_path / "s") as season:
        assert season.read_only
    assert (tmp_path / "s" / LOCK).read_bytes() == before


def test_without_a_start_mark_a_lock_from_before_the_computer_was_started_is_a_leftover(
    tmp_path: Path, sleeper: subprocess.Popen[bytes]
) -> None:
    filled_season(tmp_path / "s", 1)
    write_lock(tmp_path / "s", pid=sleeper.pid, start="")
    assert reopen(tmp_path / "s").read_only
    os.utime(tmp_path / "s" / LOCK, (1_000_000_000, 1_000_000_000))
    with reopen(tmp_path / "s") as season:
        assert not season.read_only


def test_a_computer_renamed_since_knows_its_own_leftover_lock(
    tmp_path: Path, sleeper: subprocess.Popen[bytes]
) -> None:
    if not start_mark(os.getpid()):
        pytest.skip("this system does not say when a process began")
    path = tmp_path / "s"
    filled_season(path, 1)
    write_lock(path, host="old-name", pid=sleeper.pid, start=start_mark(sleeper.pid))
    with reopen(path) as season:
        assert season.read_only
    boot = start_mark(os.getpid()).partition(":")[0]
    write_lock(path, host="old-name", start=f"{boot}:1")
    with reopen(path) as season:
        assert not season.read_only


def test_a_lock_from_another_computer_of_the_same_name_is_respected(tmp_path: Path) -> None:
    filled_season(tmp_path / "s", 1)
    before = write_lock(tmp_path / "s", host="another", pid=1, start="another start:7")
    with reopen(tmp_path / "s") as season:
        assert season.read_only
        assert "another computer of the same short name" in season.problems[0]
    assert (tmp_path / "s" / LOCK).read_bytes() == before


@pytest.mark.parametrize(
    "text",
    ["", "{", "[]", "{}", '{"pid": 1}', '{"host":1,"pid":"x","start":2,"since":3,"claim":4}'],
)
def test_a_lock_that_names_nobody_is_taken_over(tmp_path: Path, text: str) -> None:
    filled_season(tmp_path / "s", 1)
    (tmp_path / "s" / LOCK).write_text(text)
    with reopen(tmp_path / "s") as season:
        assert not season.read_only


def test_a_lock_removed_by_hand_is_put_back_before_the_next_record(tmp_path: Path) -> None:
    with new_season(tmp_path / "s") as season:
        (tmp_path / "s" / LOCK).unlink()
        season.append(Scribe().records(1))
        assert reopen(tmp_path / "s").read_only


def test_a_season_taken_by_another_program_is_not_written(
    tmp_path: Path, sleeper: subprocess.Popen[bytes]
) -> None:
    with new_season(tmp_path / "s") as season:
        theirs = write_lock(tmp_path / "s", pid=sleeper.pid, start=start_mark(sleeper.pid))
        with pytest.raises(SeasonBusyError):
            season.append(Scribe().records(1))
        assert season.records() == ()
    assert (tmp_path / "s" / LOCK).read_bytes() == theirs


CONTENDER = """
import sys
from datetime import datetime
from pathlib import Path
from benchround.core.errors import SeasonBusyError
from benchround.store.lock import Lock
sys.stdin.readline()
try:
    Lock.take(Path(sys.argv[1]), "laptop", datetime.now())
    print("held", flush=True)
except SeasonBusyError:
    print("busy", flush=True)
sys.stdin.readline()
"""


def test_of_many_programs_that_find_a_leftover_one_holds_the_season(tmp_path: Path) -> None:
    (tmp_path / LOCK).write_text("left over")
    asked = [sys.executable, "-c", CONTENDER, str(tmp_path)]
    contenders = [
        subprocess.Popen(asked, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
        for _ in range(6)
    ]
    said = []
    for contender in contenders:
        assert contender.stdin is not None
        contender.stdin.write("go\n")
        contender.stdin.flush()
    for contender in contenders:
        assert contender.stdout is not None
        said.append(contender.stdout.readline().strip())
    for contender in contenders:
        contender.communicate("\n")
    assert sorted(said) == ["busy"] * 5 + ["held"]


def test_a_program_waits_while_another_is_about_to_take_the_season(tmp_path: Path) -> None:
    fcntl = pytest.importorskip("fcntl")
    asked = [sys.executable, "-c", CONTENDER, str(tmp_path)]
    handle = os.open(tmp_path, os.O_RDONLY)
    fcntl.flock(handle, fcntl.LOCK_EX)
    contender = subprocess.Popen(
        asked, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    )
    assert contender.stdin is not None
    assert contender.stdout is not None
    contender.stdin.write("go\n")
    contender.stdin.flush()
    answered, _, _ = select.select([contender.stdout], [], [], 0.5)
    assert not answered
    assert not (tmp_path / LOCK).exists()
    os.close(handle)
    assert contender.stdout.readline() == "held\n"
    contender.communicate("\n")


def test_two_claims_of_one_program_are_told_apart(tmp_path: Path) -> None:
    first = Lock.take(tmp_path, "laptop", NOW)
    with pytest.raises(SeasonBusyError):
        Lock.take(tmp_path, "laptop", NOW)
    first.release()
    second = Lock.take(tmp_path, "laptop", NOW)
    first.release()
    assert (tmp_path / LOCK).exists()
    second.release()
    assert not (tmp_path / LOCK).exists()


@pytest.mark.parametrize("pid", [0, -1, 2**40])
def test_a_number_no_process_can_have_does_not_run(pid: int) -> None:
    assert not still_runs(pid, "", 2e9)


def test_a_name_with_brackets_does_not_upset_the_start_mark(tmp_path: Path) -> None:
    odd = tmp_path / "a) 1 (b"
    odd.symlink_to("/bin/sleep")
    process = subprocess.Popen([str(odd), "60"])
    try:
        mark = start_mark(process.pid)
        # Source: proc(5): field 22 of stat counts clock ticks since the computer was started.
        ticks = int(mark.partition(":")[2])
        uptime_s = float(Path("/proc/uptime").read_text().split()[0])
        assert abs(ticks / os.sysconf("SC_CLK_TCK") - uptime_s) < 5
    finally:
        process.kill()
        process.wait()
