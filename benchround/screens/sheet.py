"""The sheet of a task: the figures a tick can take, each with its default."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from benchround.core.caution.due import CAUTIONS
from benchround.core.errors import BenchroundError, InputError
from benchround.core.record import Draft, Figure, Kind
from benchround.core.task import Ask, Task
from benchround.core.typed.date import read_day
from benchround.core.typed.figures import read_note
from benchround.rounds.answers import IN_WORDS
from benchround.screens.keys import TASK, bindings
from benchround.screens.read_first import as_read, crop_of, in_full, unread
from benchround.screens.sheet_base import Reading, Sheet, SheetFault, by_field
from benchround.screens.sheet_fields import (
    day_field,
    echo_day,
    month_first,
    note_cautions,
    place_field,
)
from benchround.screens.text import Line, Role, paragraph
from benchround.screens.widgets.field import Field, plain_choices
from benchround.screens.words import subject_in_full, tick_words

AGREE, NEEDED = "agree", "needed"


class TaskSheet(Sheet, inherit_bindings=False):
    """Record a task as done with its figures, on a day.

    Args:
        task: the task.
        day: the day looked at in the round.
    """

    BINDINGS = bindings(TASK)
    KEYS_OF = TASK

    def __init__(self, task: Task, day: date) -> None:
        super().__init__()
        self.done_task = task
        self.day = day
        self._read: set[str] = set()

    @property
    def kept_as(self) -> str:
        """One sheet for each task."""
        return f"task {self.done_task.key}"

    def make_fields(self) -> Sequence[Field]:
        """The task's own fields, a note where a batch is there to take it, and the day."""
        fields = [self._field(ask) for ask in self.done_task.asks]
        if self.done_task.about in self.desk.season.batches:
            fields.append(Field("note", "note"))
        return [*fields, day_field(self.day, self.desk.today)]

    def _field(self, ask: Ask) -> Field:
        season = self.desk.season
        if ask.into == "place":
            return place_field(season, ask.default, label=ask.label)
        hint = NEEDED if ask.needed else ask.hint
        if ask.choices:
            finder = plain_choices(ask.choices)
            return Field(ask.into, ask.label, ask.default, finder, only=True, hint=hint)
        most = f"up to {ask.most}" if ask.most is not None else ""
        said = ", ".join(words for words in (hint, most) if words)
        figure = ask.whole or ask.into not in IN_WORDS
        return Field(ask.into, ask.label, ask.default, hint=said, figure=figure)

    def title_lines(self, width: int) -> Sequence[Line]:
        """The task and what to do."""
        task = self.done_task
        head = f"{str(task.family).capitalize()}: {subject_in_full(task, self.desk.season)}"
        return [
            *paragraph(head, width, Role.HEADING),
            *paragraph(task.instruction, width, Role.STRONG),
        ]

    @property
    def _to_read(self) -> tuple[str, ...]:
        """The cautions that hold this task up."""
        waiting = unread(self.done_task, self.desk.season, self.day)
        return tuple(name for name in waiting if name not in self._read)

    @property
    def _said_in_full(self) -> tuple[str, ...]:
        """The cautions shown: those that hold it up, and all others the round tells to read."""
        shown = in_full(self.done_task, self.desk.season, self.day)
        return tuple(name for name in shown if name not in self._read)

    @property
    def foot_first(self) -> str:
        """The key that says a caution was read, while one is shown."""
        return AGREE if self._said_in_full else ""

    def _first_words(self, width: int) -> Sequence[Line]:
        shown = self._said_in_full
        if not shown:
            return ()
        more = f"; {len(shown) - 1} more after it" if len(shown) > 1 else ""
        agree = f"{self.ring.named(AGREE)} says that you have read it{more}"
        first, *others = (
            paragraph(f"READ FIRST: {CAUTIONS[name].full}", width, Role.BAD) for name in shown
        )
        return [
            *first,
            *paragraph(agree, width, Role.STRONG),
            *(row for rows in others for row in rows),
        ]

    def note_lines(self, width: int) -> Sequence[Line]:
        """What is to be read first, what ticking writes, and why the task is there."""
        task = self.done_task
        writes = f"as it stands it writes: {tick_words(task, self.desk.season)}"
        note = self.form.field("note").text if self.form.has("note") else ""
        return [
            *self._first_words(width),
            *note_cautions(note, "", width),
            *paragraph(writes, width, Role.QUIET, "  "),
            *paragraph(f"why: {task.why}", width, Role.QUIET, "  "),
        ]

    def retell(self) -> None:
        """Say again which day is meant."""
        echo_day(self.form.field("day"), self.desk.season, self.desk.today)

    def action_agree(self) -> None:
        """Say that the caution shown was read; after the last, tick what wants no more figures."""
        shown = self._said_in_full
        if not shown:
            self.say("There is no caution that waits to be read.")
            return
        self._read.add(shown[0])
        if self._said_in_full:
            self.say("Read on: there is another one.")
        elif any(ask.needed and not self.form.field(ask.into).value for ask in self.done_task.asks):
            self.say("Read. Fill in what is needed and save.")
        else:
            self.action_save()
            return
        self._tell()

    def save(self) -> str:
        """Tick the task with the figures typed."""
        if self._to_read:
            agree = self.ring.named(AGREE)
            raise BenchroundError(f"Nothing was recorded: read the caution, then press {agree}.")
        values, reading = self.form.values(), Reading()
        day = reading.read("day", lambda: self._day(values["day"]), self.day)
        note = reading.read("note", lambda: read_note(values.get("note", "")), "")
        reading.finish()
        return self._tick(values, day, note)

    def _day(self, text: str) -> date:
        day = read_day(text, self.desk.today, month_first=month_first(self.desk.season))
        self.bench.doings.require_past(day)
        return day

    def _tick(self, values: dict[str, str], day: date, note: str) -> str:
        task = self.done_task
        answers = {ask.into: values[ask.into] for ask in task.asks}
        also = list(as_read(self._read, crop_of(task, self.desk.season)))
        if note:
            part: dict[str, Figure] = {"part": task.part} if task.part else {}
            also.append(Draft(Kind.NOTED, task.about, part, note))
        try:
            return self.bench.doings.tick(task, answers, day, also)
        except InputError as error:
            raise by_field(error, {ask.into: ask.label for ask in task.asks}) from None
        except BenchroundError as error:
            raise SheetFault({}, str(error)) from None
