"""`benchround tables --take-in`: sowings, records, readings or a whole season out of a file."""

from __future__ import annotations

import argparse
import sys
from codecs import BOM_UTF8
from collections.abc import Sequence
from datetime import date
from pathlib import Path

from benchround.core.errors import InputError
from benchround.core.progress import told
from benchround.core.record import Draft, Kind, Record, live
from benchround.core.visible import visible
from benchround.desk import Desk
from benchround.feeds.everything_json import Everything, everything_from
from benchround.feeds.sowing_sheet import SheetRow, read_sheet
from benchround.feeds.table_in import READINGS, our_table, readings_in, records_in
from benchround.feeds.table_rows import READING_FIGURES
from benchround.feeds.text_file import decoded
from benchround.season_given import open_given
from benchround.shell.progress import watched
from benchround.shell.saying import remark
from benchround.store.codec import decode, encode
from benchround.whereabouts import is_season

MOST_BYTES = 1_000_000_000
"""A season of a million records has a fifth of it (our proposal)."""
NOTHING = "nothing was recorded."


def take_in(given: argparse.Namespace) -> int:
    """Take in what a file holds, or show what it would be; the exit code is returned."""
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
    text = decoded(data, path.name)
    ours = our_table(text)
    if ours is None:
        return _take_sowings(text, given)
    if ours.what == READINGS:
        return _take_readings(readings_in(ours), given)
    name = Path(given.season or given.folder).name
    return _take_everything(Everything(name, None, records_in(ours, decode)), given)


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
        remark([f"{new} records of '{came.name}' were taken into {folder}."])
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
            remark(
                [f"{new} of {len(came.records)} records are not in {folder} yet: --yes adds them."]
            )
            desk.close()
            return None
    try:
        desk.folder.append(came.records)
    finally:
        desk.close()
    return new


def _take_readings(drafts: Sequence[Draft], given: argparse.Namespace) -> int:
    desk = open_given(given, writing=given.yes)
    try:
        here = {
            _measured(record)
            for record in live(desk.folder.records())
            if record.kind is Kind.READING
        }
        apart = {_measured(draft): draft for draft in drafts}
        new = [draft for said, draft in apart.items() if said not in here]
        if not given.yes:
            remark([f"{len(new)} of {len(drafts)} readings are not known yet: --yes records them."])
            return 0
        if new:
            desk.record(new)
        remark([f"{len(new)} readings were recorded."])
    finally:
        desk.close()
    return 0


def _measured(said: Record | Draft) -> tuple[object, ...]:
    """When, where and what a reading says; 8 and 8.0 are the same."""
    figures = (said.figures.get(name) for name in READING_FIGURES)
    values = (float(value) if isinstance(value, (int, float)) else None for value in figures)
    return (said.day, said.at, said.about, *values)


def _take_sowings(text: str, given: argparse.Namespace) -> int:
    desk = open_given(given, writing=given.yes)
    try:
        free = desk.free_batch_id()
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
        remark([f"{known} of {len(rows)} rows are on the books already and are left out."])
    if faults and not given.only_good:
        good = f" --only-good takes the other {len(drafts)}." if drafts else ""
        remark([f"{faults} of {len(rows)} rows cannot be taken in; none was.{good}"])
        return 1
    if faults:
        remark([f"{faults} of {len(rows)} rows cannot be taken in and are left out."])
    if not given.yes:
        remark([f"{len(drafts)} rows can be taken in: the same line with --yes records them."])
        return 0
    if drafts:
        desk.record(drafts)
    remark([f"{len(drafts)} sowings were recorded."])
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
