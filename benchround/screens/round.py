"""The round: the day's tasks in walking order, ticked with one key."""

from __future__ import annotations

from datetime import date, timedelta

from textual.app import ComposeResult
from textual.containers import Container

from benchround.core.dates import say_day
from benchround.core.errors import BenchroundError
from benchround.core.task import Task
from benchround.screens.base import BenchScreen
from benchround.screens.detail_lines import cautions_of
from benchround.screens.keys import ROUND, bindings
from benchround.screens.read_first import unread
from benchround.screens.rows import Row, first_task, rows_of
from benchround.screens.widgets.head import RoundHead
from benchround.screens.widgets.key_bar import KeyBar
from benchround.screens.widgets.status import Status
from benchround.screens.widgets.task_detail import TaskDetail
from benchround.screens.widgets.task_list import TaskList
from benchround.screens.words import TO_DO

DAY_TURNS_EVERY_S = 60.0


class RoundScreen(BenchScreen[None], inherit_bindings=False):
    """One day's round. Other days can be looked at; recording needs a day that has begun."""

    BINDINGS = bindings(ROUND)
    KEYS_OF = ROUND
    AUTO_FOCUS = "TaskList"

    def __init__(self) -> None:
        super().__init__(id="round")
        self._other: date | None = None
        self._seen_today: date | None = None
        self._folded = False

    @property
    def day(self) -> date:
        """The day looked at."""
        return self._other or self.desk.today

    def compose(self) -> ComposeResult:
        """Head, list, detail, status, foot."""
        yield RoundHead()
        with Container(id="body"):
            yield TaskList(self._show_task)
            yield TaskDetail()
        yield Status()
        yield KeyBar(ROUND)

    def on_mount(self) -> None:
        """Show today's round, and keep an eye on midnight."""
        self.show_round()
        self.set_interval(DAY_TURNS_EVERY_S, self._turn_day)

    @property
    def tasks(self) -> TaskList:
        """The list."""
        return self.query_one(TaskList)

    def show_round(self, key: str = "") -> None:
        """Make the round anew and show it; the cursor stays on its task or goes to `key`."""
        desk = self.desk
        self._seen_today = desk.today
        try:
            made = desk.round(self.day)
        except BenchroundError as error:
            self.bench.refuse(error)
            return
        rows = rows_of(made, desk.season, folded=self._folded, key=self.ring.named("early"))
        tasks = self.tasks
        key = key or _neighbour(tasks.rows, tasks.cursor, rows)
        tasks.show(rows, desk.season, key)
        self.query_one(RoundHead).show(made, desk, self.bench.sitting, tasks.position)
        self._show_task()

    def came_back(self, said: str | None) -> None:
        """Show the round after a sheet was closed; `said` is what it recorded."""
        self.say(said or "")  # what was said before may not be the last thing done any more
        self.show_round()

    def _show_task(self) -> None:
        """Tell of the task the cursor stands on."""
        task, season = self.tasks.current, self.desk.season
        cautions = cautions_of(task, season, self.day) if task is not None else ()
        self.query_one(TaskDetail).show(task, season, cautions)
        self.query_one(RoundHead).stand(self.tasks.position)

    def _turn_day(self) -> None:
        if self._seen_today != self.desk.today:
            self.show_round()

    def _current(self) -> Task:
        task = self.tasks.current
        if task is None:
            key = self.ring.named("sow")
            raise BenchroundError(f"There is no task here: {key} opens a sowing sheet.")
        return task

    def action_tick(self) -> None:
        """Record the current task, or all marked ones, as done."""
        chosen = self.tasks.chosen
        self._require_open()
        if len(chosen) > 1:
            self.say(self.bench.doings.tick_all(chosen, self.day))
            self.show_round()
            return
        task = chosen[0] if chosen else self._current()
        asked = any(ask.to_be_answered for ask in task.asks)
        if not task.ticks or asked or unread(task, self.desk.season, self.day):
            self.action_sheet()
            return
        self.say(self.bench.doings.tick(task, None, self.day))
        self.show_round()

    def _require_open(self) -> None:
        """Refuse early, before a sheet is filled in vain."""
        self.require_open(self.day)

    def action_sheet(self) -> None:
        """Open the sheet of the current task, or a record sheet where it writes nothing itself."""
        task = self._current()
        self._require_open()
        if task.ticks:
            self.bench.open("task", task, self.day)
        else:
            self.action_record()

    def action_record(self) -> None:
        """Open a record sheet for what the current task is about."""
        task = self._current()
        self._require_open()
        self._require_batch(task)
        self.bench.open("record", task.about, task.part, task.key, self.day)

    def _require_batch(self, task: Task) -> None:
        if task.about not in self.desk.season.batches:
            key = self.ring.named("find")
            raise BenchroundError(
                f"This task is about no batch: go to one that is, or find the batch with {key}."
            )

    def action_put_off(self) -> None:
        """Open the sheet that moves the current task to a later day."""
        task = self._current()
        self._require_open()
        self.bench.open("put off", task)

    def action_sow(self) -> None:
        """Open a sowing sheet."""
        self._require_open()
        self.bench.open("sow", self.day)

    def action_why(self) -> None:
        """Open the page that tells why."""
        self.bench.open("why", self._current(), self.day)

    def action_batch(self) -> None:
        """Open the card of the task's batch."""
        task = self._current()
        self._require_batch(task)
        self.bench.open("batch", task.about)

    def action_undo(self) -> None:
        """Take back the last thing recorded."""
        gone = self.bench.doings.undo()
        if gone is None:
            self.say("Nothing was recorded in this sitting: there is nothing to take back.")
            return
        self.show_round(gone.key)
        self.say(gone.said)

    def action_mark(self) -> None:
        """Mark the current task, or take its mark off."""
        tasks = self.tasks
        tasks.mark(tasks.marked ^ {self._current().key})
        self._say_marked()

    def action_mark_family(self) -> None:
        """Mark all tasks of the current one's kind that are to be done, or unmark them."""
        tasks, family = self.tasks, self._current().family
        alike = frozenset(
            row.key
            for row in tasks.rows
            if isinstance(row, Task) and row.family is family and row.standing in TO_DO
        )
        tasks.mark(tasks.marked - alike if alike <= tasks.marked else tasks.marked | alike)
        self._say_marked()

    def action_unmark(self) -> None:
        """Take all marks off; where none is, say how to leave."""
        if not self.tasks.marked:
            self.say(self.way_out())
            return
        self.tasks.mark(frozenset())
        self.say("")

    def _say_marked(self) -> None:
        number = len(self.tasks.marked)
        self.say(f"{number} marked: space ticks them together." if number else "None marked.")

    def action_other_day(self, by: int) -> None:
        """Look at the day before or after."""
        self._look_at(self.day + timedelta(days=by))

    def action_today(self) -> None:
        """Go back to today; there already, go to the first task."""
        if self._other is None:
            self.tasks.go(first_task(self.tasks.rows))
        else:
            self._look_at(self.desk.today)

    def _look_at(self, day: date) -> None:
        today = self.desk.today
        self._other = None if day == today else day
        self.show_round()
        if day == today:
            self.say("Back at today.")
        elif day > today:
            self.say(f"Looking ahead at {say_day(day)}: nothing can be recorded for it yet.")
        else:
            self.say(f"Looking back at {say_day(day)}: what you record is dated that day.")

    def action_next_day(self) -> None:
        """Let the sample's next day begin."""
        clock = self.bench.sitting.clock
        if clock is None:
            raise BenchroundError("Only the sample season's day can be moved on.")
        day = clock.step()
        self._other = None
        self.show_round()
        self.say(f"It is {say_day(day)} now.")

    def action_fold(self) -> None:
        """Fold what is not due yet, or show it."""
        self._folded = not self._folded
        self.show_round()
        number = len(self.desk.round(self.day).early)
        self.say(f"{number} not due yet: {'folded away' if self._folded else 'shown'}.")

    def action_reload(self) -> None:
        """Take in what another computer wrote."""
        came = self.desk.reload()
        self.show_round()
        self.say("More records came in." if came else "No other computer has written anything.")

    def action_move(self, by: int) -> None:
        """Go a task down or up."""
        self.tasks.step(by)

    def action_page(self, by: int) -> None:
        """Go a screenful down or up."""
        self.tasks.step_page(by)

    def action_place(self, by: int) -> None:
        """Go to the next place or the one before."""
        self.tasks.step_group(by)

    def action_last(self) -> None:
        """Go to the last task."""
        self.tasks.step(len(self.tasks.rows))


def _neighbour(old: tuple[Row, ...], at: int | None, new: tuple[Row, ...]) -> str:
    """The task to stand on where the current one went from what is to be done to what is not yet.

    Args:
        old: the rows before.
        at: where the cursor stood in them.
        new: the rows now.

    Returns:
        The key of the nearest task still to be done; empty where the cursor may stay with its task.
    """
    row = old[at] if at is not None else None
    if at is None or not isinstance(row, Task) or row.standing not in TO_DO:
        return ""
    now = {task.key: task for task in new if isinstance(task, Task)}
    mine = now.get(row.key)
    if mine is None or mine.standing in TO_DO:
        return ""
    near = (task.key for task in (*old[at + 1 :], *reversed(old[:at])) if isinstance(task, Task))
    return next((key for key in near if key in now and now[key].standing in TO_DO), "")
