"""When a plan is to be sown by the grower's own words: the day wished, and what was passed over."""

from __future__ import annotations

from datetime import date, timedelta

from benchround.core.batch.batch import Batch, Part
from benchround.core.dates import Span, year_on
from benchround.core.record import Kind
from benchround.core.season import Season
from benchround.core.task import Family

USUAL_DAYS = timedelta(days=14)
"""How long after the day wished a sowing is in time where no last day was said (our proposal)."""


def wished_span(season: Season, batch: Batch, part: Part, day: date) -> Span | None:
    """The days the grower wished to sow it on, a year or more on where they were passed over.

    None where no day was wished.

    Args:
        season: knows what was passed over.
        batch: the batch.
        part: the part that is planned.
        day: the day it is asked on.
    """
    planned = part.last.get(Kind.PLANNED)
    wished = planned.text("sow_on") if planned else ""
    if planned is None or not wished:
        return None
    opens, by = date.fromisoformat(wished), planned.text("sow_by")
    closes = max(opens, date.fromisoformat(by)) if by else opens + USUAL_DAYS
    passed = passed_over(season, batch, part, day)
    while passed is not None and closes <= passed:
        opens, closes = year_on(opens), year_on(closes)
    return Span(opens, closes)


def passed_over(season: Season, batch: Batch, part: Part, day: date) -> date | None:
    """The day up to `day` on which it was said that it waits for the next time; None where none."""
    said = season.done.get((str(Family.SOW), batch.id, part.name))
    return None if said is None or said > day else said
