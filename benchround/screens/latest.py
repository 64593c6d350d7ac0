"""What the latest record of a setting, a place or the site says, figure by figure."""

from __future__ import annotations

from collections.abc import Iterator

from benchround.core.record import Figure, Kind, Record, live
from benchround.desk import Desk

Said = dict[str, dict[str, Figure]]


def standing(desk: Desk, kind: Kind) -> Iterator[Record]:
    """The records of a kind that stand, in story order."""
    return (record for record in live(desk.folder.records()) if record.kind is kind)


def latest_of(desk: Desk, kind: Kind) -> Said:
    """Figures of the latest record of a kind, by what it is about."""
    return {record.about: dict(record.figures) for record in standing(desk, kind)}
