"""What will flower with a batch that is still to be sown, with colours and heights."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from benchround.core.batch.batch import Batch
from benchround.core.dates import Span as Days
from benchround.core.season import Season
from benchround.drawing.flowering import Flowering, flowerings, looks_like
from benchround.drawing.words import counted
from benchround.drawing.year_strips import YearStrip, batch_strips
from benchround.screens.text import Line, Role, paragraph

MOST_BATCHES = 300
"""So many of the batches begun last are held against the new one; more would keep keys waiting."""
MOST_TOLD = 8


class FlowersBeside:
    """The flowerings of a season, reckoned once, to hold a new batch against.

    Args:
        season: the season.
        day: today.
    """

    def __init__(self, season: Season, day: date) -> None:
        self._season = season
        self._day = day
        self._strips: Sequence[YearStrip] | None = None

    def lines(self, batch: Batch, width: int) -> Iterator[Line]:
        """How a batch flowers, and what with it, the longest first; nothing where it does not.

        Args:
            batch: the batch as it would be; it need not be on the books.
            width: columns.
        """
        own, with_it = self._held_against(batch)
        if own is None:
            return
        yield from paragraph(f"Its flowers: {looks_like(own) or 'not known'}", width, Role.STRONG)
        for one in with_it[:MOST_TOLD]:
            told = ", ".join(filter(None, (one.title, looks_like(one))))
            yield from paragraph(f"{counted(_days(one), 'day')} with {told}", width, Role.INK, "  ")
        left = len(with_it) - MOST_TOLD
        if left > 0:
            yield from paragraph(f"and with {left} more", width, Role.QUIET)
        if not with_it:
            yield from paragraph("Nothing on the books flowers with it.", width, Role.QUIET)

    def names(self, batch: Batch) -> str:
        """What flowers with a batch by name, the longest first; empty where nothing does."""
        _, with_it = self._held_against(batch)
        return ", ".join(one.title for one in with_it)

    def _held_against(self, batch: Batch) -> tuple[Flowering | None, list[Flowering]]:
        mine = batch_strips(self._season, batch, self._day)[:1]
        spans = mine[0].flowerings if mine else ()
        if not spans:
            return None, []
        days = Days(spans[0].opens, spans[-1].closes)
        own, *others = flowerings((*mine, *self._others()), days, batch.id)
        return own, sorted((one for one in others if one.together), key=lambda one: -_days(one))

    def _others(self) -> Sequence[YearStrip]:
        if self._strips is None:
            growing = [
                batch
                for batch in self._season.batches.values()
                if not all(part.ended for part in batch.parts)
            ]
            growing.sort(key=lambda batch: batch.begun, reverse=True)
            self._strips = [
                strip
                for batch in growing[:MOST_BATCHES]
                for strip in batch_strips(self._season, batch, self._day)
            ]
        return self._strips


def _days(one: Flowering) -> int:
    return one.together or 0
