"""`benchround note`: record anything that happened to a batch, a place or the site."""

from __future__ import annotations

import argparse

from benchround.core.batch.part_telling import TAKES_ALL
from benchround.core.caution.due import CAUTIONS
from benchround.core.caution.mentions import cautions_of_note
from benchround.core.record import Draft, Kind
from benchround.core.record_figures import KINDS, KindRule
from benchround.core.season import Season
from benchround.plain import JsonValue
from benchround.rounds.record_line import NEW
from benchround.rounds.typed_words import kind_named, read_clock
from benchround.shell.opened import add_season, day_typed, figure_word, reader, writing
from benchround.shell.saying import add_json, answer, recorded_lines, remark, written

HELP = "record what happened to a batch, a place or the site"

EXAMPLE = "benchround note b20 counted count=40"
MORE_EXAMPLES = (
    "benchround note b25 lost count=3 cause=slug --text 'behind the water butt'",
    "benchround note b03 moved place=bench-1 --part spares --on yesterday",
    "benchround note site reading min_c=41F max_c=19.5 rain_mm=2",
    "benchround note 'Frame A' lid position=half --at 10:30",
    "benchround note new found variety='label gone' count=30 place=bench-2",
    "benchround note p09 packet crop=lupin year=2026 seeds=50",
)
DETAILS = (
    "What happened is named by its word, such as counted, pricked-out or first-up; the beginning "
    "of a word is enough where only one begins so. BATCH is a batch's id, a place's code or "
    "name, 'site' for the whole site, 'new' for a batch that begins with the record, or the name "
    "of a container or packet. The same things are refused as on the screens: what does not fit "
    "the stage of the batch, more plants than are alive, days still to come, and figures that "
    "cannot be. A temperature followed by F is turned into degrees C."
)


def _figures(rule: KindRule) -> str:
    words = (f"{name} (needed)" if name in rule.needed else name for name in rule.figures)
    return ", ".join(words) or "no figures"


LISTED = (
    "WHAT CAN BE RECORDED",
    tuple((str(kind), _figures(rule)) for kind, rule in KINDS.items()),
)
"""A part of the manual page: every kind with its figures, needed ones marked."""


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("batch", metavar="BATCH", help="batch, place, 'site', 'new', or a name")
    parser.add_argument("kind", metavar="KIND", help="what happened")
    parser.add_argument(
        "words", metavar="figure=value", nargs="*", default=[], type=figure_word, help="its figures"
    )
    parser.add_argument("--part", default="", help="a part of the batch, such as spares")
    parser.add_argument("--on", default="", metavar="DATE", help="the day it happened")
    parser.add_argument("--at", default="", metavar="TIME", help="the time, as 17:30")
    parser.add_argument("--text", default="", help="a note")
    add_season(parser)
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """Record it; what the batch has come to is said."""
    kind = kind_named(given.kind)
    with writing(given.season) as desk:
        ahead = kind is Kind.OUTLOOK
        day = day_typed(given.on, desk, ahead=ahead)
        draft = reader(desk).draft(
            given.batch,
            kind,
            given.words,
            part=given.part,
            note=given.text,
            at=read_clock("--at", given.at) if given.at else None,
            day=day,
        )
        all_taken = _all_taken(desk.season, draft)
        records = desk.record((draft,))
        value: dict[str, JsonValue] = {
            "batch": draft.about if draft.about in desk.season.batches else "",
            "stage": _stage(desk.season, draft.about, str(draft.figures.get("part", ""))),
            "written": written(records),
        }
        lines = recorded_lines(records)
        if given.batch == NEW:
            lines.insert(0, f"batch {draft.about}")
        if value["stage"]:
            lines.append(f"{draft.about} is now: {value['stage']}")
        if all_taken:
            lines.append(all_taken)
        answer(value, lines, as_json=given.json)
        said = cautions_of_note(given.text, str(draft.figures.get("cause", "")))
        remark(f"Caution: {CAUTIONS[name].short}" for name in said)
    return 0


def _all_taken(season: Season, draft: Draft) -> str:
    """That every plant was taken since no count was given; empty where it is not so."""
    batch, name = season.batches.get(draft.about), str(draft.figures.get("part", ""))
    part = next((part for part in batch.parts if part.name == name), None) if batch else None
    if draft.kind not in TAKES_ALL or "count" in draft.figures or part is None or part.alive == 0:
        return ""
    every = "all of them" if part.alive is None else f"all {part.alive}"
    return f"no count was given, so {every}: {draft.kind}. 'benchround undo --last' takes it back."


def _stage(season: Season, about: str, part: str) -> str:
    batch = season.batches.get(about)
    return str(batch.part(part).stage) if batch else ""
