"""The lines of the round's list: headings by part of day and place, and tasks beneath them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain, islice

from benchround.core.frozen import dataclass
from benchround.core.season import Season
from benchround.core.task import Round, Standing, Task
from benchround.rounds.closing import closing_words
from benchround.screens.words import SLOT_HEADINGS


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading: its words, how many tasks stand under it, and a hint; without tasks, a remark."""

    words: str
    tasks: int
    hint: str = ""


Row = Heading | Task


def rows_of(
    made: Round, season: Season, *, folded: bool = False, key: str = "e"
) -> tuple[Row, ...]:
    """A round as rows, in the round's own order.

    Args:
        made: the round.
        season: names the places.
        folded: leave out the tasks that are not due yet, keeping their heading.
        key: the key that folds and unfolds them, as it is shown.
    """
    doing: list[Task] = []
    held: list[Task] = []
    early: list[Task] = []
    for task in made.tasks:
        standing = task.standing
        if standing is Standing.EARLY:
            early.append(task)
        elif standing is Standing.HELD:
            held.append(task)
        else:
            doing.append(task)
    return (
        *_grouped(doing, season),
        *(Heading(f"At the end: {words}", 0) for words in closing_words(made, season)),
        *_group("Held: weather or room forbids it", held),
        *_early(early, key, folded=folded),
    )


def _grouped(tasks: Sequence[Task], season: Season) -> Iterator[Row]:
    first = 0
    for number, task in enumerate(tasks):
        begun = tasks[first]
        if task.slot is not begun.slot or task.place != begun.place:
            yield from _group(_words(begun, season), tasks[first:number])
            first = number
    if tasks:
        yield from _group(_words(tasks[first], season), tasks[first:])


def _words(task: Task, season: Season) -> str:
    slot = SLOT_HEADINGS[task.slot]
    place = season.place(task.place)
    where = place.name if place else task.place
    return f"{slot} - {where}" if where else slot


def _group(words: str, tasks: Sequence[Task]) -> Iterator[Row]:
    if tasks:
        yield Heading(words, len(tasks))
        yield from tasks


def _early(tasks: Sequence[Task], key: str, *, folded: bool) -> Iterator[Row]:
    if tasks:
        yield Heading(
            "Not due yet", len(tasks), f"{key} shows them" if folded else f"{key} folds them"
        )
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
    same = {id(row): number for number, row in enumerate(new)}
    here: dict[str, int] | None = None
    for row in chain(islice(old, at, None), reversed(old[:at])):
        if not isinstance(row, Task):
            continue
        found = same.get(id(row))
        if found is None:
            here = _by_key(new) if here is None else here
            found = here.get(row.key)
        if found is not None:
            return found
    return first_task(new)


def _by_key(rows: Sequence[Row]) -> dict[str, int]:
    return {row.key: number for number, row in enumerate(rows) if isinstance(row, Task)}
