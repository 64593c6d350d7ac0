"""Seasons for the tests of the screens."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from benchround.clock import SampleClock
from benchround.desk import Desk
from tests.sample.story import records
from tests.screens.stage import MACHINE, StillDesk, write_season


@pytest.fixture(autouse=True)
def many_colours(monkeypatch: pytest.MonkeyPatch) -> None:
    """A terminal with many colours, whatever the tests are started in."""
    monkeypatch.setenv("TERM", "xterm-256color")
    for name in ("NO_COLOR", "COLORTERM", "LC_ALL", "LC_CTYPE"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("LANG", "en_GB.UTF-8")


@pytest.fixture
def clock() -> SampleClock:
    """The sample's clock, at day 0."""
    return SampleClock()


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """The sample season in a folder of its own."""
    return write_season(tmp_path / "season", records())


@pytest.fixture
def desk(folder: Path, clock: SampleClock) -> Iterator[Desk]:
    """The sample season, open."""
    opened = Desk.open(folder, today=clock, machine=MACHINE)
    yield opened
    opened.close()


@pytest.fixture
def still_desk(folder: Path, clock: SampleClock) -> Iterator[Desk]:
    """The sample season with a round made by hand."""
    opened = StillDesk.open(folder, today=clock, machine=MACHINE)
    yield opened
    opened.close()


@pytest.fixture
def empty_desk(tmp_path: Path, clock: SampleClock) -> Iterator[Desk]:
    """A season nothing has happened in."""
    opened = Desk.open(write_season(tmp_path / "empty", ()), today=clock, machine=MACHINE)
    yield opened
    opened.close()
