"""The rows of the round's list as lines: headings, and tasks in columns."""

from __future__ import annotations

from benchround.core.season import Season
from benchround.core.task import Harm, Standing, Task
from benchround.screens.rows import Heading, Row
from benchround.screens.text import Line, Role, fit, line
from benchround.screens.words import harm_mark, standing_words, subject

STANDING_WIDE, MARK_WIDE = 11, 3
SUBJECT_WIDE = {0: 17, 76: 24, 100: 30}
"""Columns for the subject, from a width of the list on."""
ROLES = {
    Standing.OVERDUE: Role.OVERDUE,
    Standing.LATE: Role.LATE,
    Standing.DUE: Role.DUE,
    Standing.HELD: Role.HELD,
    Standing.EARLY: Role.EARLY,
}


def row_line(
    row: Row, season: Season | None, width: int, *, current: bool = False, marked: bool = False
) -> Line:
    """One row in words.

    Args:
        row: a heading or a task.
        season: names what it is about; None leaves it as it is.
        width: columns.
        current: whether the cursor stands on it.
        marked: whether it is marked.
    """
    if isinstance(row, Heading):
        return _heading(row, width)
    about = subject(row, season) if season else row.about
    return _task(row, about, width, f"{'>' if current else ' '}{'*' if marked else ' '}")


def _heading(row: Heading, width: int) -> Line:
    number = f"{row.tasks}  {row.hint}" if row.hint else str(row.tasks or "")
    room = max(0, width - len(number) - 2)
    words = fit(row.words, min(room, len(row.words)))
    fill = " " * (room - len(words))
    return line((words, Role.HEADING), (f"{fill}  {number}", Role.QUIET))


def _task(task: Task, about: str, width: int, lead: str) -> Line:
    wide = max(columns for least, columns in SUBJECT_WIDE.items() if width >= least)
    role = ROLES[task.standing]
    worst = task.harm is Harm.DIES_TODAY and role is Role.DUE
    text = role if role in (Role.EARLY, Role.HELD) else Role.INK
    return line(
        (lead, Role.KEY),
        (fit(standing_words(task), STANDING_WIDE), role),
        (fit(harm_mark(task), MARK_WIDE), Role.OVERDUE if worst else role),
        (fit(about, wide - 1) + " ", Role.STRONG if text is Role.INK else text),
        (fit(task.instruction, width - 2 - STANDING_WIDE - MARK_WIDE - wide), text),
    )
