"""A batch: one sowing of one variety on one day, as the fold of its records."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

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
    doubts: list[str] = []
    told = iter(records)
    telling = _begun(name, told, doubts)
    if telling is None:
        return None, tuple(doubts)
    for record in told:
        try:
            telling.take(record)
        except IllegalRecordError as error:
            doubts.append(_doubt(name, record, error))
    return telling.batch(), tuple(doubts)


def _begun(name: str, told: Iterator[Record], doubts: list[str]) -> Telling | None:
    """The batch by the first record that can begin one."""
    for record in told:
        try:
            return Telling.begin(record, name)
        except IllegalRecordError as error:
            doubts.append(_doubt(name, record, error))
    return None


def _doubt(name: str, record: Record, error: IllegalRecordError) -> str:
    return f"{name}, {record.day.isoformat()}: {error}"


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
