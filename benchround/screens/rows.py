"""The lines of the round's list: headings by part of day and place, and tasks beneath them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from benchround.core.frozen import dataclass
from benchround.core.season import Season
from benchround.core.task import Round, Task
from benchround.screens.words import SLOT_HEADINGS


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading: its words, how many tasks stand under it, and a hint at its end."""

    words: str
    tasks: int
    hint: str = ""


Row = Heading | Task


def rows_of(made: Round, season: Season, *, folded: bool = False) -> tuple[Row, ...]:
    """A round as rows, in the round's own order.

    Args:
        made: the round.
        season: names the places.
        folded: leave out the tasks that are not due yet, keeping their heading.
    """
    doing = made.today
    return (
        *_grouped(doing, season),
        *_group("Held: weather or room forbids it", made.held),
        *_early(made.early, folded=folded),
    )


def _grouped(tasks: Iterable[Task], season: Season) -> Iterator[Row]:
    group: list[Task] = []
    for task in tasks:
        if group and (task.slot, task.place) != (group[0].slot, group[0].place):
            yield from _group(_words(group[0], season), group)
            group = []
        group.append(task)
    if group:
        yield from _group(_words(group[0], season), group)


def _words(task: Task, season: Season) -> str:
    slot = SLOT_HEADINGS[task.slot]
    place = season.place(task.place)
    where = place.name if place else task.place
    return f"{slot} - {where}" if where else slot


def _group(words: str, tasks: Sequence[Task]) -> Iterator[Row]:
    if tasks:
        yield Heading(words, len(tasks))
        yield from tasks


def _early(tasks: Sequence[Task], *, folded: bool) -> Iterator[Row]:
    if tasks:
        yield Heading("Not due yet", len(tasks), "e shows them" if folded else "e folds them")
        if not folded:
            yield from tasks


def first_task(rows: Sequence[Row]) -> int | None:
    """The index of the first task, None where there is none."""
    return next((n for n, row in enumerate(rows) if isinstance(row, Task)), None)


def index_of(rows: Sequence[Row], key: str) -> int | None:
    """The index of the task of that key."""
    for number, row in enumerate(rows):
        if isinstance(row, Task) and row.key == key:
            return number
    return None


def place_to_stand(old: Sequence[Row], at: int, new: Sequence[Row]) -> int | None:
    """Where the cursor goes when rows change: its own task, else the next that is still there.

    Args:
        old: the rows before.
        at: where the cursor stood in them.
        new: the rows now.

    Returns:
        An index of `new`, None where it holds no task.
    """
    here = {row.key: number for number, row in enumerate(new) if isinstance(row, Task)}
    for row in (*old[at:], *reversed(old[:at])):
        if isinstance(row, Task) and row.key in here:
            return here[row.key]
    return first_task(new)
