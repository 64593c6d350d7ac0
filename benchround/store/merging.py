"""Bringing together what several files and several computers tell.

Records are never changed once written, so the whole story is every record that stands
in any file, once. The outcome depends on what is told and not on who tells it first: merging is
commutative, associative and changes nothing when repeated.
"""

from __future__ import annotations

from collections.abc import Iterable

from benchround.core.frozen import dataclass
from benchround.core.record import Record
from benchround.store.union import fold_in


@dataclass(frozen=True, slots=True)
class Merged:
    """Records from several sources, each once, sorted by id.

    Attributes:
        records: the union.
        disagreements: ids that were told in more than one way, sorted.
    """

    records: tuple[Record, ...]
    disagreements: tuple[str, ...] = ()


def merge(a: Iterable[Record], b: Iterable[Record]) -> Merged:
    """The union of two tellings by id.

    Where the same id is told two ways, which only a hand or a fault can bring about, the longer
    text wins, and of two equally long the one that sorts later.
    """
    by_id: dict[str, Record] = {}
    disagreements = fold_in(by_id, a) | fold_in(by_id, b)
    records = tuple(by_id[name] for name in sorted(by_id))
    return Merged(records, tuple(sorted(disagreements)))
