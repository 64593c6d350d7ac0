"""A batch: one sowing of one variety on one day, as the fold of its records."""

from __future__ import annotations

from collections.abc import Iterable

from benchround.core.batch.nouns import MAIN, SPARES, Batch, Part, Sowing, Tally
from benchround.core.batch.telling import LEAVES_REST, NEW_GROWTH, Telling
from benchround.core.errors import IllegalRecordError
from benchround.core.record import Record

__all__ = [
    "LEAVES_REST",
    "MAIN",
    "NEW_GROWTH",
    "SPARES",
    "Batch",
    "Part",
    "Sowing",
    "Tally",
    "apply",
    "fold_batch",
]


def fold_batch(name: str, records: Iterable[Record]) -> tuple[Batch | None, tuple[str, ...]]:
    """The batch its records amount to, and a sentence for each record that does not fit.

    Records must be live and in story order. A record that does not fit (two machines may have told
    different stories) is passed over, never lost: it stays in the folder.
    """
    telling: Telling | None = None
    doubts: list[str] = []
    for record in records:
        try:
            if telling is None:
                telling = Telling.begin(record, name)
            else:
                telling.take(record)
        except IllegalRecordError as error:
            doubts.append(f"{name}, {record.day.isoformat()}: {error}")
    return telling.batch() if telling is not None else None, tuple(doubts)


def apply(batch: Batch | None, record: Record, name: str) -> Batch:
    """The batch after one more record.

    Raises:
        IllegalRecordError: the record does not fit the stage, the part or the counts.
    """
    if batch is None:
        return Telling.begin(record, name).batch()
    telling = Telling.of(batch)
    telling.take(record)
    return telling.batch()
