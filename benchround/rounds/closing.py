"""What is said at the end of a round."""

from __future__ import annotations

from collections.abc import Iterator

from benchround.core.caution.due import CAUTIONS, closing_cautions
from benchround.core.caution.triggers import DIRTY_KINDS
from benchround.core.record import Kind
from benchround.core.season import Season
from benchround.core.task import Round


def closing_words(the_round: Round, season: Season) -> tuple[str, ...]:
    """The cautions that end a round, in short: by what is still to do and what was done that day.

    They stand until the day is over, when every task has been ticked too.
    """
    ids = closing_cautions((task.family for task in the_round.today), _done(the_round, season))
    return tuple(CAUTIONS[name].short for name in ids)


def _done(the_round: Round, season: Season) -> Iterator[Kind]:
    for batch in season.batches.values():
        for part in batch.parts:
            for kind in DIRTY_KINDS:
                record = part.last.get(kind)
                if record is not None and record.day == the_round.day:
                    yield kind
