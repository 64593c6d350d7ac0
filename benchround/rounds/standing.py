"""How does it stand? One question where steps of a batch were let go for weeks.

A grower who works without the round writes little down, and what was skipped would be asked for
ever, longer overdue each day. Instead one question sets the stage; steps before it are not asked
any more, and steps after it are due from the day of the answer.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import date, timedelta

from benchround.core.dates import say_day
from benchround.core.lifecycle import BEFORE, NEXT, SEEDLING, WAITING, Stage
from benchround.core.record import Cause, Draft, Figure, Kind
from benchround.core.season import Season
from benchround.core.task import Ask, Family, Harm, Standing, Task, Why, Window
from benchround.rounds import never_sown
from benchround.rounds.proposal import Proposal, draft, of_batch
from benchround.rounds.view import BatchView

STEPS = frozenset(
    {Family.UNCOVER, Family.COUNT, Family.RESOW, Family.THIN, Family.PRICK_OUT, Family.POT_ON}
    | {Family.PINCH, Family.HARDEN, Family.PLANT_OUT}
)
"""Families that take a batch from one stage to the next, or belong to one."""
LONG_DAYS = never_sown.LONG_DAYS
"""A step so many days beyond its window was done, or given up, without a word; our proposal."""
SEVERAL, SEVERAL_DAYS = 2, 14
"""Where several are missed it is asked sooner; our proposal."""
AFTER_ANSWER_DAYS = 7
"""Days a step is due, and not overdue, once it was said that it is still to come."""
GONE = Kind.LOST
STAGE_KINDS = (
    Kind.SEED_LEAVES,
    Kind.TRUE_LEAVES,
    Kind.PRICKED_OUT,
    Kind.GROWING_ON,
    Kind.POTTED_ON,
    Kind.HARDENING_BEGUN,
    Kind.READY,
    Kind.PLANTED_OUT,
    Kind.FIRST_FLOWER,
    Kind.CROPPED,
)
"""Kinds of record that set a stage directly, in the order of a life."""
NOTE = "as it was found; the day it came so far is not known"


def instead_of_the_missed(view: BatchView, tasks: Sequence[Task]) -> list[Task]:
    """A part's tasks, with one question for the steps that were missed for weeks."""
    steps, is_to_be_asked, question = STEPS, _is_to_be_asked, _question
    if view.stage in BEFORE:
        steps, is_to_be_asked = never_sown.LEAD_TO_SOWING, never_sown.is_to_be_asked
        question = never_sown.question
    if not any(task.standing is Standing.OVERDUE and task.family in steps for task in tasks):
        return list(tasks)
    answered = view.season.done.get((str(Family.STANDS), view.batch.id, view.part.name))
    eased = [_since_answer(task, answered, view.day, steps) for task in tasks]
    missed = [t for t in eased if t.standing is Standing.OVERDUE and t.family in steps]
    if not is_to_be_asked(missed):
        return eased
    asked = of_batch(view, question(view, missed))
    replaced = steps | {Family.LOCATE}
    rest = [t for t in eased if t.family not in replaced or t.standing is not Standing.OVERDUE]
    return [*rest, asked] if asked is not None else rest


def _is_to_be_asked(missed: Sequence[Task]) -> bool:
    """Whether one step was missed for weeks, or several for nearly as long."""
    days = max((task.overdue_days for task in missed), default=0)
    return days > LONG_DAYS or (len(missed) >= SEVERAL and days > SEVERAL_DAYS)


def _since_answer(task: Task, answered: date | None, day: date, steps: frozenset[Family]) -> Task:
    """A step that was said to be still to come is overdue only some days after that was said."""
    if answered is None or answered > day or task.family not in steps:
        return task
    latest = answered + timedelta(days=AFTER_ANSWER_DAYS)
    if task.standing is not Standing.OVERDUE or task.window.latest >= latest:
        return task
    late = max(0, (day - latest).days)
    return replace(
        task,
        window=Window(task.window.earliest, task.window.best, latest),
        standing=Standing.OVERDUE if late else Standing.DUE,
        overdue_days=late,
    )


def _question(view: BatchView, missed: Sequence[Task]) -> Proposal:
    first = min(missed, key=lambda task: task.window.latest)
    begun = min(first.window.best, view.day)
    choices = tuple(str(kind) for kind in stages_open(view.stage))
    return Proposal(
        Family.STANDS,
        Window(begun, begun, view.day),
        Harm.SPOILS_THIS_WEEK,
        f"How does it stand? On the books it is at '{view.stage}', and what came after was not "
        "written down",
        Why(
            "steps missed for weeks are asked for in one question; its answer sets the stage",
            tuple(f"{t.family}: due until {say_day(t.window.latest)}" for t in missed),
            "common practice, no source; the days are our proposal",
        ),
        (draft(view, Kind.SEEN),),
        asks=(
            Ask("stage", "stands now", needed=True, whole=False, choices=(*choices, str(GONE))),
            Ask("count", "alive", str(view.alive or ""), most=_most(view)),
        ),
    )


def _most(view: BatchView) -> int | None:
    sowing = view.batch.sowing
    return view.alive if view.alive is not None else (sowing.seeds if sowing else None)


def stages_open(stage: Stage) -> Iterator[Kind]:
    """The kinds that say where a batch stands, from its present stage on."""
    here = next((n for n, kind in enumerate(STAGE_KINDS) if leads_to(kind, stage) is stage), 0)
    for kind in STAGE_KINDS[here:]:
        if leads_to(kind, stage) is not None:
            yield kind


def leads_to(kind: Kind, stage: Stage) -> Stage | None:
    """The stage a kind leads to; seed that waits is up by then, with its first true leaves."""
    found = NEXT.get((stage, kind))
    return NEXT.get((Stage.TRUE_LEAF, kind)) if found is None and stage in WAITING else found


def records_of(task: Task, figures: dict[str, Figure], season: Season) -> tuple[Draft, ...]:
    """What the answer writes: that it was seen, what was skipped, and the stage it stands at."""
    if never_sown.STILL in figures:
        return never_sown.records_of(task, str(figures[never_sown.STILL]), season)
    said = dict(figures)
    kind, count = Kind(str(said.pop("stage"))), said.get("count")
    part = season.batches[task.about].part(task.part)
    own: dict[str, Figure] = {"part": task.part} if task.part else {}
    done = Draft(Kind.DONE, task.about, {"family": str(task.family), **own})
    if kind is GONE:
        return (Draft(GONE, task.about, {"cause": str(Cause.UNKNOWN), **own}, note=NOTE), done)
    drafts = [Draft(Kind.SEEN, task.about, dict(own))]
    if part.stage in WAITING and (part.stage, kind) not in NEXT:
        drafts.append(Draft(Kind.TRUE_LEAVES, task.about, dict(own), note=NOTE))
    if isinstance(count, int) and count > 0:
        final: dict[str, Figure] = {"final": True} if part.stage in SEEDLING | WAITING else {}
        drafts.append(Draft(Kind.COUNTED, task.about, {"count": count, **final, **own}))
    if part.stage in SEEDLING | WAITING and Kind.UNCOVERED not in part.last:
        drafts.append(Draft(Kind.UNCOVERED, task.about, dict(own)))
    if leads_to(kind, part.stage) is not part.stage:
        drafts.append(Draft(kind, task.about, dict(own), note=NOTE))
    return (*drafts, done)
