"""The season a command is about: the arguments that name it, and opening it."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from datetime import date

from benchround.core.errors import InputError, SeasonError
from benchround.desk import Desk
from benchround.whereabouts import SAMPLE_DAY, find_season, sample_folder


def season_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments by which a command is told its season and its day."""
    parser.add_argument("season", nargs="?", default="", help="season folder; else the current one")
    parser.add_argument(
        "--season", metavar="FOLDER", dest="folder", default="", help="the same as an option"
    )
    parser.add_argument("--on", metavar="DATE", default="", help="day to take as today")
    parser.add_argument("--sample", action="store_true", help="the sample season on its own day")


def open_given(given: argparse.Namespace, *, writing: bool = False) -> Desk:
    """The season named, or the one at hand; the sample is only ever read.

    Raises:
        SeasonBusyError: it is to be written, and another program holds it.
        SeasonError: there is none, or it cannot be opened.
        InputError: the day is no day.
    """
    on = _day(given.on) if given.on else None
    today: Callable[[], date]
    if given.sample:
        day = on or SAMPLE_DAY
        return Desk.open(sample_folder(), today=lambda: day, read_only=True, as_of=on)
    found = find_season(given.season or given.folder)
    if found is None:
        raise SeasonError(
            "There is no season yet: begin one with 'benchround', or look at the sample with "
            "--sample."
        )
    today = date.today if on is None else lambda: on
    desk = Desk.open(found, today=today, read_only=not writing, as_of=None if writing else on)
    if writing:
        try:
            require_writable(desk)
        except SeasonError:
            desk.close()
            raise
    return desk


def require_writable(desk: Desk) -> None:
    """Refuse at once where recording would be refused in the end.

    Raises:
        SeasonBusyError: another program holds the season.
        SeasonError: it cannot be written.
    """
    if desk.read_only:
        desk.folder.append(())  # says why not


def _day(text: str) -> date:
    from benchround.commands.today import read_iso

    return read_iso(text)


def positive(text: str) -> int:
    """A whole number from 1, for arguments.

    Raises:
        InputError: it is none.
    """
    if not (text.isascii() and text.isdigit()) or not 1 <= int(text[:9]) <= 1_000_000:
        raise InputError(f"'{text[:30]}' is no whole number from 1 up.")
    return int(text)
