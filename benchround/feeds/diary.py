"""A paper diary typed in, a line for each sowing and each count: read, checked, nothing written.

A line that names no day is of the day of the line before it, as paper diaries are kept; the first
such line is of today.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from datetime import date

from benchround.core.batch.batch import fold_batch
from benchround.core.batch_names import next_name
from benchround.core.crop.search import Named
from benchround.core.errors import BenchroundError, InputError
from benchround.core.fitting import require_among
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import BEFORE, SEEDLING, WAITING, Stage
from benchround.core.progress import Counted, Progress, told, unheard
from benchround.core.record import Draft, Kind, Record
from benchround.core.season import Season
from benchround.core.typed.date import month_first
from benchround.core.typed.diary_line import day_named, read_diary_line
from benchround.core.typed.diary_up import Sown, read_up_line
from benchround.feeds.sowing_words import day_of, sowing_words, up_words
from benchround.feeds.sowings_known import SowingsKnown

MOST_LINES = 20_000
YET_TO_COME = WAITING | {Stage.STRATIFYING}
"""Stages at which seed was sown and nothing is up."""
LAST = "~"
"""An id after every other one."""


@dataclass(frozen=True, slots=True)
class DiaryLine:
    """A line that was read: the record it makes, or why it makes none.

    Attributes:
        number: which line it was.
        text: as typed.
        words: what was understood.
        known: the batch that says the very same already; the line is then left out.
    """

    number: int
    text: str
    draft: Draft | None = None
    words: str = ""
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
        self._again = again
        self._known = SowingsKnown(() if again else season.batches.values())
        self._month_first = month_first(season.settings)
        self._new: dict[str, tuple[Record, ...]] = {}
        self.day = today

    def read(self, text: str, number: int = 1) -> DiaryLine:
        """A line; the next one without a day is of its day, and has the next free batch id."""
        try:
            up = self._came_up(text)
            if up is not None:
                return self._of_batch(up, number, text)
            draft = self._sowing(text)
        except BenchroundError as error:
            self.day = self._day_named(text)
            return DiaryLine(number, text, fault=str(error))
        self.day = day_of(draft, self._today)
        words = sowing_words(draft, self._season, self._today)
        known = self._known.take(draft, self._today)
        if known:
            return DiaryLine(number, text, draft, words, known=known)
        named = replace(draft, about=self._free)
        self._free = next_name(self._free)
        if draft.kind is Kind.SOWN:
            self._new[named.about] = (as_record(named, self.day),)
        return DiaryLine(number, text, named, words)

    def _of_batch(self, draft: Draft, number: int, text: str) -> DiaryLine:
        """A line on a batch that is sown already, on the books or by a line above."""
        record = as_record(draft, self._today)
        self.day = record.day
        told = self._told(draft.about)
        batch, _ = fold_batch(draft.about, told)
        words = up_words(draft, batch, self._season, self._today)
        if not self._again and any(_same(record, one) for one in told):
            return DiaryLine(number, text, draft, words, known=draft.about)
        self._new[draft.about] = (*self._new.get(draft.about, ()), record)
        return DiaryLine(number, text, draft, words)

    def _told(self, name: str) -> tuple[Record, ...]:
        """The records of a batch, those of lines above included, in story order."""
        batch = self._season.batches.get(name)
        told = (*(batch.records if batch else ()), *self._new.get(name, ()))
        return tuple(sorted(told, key=lambda record: record.day))

    def _sowings(self) -> Iterator[Sown]:
        yield from sowings_in(self._season)
        for name in self._new:
            batch, _ = fold_batch(name, self._told(name))
            if batch is not None and name not in self._season.batches:
                yield Sown(name, batch.crop, batch.variety, batch.begun)

    def _came_up(self, text: str) -> Draft | None:
        draft = read_up_line(
            text,
            self._today,
            self._crops,
            self._sowings(),
            usual_day=self.day,
            month_first=self._month_first,
        )
        if draft is not None:
            require_up(draft, self._told(draft.about), self._today)
        return draft

    def _day_named(self, text: str) -> date:
        """The day of a line whose rest is not understood: the lines below it are of that day."""
        try:
            return day_named(text, self._today, self.day, month_first=self._month_first)
        except InputError:
            return self.day

    def _sowing(self, text: str) -> Draft:
        draft = read_diary_line(
            text,
            self._today,
            self._crops,
            self._season.places,
            usual_day=self.day,
            month_first=self._month_first,
        )
        _, doubts = fold_batch("", (as_record(draft, self._today),))
        if doubts:
            raise InputError(doubts[0])
        return draft


def sowings_in(season: Season) -> Iterator[Sown]:
    """The sowings of a season that a line on what came up may mean."""
    for batch in season.batches.values():
        if batch.sowing is not None:
            young = batch.main.stage in WAITING | SEEDLING
            yield Sown(batch.id, batch.crop, batch.variety, batch.sowing.day, young)


def require_up(draft: Draft, told: Sequence[Record], today: date) -> None:
    """Require that what was seen fits the batch's records at its day, and those after it.

    Raises:
        IllegalRecordError: it does not.
        InputError: on that day it was past the seedling, or up where none is said to be.
    """
    record = as_record(draft, today)
    then, _ = fold_batch(draft.about, [one for one in told if one.day <= record.day])
    stage = then.main.stage if then is not None else Stage.PLANNED
    if stage in BEFORE - YET_TO_COME:
        raise InputError(f"{draft.about} was not sown by then: look at the day again.")
    if stage not in YET_TO_COME | SEEDLING:
        raise InputError(
            f"{draft.about} was '{stage}' by then: what stands is counted on its record sheet."
        )
    if draft.kind is Kind.LOOKED and stage not in YET_TO_COME:
        raise InputError(f"{draft.about} was '{stage}' by then: some were up.")
    _, doubts = fold_batch(draft.about, told)
    require_among(told, (record,), draft.about, not doubts)


def as_record(draft: Draft, today: date) -> Record:
    """A draft as the record it would be, the last of its day."""
    return Record(LAST, draft.day or today, draft.kind, draft.about, dict(draft.figures))


def _same(one: Record, other: Record) -> bool:
    return (one.day, one.kind, one.count()) == (other.day, other.kind, other.count())


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
