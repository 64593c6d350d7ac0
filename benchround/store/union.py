"""Putting records into the union of what all files tell, where each stands once."""

from __future__ import annotations

from collections.abc import Iterable

from benchround.core.record import Record


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
