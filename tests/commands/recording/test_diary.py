"""A paper diary typed in from the shell: lines, days, faults, and the same file twice."""

from __future__ import annotations

import io
import signal
import sys
from datetime import date
from pathlib import Path

import pytest

from benchround.core import progress as progress_of
from benchround.core.progress import Progress
from benchround.desk import Desk
from tests.commands.recording.bench import Run, files_of
from tests.sample.story import DAY_0

LINES = """12 apr cosmos Paper Lantern 40 seeds bench 1

leek 60 seeds
2026-05-30 lettuce Butterleaf 80 seeds Frame A
"""


def piped(monkeypatch: pytest.MonkeyPatch, raw: bytes) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(raw), encoding="utf-8"))


def opened(folder: Path) -> Desk:
    return Desk.open(folder, today=lambda: DAY_0, read_only=True)


def test_lines_of_standard_input_are_one_action(
    season: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    piped(monkeypatch, LINES.encode())
    ran = run("diary", "--json")
    assert ran.code == 0, ran.err
    batches = opened(season).season.batches
    assert [(b.crop, b.begun) for b in (batches["b34"], batches["b35"])] == [
        ("cosmos", date(2026, 4, 12)),
        ("leek", date(2026, 4, 12)),  # no day: that of the line before
    ]
    assert batches["b36"].records[0].text("sow_on") == "2026-05-30"
    assert (ran.value["recorded"], [one["line"] for one in ran.value["lines"]]) == (3, [1, 3, 4])
    assert "3 sowings recorded" in ran.err
    undone = run("undo", "--last", "--json").value
    assert len(undone["withdrawn"]) == 3
    assert "b34" not in opened(season).season.batches


def test_a_fault_is_named_with_its_line_and_nothing_is_recorded(
    season: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = files_of(season / "records")
    piped(monkeypatch, b"cosmos 40 seeds\nnosuchcrop 3 seeds\ncosmos 12\n")
    ran = run("diary")
    assert ran.code == 1
    assert "! line 2: 'nosuchcrop' is no crop" in ran.out
    assert "! line 3: 12 of what?" in ran.out
    assert "none was recorded. --only-good takes the other 1." in ran.err
    assert files_of(season / "records") == before
    piped(monkeypatch, b"cosmos 40 seeds\nnosuchcrop 3 seeds\n")
    assert run("diary", "--only-good").code == 0
    assert "b34" in opened(season).season.batches


def test_the_same_lines_again_record_nothing_unless_told(season: Path, run: Run) -> None:
    line = "12 apr cosmos Night 40 seeds bench 1"
    assert run("diary", line).code == 0
    ran = run("diary", line)
    assert "on the books already as b34" in ran.out
    assert "b35" not in opened(season).season.batches
    run("diary", line, "--again")
    assert "b35" in opened(season).season.batches


def test_a_preview_writes_nothing(season: Path, run: Run) -> None:
    before = files_of(season / "records")
    ran = run("diary", "--preview", "cosmos 40 seeds")
    assert "b34 Cosmos, sown Wed 27 May 2026, today, 40 seeds" in ran.out
    assert "1 sowing would be recorded" in ran.err
    assert files_of(season / "records") == before


@pytest.mark.parametrize("raw", [b"", b"\n\n", b"co\x00smos\n"])
def test_nothing_to_read_is_said(
    season: Path, run: Run, monkeypatch: pytest.MonkeyPatch, raw: bytes
) -> None:
    piped(monkeypatch, raw)
    ran = run("diary")
    assert (ran.code, bool(ran.err)) == (1, True)


def test_months_first_are_read_so(season: Path, run: Run) -> None:
    run("settings", "date_order=month-first")
    run("diary", "4/12 cosmos 40 seeds")
    assert opened(season).season.batches["b34"].begun == date(2026, 4, 12)


def test_ctrl_c_while_reading_leaves_the_season_as_it_was(
    season: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = files_of(season / "records")
    real = progress_of.told

    def interrupted(items: list[str], progress: Progress) -> object:
        signal.raise_signal(signal.SIGINT)
        return real(items, progress)

    monkeypatch.setattr("benchround.feeds.diary.told", interrupted)
    piped(monkeypatch, b"cosmos 40 seeds\n" * 200)
    ran = run("diary")
    assert ran.code == 130
    assert "Stopped after 0 of 200 lines: nothing was recorded." in ran.err
    assert files_of(season / "records") == before


def test_a_line_with_a_fault_still_gives_its_day_to_those_below_it(
    season: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    lines = "10 apr cosmos 40 seeds\n15 apr cosmmos 40 seeds\nlettuce 80 seeds\n"
    piped(monkeypatch, f"{lines}16 apr\nleek 60 seeds\nnosuchcrop\nleek 61 seeds\n".encode())
    assert run("diary", "--only-good").code == 0
    batches = opened(season).season.batches
    assert [(batches[f"b{n}"].crop, batches[f"b{n}"].begun) for n in range(34, 38)] == [
        ("cosmos", date(2026, 4, 10)),
        ("lettuce", date(2026, 4, 15)),
        ("leek", date(2026, 4, 16)),
        ("leek", date(2026, 4, 16)),
    ]


def test_what_came_up_is_recorded_of_a_line_above_and_of_a_batch(season: Path, run: Run) -> None:
    lines = ("1 may leek Rope 60 seeds", "12 may leek Rope none up", "20 may leek Rope up 50")
    ran = run("diary", *lines)
    assert ran.code == 0, ran.err
    assert "line 3: b34 Leek 'Rope', 50 up Wed 20 May 2026" in ran.out
    assert "1 sowing and 2 looks recorded." in ran.err
    batch = opened(season).season.batches["b34"]
    assert (batch.tally.sown, batch.tally.up) == (60, 50)
    again = run("diary", "21 may b34 up 52", "20 may leek Rope up 50")
    assert "= line 2: on the books already as b34" in again.out
    assert opened(season).season.batches["b34"].tally.up == 52


def test_what_cannot_have_come_up_is_named(season: Path, run: Run) -> None:
    before = files_of(season / "records")
    ran = run("diary", "b02 none up", "b03 up 5", "1 may leek 60 seeds", "30 apr b34 up 3")
    assert ran.code == 1
    assert "! line 1: b02 was 'first true leaves' by then: some were up." in ran.out
    assert "! line 2: b03 was 'establishing' by then" in ran.out
    assert "! line 4: b34 was not sown by then: look at the day again." in ran.out
    assert files_of(season / "records") == before
