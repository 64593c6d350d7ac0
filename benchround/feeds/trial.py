"""Trying records out before anything is written: the same checks, on a copy of the book."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date

from benchround.core.book import RecordBook
from benchround.core.record import Draft, Record
from benchround.core.season import Season


class Trial:
    """A copy of a season's book that drafts can be tried on, one after another.

    Args:
        records: the season's records.
        season: the season they amount to.
        day: the day drafts without one of their own are about.
    """

    def __init__(self, records: Iterable[Record], season: Season, day: date) -> None:
        kept = tuple(records)
        self._book = RecordBook(kept, lambda _: season.crops)
        self._last = max((record.id for record in kept), default="")
        self._day = day
        self._tried = 0

    @property
    def season(self) -> Season:
        """The season as it would be with what was tried so far."""
        return self._book.season

    def take(self, drafts: Sequence[Draft]) -> None:
        """Take drafts in as if they were recorded.

        Raises:
            IllegalRecordError: one of them does not fit; none of them was taken in.
        """
        records = tuple(self._named(draft) for draft in drafts)
        self._book.check(records)
        self._book.add(records)

    def _named(self, draft: Draft) -> Record:
        self._tried += 1
        return Record(
            id=f"{self._last}~{self._tried:09d}",  # sorts after every id there is
            day=draft.day or self._day,
            kind=draft.kind,
            about=draft.about,
            figures=dict(draft.figures),
            note=draft.note,
            at=draft.at,
        )
