"""The tasks of one batch, as the round asks for them before it puts them in order."""

from __future__ import annotations

from datetime import date

from benchround.core.batch.batch import Batch
from benchround.core.season import Season
from benchround.core.task import Task
from benchround.rounds.build import tasks_of


def batch_tasks(season: Season, batch: Batch, day: date) -> tuple[Task, ...]:
    """Every task of one batch."""
    return tuple(tasks_of(season, (batch,), day)[batch.id])
