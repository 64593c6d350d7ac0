"""`benchround tables`: the season as CSV or JSON, and taking sowings or a whole season in."""

from __future__ import annotations

import argparse

from benchround.commands.tables_in import take_in
from benchround.core.errors import InputError
from benchround.desk import Desk
from benchround.feeds.everything_json import Everything, everything_text
from benchround.feeds.out_file import STANDARD_OUTPUT, write_out
from benchround.feeds.review import review_table
from benchround.feeds.table_rows import batches_table, readings_table, records_table
from benchround.feeds.tables import Table, csv_text, json_text, json_value
from benchround.season_given import open_given, season_arguments
from benchround.shell.progress import watched
from benchround.shell.saying import remark
from benchround.store.codec import encode

HELP = "the season as CSV or JSON tables, and taking tables in"
EXAMPLE = "benchround tables --sample --what review --json"
MORE_EXAMPLES = (
    "benchround tables --sample --what records --out records.csv",
    "benchround tables --sample --what everything --json --out all.json",
)
DETAILS = (
    "In CSV a text that a spreadsheet would take for a formula gets an apostrophe in front. "
    "--take-in reads sowings from a spreadsheet, the tables of records and readings, and "
    "everything as JSON; into a season it only shows what would come until --yes is said. "
    "docs/leaving.md lists the columns."
)

UNWRITTEN = "no file was written."
WHAT = ("batches", "records", "readings", "review", "everything")


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    season_arguments(parser)
    parser.add_argument("--what", choices=WHAT, default="batches", help="which table (batches)")
    parser.add_argument("--json", action="store_true", help="JSON instead of CSV")
    parser.add_argument("--out", metavar="FILE", default=STANDARD_OUTPUT, help="file to write")
    parser.add_argument(
        "--take-in", metavar="FILE", default="", help="sowings, records, readings or everything"
    )
    parser.add_argument("--yes", action="store_true", help="record what is taken in")
    parser.add_argument(
        "--only-good", action="store_true", help="leave out rows that cannot be taken in"
    )


def run(given: argparse.Namespace) -> int:
    """Write a table, or take one in."""
    if given.take_in:
        return take_in(given)
    desk = open_given(given)
    try:
        if given.what == "everything":
            if not given.json:
                raise InputError("Everything is written as JSON: add --json.")
            everything = Everything(desk.folder.name, desk.folder.created, desk.folder.records())
            with watched("writing out", "records", UNWRITTEN) as progress:
                text = everything_text(everything, encode, progress)
            write_out(given.out, text.encode("utf-8"))
        else:
            _write(_table(given.what, desk), given)
        remark(desk.problems)
    finally:
        desk.close()
    return 0


def _table(what: str, desk: Desk) -> Table:
    if what == "batches":
        return batches_table(desk.season)
    if what == "records":
        return records_table(desk.folder.records())
    if what == "readings":
        return readings_table(desk.folder.records())
    return review_table(desk.season)


def _write(table: Table, given: argparse.Namespace) -> None:
    if given.json:
        write_out(given.out, json_text(json_value(table)).encode("utf-8"))
        return
    text, guarded = csv_text(table)
    write_out(given.out, text.encode("utf-8"))
    if guarded:
        remark(
            [
                f"{guarded} cells begin with a sign that starts a formula: an apostrophe was put "
                "in front of them. JSON has them as they are."
            ]
        )
