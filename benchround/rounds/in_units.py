"""A round in the grower's units: every sentence of it, and the labels of what it asks for."""

from __future__ import annotations

from dataclasses import replace

from benchround.core.task import Ask, Hold, Round, Task, Why
from benchround.core.unit_words import UnitWords


def round_in_units(found: Round, words: UnitWords) -> Round:
    """The same round, said in the grower's units; in C and mm it is the very same object."""
    if words.plain:
        return found
    return replace(
        found,
        tasks=tuple(_task(task, words) for task in found.tasks),
        assumed=tuple(map(words, found.assumed)),
    )


def _task(task: Task, words: UnitWords) -> Task:
    why = Why(words(task.why.rule), tuple(map(words, task.why.figures)), words(task.why.source))
    hold = task.hold and Hold(words(task.hold.because), task.hold.look_again)
    return replace(
        task,
        instruction=words(task.instruction),
        why=why,
        hold=hold,
        asks=tuple(_ask(ask, words) for ask in task.asks),
    )


def _ask(ask: Ask, words: UnitWords) -> Ask:
    label = words(ask.label)
    return ask if label == ask.label else replace(ask, label=label)
