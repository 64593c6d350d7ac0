"""`benchround records`: list what was recorded, standing and withdrawn, with ids."""

from __future__ import annotations

import argparse
from collections.abc import Iterable

from benchround.core.errors import InputError, UnknownNameError
from benchround.core.near_names import near_words, shown
from benchround.core.record import Kind, Record, withdrawn_by
from benchround.core.season import Season
from benchround.core.typed.figures import whole_in
from benchround.plain import JsonValue
from benchround.rounds.record_line import SITE
from benchround.shell.opened import add_season, reading
from benchround.shell.saying import add_json, answer, record_line, record_value

HELP = "list the records of a batch, a place or everything, with their ids"
EXAMPLE = "benchround records b03"
MORE_EXAMPLES = (
    "benchround records --kind counted --json",
    "benchround records --newest 5",
)
DETAILS = (
    "The oldest day comes first. Each line says whether the record stands or was withdrawn, its "
    "id, its day, what it is about, what happened, its figures and its note."
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument(
        "batch", metavar="BATCH", nargs="?", default="", help="a batch, a place, a crop, or 'site'"
    )
    parser.add_argument("--kind", default="", help="only what happened so, such as counted")
    parser.add_argument("--newest", default="", metavar="N", help="only those written last")
    add_season(parser)
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """List them."""
    with reading(given.season) as desk:
        records = desk.folder.records()
        gone = withdrawn_by(records)
        found = _wanted(records, given, desk.season)
        value: list[JsonValue] = [record_value(r, gone.get(r.id, "")) for r in found]
        lines = [record_line(r, gone.get(r.id, "")) for r in found] or ["nothing is recorded"]
        answer({"season": desk.folder.name, "records": value}, lines, as_json=given.json)
    return 0


def _wanted(records: tuple[Record, ...], given: argparse.Namespace, season: Season) -> list[Record]:
    found: Iterable[Record] = records
    if given.batch:
        about = _about(records, given.batch, season)
        named = {record.id for record in records if record.about == about}
        found = [r for r in found if r.id in named or r.text("record") in named]
    if given.kind:
        kind = _kind(given.kind)
        found = [record for record in found if record.kind is kind]
    if given.newest:
        newest = whole_in(given.newest)
        if newest is None or newest <= 0:
            raise InputError(f"--newest: {shown(given.newest)} is not a whole number above 0.")
        found = sorted(found, key=lambda r: r.id)[-newest:]
    return sorted(found, key=lambda r: r.order)


def _about(records: tuple[Record, ...], text: str, season: Season) -> str:
    if text == SITE:
        return ""
    names = {record.about.lower(): record.about for record in records if record.about}
    names.update({place.name.lower(): place.code for place in season.places})
    found = names.get(text.strip().lower())
    if found is None:
        near = near_words(text, names, "without a name everything is listed")
        raise UnknownNameError(f"Nothing was recorded about {shown(text)}: {near}.")
    return found


def _kind(text: str) -> Kind:
    wanted = " ".join(text.replace("-", " ").lower().split())
    if wanted in set(Kind):
        return Kind(wanted)
    raise UnknownNameError(f"Nothing is recorded as {shown(text)}: {near_words(wanted, Kind)}.")
