"""Opening the full-screen program on a season: the one meant, the sample, or a first one."""

from __future__ import annotations

import shutil
import sys
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

from benchround.clock import SampleClock
from benchround.core.errors import BenchroundError
from benchround.core.record import Kind
from benchround.core.visible import visible
from benchround.desk import Desk
from benchround.screens.first_picture import first_picture
from benchround.screens.palettes import LookKept
from benchround.screens.sitting import Sitting
from benchround.screens.steered import steered
from benchround.shell.early import shown_early
from benchround.shell.own_keys import own_ring
from benchround.shell.own_look import keep_look, own_look
from benchround.shell.starting import begin_without_ssl
from benchround.whereabouts import (
    SAMPLE_DAY,
    data_folder,
    find_season,
    holds_sample,
    lay_sample,
    private_sample,
    remember,
)

GONE = (
    "The sample was a copy of its own and is gone. 'benchround --sample FOLDER' keeps one in a "
    "folder of yours; 'benchround new' begins your own season.\n"
)
"""What is said once the sample is left."""


def open_screens(named: str, *, sample: bool) -> int:
    """Open the screens and stay until the grower leaves; the exit code is returned.

    Args:
        named: the season's folder; of the sample, the folder that keeps it; empty: none was named.
        sample: whether the sample season is meant.
    """
    if sample:
        return _open_kept_sample(Path(named).expanduser()) if named else _open_sample()
    found = find_season(named)
    return _open(found) if found is not None else _open_first()


def _open_sample() -> int:
    folder = private_sample()
    clock = SampleClock(SAMPLE_DAY)
    desk = Desk.open(folder, today=clock)
    try:
        return _sit(desk, _as_here(Sitting(sample=True, clock=clock)))
    finally:
        desk.close()
        shutil.rmtree(folder.parent, ignore_errors=True)
        with suppress(OSError):  # the terminal may be gone
            sys.stderr.write(GONE)


def _open_kept_sample(folder: Path) -> int:
    """Open the sample in a folder of the grower's; the first time it is laid there."""
    if not holds_sample(folder):
        lay_sample(folder)
    clock = SampleClock(SAMPLE_DAY)
    desk = Desk.open(folder, today=clock)
    done = (one.day for one in desk.folder.records() if one.kind is not Kind.OUTLOOK)
    for _ in range((max(done, default=SAMPLE_DAY) - SAMPLE_DAY).days):
        clock.step()
    try:
        return _sit(desk, _as_here(Sitting(sample=True, sample_kept=True, clock=clock)))
    finally:
        desk.close()


def _as_here(sitting: Sitting) -> Sitting:
    """A sitting with the keys and the look of this computer."""
    return replace(sitting, ring=own_ring(), look_kept=LookKept(own_look(), keep_look))


def _sit(desk: Desk, sitting: Sitting) -> int:
    """Show the round, and let the screens take over once they are read."""

    def picture(columns: int, lines: int) -> str:
        first = first_picture(desk, sitting, columns, lines)
        return steered(first, sitting.look_chosen(desk.season)) if first else ""

    with shown_early(picture) as asked:
        begin_without_ssl()
        from benchround.screens.app import run

        asked.heed()
        return run(desk, sitting, asked)


def _open(folder: Path, said: str = "") -> int:
    desk = Desk.open(folder)
    remember(folder)
    try:
        code = _sit(desk, _as_here(Sitting(said=said)))
        keep_copy_of_the_day(desk)
        return code
    finally:
        desk.close()


def keep_copy_of_the_day(desk: Desk) -> None:
    """Keep the day's copy of the season if there is none yet; what hinders it is only said.

    It is made on leaving, when nothing waits for it and the day's work is in it.
    """
    from benchround.shell.progress import watched

    try:
        with watched("keeping the day's copy", "files", "no copy was made.") as progress:
            desk.folder.keep_today(desk.today, progress)
    except BenchroundError as error:
        sys.stderr.write(f"No copy of the day was kept: {visible(str(error), lines=True)}\n")


def _open_first() -> int:
    """Ask for a first season; nothing is written before the grower says so."""
    from datetime import date

    begin_without_ssl()
    from benchround.screens.first_run import FirstSeason, Outcome
    from benchround.screens.first_run_app import ask
    from benchround.shell.begun import begin

    begun: list[FirstSeason] = []

    def write(season: FirstSeason) -> None:
        begin(season.folder, season.name, lambda desk: desk.record(season.drafts))
        begun.append(season)

    today = date.today()
    folder = data_folder() / f"season-{today.year}"
    look_kept = LookKept(own_look(), keep_look)
    outcome, code = ask(write, folder, today, own_ring(), look_kept)
    if outcome is Outcome.SAMPLE:
        return _open_sample()
    if outcome is not Outcome.BEGUN:
        return code
    season = begun[-1]
    return _open(season.folder, season.begun)
