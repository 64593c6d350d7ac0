"""Every command test runs in a folder of its own, away from the user's seasons and the network."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.commands.shell import example_folder


@pytest.fixture
def bench(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    work = tmp_path / "work"
    work.mkdir()
    example_folder(work)
    monkeypatch.chdir(work)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    monkeypatch.setenv("COLUMNS", "100")
    return work
