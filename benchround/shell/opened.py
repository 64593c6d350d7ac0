"""Opening the season a command is meant for, to read it or to write in it."""

from __future__ import annotations

import argparse
import re
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from pathlib import Path

from benchround.core.errors import SeasonError
from benchround.core.record import Kind, Record, live
from benchround.core.typed.date import month_first as first_the_month
from benchround.core.typed.date import read_day
from benchround.desk import Desk
from benchround.reckoning.crop_named import crop_named
from benchround.rounds.record_line import Reader, Word
from benchround.season_given import require_writable
from benchround.shell.saying import remark
from benchround.whereabouts import find_season

_WORD = re.compile(r"([a-z][a-z0-9_.]*)=(.*)", re.DOTALL)


def today() -> date:
    """The grower's local day."""
    return date.today()


def add_season(parser: argparse.ArgumentParser) -> None:
    """The argument that names the season."""
    parser.add_argument(
        "--season",
        metavar="FOLDER",
        default="",
        help="season folder; without it the current folder, else the season used last",
    )


def folder_of(named: str) -> Path:
    """The season folder meant.

    Raises:
        SeasonError: there is none.
    """
    found = find_season(named)
    if found is None:
        raise SeasonError("There is no season yet: begin one with 'benchround new FOLDER'.")
    return found


@contextmanager
def reading(named: str, *, quiet: bool = False) -> Iterator[Desk]:
    """The season, open to be read; what is wrong with its files goes to standard error."""
    desk = Desk.open(folder_of(named), today=today, read_only=True)
    try:
        if not quiet:
            remark(desk.folder.problems[1:])  # the first says that it is open for reading
        yield desk
    finally:
        desk.close()


@contextmanager
def writing(named: str) -> Iterator[Desk]:
    """The season, open to be written in.

    Raises:
        SeasonBusyError: another program holds it.
        SeasonError: it cannot be written.
    """
    desk = Desk.open(folder_of(named), today=today)
    try:
        require_writable(desk)
        remark(desk.folder.problems)
        yield desk
    finally:
        desk.close()


@contextmanager
def clearing_up(named: str) -> Iterator[Desk]:
    """The season held by this program, even where a damaged file keeps it from being recorded in.

    What clears things up asks for the hold itself.
    """
    desk = Desk.open(folder_of(named), today=today)
    try:
        yield desk
    finally:
        desk.close()


def warn_of_unread(*desks: Desk) -> None:
    """Say that what cannot be read does not come along, where files of a season have faults."""
    if any(set(desk.problems) - set(desk.season.doubts) for desk in desks):
        remark(["What cannot be read here does not come along; its folder still holds it."])


def month_first(desk: Desk) -> bool:
    """Whether the grower writes 5/27 for the 27th of May."""
    return first_the_month(desk.season.settings)


def day_typed(text: str, desk: Desk, *, ahead: bool = False) -> date:
    """A day typed on the command line; today where none was.

    Raises:
        InputError: it is no day, or could mean two.
    """
    if not text:
        return desk.today
    return read_day(text, desk.today, ahead=ahead, month_first=month_first(desk))


def reader(desk: Desk) -> Reader:
    """What reads typed figures for this season."""
    return Reader(
        season=desk.season,
        today=desk.today,
        crop_key=lambda text: crop_named(text, desk.library).key,
        new_batch=desk.free_batch_id(),
        month_first=month_first(desk),
    )


def figure_word(text: str) -> Word:
    """A word such as count=12, for a parser.

    Raises:
        argparse.ArgumentTypeError: it has no name or no equals sign.
    """
    found = _WORD.fullmatch(text)
    if found is None:
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is no figure: write name=value")
    return found[1], found[2]


def standing_records(desk: Desk, kind: Kind) -> tuple[Record, ...]:
    """The records of a kind that stand, in story order."""
    return tuple(record for record in live(desk.folder.records()) if record.kind is kind)


def latest(desk: Desk, kind: Kind, about: str) -> Record | None:
    """The record of a setting that counts now."""
    found = [record for record in standing_records(desk, kind) if record.about == about]
    return found[-1] if found else None
