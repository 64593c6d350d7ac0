"""A file of daily weather named on the command line, and what was left out of it."""

from __future__ import annotations

import argparse
from pathlib import Path

from benchround.feeds.daily_columns import Column, read_map
from benchround.feeds.daily_csv import read_daily_file
from benchround.feeds.daily_reading import DailyFile

SHOWN_FAULTS = 10


def file_arguments(parser: argparse.ArgumentParser) -> None:
    """How the file's columns, units and days are written."""
    parser.add_argument(
        "--map",
        default="",
        metavar="NAMES",
        help="columns by heading, as day=DATE,min=TMIN,max=TMAX,rain=PRCP; others are guessed",
    )
    parser.add_argument(
        "--units", choices=("C", "F"), default=None, help="temperatures (by the heading, else C)"
    )
    parser.add_argument(
        "--rain-units", choices=("mm", "in"), default=None, help="rain (by the heading, else mm)"
    )
    parser.add_argument(
        "--wind-units",
        choices=("kmh", "mph", "ms", "kn"),
        default=None,
        help="gusts (by the heading, else km/h)",
    )
    parser.add_argument(
        "--dates", choices=("iso", "dmy", "mdy"), default="iso", help="how days are written (iso)"
    )


def weather_file(given: argparse.Namespace, path: str, minimum: str = "") -> DailyFile:
    """The file's readings.

    Args:
        given: with the arguments of `file_arguments`.
        path: the file.
        minimum: heading of the lowest temperatures, if it was named on its own.

    Raises:
        InputError: it cannot be read, or has no usable columns or rows.
    """
    told = read_map(given.map)
    if minimum:
        told.setdefault(Column.MIN, minimum)
    units = {
        Column.MIN: given.units,
        Column.MAX: given.units,
        Column.RAIN: given.rain_units,
        Column.GUST: given.wind_units,
    }
    known = {column: unit for column, unit in units.items() if unit is not None}
    return read_daily_file(Path(path).expanduser(), told, known, given.dates)


def fault_remarks(found: DailyFile) -> tuple[str, ...]:
    """What was left out, in a few lines."""
    said = [f"left out: {fault}" for fault in found.faults[:SHOWN_FAULTS]]
    more = len(found.faults) - SHOWN_FAULTS
    if more > 0:
        said.append(f"left out: {more} more")
    if found.gaps:
        first, days = found.gaps[0]
        total = sum(length for _, length in found.gaps)
        said.append(f"{total} days have no row, the first {days} from {first.isoformat()}")
    if found.empty:
        said.append(f"{found.empty} rows have a day and no figure")
    return tuple(said)
