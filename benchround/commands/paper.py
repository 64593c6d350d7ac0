"""`benchround paper`: the round on paper, and typing in what was ticked on it."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

from benchround.core.errors import BenchroundError, InputError
from benchround.core.frame.place import POSITION_FIGURES, say_positions
from benchround.core.frozen import dataclass
from benchround.core.record import Draft, Figure, Kind
from benchround.core.season import Season
from benchround.core.task import Round, Task
from benchround.core.visible import visible
from benchround.desk import Desk
from benchround.feeds.out_file import write_out
from benchround.feeds.page_text import as_text
from benchround.feeds.pages import Page
from benchround.feeds.paper_entry import Entered, Entry, answers_of, read_entry
from benchround.feeds.paper_round import PaperList, paper_list, paper_page
from benchround.feeds.papers import PAPER_WORDS, paper_named
from benchround.feeds.trial import Trial
from benchround.plain import place_name, title, weather_words
from benchround.rounds.answers import drafts_for
from benchround.season_given import open_given, season_arguments
from benchround.shell.paper_lists import keep_list, list_for
from benchround.shell.progress import watched
from benchround.shell.saying import remark
from benchround.whereabouts import is_season

HELP = "the round on paper, with boxes to tick, and typing it in afterwards"
EXAMPLE = "benchround paper print --sample --pdf round.pdf"
MORE_EXAMPLES = (
    "benchround paper print --sample",
    "benchround paper enter 1:5:19 2 --on 2026-05-27",
)
DETAILS = (
    "'print' writes the day's round with a box, a number and room for figures for each task, and "
    "a code of four letters that says later what the numbers stand for. 'enter' takes the numbers "
    "that were ticked, each with what was written beside it after colons; it only shows what it "
    "would record until --yes is said, and records nothing while one number cannot be."
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """Print or enter, each with its own arguments."""
    ways = parser.add_subparsers(dest="way", metavar="print|enter")
    printing = _way(ways, "print", "print the day's round", EXAMPLE)
    season_arguments(printing)
    printing.add_argument("--pdf", metavar="FILE", default="", help="write a PDF")
    printing.add_argument("--paper", default="A4", help=PAPER_WORDS)
    entering = _way(ways, "enter", "type in what was ticked", MORE_EXAMPLES[1])
    entering.add_argument("entry", nargs="+", help="code and numbers ticked, as k7qp 3 5 7:22")
    season_arguments(entering)
    entering.add_argument("--yes", action="store_true", help="record it; else it is only shown")


def _way(
    ways: argparse._SubParsersAction[argparse.ArgumentParser], name: str, words: str, example: str
) -> argparse.ArgumentParser:
    return ways.add_parser(name, help=words, description=words, epilog=f"example: {example}")


def run(given: argparse.Namespace) -> int:
    """Print the sheet, or show and record what was typed."""
    if not given.way:
        raise InputError(
            "Say which: 'benchround paper print' writes the day's round, 'benchround paper enter "
            "CODE NUMBERS' takes what was ticked on it."
        )
    if given.way == "enter":
        given.entry, given.season = _entry_and_season(given.entry)
    desk = open_given(given, writing=given.way == "enter" and given.yes)
    try:
        return _print(given, desk) if given.way == "print" else _enter(given, desk)
    finally:
        desk.close()


def _entry_and_season(words: Sequence[str]) -> tuple[str, str]:
    """The entry, in one word or in several, and the season's folder where one stands last."""
    *before, last = words
    quoted = len(before) == 1 and " " in before[0]
    if before and (quoted or is_season(Path(last).expanduser())):
        return " ".join(before), last
    return " ".join(words), ""


def _print(given: argparse.Namespace, desk: Desk) -> int:
    paper = paper_named(given.paper)
    the_round = desk.round()
    kept = paper_list(the_round)
    page = _page(the_round, desk, kept.code)
    if given.pdf:
        from benchround.feeds.page_pdf import page_pdf

        with watched("drawing", "lines", "no PDF was written.") as progress:
            data, remarks = page_pdf(page, paper, desk.today, one_sheet=True, progress=progress)
        write_out(given.pdf, data)
        remark(remarks)
    else:
        sys.stdout.write(as_text(page))
    if not given.sample:
        keep_list(desk, kept)
    remark((*the_round.assumed, *desk.problems))
    return 0


def _page(the_round: Round, desk: Desk, code: str) -> Page:
    season = desk.season
    return paper_page(
        the_round,
        lambda task: title(task, season),
        lambda task: place_name(season, task.place),
        season.unit_words(weather_words(season.weather.on(the_round.day))),
        code,
    )


def _enter(given: argparse.Namespace, desk: Desk) -> int:
    entry = read_entry(given.entry)
    kept = list_for(entry, desk)
    rows = _rows(entry, kept, desk)
    faults = [row for row in rows if row.fault]
    for row in rows:
        mark = "!" if row.fault else " "
        sys.stdout.write(f"{mark} {row.number:>3}  {visible(row.fault or row.words)}\n")
    if faults:
        remark([f"{len(faults)} of {len(rows)} cannot be recorded; nothing was. Type it again."])
        return 1
    if not given.yes:
        remark(["Nothing was recorded yet: the same line with --yes records it."])
        return 0
    written = desk.record([draft for row in rows for draft in row.drafts], kept.day)
    remark([f"{len(written)} records of {kept.day.isoformat()} were written."])
    return 0


@dataclass(frozen=True, slots=True)
class _Row:
    """What one number will write, or why it cannot."""

    number: int
    words: str = ""
    fault: str = ""
    drafts: tuple[Draft, ...] = ()


def _rows(entry: Entry, kept: PaperList, desk: Desk) -> list[_Row]:
    the_round = desk.round(kept.day)
    trial = Trial(desk.folder.records(), desk.season, kept.day)
    rows: list[_Row] = []
    for entered in entry.ticked:
        try:
            rows.append(_row(entered, kept, the_round, desk, trial))
        except BenchroundError as error:
            rows.append(_Row(entered.number, fault=str(error)))
    return rows


def _row(entered: Entered, kept: PaperList, the_round: Round, desk: Desk, trial: Trial) -> _Row:
    if not 1 <= entered.number <= len(kept.keys):
        raise InputError(f"the sheet has numbers 1 to {len(kept.keys)}.")
    key = kept.keys[entered.number - 1]
    task = the_round.find(key)
    if task is None:
        raise InputError(f"{key.strip(':')} is not asked for any more: it was recorded since.")
    answers, note = answers_of(entered, task.asks)
    drafts = drafts_for(task, answers, trial.season)
    words = f"{task.family}: {title(task, desk.season)}: {_said(drafts, desk.season)}"
    if note:
        drafts = (*drafts, _note(task, note))
        words += f"; note: {note}"
    trial.take(drafts)
    return _Row(entered.number, words, drafts=drafts)


def _note(task: Task, note: str) -> Draft:
    return Draft(Kind.NOTED, task.about, {} if task.crop else {"of_place": True}, note=note)


def _said(drafts: Sequence[Draft], season: Season) -> str:
    return ", ".join(
        " ".join([str(draft.kind), *_figures_said(draft.figures, season)]) for draft in drafts
    )


def _figures_said(figures: Mapping[str, Figure], season: Season) -> Iterator[str]:
    """A record's figures as they are said: lids by their words, places by their names."""
    for name, value in figures.items():
        if name == "of_place":
            continue  # the row says which place
        if value is True:
            yield name.replace("_", " ")
        elif name in POSITION_FIGURES and isinstance(value, str):
            yield f"{name} {say_positions(value)}"
        elif name.endswith("place") and isinstance(value, str):
            yield f"{name} {place_name(season, value)}"
        elif value != "" and value is not False:
            yield f"{name} {value}"
