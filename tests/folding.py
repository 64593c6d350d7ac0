"""A season folded from its records all at once, as a program that opens it does."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from benchround.core.book import RecordBook
from benchround.core.crop.crop import Crop
from benchround.core.record import Record
from benchround.core.season import Season


def fold_season(records: Iterable[Record], crops: Mapping[str, Crop]) -> Season:
    """The season its records amount to.

    Args:
        records: all records, in any order, withdrawals included.
        crops: the crop library, any overrides already applied.
    """
    return RecordBook(records, lambda _: crops).season
