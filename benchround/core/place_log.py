"""A place's own records, sorted once for looking up: its lids by day, its waterings, its looks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from datetime import date
from functools import lru_cache

from benchround.core.by_identity import Same
from benchround.core.frozen import dataclass
from benchround.core.record import Kind, Record
from benchround.core.season import Season


@dataclass(frozen=True, slots=True)
class PlaceLog:
    """What was recorded of a place as a whole.

    Attributes:
        lids: lid records by day, in story order.
        watered: days on which the whole place was watered, oldest first.
        looks: what was said of its moisture, oldest first.
    """

    lids: Mapping[date, tuple[Record, ...]] = field(default_factory=dict)
    watered: tuple[date, ...] = ()
    looks: tuple[Record, ...] = ()


NOTHING = PlaceLog()


def place_log_of(season: Season, code: str) -> PlaceLog:
    """The records of a place, sorted for looking up; empty where there are none."""
    kept = season.trays.logs
    found = kept.get(code)
    if found is None:
        records = season.place_log.get(code)
        found = kept[code] = _sorted(_Log(records)) if records and code else NOTHING
    return found


class _Log(Same):
    """A place's records; the tuple is replaced when one is added."""

    def __init__(self, records: tuple[Record, ...]) -> None:
        super().__init__(records)
        self.records = records


@lru_cache(maxsize=128)
def _sorted(log: _Log) -> PlaceLog:
    lids: dict[date, tuple[Record, ...]] = {}
    for record in log.records:
        if record.kind is Kind.LID:
            lids[record.day] = (*lids.get(record.day, ()), record)
    return PlaceLog(
        lids,
        tuple(sorted({r.day for r in log.records if r.kind is Kind.WATERED})),
        tuple(r for r in log.records if r.kind is Kind.MOISTURE),
    )
