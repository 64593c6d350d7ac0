"""`benchround diary`: sowings and what came up, out of a paper diary, a line each."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator, Sequence

from benchround.core.errors import InputError
from benchround.core.record import Draft, Kind
from benchround.feeds.diary import Diary, DiaryLine, read_diary
from benchround.feeds.text_file import MOST_BYTES, decoded
from benchround.plain import JsonValue
from benchround.shell.opened import add_season, reading, writing
from benchround.shell.progress import watched
from benchround.shell.saying import add_json, answer, remark, written

HELP = "put sowings, and what came up, on the books as a diary has them, a line each"
EXAMPLE = 'benchround diary "12 apr cosmos Paper Lantern 40 seeds bench 1"'
MORE_EXAMPLES = (
    'benchround diary "4 may leek 60 seeds 60 cells" "lettuce Butterleaf 80 seeds Frame A"',
    'benchround diary "28 feb leek 60 seeds" "20 mar leek up 50"',
    'benchround diary --preview "tomato 12 seeds in propagator packet p03"',
)
DETAILS = (
    "A line holds a day, a crop and a variety, in this order, then in any order numbers (40 seeds, "
    "24 cells, 2 per cell, 3 trays, 30 wanted), a packet and a place. What came up is told by day, "
    "batch and 'up 50', 'first up' or 'none up'; the batch is named by its id, or by crop and "
    "variety where only one can be meant, one of a line above too. A line without a day is of "
    "the day of the line before it, the first of today; a day to come makes a plan. Without a LINE "
    "lines are read from standard input. Nothing is guessed: where a line cannot be understood it "
    "is named with its number, and nothing at all is recorded unless --only-good is said. A line "
    "that is on the books already, word for word, is left out unless --again is said, so that the "
    "same file may be read twice."
)
NOTHING = "nothing was recorded."


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("lines", metavar="LINE", nargs="*", help="a line of the diary, in quotes")
    parser.add_argument("--preview", action="store_true", help="say what is understood, no more")
    parser.add_argument("--only-good", action="store_true", help="leave out lines with a fault")
    parser.add_argument("--again", action="store_true", help="record what is there already again")
    add_season(parser)
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """Read the lines, and record them all or none."""
    lines = given.lines or _typed_in()
    with (reading if given.preview else writing)(given.season) as desk:
        first_free = desk.free_batch_id()
        names = desk.library.names()
        diary = Diary(desk.season, names, desk.today, first_free, again=given.again)
        with watched("reading", "lines", NOTHING) as progress:
            found = read_diary(lines, diary, progress)
        if not found:
            raise InputError("There is no line: write one in quotes, or pipe a file of lines in.")
        faults = sum(1 for one in found if one.fault)
        refused = bool(faults) and not given.only_good
        drafts = [one.draft for one in found if one.comes and one.draft is not None]
        records = desk.record(drafts) if drafts and not refused and not given.preview else ()
        value: dict[str, JsonValue] = {
            "preview": given.preview,
            "recorded": len(records),
            "lines": [_value(one) for one in found],
            "written": written(records),
        }
        answer(value, _said(found), as_json=given.json)
        remark(_summary(found, faults, drafts, given))
    return 1 if refused else 0


def _typed_in() -> list[str]:
    """The lines of standard input."""
    if sys.stdin.isatty():
        remark(["Type a line for each sowing or count; ctrl+d after the last one."])
    return decoded(sys.stdin.buffer.read(MOST_BYTES + 1), "standard input").splitlines()


def _value(one: DiaryLine) -> JsonValue:
    draft = one.draft
    return {
        "line": one.number,
        "text": one.text,
        "batch": one.known or (draft.about if draft is not None else None),
        "understood": one.words or None,
        "on_the_books": bool(one.known),
        "fault": one.fault or None,
    }


def _said(found: Sequence[DiaryLine]) -> Iterator[str]:
    for one in found:
        if one.draft is None:
            yield f"! line {one.number}: {one.fault}"
        elif one.known:
            yield f"= line {one.number}: on the books already as {one.known}"
        else:
            yield f"  line {one.number}: {one.draft.about} {one.words}"


def _number(count: int, what: str) -> str:
    return f"1 {what}" if count == 1 else f"{count} {what}s"


def _summary(
    found: Sequence[DiaryLine], faults: int, good: Sequence[Draft], given: argparse.Namespace
) -> Iterator[str]:
    known = sum(1 for one in found if one.known)
    if known:
        yield f"{known} of {len(found)} lines are on the books already and are left out."
    if faults and not given.only_good:
        others = f" --only-good takes the other {len(good)}." if good else ""
        yield f"{faults} of {len(found)} lines cannot be understood; none was recorded.{others}"
        return
    if faults:
        yield f"{faults} of {len(found)} lines cannot be understood and are left out."
    counts = sum(1 for draft in good if draft.kind not in (Kind.SOWN, Kind.PLANNED))
    sowings = len(good) - counts
    said = [_number(sowings, "sowing")] if sowings or not counts else []
    said += [_number(counts, "look")] if counts else []
    yield f"{' and '.join(said)} {'would be recorded' if given.preview else 'recorded'}."
