"""Bringing together what several files and several computers tell.

Records are never changed once written, so the whole story is every record that stands
in any file, once. The outcome depends on what is told and not on who tells it first: merging is
commutative, associative and changes nothing when repeated.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from benchround.core.record import Record


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


def fold_in(by_id: dict[str, Record], records: Iterable[Record]) -> set[str]:
    """Add records to a union in place, and return the ids that are told in more than one way."""
    disagreements = set()
    put = by_id.setdefault
    for record in records:
        known = put(record.id, record)
        if known is not record and _text(known) != _text(record):
            disagreements.add(record.id)
            by_id[record.id] = max(known, record, key=_weight)
    return disagreements


def same(a: Record, b: Record) -> bool:
    """Whether two records of one id say the same."""
    return _text(a) == _text(b)


def _weight(record: Record) -> tuple[int, str]:
    text = _text(record)
    return len(text), text


def _text(record: Record) -> str:
    """All a record says but its id; tells 1 from 1.0 and from yes, which `==` does not."""
    figures = sorted(record.figures.items(), key=lambda figure: figure[0])
    fields = (record.day, record.kind.value, record.about, figures, record.note, record.at)
    return repr((*fields, record.machine))
