"""`benchround labels`: labels for trays, on paper or for a label printer."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator, Sequence
from dataclasses import replace

from benchround.core.errors import InputError
from benchround.core.record import Draft, Kind
from benchround.desk import Desk
from benchround.feeds.label_settings import sheet_from, sheet_words
from benchround.feeds.labels import Label, due, label_text, labels_of, printed_drafts
from benchround.feeds.out_file import write_out
from benchround.feeds.papers import PAPER_WORDS
from benchround.season_given import open_given, positive, season_arguments
from benchround.shell.progress import watched
from benchround.shell.saying import remark

HELP = "labels to print: new and changed ones, or all"
EXAMPLE = "benchround labels --sample --all --pdf labels.pdf --size 100x13"
MORE_EXAMPLES = (
    "benchround labels --sample",
    "benchround labels --sample --batch b07 --copies 3 --qr --pdf sweet-pea.pdf",
    "benchround labels --sample --form stick-on --size 70x37 --sides two --pdf sheet.pdf",
    "benchround labels --sample --batch b07 --text - --width 20",
)
DETAILS = (
    "Without a file the labels that are due are only listed: new ones, those on which something "
    "has changed, and those recorded as lost. Writing a file takes its labels down as printed, "
    "which 'benchround undo' takes back; --try leaves that out. Crop and variety stand on the "
    "front; sowing day, batch, number sown and the day to look from on the back. Names are set "
    "smaller or on more lines, never cut off."
)

SETTING = "labels"
"""The setting a sheet is remembered under."""
NONE_DUE = "Every label is printed already, so no file is written: --all prints them again."
NOTHING_SOWN = "There is no batch to label yet: 'benchround sow CROP' begins one."
MOST_COPIES = 500
UNDRAWN = "no file was written, and no label is taken as printed."
SHEET_OPTIONS = (
    ("form", "stick-in (to cut out) or stick-on (on ready sheets)"),
    ("paper", PAPER_WORDS),
    ("size", "one label, width x height in mm, as 100x13"),
    ("sides", "one, two or folded"),
    ("columns", "labels side by side"),
    ("rows", "labels below each other"),
    ("left", "left margin, mm"),
    ("top", "top margin, mm"),
    ("gap", "gaps between columns and rows in mm, as 2.5x0"),
    ("foot", "end of a stick-in label that goes into the compost, mm"),
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    season_arguments(parser)
    parser.add_argument("--batch", metavar="ID", action="append", default=[], help="only this one")
    parser.add_argument("--all", action="store_true", help="also those printed already")
    parser.add_argument("--copies", default="", help="of each label (one a tray)")
    parser.add_argument("--pdf", metavar="FILE", default="", help="write a PDF")
    parser.add_argument("--text", metavar="FILE", default="", help="write plain text; - for output")
    parser.add_argument("--width", default="0", help="letters on a line of the plain text")
    parser.add_argument("--qr", action="store_true", help="the batch id as a QR code too")
    parser.add_argument("--first", default="1", help="place of the first label on the sheet")
    parser.add_argument("--try", dest="trial", action="store_true", help="do not call them printed")
    parser.add_argument("--remember", action="store_true", help="use this sheet from now on")
    for name, words in SHEET_OPTIONS:
        parser.add_argument(f"--{name}", default="", help=words)


def run(given: argparse.Namespace) -> int:
    """Show what would be printed, or write it and remember it as printed."""
    writing = bool(given.pdf or given.text) and not given.trial
    desk = open_given(given, writing=(writing or given.remember) and not given.sample)
    try:
        options = _options(given, desk)
        sheet_from(options)  # a sheet that cannot be is refused before anything else
        labels = _labels(given, desk)
        if not (given.pdf or given.text):
            sys.stdout.writelines(f"{line}\n" for line in _listed(labels))
        if given.pdf and labels:
            _pdf(given, desk, labels, options)
        if given.text and labels:
            lines = label_text(labels, _width(given.width))
            write_out(given.text, "".join(f"{line}\n" for line in lines).encode("utf-8"))
        if not labels:
            remark([NONE_DUE if desk.season.batches else NOTHING_SOWN])
        if writing and labels:
            _remember_printed(given, desk, labels)
        if given.remember:
            _remember_sheet(given, desk, options)
        remark(desk.problems)
    finally:
        desk.close()
    return 0


def _labels(given: argparse.Namespace, desk: Desk) -> tuple[Label, ...]:
    found = labels_of(desk.season, desk.folder.records(), desk.today, given.batch)
    wanted = found if given.all or given.batch else due(found)
    if not given.copies:
        return wanted
    copies = positive(given.copies)
    if copies > MOST_COPIES:
        raise InputError(f"{copies} copies are too many: {MOST_COPIES} at most.")
    return tuple(replace(label, copies=copies) for label in wanted)


def _listed(labels: Sequence[Label]) -> Iterator[str]:
    for label in labels:
        copies = f" x {label.copies}" if label.copies > 1 else ""
        yield f"{label.standing}: {' | '.join(label.lines)}{copies}"


def _options(given: argparse.Namespace, desk: Desk) -> dict[str, str]:
    """What was typed, and the sheet remembered where nothing was."""
    said = {name: getattr(given, name) for name, _ in SHEET_OPTIONS if getattr(given, name)}
    kept = desk.season.settings.get(SETTING, "")
    if said.get("form") or not kept:
        return {**said, "first": given.first}
    try:
        pairs = (part.partition("=") for part in kept.split())
        remembered = {name: value for name, _, value in pairs}
        sheet_from(remembered)
    except InputError as error:
        remark([f"The sheet that was remembered cannot be used: {error}"])
        remembered = {}
    return {**remembered, **said, "first": given.first}


def _pdf(
    given: argparse.Namespace, desk: Desk, labels: Sequence[Label], options: dict[str, str]
) -> None:
    from benchround.feeds.label_pdf import labels_pdf

    sheet = sheet_from(options)
    with watched("drawing", "sheets of labels", UNDRAWN) as progress:
        data, remarks = labels_pdf(labels, sheet, desk.today, qr=given.qr, progress=progress)
    write_out(given.pdf, data)
    remark(remarks)


def _remember_printed(given: argparse.Namespace, desk: Desk, labels: Sequence[Label]) -> None:
    if given.sample:
        remark(["The sample is never written to: its labels stay new."])
        return
    desk.record(printed_drafts(labels))
    remark([f"{len(labels)} labels are now taken as printed; --try leaves that out."])


def _remember_sheet(given: argparse.Namespace, desk: Desk, options: dict[str, str]) -> None:
    if given.sample:
        remark(["The sample is never written to: the sheet is not remembered."])
        return
    desk.record([Draft(Kind.SETTING, SETTING, {"value": sheet_words(options)})])
    remark(["This sheet is used from now on."])


def _width(text: str) -> int:
    if text == "0":
        return 0
    width = positive(text)
    if width < 4:
        raise InputError(f"A line of {width} letters is too short: 4 at least.")
    return width
