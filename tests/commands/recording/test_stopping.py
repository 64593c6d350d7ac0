"""Ctrl+c in the middle of long work: the season is as it was or whole, and the message says so."""

from __future__ import annotations

import shutil
import signal
from pathlib import Path

import pytest

from benchround.core.errors import StoppedError
from benchround.core.progress import Progress
from benchround.core.record import Draft, Kind
from benchround.desk import Desk
from benchround.shell import progress as shell_progress
from benchround.store.pages import FULL
from tests.commands.recording.bench import Run, files_of
from tests.sample.story import DAY_0

STOPPED = 130


@pytest.fixture
def press_at(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """Presses ctrl+c at the telling whose number stands first in the list."""
    numbers: list[int] = []
    draw = shell_progress._Line.draw
    told = 0

    def drawn(self: shell_progress._Line, done: int, of: int) -> None:
        nonlocal told
        told += bool(numbers)
        if numbers and told == numbers[0]:
            signal.raise_signal(signal.SIGINT)
        draw(self, done, of)

    monkeypatch.setattr(shell_progress._Line, "draw", drawn)
    return numbers


def ids(folder: Path) -> set[str]:
    """The records of a season that opens without a complaint but that it has none."""
    with_all = Desk.open(folder, today=lambda: DAY_0, read_only=True)
    try:
        assert all(said.startswith("there are no records here") for said in with_all.problems)
        return {record.id for record in with_all.folder.records()}
    finally:
        with_all.close()


def records_of(folder: Path) -> list[Path]:
    return sorted((folder / "records").glob("*.json"))


def test_keeping_stopped_leaves_no_copy(season: Path, run: Run, press_at: list[int]) -> None:
    press_at.append(2)
    before = files_of(season / "records")
    ran = run("keep")
    assert (ran.code, list((season / "keep").glob("*.zip"))) == (STOPPED, [])
    assert "no copy was made; the others are there." in ran.err
    assert files_of(season / "records") == before
    press_at.clear()
    assert run("keep").code == 0


def fill_pages(folder: Path, pages: int) -> None:
    """Write so many actions that each fill a page of their own."""
    desk = Desk.open(folder, today=lambda: DAY_0)
    for page in range(pages):
        desk.record([Draft(Kind.NOTED, "b20", note=f"{page} {n}") for n in range(FULL)])
    desk.close()


@pytest.mark.parametrize(("stage", "comes"), [("looking", 0), ("writing", 2)])
def test_restoring_stopped_adds_whole_files_and_the_rest_next_time(
    season: Path, run: Run, press_at: list[int], stage: str, comes: int
) -> None:
    fill_pages(season, 3)
    run("keep")
    before = ids(season)
    pages = records_of(season)
    for page in pages:
        page.unlink()
    left = ids(season)
    looked = 1 + (len(pages) + 1) + 1  # no page in the season, each file of the copy, the end
    press_at.append(2 if stage == "looking" else looked + 1 + comes)
    ran = run("restore", "latest")
    assert ran.code == STOPPED, ran.out
    assert "Stopped after " in ran.err
    assert "whole files only, and the same command adds the rest" in ran.err
    assert len(records_of(season)) == comes
    assert left <= ids(season) < before
    press_at.clear()
    assert run("restore", "latest").code == 0
    assert ids(season) == before


@pytest.mark.parametrize("at", [1, 2, 3, 4])
def test_merging_stopped_merges_nothing(
    season: Path, tmp_path: Path, run: Run, press_at: list[int], at: int
) -> None:
    other = tmp_path / "laptop-season"
    shutil.copytree(season, other)
    run("tick", "feed:b16")
    before = files_of(season / "records"), files_of(other)
    press_at.append(at)
    ran = run("merge", str(other), str(season))
    assert ran.code == STOPPED, ran.out
    assert "of 4 steps: nothing was merged; both folders are as they were." in ran.err
    assert files_of(other)["benchround.json"] == before[1]["benchround.json"]
    assert ids(other) < ids(season)


def test_ctrl_c_in_the_writing_comes_too_late_and_all_is_there(
    season: Path, tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    out, target = tmp_path / "all.json", tmp_path / "new"
    run("tables", "--what", "everything", "--json", "--out", str(out))
    create = Desk.create

    def interrupted(*given: object, **named: object) -> Desk:
        signal.raise_signal(signal.SIGINT)
        return create(*given, **named)  # type: ignore[arg-type]  # handed on as they came

    monkeypatch.setattr("benchround.commands.tables.Desk.create", interrupted)
    assert run("tables", "--take-in", str(out), str(target)).code == 0
    assert ids(target) == ids(season)


@pytest.mark.parametrize("words", [("--what", "everything", "--json"), ()])
def test_writing_out_stopped_leaves_no_file(
    season: Path, tmp_path: Path, run: Run, press_at: list[int], words: tuple[str, ...]
) -> None:
    press_at.append(2)
    file = tmp_path / "out"
    command = ("tables", *words, "--out") if words else ("labels", "--all", "--pdf")
    ran = run(*command, str(file))
    assert (ran.code, file.exists()) == (STOPPED, False)
    assert "no file was written" in ran.err
    if not words:
        press_at.clear()
        assert run("labels").out.count("new: ") > 0  # no label is taken as printed


def test_progress_has_the_kind_the_store_asks_for() -> None:
    with shell_progress.watched("reading", "rows", "nothing was kept") as progress:
        listener: Progress = progress
        listener(1, 2)
        signal.raise_signal(signal.SIGINT)
        with pytest.raises(StoppedError, match="Stopped after 1 of 2 rows: nothing was kept"):
            listener(1, 2)
        listener(2, 2)  # all is done: too late to stop
