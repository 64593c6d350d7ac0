"""`benchround tick`: record a task of the round as done."""

from __future__ import annotations

import argparse
from dataclasses import replace

from benchround.core.crop.crop import Crop
from benchround.core.errors import InputError
from benchround.core.near_names import near_words, shown
from benchround.core.season import Season
from benchround.core.task import Round, Task
from benchround.plain import JsonValue, task_value
from benchround.rounds.answers import drafts_for
from benchround.rounds.record_line import Word
from benchround.shell.cautions import add_have_read, cautions_said, read_drafts
from benchround.shell.opened import add_season, day_typed, figure_word, reading, writing
from benchround.shell.saying import add_json, answer, recorded_lines, written
from benchround.shell.tasks import task_lines, task_named

HELP = "tick a task of the round; without one, list them with numbers and keys"
EXAMPLE = "benchround tick look:b06 count=3 --on 2026-05-27"
MORE_EXAMPLES = (
    "benchround tick --on 2026-05-27",
    "benchround tick 'read thermometer' min_c=5 max_c=19 --on 2026-05-27",
)
DETAILS = (
    "A task is named by its key, which 'benchround today --json' gives too, or by its number in "
    "the list. Numbers change with every tick, keys do not. Figures are those the task asks for "
    "on the screens; what is left out takes the same value as there."
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("task", metavar="KEY|NUMBER", nargs="?", default="", help="the task")
    parser.add_argument(
        "words", metavar="figure=value", nargs="*", default=[], type=figure_word, help="its figures"
    )
    parser.add_argument("--on", default="", metavar="DATE", help="the day of the round, not today")
    parser.add_argument("--text", default="", help="a note")
    add_have_read(parser)
    add_season(parser)
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """Tick it, or list what there is."""
    if not given.task:
        return _list(given)
    with writing(given.season) as desk:
        day = day_typed(given.on, desk)
        if day > desk.today:
            raise InputError(f"{day.isoformat()} is still to come: nothing is done on it yet.")
        the_round = desk.round(day)
        task = task_named(the_round, given.task)
        crop = _crop_of(task, desk.season)
        drafts = drafts_for(task, _answers(task, given.words), desk.season)
        read = read_drafts(task.cautions, desk.season, day, crop, have_read=given.have_read)
        said = cautions_said(task.cautions, desk.season, day, crop)
        drafts = (replace(drafts[0], note=given.text or drafts[0].note), *drafts[1:], *read)
        records = desk.record(drafts, day)
        left = len(desk.round(day).today)
        value: dict[str, JsonValue] = {
            "task": task.key,
            "left_today": left,
            "cautions": list(said),
            "written": written(records),
        }
        named = task.key.rstrip(":")
        lines = [f"ticked, {left} left to do: {named}", *said, *recorded_lines(records)]
        answer(value, lines, as_json=given.json)
    return 0


def _list(given: argparse.Namespace) -> int:
    if given.words:
        raise InputError("Say which task: figures alone tick nothing.")
    with reading(given.season) as desk:
        the_round: Round = desk.round(day_typed(given.on, desk))
        tasks: list[JsonValue] = [
            {"number": number, **task_value(task, desk.season)}
            for number, task in enumerate(the_round.tasks, start=1)
        ]
        answer(
            {"day": the_round.day.isoformat(), "tasks": tasks},
            task_lines(the_round, desk.season),
            as_json=given.json,
        )
    return 0


def _answers(task: Task, words: list[Word]) -> dict[str, str]:
    known = {ask.into: ask for ask in task.asks}
    found: dict[str, str] = {}
    for name, text in words:
        if name not in known:
            asks = f"it asks for {', '.join(known)}" if known else "it asks for none"
            raise InputError(
                f"'{task.key}' takes no figure {shown(name)}: {near_words(name, known, asks)}."
            )
        if name in found:
            raise InputError(f"'{name}' is given twice: say it once.")
        found[name] = text
    return found


def _crop_of(task: Task, season: Season) -> Crop | None:
    batch = season.batches.get(task.about)
    return season.crop(batch.crop) if batch else None
