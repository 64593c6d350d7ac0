"""Which season is opened where none is named: of several of the user the one begun last."""

from __future__ import annotations

import os
from datetime import date
from pathlib import Path

import pytest

from benchround import whereabouts
from benchround.store.heading import Heading, write_heading


@pytest.fixture
def home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The user's own folder, and a current folder that is no season."""
    own, elsewhere = tmp_path / "own", tmp_path / "elsewhere"
    own.mkdir()
    elsewhere.mkdir()
    monkeypatch.setattr(whereabouts, "data_folder", lambda: own)
    monkeypatch.chdir(elsewhere)
    return own


def begin(home: Path, name: str, created: date) -> Path:
    folder = home / name
    folder.mkdir()
    write_heading(folder, Heading(name, created))
    return folder


def test_the_season_begun_last_whatever_it_is_called(home: Path) -> None:
    begin(home, "z-old", date(2025, 1, 3))
    newest = begin(home, "garden-2027", date(2027, 1, 2))
    begin(home, "middle", date(2026, 1, 4))
    assert whereabouts.find_season() == newest


def test_of_two_of_a_day_the_one_written_last(home: Path) -> None:
    first, second = (begin(home, name, date(2026, 1, 1)) for name in ("b", "a"))
    os.utime(first / whereabouts.HEADING, (1_000_000, 1_000_000))
    os.utime(second / whereabouts.HEADING, (2_000_000, 2_000_000))
    assert whereabouts.find_season() == second


def test_one_that_cannot_be_read_is_opened_only_where_there_is_no_other(home: Path) -> None:
    spoilt = home / "spoilt"
    spoilt.mkdir()
    (spoilt / whereabouts.HEADING).write_text("{", encoding="utf-8")
    assert whereabouts.find_season() == spoilt
    good = begin(home, "a", date(2020, 1, 1))
    assert whereabouts.find_season() == good


def test_none_is_none(home: Path) -> None:
    assert whereabouts.find_season() is None
    assert list(home.iterdir()) == []
