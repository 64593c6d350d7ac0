"""What there is to know of the task under the cursor, as much as fits."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, cast

from benchround.core.season import Season
from benchround.core.task import Task
from benchround.core.unit_words import own
from benchround.screens.text import Line, Role, line, paragraph
from benchround.screens.widgets.paper import Paper
from benchround.screens.words import (
    harm_words,
    standing_words,
    subject_in_full,
    tick_words,
    window_words,
)

if TYPE_CHECKING:
    from benchround.screens.app import BenchroundApp

INDENT = "  "
Cautions = tuple[tuple[str, bool], ...]
"""Cautions to show: the words of each, and whether it is to be read in full."""


class TaskDetail(Paper):
    """The task in full; what does not fit is on the page the key for why opens."""

    def __init__(self) -> None:
        super().__init__(id="detail")
        self._shown: Task | None = None
        self._season: Season | None = None
        self._cautions: Cautions = ()

    def show(self, task: Task | None, season: Season, cautions: Cautions) -> None:
        """Show another task with its cautions as (words, whether in full)."""
        self._shown, self._season, self._cautions = task, season, cautions
        self.rewrite()

    def lines(self, width: int) -> Sequence[Line]:
        """The rule above, and the task, cut to the height there is."""
        if self._shown is None or self._season is None:
            return ()
        found = list(_lines(self._shown, self._season, self._cautions, width))
        high = self.size.height
        if len(found) <= high or not high:
            return found
        found = list(_lines(self._shown, self._season, self._cautions, width, room=high - 1))
        return [*found[: high - 1], line((f"{self._why_key()} tells the rest", Role.QUIET))]

    def _why_key(self) -> str:
        return cast("BenchroundApp", self.app).ring.named("why")

    def on_resize(self) -> None:
        """Cut it to the new height."""
        self.rewrite()


def _caution(words: str, in_full: bool, width: int) -> Sequence[Line]:
    lead = "Read first (w)" if in_full else "Caution"
    return list(paragraph(f"{lead}: {words}", width, Role.CAUTION, INDENT))


def _lines(
    task: Task, season: Season, cautions: Cautions, width: int, room: int | None = None
) -> Iterator[Line]:
    """The lines of a task; where the room is too short, cautions come before what to do."""
    head = list(paragraph(subject_in_full(task, season), width, Role.HEADING))
    told = list(paragraph(task.instruction, width, Role.STRONG, INDENT))
    warned = [row for one in cautions for row in _caution(*one, width)]
    short = room is not None and len(head) + len(told) + len(warned) > room
    yield from (*head, *warned, *told) if short else (*head, *told, *warned)
    standing = f"{standing_words(task)}; {window_words(task)}; {harm_words(task)}"
    if task.put_off:
        standing = f"{standing}; {own(task.put_off)}"
    yield from paragraph(standing, width, Role.INK, INDENT)
    yield from paragraph(f"why: {task.why}", width, Role.QUIET, INDENT)
    yield from paragraph(f"ticking writes: {tick_words(task, season)}", width, Role.QUIET, INDENT)
