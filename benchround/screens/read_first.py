"""Cautions that hold a task up until they have been read."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from benchround.core.caution.due import blocks, read_key, to_show
from benchround.core.record import Draft, Kind
from benchround.core.season import Season
from benchround.core.task import Task


def unread(task: Task, season: Season, day: date) -> tuple[str, ...]:
    """The cautions of a task that are to be read before it is ticked, worst first.

    Which of them are said in full on a day follows their own rule of repeating.

    Args:
        task: the task.
        season: what was read when, and the crop.
        day: the day it is ticked on.
    """
    key = crop_of(task, season)
    crop = season.crop(key) if key else None
    return tuple(name for name in in_full(task, season, day) if blocks(name, crop))


def in_full(task: Task, season: Season, day: date) -> tuple[str, ...]:
    """The cautions of a task that are to be said in full on a day, worst first.

    Args:
        task: the task.
        season: what was read when.
        day: the day it is ticked on.
    """
    if not task.cautions:
        return ()
    shown = to_show(task.cautions, season.cautions_read, day, crop_of(task, season))
    return tuple(name for name, whole in shown if whole)


def crop_of(task: Task, season: Season) -> str:
    """The crop a task is about; empty where it is about a place."""
    batch = season.batches.get(task.about)
    return batch.crop if batch else ""


def as_read(names: Iterable[str], crop_key: str) -> tuple[Draft, ...]:
    """The records of cautions that were read.

    Args:
        names: ids of the cautions.
        crop_key: the crop they were read for; empty: none.
    """
    return tuple(Draft(Kind.CAUTION_READ, read_key(name, crop_key)) for name in sorted(names))
