"""`benchround put-off`: move a task to a later day, with a reason."""

from __future__ import annotations

import argparse

from benchround.core.errors import InputError
from benchround.core.record_figures import FigureRule, Form
from benchround.rounds.typed_words import read_text
from benchround.shell.opened import add_season, day_typed, writing
from benchround.shell.saying import add_json, answer, recorded_lines, written
from benchround.shell.tasks import task_named

HELP = "move a task of today's round to a later day"
EXAMPLE = "benchround put-off 1 --until +2 --reason 'no clean trays'"
DETAILS = (
    "The task is named by its key or its number, as for 'benchround tick'. It is not overdue "
    "before the day it was put off to, and its reason stands beside it until then."
)
REASON = FigureRule("reason", Form.TEXT, high=200)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("task", metavar="KEY|NUMBER", help="the task")
    parser.add_argument("--until", required=True, metavar="DATE", help="the day it is put off to")
    parser.add_argument("--reason", default="", help="why")
    add_season(parser)
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """Put it off."""
    with writing(given.season) as desk:
        until = day_typed(given.until, desk, ahead=True)
        if until <= desk.today:
            raise InputError(
                f"{until.isoformat()} is not ahead of today, {desk.today.isoformat()}: put it off "
                "to a later day, or tick it."
            )
        task = task_named(desk.round(), given.task)
        records = desk.put_off(task, until, read_text(REASON, given.reason.strip()))
        answer(
            {"task": task.key, "until": until.isoformat(), "written": written(records)},
            [f"put off {task.key} to {until.isoformat()}", *recorded_lines(records)],
            as_json=given.json,
        )
    return 0
