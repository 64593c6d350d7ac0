"""Which season is meant: never another one than the grower thinks, and never a bare failure."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest

from benchround.cli import main
from benchround.core.errors import SeasonError
from benchround.whereabouts import data_folder, find_season, is_season, remember
from tests.store.builders import filled_season, new_season


@pytest.fixture(autouse=True)
def nowhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder without a season to stand in, and a data folder of one's own."""
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    stand = tmp_path / "stand"
    stand.mkdir()
    monkeypatch.chdir(stand)
    return stand


def test_with_the_stick_pulled_no_other_season_is_taken_instead(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    new_season(data_folder() / "season-2020").close()
    stick = tmp_path / "stick" / "season"
    new_season(stick).close()
    remember(stick)
    assert find_season() == stick
    stick.parent.rename(tmp_path / "pulled")
    assert main(["sow", "lettuce"]) == 1
    said = capsys.readouterr().err
    assert f"not in {stick}" in said
    assert "reconnect its disk" in said
    assert not list((data_folder() / "season-2020" / "records").iterdir())
    assert find_season(str(data_folder() / "season-2020")) == data_folder() / "season-2020"
    (tmp_path / "pulled").rename(stick.parent)
    assert find_season() == stick


def test_standing_in_a_folder_that_is_gone(
    nowhere: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    nowhere.rmdir()
    assert main(["today"]) == 1
    assert "The folder you stand in is gone" in capsys.readouterr().err


def test_a_season_whose_own_file_is_lost_is_found_and_can_be_mended(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "season"
    filled_season(path, 3)
    assert main(["keep", "--season", str(path)]) == 0
    (path / "benchround.json").unlink()
    assert main(["today", str(path)]) == 0
    assert main(["sow", "lettuce", "--season", str(path)]) == 1
    assert "kept copy of that file" in capsys.readouterr().err
    assert main(["restore", "latest", "--season", str(path)]) == 0
    assert main(["sow", "lettuce", "--season", str(path)]) == 0


def test_any_folder_called_records_is_no_season(tmp_path: Path) -> None:
    (tmp_path / "records").mkdir()
    (tmp_path / "records" / "of-the-band-1970.json").write_text("{}")
    assert not is_season(tmp_path)


@pytest.mark.skipif(os.geteuid() == 0, reason="root may look everywhere")
def test_a_folder_that_may_not_be_entered(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "season"
    new_season(path).close()
    path.chmod(0)
    try:
        assert main(["today", str(path)]) == 1
        assert main([str(path)]) == 1
    finally:
        path.chmod(0o700)
    assert capsys.readouterr().err.count("cannot be looked into (Permission denied)") == 2


def test_a_folder_that_cannot_be_looked_into(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refused(path: Path) -> bool:
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr(Path, "is_file", refused)
    with pytest.raises(SeasonError, match="cannot be looked into"):
        find_season(str(tmp_path))


def test_a_garbled_note_of_the_last_season_is_passed_over(tmp_path: Path) -> None:
    path = tmp_path / "season"
    new_season(path).close()
    remember(path)
    (data_folder() / "last-used").write_bytes(b"\xff\xfe\x00")
    assert find_season() is None
    shutil.rmtree(data_folder())
    assert find_season() is None
