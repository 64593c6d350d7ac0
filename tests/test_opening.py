"""Leaving the full-screen program keeps the day's copy of the season."""

from __future__ import annotations

import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from benchround.core.record import Draft, Kind
from benchround.desk import Desk
from benchround.opening import open_screens
from benchround.screens import app
from tests.store.builders import filled_season


@pytest.fixture
def leave(monkeypatch: pytest.MonkeyPatch) -> Callable[[Path], int]:
    """Opens the screens on a season; the grower changes a setting and leaves at once."""

    def run(desk: Desk, *_: object) -> int:
        if not desk.folder.read_only:
            desk.record([Draft(Kind.SETTING, "units", {"value": "F"})])
        return 0

    monkeypatch.setattr(app, "run", run)
    return lambda folder: open_screens(str(folder), sample=False)


def copies(folder: Path) -> list[Path]:
    return sorted((folder / "keep").glob("*.zip"))


def test_leaving_the_screens_keeps_a_copy_of_the_day_once(
    tmp_path: Path, leave: Callable[[Path], int]
) -> None:
    folder = tmp_path / "s"
    filled_season(folder, 5)
    assert leave(folder) == 0
    (made,) = copies(folder)
    with zipfile.ZipFile(made) as bundle:  # source: the zip module of the standard library
        assert bundle.testzip() is None
        assert any(b'"units"' in bundle.read(name) for name in bundle.namelist())
    before = made.read_bytes()
    assert leave(folder) == 0
    assert copies(folder) == [made]
    assert made.read_bytes() == before


def test_a_copy_that_cannot_be_made_is_only_said(
    tmp_path: Path, leave: Callable[[Path], int], capsys: pytest.CaptureFixture[str]
) -> None:
    folder = tmp_path / "s"
    filled_season(folder, 5)
    (folder / "keep").write_text("a file where the folder should be")
    assert leave(folder) == 0
    assert "No copy of the day was kept" in capsys.readouterr().err


def test_a_season_open_elsewhere_is_only_read(tmp_path: Path, leave: Callable[[Path], int]) -> None:
    folder = tmp_path / "s"
    filled_season(folder, 5)
    elsewhere = Desk.open(folder)
    try:
        assert leave(folder) == 0
    finally:
        elsewhere.close()
    assert copies(folder) == []
