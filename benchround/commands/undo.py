"""`benchround undo`: take back the last action, or one record."""

from __future__ import annotations

import argparse
from collections.abc import Sequence

from benchround.core.errors import InputError, UnknownNameError
from benchround.core.near_names import near_words, shown
from benchround.core.record import Kind, Record, withdrawn_by
from benchround.shell.actions import last_action
from benchround.shell.opened import add_season, writing
from benchround.shell.saying import add_json, answer, record_value, record_words, written

HELP = "take back the last action of this computer, or one record"
EXAMPLE = "benchround undo 0SAMPLE000150"
MORE_EXAMPLES = ("benchround undo --last",)
DETAILS = (
    "Nothing is removed: a record that is taken back stays in the folder and no longer counts. "
    "--last, which also holds when nothing is said, takes back every record of the newest action "
    "this computer recorded and that still stands, whether it was done here or on the screens; "
    "saying it again takes back the one before. Records made by one computer in one breath are "
    "one action. A withdrawal has an id too: undoing it brings the record back."
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("--last", action="store_true", help="the last action (the usual)")
    parser.add_argument(
        "record", metavar="RECORD-ID", nargs="?", default="", help="an id of 'benchround records'"
    )
    add_season(parser)
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """Withdraw it, and say how to get it back."""
    if given.last and given.record:
        raise InputError("Say --last or the id of a record, not both.")
    with writing(given.season) as desk:
        records = desk.folder.records()
        gone = withdrawn_by(records)
        if given.record:
            found: Sequence[Record] = (_named(records, gone, given.record),)
        else:
            found = last_action(records, desk.folder.machine, gone)
        if not found:
            raise InputError("Nothing this computer recorded is left to take back.")
        withdrawals = desk.withdraw([record.id for record in found])
        back = " ".join(record.id for record in withdrawals)
        answer(
            {
                "withdrawn": [
                    record_value(record, withdrawal.id)
                    for record, withdrawal in zip(found, withdrawals, strict=True)
                ],
                "written": written(withdrawals),
            },
            [
                *(f"taken back: {record_words(r)}" for r in found),
                f"'benchround undo ID' brings it back, ID being {back}",
            ],
            as_json=given.json,
        )
    return 0


def _named(records: Sequence[Record], gone: dict[str, str], text: str) -> Record:
    by_id = {record.id.lower(): record for record in records}
    record = by_id.get(text.strip().lower())
    if record is None:
        near = near_words(text, by_id, "'benchround records' lists them")
        raise UnknownNameError(f"There is no record {shown(text)}: {near}.")
    if record.id in gone:
        raise InputError(
            f"{record.id} was taken back already, by {gone[record.id]}: "
            f"'benchround undo {gone[record.id]}' brings it back."
        )
    if record.kind is Kind.WITHDRAWN and record.text("record") not in gone:
        raise InputError(f"{record.id} takes back a record that is not there.")
    return record
