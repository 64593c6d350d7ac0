"""Opening the full-screen program on a season: the one meant, the sample, or a first one."""

from __future__ import annotations

import shutil

from benchround.clock import SampleClock
from benchround.desk import Desk
from benchround.whereabouts import (
    SAMPLE_DAY,
    data_folder,
    find_season,
    private_sample,
    remember,
)


def open_screens(named: str, *, sample: bool) -> int:
    """Open the screens and stay until the grower leaves; the exit code is returned."""
    from benchround.screens.app import run

    if sample:
        folder = private_sample()
        clock = SampleClock(SAMPLE_DAY)
        desk = Desk.open(folder, today=clock)
        try:
            return run(desk, sample=True, clock=clock)
        finally:
            desk.close()
            shutil.rmtree(folder.parent, ignore_errors=True)
    found = find_season(named)
    if found is None:
        from datetime import date

        year = date.today().year
        found = data_folder() / f"season-{year}"
        desk = Desk.create(found, f"Season {year}")
    else:
        desk = Desk.open(found)
    remember(found)
    try:
        return run(desk)
    finally:
        desk.close()
