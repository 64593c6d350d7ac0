"""Finding a task of the round by its key, or by its number in the list."""

from __future__ import annotations

from benchround.core.errors import InputError, UnknownNameError
from benchround.core.near_names import near_words, shown
from benchround.core.season import Season
from benchround.core.task import Round, Task
from benchround.core.typed.figures import whole_in
from benchround.plain import standing_words, title

LIST = "'benchround tick' without a task lists them"


def task_named(the_round: Round, text: str) -> Task:
    """The task of a key such as `look:b06:`, its last colon left out or not, or of a number.

    Raises:
        InputError: the number is not in the list.
        UnknownNameError: no task of the day has that key; the near ones are named.
    """
    wanted = text.strip()
    number = whole_in(wanted)
    if number is not None:
        if not 1 <= number <= len(the_round.tasks):
            raise InputError(f"There are {len(the_round.tasks)} tasks, no number {number}: {LIST}.")
        return the_round.tasks[number - 1]
    keys = {task.key.lower(): task for task in the_round.tasks}
    lower = wanted.lower()
    for key in (lower, f"{lower}:", f"{lower}::"):
        if key in keys:
            return keys[key]
    about = next((piece for piece in lower.split(":")[1:2]), "")
    same = [task.key for task in the_round.tasks if about and task.about.lower() == about]
    near = near_words(lower, [*same, *keys], LIST)
    hint = f"of {about} there is {', '.join(same)}" if same else near
    raise UnknownNameError(f"No task of {the_round.day.isoformat()} is {shown(text)}: {hint}.")


def task_lines(the_round: Round, season: Season) -> list[str]:
    """The tasks with number and key, in the order of the round."""
    wide = max((len(task.key) for task in the_round.tasks), default=0)
    return [
        f"{number:3} {task.key:{wide}}  {standing_words(task)}: {title(task, season)}"
        for number, task in enumerate(the_round.tasks, start=1)
    ]
