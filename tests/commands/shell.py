"""Running commands as the shell would, in a folder with example files and a small season."""

from __future__ import annotations

import json
import shutil
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from benchround.cli import main
from benchround.core.record import Draft, Kind
from benchround.desk import Desk

WEATHER_DATA = Path(__file__).resolve().parents[1] / "data" / "weather"
FILES = {
    "minima.csv": "ghcnd_USC00010655_minima_2003-2024.csv",
    "ojai.csv": "ucipm_degree_days_ojai_2016.csv",
    "seattle.csv": "seattle_extremes_2012-2015.csv",
}
STATION = """DATE,TMIN,TMAX,PRCP
2026-05-20,48,61,0.12
2026-05-21,46,72,T
2026-05-22,50,810,0
2026-05-23,,,
2026-05-25,39,66,0.00
"""
"""Four days of an invented station in F and inches, one figure of them impossible."""
DAY = date(2026, 5, 27)


@dataclass(frozen=True)
class Ran:
    """What a command left behind."""

    code: int
    out: str
    err: str

    @property
    def value(self) -> Any:
        return json.loads(self.out)


def run(words: Sequence[str], capsys: pytest.CaptureFixture[str]) -> Ran:
    """Run `benchround WORDS`; argparse's own exit counts as the exit code."""
    capsys.readouterr()
    try:
        code = main(list(words))
    except SystemExit as stop:
        assert isinstance(stop.code, int)
        code = stop.code
    captured = capsys.readouterr()
    return Ran(code, captured.out, captured.err)


def reckoned(subject: str, capsys: pytest.CaptureFixture[str], *words: str) -> Any:
    """The JSON answer of `benchround reckon`."""
    ran = run(["reckon", subject, *words, "--json"], capsys)
    assert ran.code == 0, ran.err
    return ran.value


def example_folder(folder: Path) -> None:
    """Put the files and the season the examples name into a folder."""
    for name, source in FILES.items():
        shutil.copyfile(WEATHER_DATA / source, folder / name)
    (folder / "station.csv").write_text(STATION, encoding="utf-8")
    desk = Desk.create(folder / "garden", "Garden", today=lambda: DAY)
    desk.record(
        [
            Draft(Kind.SITE, "", {"lat_deg": 52.5, "lon_deg": -1.0, "timezone": "Europe/London"}),
            Draft(Kind.PLACE, "frame-a", {"name": "Frame A", "kind": "frame", "order": 1}),
        ]
    )
    desk.close()
