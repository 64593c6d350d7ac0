"""The sample is a copy that goes when it is left, unless a folder is named that keeps it."""

from __future__ import annotations

from datetime import date, timedelta
from pathlib import Path

import pytest

from benchround.cli import main
from benchround.core.record import Draft, Kind
from benchround.desk import Desk
from benchround.screens.sitting import Sitting
from benchround.whereabouts import SAMPLE_DAY, holds_sample

NEXT_DAY = SAMPLE_DAY + timedelta(days=1)


@pytest.fixture
def days(monkeypatch: pytest.MonkeyPatch) -> list[tuple[date, Path, bool]]:
    """What the screens were opened with; each time a note is taken on the day after."""
    seen: list[tuple[date, Path, bool]] = []

    def sit(desk: Desk, sitting: Sitting, _: object) -> int:
        seen.append((desk.today, desk.folder.path, sitting.sample_kept))
        assert sitting.clock is not None
        sitting.clock.step()
        desk.record([Draft(Kind.NOTED, "b02", {}, "a good colour")], desk.today)
        return 0

    monkeypatch.setattr("benchround.screens.app.run", sit)
    monkeypatch.setattr("benchround.cli.require_terminal", lambda: None)
    return seen


def test_without_a_folder_it_is_fresh_each_time_and_says_so(
    days: list[tuple[date, Path, bool]], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["--sample"]) == main(["--sample"]) == 0
    assert [(day, kept) for day, _, kept in days] == [(SAMPLE_DAY, False)] * 2
    assert not any(folder.exists() for _, folder, _ in days)
    assert capsys.readouterr().err.count("is gone") == 2


def test_a_folder_named_keeps_it_and_its_day(
    days: list[tuple[date, Path, bool]], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "sample"
    assert main(["--sample", str(folder)]) == main([str(folder), "--sample"]) == 0
    assert [(day, kept) for day, _, kept in days] == [(SAMPLE_DAY, True), (NEXT_DAY, True)]
    assert holds_sample(folder)
    assert "is gone" not in capsys.readouterr().err


def test_a_season_of_ones_own_is_not_taken_for_the_sample(
    days: list[tuple[date, Path, bool]], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "mine"
    Desk.create(folder, "Mine").close()
    assert main(["--sample", str(folder)]) == 1
    assert days == []
    assert "is no sample and not empty" in capsys.readouterr().err
