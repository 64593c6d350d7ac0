"""A paper diary typed in, one line for each sowing: read, checked, and nothing written.

A line that names no day is of the day of the line before it, as paper diaries are kept; the first
such line is of today.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import date

from benchround.core.batch.batch import fold_batch
from benchround.core.batch_names import next_name
from benchround.core.crop.search import Named
from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.progress import Counted, Progress, told, unheard
from benchround.core.record import Draft, Record
from benchround.core.season import Season
from benchround.core.typed.date import month_first
from benchround.core.typed.diary_line import day_named, read_diary_line
from benchround.feeds.sowing_words import day_of
from benchround.feeds.sowings_known import SowingsKnown

MOST_LINES = 20_000


@dataclass(frozen=True, slots=True)
class DiaryLine:
    """A line that was read: the record it makes, or why it makes none.

    Attributes:
        number: which line it was.
        text: as typed.
        known: the batch that says the very same already; the line is then left out.
    """

    number: int
    text: str
    draft: Draft | None = None
    fault: str = ""
    known: str = ""

    @property
    def comes(self) -> bool:
        """Whether it would be recorded."""
        return self.draft is not None and not self.fault and not self.known


class Diary:
    """Reads lines one after another.

    Args:
        season: for places, how days are written, and to see what is on the books already.
        crops: the crops that can be meant.
        today: the day it is typed on.
        first_free: the first free batch id.
        again: whether what is on the books already is recorded once more.
    """

    def __init__(
        self,
        season: Season,
        crops: Iterable[Named],
        today: date,
        first_free: str,
        *,
        again: bool = False,
    ) -> None:
        self._season = season
        self._crops = tuple(crops)
        self._today = today
        self._free = first_free
        self._known = SowingsKnown(() if again else season.batches.values())
        self._month_first = month_first(season.settings)
        self.day = today

    def read(self, text: str, number: int = 1) -> DiaryLine:
        """A line; the next one without a day is of its day, and has the next free batch id."""
        try:
            draft = self._draft(text)
        except InputError as error:
            self.day = self._day_named(text)
            return DiaryLine(number, text, fault=str(error))
        self.day = day_of(draft, self._today)
        known = self._known.take(draft, self._today)
        if known:
            return DiaryLine(number, text, draft, known=known)
        named = replace(draft, about=self._free)
        self._free = next_name(self._free)
        return DiaryLine(number, text, named)

    def _day_named(self, text: str) -> date:
        """The day of a line whose rest is not understood: the lines below it are of that day."""
        try:
            return day_named(text, self._today, self.day, month_first=self._month_first)
        except InputError:
            return self.day

    def _draft(self, text: str) -> Draft:
        draft = read_diary_line(
            text,
            self._today,
            self._crops,
            self._season.places,
            usual_day=self.day,
            month_first=self._month_first,
        )
        record = Record("", draft.day or self._today, draft.kind, "", dict(draft.figures))
        _, doubts = fold_batch("", (record,))
        if doubts:
            raise InputError(doubts[0])
        return draft


def read_diary(
    lines: Counted[str], diary: Diary, progress: Progress = unheard
) -> tuple[DiaryLine, ...]:
    """Every line that is not empty.

    Raises:
        InputError: there are too many.
        StoppedError: it was stopped; nothing was recorded.
    """
    if len(lines) > MOST_LINES:
        raise InputError(f"{len(lines)} lines are too many at once: {MOST_LINES} at most.")
    return tuple(
        diary.read(text.strip(), number)
        for number, text in enumerate(told(lines, progress), start=1)
        if text.strip()
    )
