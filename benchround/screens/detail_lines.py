"""What there is to know of a task, as the lines beside or beneath the list."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from benchround.core.caution.due import CAUTIONS, to_show
from benchround.core.season import Season
from benchround.core.task import Task
from benchround.core.unit_words import own
from benchround.screens.read_first import crop_of
from benchround.screens.text import Line, Role, fit, line, paragraph
from benchround.screens.words import (
    harm_words,
    standing_words,
    subject_in_full,
    tick_words,
    window_words,
)

INDENT = "  "
Cautions = tuple[tuple[str, bool], ...]
"""Cautions to show: the words of each, and whether it is to be read in full."""


def cautions_of(task: Task, season: Season, day: date) -> Cautions:
    """The cautions to show with a task on a day."""
    shown = to_show(task.cautions, season.cautions_read, day, crop_of(task, season))
    return tuple((CAUTIONS[name].short, in_full) for name, in_full in shown)


def detail_lines(
    task: Task, season: Season, cautions: Cautions, width: int, high: int, why_key: str
) -> Sequence[Line]:
    """The task in full, cut to the height there is.

    Args:
        task: the task.
        season: names what it is about.
        cautions: those to show with it.
        width: columns.
        high: lines there are; 0 where that is not known yet.
        why_key: the key that tells the rest.
    """
    found = list(_lines(task, season, cautions, width))
    if len(found) <= high or not high:
        return found
    found = list(_lines(task, season, cautions, width, room=high - 1))
    return [*found[: high - 1], line((f"{why_key} tells the rest", Role.QUIET))]


def _caution(words: str, in_full: bool, width: int) -> Sequence[Line]:
    lead = "Read first (w)" if in_full else "Caution"
    return list(paragraph(f"{lead}: {words}", width, Role.CAUTION, INDENT))


def _in_short(cautions: Cautions, width: int, room: int) -> Iterator[Line]:
    """A line for each caution, the worst first; the last line there is room for counts the rest."""
    most = max(1, room)
    for number, (words, in_full) in enumerate(cautions[:most], start=1):
        left = len(cautions) - number if number == most else 0
        lead = "Read first (w)" if in_full else "Caution"
        more = f", {left} more" if left else ""
        yield line((fit(f"{lead}{more}: {words}", width), Role.CAUTION))


def _lines(
    task: Task, season: Season, cautions: Cautions, width: int, room: int | None = None
) -> Iterator[Line]:
    """The lines of a task; where the room is too short, cautions come before what to do.

    There each caution has one line, and at least one is left for what to do.
    """
    head = list(paragraph(subject_in_full(task, season), width, Role.HEADING))
    told = list(paragraph(task.instruction, width, Role.STRONG, INDENT))
    warned = [row for one in cautions for row in _caution(*one, width)]
    if room is not None and len(head) + len(told) + len(warned) > room:
        yield from (*head, *_in_short(cautions, width, room - len(head) - 1), *told)
    else:
        yield from (*head, *told, *warned)
    standing = f"{standing_words(task)}; {window_words(task)}; {harm_words(task)}"
    if task.put_off:
        standing = f"{standing}; {own(task.put_off)}"
    yield from paragraph(standing, width, Role.INK, INDENT)
    yield from paragraph(f"why: {task.why}", width, Role.QUIET, INDENT)
    yield from paragraph(f"ticking writes: {tick_words(task, season)}", width, Role.QUIET, INDENT)
