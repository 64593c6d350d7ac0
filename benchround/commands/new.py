"""`benchround new`: begin a season in a folder, with its site and places."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path

from benchround.core.errors import InputError
from benchround.core.place_words import PLACE_FIGURES, free_code, kind_of_place
from benchround.core.record import Draft, Figure, Kind
from benchround.core.site_words import FROSTS, SEASON_NAME, SITE_FIGURES, read_month_day
from benchround.rounds.typed_words import read_number, read_text
from benchround.shell.begun import begin, require_free
from benchround.shell.saying import add_json, answer, recorded_lines, remark, written
from benchround.whereabouts import remember

HELP = "begin a season in a folder"
EXAMPLE = (
    'benchround new my-season --name "Garden 2027" --lat 52.5 --lon -1.0 --last-frost 05-11 '
    '--last-frost-safe 05-30 --first-frost 10-12 --place "Propagator:propagator" '
    '--place "Bench 1:bench" --place "Frame A:frame"'
)
DETAILS = (
    "Places are walked in the order they are given. Their kinds are propagator, windowsill, "
    "greenhouse bench, bench, frame, tunnel, fridge and bed. Frost dates are either given, or "
    "reckoned from a file of daily lowest temperatures over years; what is not given is assumed, "
    "and the round says so. The season is there whole or, if anything fails, not at all."
)
MOST_FAULTS = 5
"""Rows of a frost file that are named where they cannot be read."""


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("folder", metavar="FOLDER", help="folder to begin it in, missing or empty")
    parser.add_argument("--name", default="", help="the season's name; else the folder's")
    parser.add_argument("--lat", metavar="DEGREES", default="", help="latitude, north positive")
    parser.add_argument("--lon", metavar="DEGREES", default="", help="longitude, east positive")
    parser.add_argument(
        "--last-frost", metavar="MM-DD", default="", help="half the years have no frost after it"
    )
    parser.add_argument(
        "--last-frost-safe",
        metavar="MM-DD",
        default="",
        help="nine years in ten have no frost after it",
    )
    parser.add_argument(
        "--first-frost", metavar="MM-DD", default="", help="half the years have had a frost by it"
    )
    parser.add_argument(
        "--frost-file",
        metavar="FILE",
        default="",
        help="table of daily lowest temperatures to reckon the frost dates from",
    )
    parser.add_argument(
        "--place",
        metavar="NAME:KIND",
        action="append",
        default=[],
        help="a place on the morning walk; once for each",
    )
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """Begin the season; it is remembered as the one used last."""
    path = Path(given.folder).expanduser()
    require_free(path)
    name = read_text(SEASON_NAME, given.name.strip()) or path.absolute().name
    site, remarks = _site(given)
    drafts = [Draft(Kind.SITE, "", site)] if site else []
    drafts += _places(given.place)
    records = begin(path, name, lambda desk: desk.record(drafts) if drafts else ())
    remember(path)
    lines = [f"begun: {name} in {path}", *recorded_lines(records)]
    answer(
        {"folder": str(path), "name": name, "written": written(records)},
        lines,
        as_json=given.json,
    )
    remark(remarks)
    return 0


def _site(given: argparse.Namespace) -> tuple[dict[str, Figure], list[str]]:
    figures: dict[str, Figure] = {}
    for name, text in (("lat_deg", given.lat), ("lon_deg", given.lon)):
        if text:
            figures[name] = read_number(SITE_FIGURES[name], text.strip())
    typed = {name: getattr(given, name) for name in FROSTS if getattr(given, name)}
    if typed and given.frost_file:
        raise InputError("Give the frost dates or a file to reckon them from, not both.")
    figures.update({name: read_month_day(name, text) for name, text in typed.items()})
    if not given.frost_file:
        return figures, []
    if "lat_deg" not in figures:
        raise InputError("A frost file needs --lat: it says on which side of the year winter is.")
    dates, remarks = _from_file(Path(given.frost_file).expanduser(), float(figures["lat_deg"]))
    return {**figures, **dates}, remarks


def _from_file(path: Path, lat_deg: float) -> tuple[dict[str, str], list[str]]:
    from benchround.feeds.frost_file import frost_days_of

    found = frost_days_of(path, lat_deg)
    remarks = [str(fault) for fault in found.faults[:MOST_FAULTS]]
    if found.rough:
        remarks.append(f"{path.name} holds {found.years} usable years: the dates are rough.")
    return {name: getattr(found, name) for name in FROSTS}, remarks


def _places(typed: Sequence[str]) -> list[Draft]:
    drafts: list[Draft] = []
    codes: list[str] = []
    for order, text in enumerate(typed, start=1):
        name, colon, kind = text.rpartition(":")
        if not colon or not name.strip():
            raise InputError(f"'{text[:40]}' is no place: write NAME:KIND, as \"Bench 1:bench\".")
        label = read_text(PLACE_FIGURES["name"], name.strip())
        codes.append(free_code(label, codes))
        figures: dict[str, Figure] = {
            "name": label,
            "kind": str(kind_of_place(kind)),
            "order": order,
        }
        drafts.append(Draft(Kind.PLACE, codes[-1], figures))
    return drafts
