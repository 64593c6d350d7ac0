"""Which records were one action: those this computer named in one breath.

A record's name holds the moment it was made and four signs drawn when the program started. The
records of one action are named one after another before any of them is written, thousandths of a
second apart; between two actions lies at least a forced write to the disk, and in the shell a new
program. So an action is a run of one computer's records, in the order of their names, with the same
four signs and less than `APART_MS` between neighbours.

Where the clock was set back, names count on without moving in time, and the actions of one sitting
at the screens cannot be told apart; each command of the shell still is an action of its own.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from benchround.core.record import Kind, Record
from benchround.store.ids import stamp_of

APART_MS = 15
"""Longest pause within one action; a held key comes every 30 ms (our proposal)."""
CARRIED = "carried_from"
"""The setting a new season has when it was begun from another: what came along is no action."""


def actions_of(records: Iterable[Record], machine: str) -> list[tuple[Record, ...]]:
    """The actions of one computer, the newest first; withdrawals are none."""
    own = sorted(
        (r for r in records if r.machine == machine and r.kind is not Kind.WITHDRAWN),
        key=lambda r: r.id,
    )
    found: list[list[Record]] = []
    for record in own:
        if found and _one_breath(found[-1][-1].id, record.id):
            found[-1].append(record)
        else:
            found.append([record])
    return [tuple(action) for action in reversed(found)]


def last_action(
    records: Sequence[Record], machine: str, withdrawn: Iterable[str]
) -> tuple[Record, ...]:
    """What stands of the newest action of which anything stands; empty where there is none."""
    gone = frozenset(withdrawn)
    carried = (r.id for r in records if r.kind is Kind.SETTING and r.about == CARRIED)
    floor = max(carried, default="")
    for action in actions_of(records, machine):
        standing = tuple(r for r in action if r.id not in gone and r.id > floor)
        if standing:
            return standing
    return ()


def _one_breath(earlier: str, later: str) -> bool:
    first, second = stamp_of(earlier), stamp_of(later)
    if first is None or second is None or earlier[-4:] != later[-4:]:
        return False
    return second[0] - first[0] < APART_MS
