"""`benchround tables`: the season as CSV or JSON, and taking sowings or a whole season in."""

from __future__ import annotations

import argparse
import sys
from codecs import BOM_UTF8
from collections.abc import Sequence
from datetime import date
from pathlib import Path

from benchround.core.errors import InputError
from benchround.core.progress import told
from benchround.core.record import Draft
from benchround.core.visible import visible
from benchround.desk import Desk
from benchround.feeds.everything_json import Everything, everything_from, everything_text
from benchround.feeds.out_file import STANDARD_OUTPUT, write_out
from benchround.feeds.review import review_table
from benchround.feeds.sowing_sheet import SheetRow, read_sheet
from benchround.feeds.table_rows import batches_table, readings_table, records_table
from benchround.feeds.tables import Table, csv_text, json_text, json_value
from benchround.feeds.text_file import decoded
from benchround.season_given import open_given, say, season_arguments
from benchround.shell.progress import watched
from benchround.store.codec import decode, encode
from benchround.whereabouts import is_season

HELP = "the season as CSV or JSON tables, and taking tables in"
EXAMPLE = "benchround tables --sample --what review --json"

MOST_BYTES = 1_000_000_000
"""A season of a million records has a fifth of it (our proposal)."""
NOTHING, UNWRITTEN = "nothing was recorded.", "no file was written."
WHAT = ("batches", "records", "readings", "review", "everything")


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    season_arguments(parser)
    parser.add_argument("--what", choices=WHAT, default="batches", help="which table (batches)")
    parser.add_argument("--json", action="store_true", help="JSON instead of CSV")
    parser.add_argument("--out", metavar="FILE", default=STANDARD_OUTPUT, help="file to write")
    parser.add_argument(
        "--take-in", metavar="FILE", default="", help="sowings as CSV, or everything as JSON"
    )
    parser.add_argument("--yes", action="store_true", help="record what is taken in")
    parser.add_argument(
        "--only-good", action="store_true", help="leave out rows that cannot be taken in"
    )


def run(given: argparse.Namespace) -> int:
    """Write a table, or take one in."""
    if given.take_in:
        return _take_in(given)
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
        say(desk.problems)
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
        say(
            [
                f"{guarded} cells begin with a sign that starts a formula: an apostrophe was put "
                "in front of them. JSON has them as they are."
            ]
        )


def _take_in(given: argparse.Namespace) -> int:
    if given.sample:
        raise InputError("The sample is never written to: name a season of your own.")
    path = Path(given.take_in).expanduser()
    try:
        size = path.stat().st_size
        if size > MOST_BYTES:
            raise InputError(f"{path.name} has {size / 1e6:.0f} MB: no season is as large as that.")
        data = path.read_bytes()
    except OSError as error:
        raise InputError(f"{path} cannot be read ({error.strerror or error}).") from error
    if data.removeprefix(BOM_UTF8).lstrip().startswith(b"{"):
        with watched("reading", "records", NOTHING) as progress:
            came = everything_from(_utf8(data, path.name), decode, progress)
        return _take_everything(came, given)
    return _take_sowings(decoded(data, path.name), given)


def _utf8(data: bytes, name: str) -> str:
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise InputError(f"{name} is not in UTF-8 ({error.reason}): write it out again.") from error


def _take_everything(came: Everything, given: argparse.Namespace) -> int:
    """Into a new folder at once; into a season only what it has not, and only when told to."""
    named = given.season or given.folder
    if not named:
        raise InputError("Name the folder it is to go to: benchround tables --take-in FILE FOLDER.")
    folder = Path(named).expanduser()
    with watched("looking at", "records", NOTHING) as progress:
        for record in told(came.records, progress):
            encode(record)  # every record can be kept, or the first that cannot is named
    with watched("writing", "records", ""):  # all at once: ctrl+c waits until it is done
        new = _written(came, folder, given)
    if new is not None:
        say([f"{new} records of '{came.name}' were taken into {folder}."])
    return 0


def _written(came: Everything, folder: Path, given: argparse.Namespace) -> int | None:
    """How many records were new; None where nothing was to be written yet."""
    if not is_season(folder):
        desk = Desk.create(folder, came.name, today=lambda: came.begun or date.today())
        new = len(came.records)
    else:
        desk = open_given(given, writing=given.yes)
        here = {record.id for record in desk.folder.records()}
        new = sum(1 for record in came.records if record.id not in here)
        if not given.yes:
            say([f"{new} of {len(came.records)} records are not in {folder} yet: --yes adds them."])
            desk.close()
            return None
    try:
        desk.folder.append(came.records)
    finally:
        desk.close()
    return new


def _take_sowings(text: str, given: argparse.Namespace) -> int:
    desk = open_given(given, writing=given.yes)
    try:
        free = int(desk.free_batch_id()[1:])
        names = desk.library.names()
        with watched("reading the sheet", "rows", NOTHING) as progress:
            rows = read_sheet(text, desk.season, names, desk.today, free, progress)
        sys.stdout.writelines(f"{visible(_said(row))}\n" for row in rows)
        return _take_rows(rows, desk, given)
    finally:
        desk.close()


def _take_rows(rows: Sequence[SheetRow], desk: Desk, given: argparse.Namespace) -> int:
    faults = sum(1 for row in rows if row.fault)
    known = sum(1 for row in rows if row.known)
    drafts = [row.draft for row in rows if row.draft is not None and row.comes]
    if known:
        say([f"{known} of {len(rows)} rows are on the books already and are left out."])
    if faults and not given.only_good:
        good = f" --only-good takes the other {len(drafts)}." if drafts else ""
        say([f"{faults} of {len(rows)} rows cannot be taken in; none was.{good}"])
        return 1
    if faults:
        say([f"{faults} of {len(rows)} rows cannot be taken in and are left out."])
    if not given.yes:
        say([f"{len(drafts)} rows can be taken in: the same line with --yes records them."])
        return 0
    if drafts:
        desk.record(drafts)
    say([f"{len(drafts)} sowings were recorded."])
    return 0


def _said(row: SheetRow) -> str:
    if row.draft is None:
        return f"! line {row.line}: {row.fault}"
    if row.known:
        return f"= line {row.line}: on the books already as {row.known}"
    remark = f" ({row.remark})" if row.remark else ""
    return f"  line {row.line}: {draft_words(row.draft)}{remark}"


def draft_words(draft: Draft) -> str:
    """A draft in one line."""
    day = f" {draft.day.isoformat()}" if draft.day else ""
    figures = ", ".join(f"{name} {value}" for name, value in draft.figures.items())
    note = f"; note: {draft.note}" if draft.note else ""
    return f"{draft.about} {draft.kind}{day}: {figures}{note}"
