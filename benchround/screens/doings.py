"""What is done from the screens, kept so that one key takes it back: one doing, however many tasks.

Knows nothing of Textual. Each doing says in a sentence what was written, and remembers the task it
was about, so that the cursor can go back to it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import date

from benchround.core.dates import say_day
from benchround.core.errors import BenchroundError, InputError
from benchround.core.frozen import dataclass
from benchround.core.record import Draft, Record
from benchround.core.task import Task
from benchround.desk import Desk
from benchround.screens.read_first import unread
from benchround.screens.words import record_words


@dataclass(frozen=True, slots=True)
class Doing:
    """One thing done.

    Attributes:
        records: ids of what was written; withdrawing a withdrawal makes count what it withdrew.
        key: the task the cursor goes back to.
        words: what to call it.
    """

    records: tuple[str, ...]
    key: str
    words: str


@dataclass(frozen=True, slots=True)
class TakenBack:
    """A doing that was taken back, as far as it still stood.

    Attributes:
        key: the task the cursor goes back to.
        said: the sentence to say.
    """

    key: str
    said: str


class Doings:
    """Everything done in this sitting that can be taken back, the latest last.

    Args:
        desk: the open season.
        undo_key: gives the key that takes back, as it is shown.
    """

    def __init__(self, desk: Desk, undo_key: Callable[[], str] = lambda: "u") -> None:
        self.desk = desk
        self._undo_key = undo_key
        self._done: list[Doing] = []

    def tick(
        self,
        task: Task,
        answers: Mapping[str, str] | None,
        day: date,
        also: Sequence[Draft] = (),
    ) -> str:
        """Record a task as done on a day; the sentence to say.

        Args:
            task: the task.
            answers: what was typed, by the name of the figure.
            day: the day it was done.
            also: what else to record with it, such as a note.

        Raises:
            BenchroundError: it could not be recorded; nothing changed.
        """
        self.require_past(day)
        records = self.desk.tick(task, answers, day, also)
        return self._keep(records, task.key, record_words(records, self.desk.season))

    def tick_all(self, tasks: Sequence[Task], day: date) -> str:
        """Record several tasks as done, as one act; the sentence says which were left, and why.

        A task is left where it wants a figure, or where a caution is to be read first.

        Raises:
            BenchroundError: none could be recorded; nothing changed.
        """
        self.require_past(day)
        ready: list[Task] = []
        left: dict[str, list[str]] = {}
        for task in tasks:
            fault = self._not_yet(task, day)
            if fault:
                left.setdefault(fault, []).append(task.about or "the site")
            else:
                ready.append(task)
        faults = [f"{', '.join(names)}: {fault}" for fault, names in left.items()]
        if not ready:
            raise InputError(" ".join(faults))
        records = self.desk.tick_all(ready, day)
        number = "1 task" if len(ready) == 1 else f"{len(ready)} tasks"
        words = f"{number} done ({', '.join(_families(ready))})"
        said = self._keep(records, tasks[0].key, words)
        return f"{said} Left: {' '.join(faults)}" if faults else said

    def _not_yet(self, task: Task, day: date) -> str:
        """Why a task cannot be ticked without its sheet; empty where it can."""
        if not task.ticks:
            return "it writes nothing by itself: record what was done instead."
        if unread(task, self.desk.season, day):
            return "read the caution first, by ticking one alone."
        wanted = [ask for ask in task.asks if ask.to_be_answered]
        if not wanted:
            return ""
        needed = wanted[0].needed
        return f"{wanted[0].label}: {'a figure is needed here' if needed else 'say it'}."

    def put_off(self, task: Task, until: date, reason: str) -> str:
        """Move a task to a later day; the sentence to say.

        Raises:
            BenchroundError: the day is not ahead, or it could not be recorded.
        """
        today = self.desk.today
        if until <= today:
            raise InputError(
                f"{say_day(until)} is not ahead of today, {say_day(today)}: put it off to a later "
                "day, or tick it."
            )
        records = self.desk.put_off(task, until, reason)
        return self._keep(records, task.key, f"put off to {say_day(until)}")

    def record(self, drafts: Iterable[Draft], day: date, key: str = "", words: str = "") -> str:
        """Record what happened; the sentence to say.

        Args:
            drafts: what to record.
            day: the day it happened.
            key: the task the cursor goes back to when it is taken back.
            words: what to call it; empty: the records themselves in words.

        Raises:
            BenchroundError: it could not be recorded; nothing changed.
        """
        self.require_past(day)
        records = self.desk.record(drafts, day)
        return self._keep(records, key, words or record_words(records, self.desk.season))

    def withdraw(self, names: Sequence[str], words: str, instead: Sequence[Draft] = ()) -> str:
        """Withdraw records, and write others in their place; the sentence to say.

        Args:
            names: ids of records that stand.
            words: what they are, for the sentence.
            instead: what to record after it; each has its own day.

        Raises:
            BenchroundError: it could not be done; nothing changed.
        """
        written = tuple(record.id for record in self.desk.withdraw(names))
        if instead:
            try:
                written += tuple(record.id for record in self.desk.record(instead))
            except BenchroundError:
                self.desk.withdraw(written)
                raise
        self._done.append(Doing(written, "", f"withdrawal of {words}"))
        return f"Withdrawn: {words} ({self._undo_key()} brings it back)."

    def undo(self) -> TakenBack | None:
        """Take back the last doing; None where nothing is left.

        What was withdrawn already, on another computer or by hand, is said to be so; nothing else
        is taken back in its place.

        Raises:
            BenchroundError: it could not be taken back; it may be tried again.
        """
        if not self._done:
            return None
        last = self._done[-1]
        taken = len(self.desk.take_back(last.records))
        self._done.pop()
        if not taken:
            return TakenBack(last.key, f"Not taken back, it was withdrawn already: {last.words}.")
        rest = " (part of it was withdrawn already)" if taken < len(last.records) else ""
        return TakenBack(last.key, f"Taken back: {last.words}{rest}.")

    def require_past(self, day: date) -> None:
        """Refuse to record on a day still to come.

        Raises:
            InputError: the day is after today.
        """
        if day > self.desk.today:
            raise InputError(
                f"{say_day(day)} is still to come: go back to today to record what was done."
            )

    def _keep(self, records: Iterable[Record], key: str, words: str) -> str:
        self._done.append(Doing(tuple(record.id for record in records), key, words))
        return f"Recorded: {words} ({self._undo_key()} takes it back)."


def _families(tasks: Sequence[Task]) -> list[str]:
    return sorted({str(task.family) for task in tasks})
