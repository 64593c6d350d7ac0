"""What two season folders have together: records of both, and batches told in two ways."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from benchround.core.batch.batch import Batch
from benchround.core.frozen import dataclass
from benchround.core.record import Record


@dataclass(frozen=True, slots=True)
class Clash:
    """One batch id that was given twice, for two different sowings."""

    batch: str
    first: str
    second: str

    def __str__(self) -> str:
        return f"{self.batch} is {self.first} in the one and {self.second} in the other"


def missing_in(records: Iterable[Record], other: Iterable[Record]) -> tuple[Record, ...]:
    """The records of the second telling that the first has not, by id, in the order of ids."""
    known = {record.id for record in records}
    return tuple(sorted((r for r in other if r.id not in known), key=lambda r: r.id))


def clashes(first: Mapping[str, Batch], second: Mapping[str, Batch]) -> tuple[Clash, ...]:
    """The batches both have under one id although they began with different records."""
    return tuple(
        Clash(name, _words(first[name]), _words(second[name]))
        for name in sorted(first.keys() & second.keys())
        if first[name].records[0].id != second[name].records[0].id
    )


def _words(batch: Batch) -> str:
    variety = f" '{batch.variety}'" if batch.variety else ""
    return f"{batch.crop}{variety} of {batch.begun.isoformat()}"
