"""`benchround today`: the round on standard output, as text or JSON."""

from __future__ import annotations

import argparse
import json
import sys
from datetime import date
from pathlib import Path

from benchround.core.errors import InputError, SeasonError
from benchround.core.visible import visible
from benchround.desk import Desk
from benchround.plain import round_lines, round_value
from benchround.shell.paged import for_terminal
from benchround.whereabouts import SAMPLE_DAY, find_season, sample_folder

HELP = "print the day's round"
EXAMPLE = "benchround today --sample --json"


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("season", nargs="?", default="", help="season folder")
    parser.add_argument(
        "--season", metavar="FOLDER", dest="folder", default="", help="the same as an option"
    )
    parser.add_argument("--on", metavar="DATE", default="", help="day to look at, as 2026-05-27")
    parser.add_argument("--json", action="store_true", help="print JSON")
    parser.add_argument("--sample", action="store_true", help="the sample season on its own day")


def run(given: argparse.Namespace) -> int:
    """Print the round; remarks go to standard error."""
    folder, day = _which(given)
    as_of = day if given.on else None
    desk = Desk.open(folder, today=lambda: day, read_only=True, as_of=as_of)
    try:
        the_round = desk.round(day)
        if given.json:
            json.dump(round_value(the_round, desk.season), sys.stdout, ensure_ascii=False, indent=1)
            sys.stdout.write("\n")
        else:
            lines = for_terminal(round_lines(the_round, desk.season))
            sys.stdout.writelines(f"{line}\n" for line in lines)
        for remark in (*the_round.assumed, *desk.problems):
            sys.stderr.write(f"{visible(remark)}\n")
    finally:
        desk.close()
    return 0


def _which(given: argparse.Namespace) -> tuple[Path, date]:
    on = read_iso(given.on) if given.on else None
    if given.sample:
        return sample_folder(), on or SAMPLE_DAY
    found = find_season(given.season or given.folder)
    if found is None:
        raise SeasonError(
            "There is no season yet: begin one with 'benchround', or look at the sample with "
            "'benchround today --sample'."
        )
    return found, on or date.today()


def read_iso(text: str) -> date:
    """A day written as 2026-05-27.

    Raises:
        InputError: it is not written so.
    """
    try:
        day = date.fromisoformat(text)
    except ValueError:
        day = date.min
    if not 1900 <= day.year <= 2200:
        raise InputError(f"'{text[:30]}' is no day of our time: write it as 2026-05-27.")
    return day
