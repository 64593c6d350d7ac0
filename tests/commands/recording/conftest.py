"""A copy of the sample season to work in, on its own day, with a data folder of its own."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.commands import shell
from tests.commands.recording.bench import Run
from tests.commands.shell import Ran
from tests.sample.story import DAY_0, MACHINE
from tests.sample.write import write_sample


@pytest.fixture
def season(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The sample season; it is the current folder, and this is the computer that wrote it."""
    folder = tmp_path / "season"
    write_sample(folder)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    monkeypatch.setattr("benchround.desk.short_name", lambda host: MACHINE)
    monkeypatch.setenv("COLUMNS", "100")
    monkeypatch.chdir(folder)
    return folder


@pytest.fixture
def run(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Run:
    """Runs a command on the sample's day."""
    monkeypatch.setattr("benchround.shell.opened.today", lambda: DAY_0)

    def run_words(*words: str) -> Ran:
        return shell.run(words, capsys)

    return run_words
