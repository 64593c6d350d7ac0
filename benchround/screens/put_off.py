"""Putting a task off: to which day, and why."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

from benchround.core.errors import BenchroundError, InputError
from benchround.core.task import ASKED_ANEW, Harm, Task
from benchround.core.typed.date import read_day
from benchround.core.typed.figures import read_note
from benchround.screens.keys import PUT_OFF, bindings
from benchround.screens.sheet_base import Reading, Sheet, SheetFault
from benchround.screens.sheet_fields import day_field, echo_day, month_first
from benchround.screens.text import Line, Role, paragraph
from benchround.screens.widgets.field import Field, plain_choices
from benchround.screens.words import harm_words, subject_in_full, window_words

REASONS = (
    "weather",
    "no room",
    "not ready",
    "no compost",
    "no time",
    "away",
)
"""Reasons to choose from; any other can be typed."""
LONGEST_REASON = 200
FOR_TODAY = "It is left out of today's round; tomorrow is asked for by itself."
DIES = "Plants die today if this is left: put off, it may come too late for them."


class PutOffSheet(Sheet, inherit_bindings=False):
    """Move one task to a later day.

    Args:
        task: the task.
    """

    BINDINGS = bindings(PUT_OFF)
    KEYS_OF = PUT_OFF

    def __init__(self, task: Task) -> None:
        super().__init__()
        self.moved_task = task
        self._asked = False

    @property
    def kept_as(self) -> str:
        """One sheet for each task."""
        return f"put off {self.moved_task.key}"

    def make_fields(self) -> Sequence[Field]:
        """The day and the reason."""
        until = day_field(self._likely(), self.desk.today, label="until", name="until")
        return [until, Field("reason", "reason", finder=plain_choices(REASONS))]

    def _likely(self) -> date:
        """The day to look again where weather or room forbids it, else tomorrow."""
        tomorrow = self.desk.today + timedelta(days=1)
        hold = self.moved_task.hold
        again = hold.look_again if hold else None
        return max(tomorrow, again) if again else tomorrow

    def title_lines(self, width: int) -> Sequence[Line]:
        """What is put off."""
        subject = subject_in_full(self.moved_task, self.desk.season)
        head = f"Put off: {self.moved_task.family}, {subject}"
        return [
            *paragraph(head, width, Role.HEADING),
            *paragraph(self.moved_task.instruction, width, Role.STRONG),
        ]

    def note_lines(self, width: int) -> Sequence[Line]:
        """What waiting costs."""
        task = self.moved_task
        words = f"{window_words(task)}; {harm_words(task)}"
        return [
            *paragraph(self._cost(), width, Role.BAD),
            *paragraph(words, width, Role.INK, "  "),
            *paragraph(self._comes_back(), width, Role.QUIET, "  "),
        ]

    def _comes_back(self) -> str:
        """When it is asked again."""
        anew = self.moved_task.family in ASKED_ANEW
        return FOR_TODAY if anew else "It comes back by itself on that day."

    def _cost(self) -> str:
        """What is lost where plants die of waiting; empty where they do not."""
        return DIES if self.moved_task.harm is Harm.DIES_TODAY else ""

    def retell(self) -> None:
        """Say again which day is meant."""
        echo_day(self.form.field("until"), self.desk.season, self.desk.today, ahead=True)

    def save(self) -> str:
        """Put the task off."""
        values, reading, today = self.form.values(), Reading(), self.desk.today
        first = month_first(self.desk.season)
        until = reading.read(
            "until", lambda: read_day(values["until"], today, ahead=True, month_first=first), today
        )
        reason = reading.read("reason", lambda: read_note(values["reason"], LONGEST_REASON), "")
        reading.finish()
        if self._cost() and not self._asked:
            self._asked = True
            raise BenchroundError(f"Not put off yet. {DIES} Save again to put it off all the same.")
        try:
            return self.bench.doings.put_off(self.moved_task, until, reason)
        except InputError as error:
            raise SheetFault({"until": str(error)}) from None
        except BenchroundError as error:
            raise SheetFault({}, str(error)) from None
