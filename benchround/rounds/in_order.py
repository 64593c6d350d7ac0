"""Tasks kept in the order of the round while some of them are taken out and others put in."""

from __future__ import annotations

from bisect import bisect_left, insort
from collections.abc import Iterable, Mapping

from benchround.core.task import Task
from benchround.rounds.build import order_of

Owner = tuple[int, str]
"""Whose tasks they are: batches come before places, places before the site.

A batch has its tasks in two lots: those of families that ask for the records of its place, and the
others. No family is in both, so that each lot has its own tasks in the order of the round.
"""
BATCH, BATCH_BY_LOG, PLACE, SITE = range(4)

Entry = tuple[object, ...]
"""What a task is put in order by; its owner's sort and its number there, so that no two are alike;
and the task."""
FEW = 500
"""More new tasks than this are sorted in at once."""


class InOrder:
    """The tasks of many owners, in order.

    Args:
        orders: number of each place on the morning walk.
    """

    def __init__(self, orders: Mapping[str, int]) -> None:
        self._orders = orders
        self._by_owner: dict[Owner, list[Entry]] = {}
        self._ordered: list[Entry] = []
        self._new: list[Entry] = []

    def put(self, owner: Owner, tasks: Iterable[Task]) -> None:
        """Give an owner other tasks than it had."""
        for entry in self._by_owner.pop(owner, ()):
            del self._ordered[bisect_left(self._ordered, entry)]
        entries: list[Entry] = [
            (*order_of(self._orders, task), owner[0], number, task)
            for number, task in enumerate(tasks)
        ]
        if entries:
            self._by_owner[owner] = entries
            self._new += entries

    def tasks(self) -> tuple[Task, ...]:
        """All tasks in order."""
        if len(self._new) > FEW:
            self._ordered += self._new
            self._ordered.sort()
        else:
            for entry in self._new:
                insort(self._ordered, entry)
        self._new = []
        return tuple(entry[-1] for entry in self._ordered)  # type: ignore[misc]  # the task
