"""What the coming weeks ask for, each thing once, with a key that stays the same."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from datetime import date, time, timedelta

from benchround.core.frozen import dataclass
from benchround.core.planning.schedule import expected_course
from benchround.core.planning.schedule_step import Expected, Step
from benchround.core.season import Season
from benchround.core.task import Family, Round, Standing, Task

MOST_WEEKS = 104

BY_DAY = frozenset({Family.LIDS, Family.SHUT, Family.SHADE, Family.STRAP, Family.FLEECE})
"""Families that ask something else every day: their day is part of the key."""
LEFT_OUT = frozenset({Family.THERMOMETER})
"""Every morning's habit, which would fill a calendar."""

STEP_FAMILY = {
    Step.SOW: Family.SOW,
    Step.LOOK: Family.LOOK,
    Step.PRICK_OUT: Family.PRICK_OUT,
    Step.THIN: Family.THIN,
    Step.POT_ON: Family.POT_ON,
    Step.HARDEN: Family.HARDEN,
    Step.PLANT_OUT: Family.PLANT_OUT,
    Step.CROP: Family.PICK,
}
"""The family a coming step will be a task of, so that the task takes the place of the forecast."""


@dataclass(frozen=True, slots=True)
class Event:
    """One thing on one day.

    Attributes:
        key: what makes it the same thing when its day moves.
        at: when, where the hour matters; None: the whole day.
        category: the family or step.
    """

    key: str
    day: date
    at: time | None
    title: str
    text: str
    place: str
    category: str


def coming(
    season: Season,
    the_round: Round,
    ahead: Iterable[tuple[date, Task]],
    weeks: int,
    name: Callable[[Task], str],
) -> tuple[Event, ...]:
    """The events of the weeks from the round's day on, in order of day, time and key.

    Args:
        season: places, batches and crops.
        the_round: the round of the first day.
        ahead: tasks of later days that are asked for by day, such as lids, as far as the weather
            is known.
        weeks: how many weeks.
        name: gives what a task is about, in words.
    """
    first, last = the_round.day, the_round.day + timedelta(weeks=weeks)
    found: dict[str, Event] = {}
    tasks = [(first, task) for task in the_round.tasks]
    for day, task in [*tasks, *ahead]:
        if task.family not in LEFT_OUT:
            event = _of_task(season, day, task, name)
            found.setdefault(event.key, event)
    for event in _expected(season, first):
        found.setdefault(event.key, event)
    inside = (event for event in found.values() if first <= event.day < last)
    return tuple(sorted(inside, key=lambda e: (e.day, e.at or time.min, e.key)))


def _of_task(season: Season, day: date, task: Task, name: Callable[[Task], str]) -> Event:
    held = task.standing is Standing.HELD
    best = task.hold.look_again if held and task.hold else task.window.best
    on = max(day, best or day)
    place = season.place(task.place)
    hold = f"Held: {task.hold.because}." if task.hold else ""
    said = (f"{task.instruction}.", hold, f"Why: {task.why}")
    return Event(
        key=f"{task.key}{on.isoformat()}" if task.family in BY_DAY else task.key,
        day=on,
        at=task.at if on == day else None,
        title=f"{'held: ' if held else ''}{task.family}: {name(task)}",
        text="\n".join(season.unit_words(line) for line in said if line),
        place=place.name if place else task.place,
        category=str(task.family),
    )


def _expected(season: Season, day: date) -> Iterator[Event]:
    for batch in season.batches.values():
        if batch.main.ended:
            continue
        crop = season.crop(batch.crop)
        variety = f" '{batch.variety}'" if batch.variety else ""
        place = season.place(batch.main.place)
        for step in expected_course(season, batch, crop, day):
            family = STEP_FAMILY.get(step.step)
            yield Event(
                key=f"{family or step.step}:{batch.id}:",
                day=step.day,
                at=None,
                title=f"{step.step}: {batch.id} {crop.name}{variety}",
                text=season.unit_words(_forecast_text(step)),
                place=place.name if place else batch.main.place,
                category=str(family or step.step),
            )


def _forecast_text(step: Expected) -> str:
    return f"Forecast: {step}. Its day moves with the weather and with what you record."
