"""Frost days out of a station's own file, and out of files that cannot give them."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchround.core.errors import InputError
from benchround.feeds.frost_file import frost_days_of

MINIMA = Path(__file__).parents[1] / "data" / "weather" / "ghcnd_USC00010655_minima_2003-2024.csv"


def test_a_stations_file_gives_its_days() -> None:
    """NOAA GHCN-Daily USC00010655 by the Utah Climate Center's rule (derived)."""
    found = frost_days_of(MINIMA, 34.7)
    days = (found.last_frost, found.last_frost_safe, found.first_frost)
    assert days == ("03-31", "04-17", "10-31")
    assert not found.rough


def test_few_years_are_called_rough(tmp_path: Path) -> None:
    rows = [line for line in MINIMA.read_text("utf-8").splitlines() if line[:4] in ("date", "2010")]
    short = tmp_path / "short.csv"
    short.write_text("\n".join(rows), "utf-8")
    assert frost_days_of(short, 34.7).rough


def test_a_file_without_winters_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "warm.csv"
    path.write_text("date,tmin\n2024-07-01,15\n2024-07-02,16\n", "utf-8")
    with pytest.raises(InputError, match="frost was hardly ever read"):
        frost_days_of(path, 50.0)


def test_a_file_that_is_no_table_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "odd.csv"
    path.write_bytes(b"\x00\xff\x00")
    with pytest.raises(InputError):
        frost_days_of(path, 50.0)
