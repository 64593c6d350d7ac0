"""Still to be sown? One question where a sowing was let go for weeks beyond its time.

A plan whose window has closed would be asked for every day until the window opens again, and seed
that has had its cold for ever. Instead one question is asked: sow it now, wait for the next time,
or give it up.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from benchround.core.dates import say_date, say_day
from benchround.core.lifecycle import Stage
from benchround.core.record import Draft, Figure, Kind
from benchround.core.season import Season
from benchround.core.task import Ask, Family, Harm, Task, Why, Window
from benchround.rounds.proposal import Proposal, draft
from benchround.rounds.sowing import next_time, window_open_now
from benchround.rounds.view import BatchView

LEAD_TO_SOWING = frozenset({Family.SOAK, Family.CHILL, Family.SOW, Family.BULBS})
"""Families that lead to a sowing, or to bulbs planted."""
ARE_SOWING = frozenset({Family.SOW, Family.BULBS})
"""Those that are the sowing or the planting: while there is time for it, nothing is asked."""
LONG_DAYS = 21
"""So many days beyond its time a sowing was done, or given up, without a word; our proposal."""
STILL = "still"
NOW, NEXT_TIME, GIVEN_UP = "now", "next time", "given up"
"""What may be said to the question."""


def is_to_be_asked(missed: Sequence[Task]) -> bool:
    """Whether the sowing itself, or the planting, was let go for weeks."""
    days = max((task.overdue_days for task in missed), default=0)
    return days > LONG_DAYS and not ARE_SOWING.isdisjoint(task.family for task in missed)


def question(view: BatchView, missed: Sequence[Task]) -> Proposal:
    """The question that takes the place of steps that were let go for weeks."""
    last = max(missed, key=lambda task: task.window.latest)
    begun = min(last.window.best, view.day)
    planned, bulbs = view.stage is Stage.PLANNED, last.family is Family.BULBS
    coming = next_time(view) if planned else None
    work = "planted" if bulbs else "sown"
    words = f"Still to be {work}? "
    figures = [f"{task.family}: due until {say_day(task.window.latest)}" for task in missed]
    if planned:
        words += f"Its time was over on {say_date(last.window.latest)}"
        still_open = window_open_now(view)
        if still_open is not None:
            figures.append(f"the crop may be {work} until {say_date(still_open.closes)}")
    else:
        words += f"It is at '{view.stage}' since {say_date(view.part.since)}"
    if coming is not None:
        words += f", the next begins {say_date(coming)}"
        figures.append(f"next time from {say_date(coming)}")
    choices = (NOW, *((NEXT_TIME,) if coming is not None else ()), GIVEN_UP)
    return Proposal(
        Family.STANDS,
        Window(begun, begun, view.day),
        Harm.GETS_LATE,
        f"{words}. If it was {work}, record that with its day",
        Why(
            "what was let go for weeks is asked about once, and not called overdue for months",
            tuple(figures),
            "common practice, no source; the days are our proposal",
        ),
        (draft(view, Kind.DONE, family=str(Family.STANDS)),),
        asks=(Ask(STILL, f"to be {work}", needed=True, whole=False, choices=choices),),
    )


def records_of(task: Task, answer: str, season: Season) -> tuple[Draft, ...]:
    """What an answer writes: that it was asked, what is passed over, or that it is given up."""
    (asked,) = task.ticks
    if answer == NOW:
        return (asked,)
    if answer == NEXT_TIME:
        return (replace(asked, figures={**asked.figures, "family": str(Family.SOW)}),)
    planned = season.batches[task.about].part(task.part).stage is Stage.PLANNED
    own: dict[str, Figure] = {"part": task.part} if task.part else {}
    return (Draft(Kind.CANCELLED if planned else Kind.COMPOSTED, task.about, own),)
