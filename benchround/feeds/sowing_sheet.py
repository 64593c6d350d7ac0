"""Sowings from a spreadsheet: rows of a CSV table into records, each looked at on its own."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import date, timedelta
from functools import lru_cache, partial

from benchround.core.batch.batch import fold_batch
from benchround.core.batch_names import next_name
from benchround.core.crop.search import Named
from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.progress import Progress, told, unheard
from benchround.core.record import Draft, Figure, Record
from benchround.core.season import Season
from benchround.core.typed.date import month_first, read_day
from benchround.core.typed.diary_line import crop_meant, sowing_draft
from benchround.core.typed.figures import MOST_COUNT, naming, read_number, read_whole
from benchround.core.typed.words import read_place
from benchround.feeds.sowing_table import COLUMNS, MEASURES, TEXTS, WHOLE, read_table
from benchround.feeds.sowings_known import SowingsKnown

__all__ = ["COLUMNS", "SheetRow", "read_sheet"]

FURTHEST_BACK = timedelta(days=366 * 12)
FURTHEST_AHEAD = timedelta(days=366)
LONGEST_BATCH = 40
Meant = Callable[[str], str]


@dataclass(frozen=True, slots=True)
class SheetRow:
    """One row: the record it makes, or why it makes none.

    Attributes:
        line: its number in the table, the heading being line 1.
        remark: something to look at that does not forbid it.
        known: the batch that says the very same already; the row is then left out.
    """

    line: int
    draft: Draft | None = None
    fault: str = ""
    remark: str = ""
    known: str = ""

    @property
    def comes(self) -> bool:
        """Whether it would be recorded."""
        return self.draft is not None and not self.fault and not self.known


def read_sheet(
    text: str,
    season: Season,
    crops: Iterable[Named],
    today: date,
    first_free: str,
    progress: Progress = unheard,
) -> tuple[SheetRow, ...]:
    """The sowings of a table.

    Args:
        text: the table as CSV, with a heading; commas, semicolons or tabs between the cells.
        season: for places, how days are written, and to see what is on the books already.
        crops: the crops that can be meant.
        today: rows with a later day become plans.
        first_free: the first free batch id.
        progress: told of the rows read.

    Raises:
        InputError: the table as a whole cannot be read.
        StoppedError: it was stopped; nothing was recorded.
    """
    table = read_table(text)
    reader = _RowReader(season, tuple(crops), today)
    names = _Names(frozenset(season.batches), first_free)
    found: list[SheetRow] = []
    for line, cells in told(table.lines, progress):
        try:
            row = reader.row(line, table.values(cells), names)
        except InputError as error:
            row = SheetRow(line, fault=str(error))
        found.append(row)
    return tuple(found)


class _Names:
    """Batch ids: those on the books, and those given so far."""

    def __init__(self, on_books: frozenset[str], first_free: str) -> None:
        self._taken = set(on_books)
        self._free = first_free

    def require_free(self, name: str) -> None:
        if len(name) > LONGEST_BATCH or not all(map(_may_be_in_a_name, name)):
            raise InputError(
                f"batch: '{name[:40]}' is no name of a batch: use up to {LONGEST_BATCH} letters, "
                "numbers and - _ . without spaces, or leave the cell empty."
            )
        if name in self._taken:
            raise InputError(f"batch: {name[:40]} is on the books already.")

    def take(self, name: str) -> str:
        """The name, or the next free one where there is none."""
        while not name or (name in self._taken):
            name, self._free = self._free, next_name(self._free)
        self._taken.add(name)
        return name


def _may_be_in_a_name(sign: str) -> bool:
    return sign.isalpha() or sign in "0123456789-_."


class _RowReader:
    """Reads rows against a season."""

    def __init__(self, season: Season, crops: tuple[Named, ...], today: date) -> None:
        self._season = season
        self._today = today
        self._known = SowingsKnown(season.batches.values())
        self._month_first = month_first(season.settings)
        self._crop: Meant = lru_cache(maxsize=None)(lambda text: crop_meant(text, crops))

    def row(self, line: int, values: Mapping[str, str], names: _Names) -> SheetRow:
        """The row.

        Raises:
            InputError: a cell cannot be understood.
        """
        own = values.get("batch", "")
        draft = self._draft(own, values)
        there = self._known.take(draft, self._today, own)
        if there:
            return SheetRow(line, draft, known=there)
        if own:
            names.require_free(own)
        like = self._known.like(draft, self._today)
        remark = f"like {like}, which is on the books already" if like else ""
        named = Draft(draft.kind, names.take(own), draft.figures, draft.note, day=draft.day)
        return SheetRow(line, named, remark=remark)

    def _draft(self, name: str, values: Mapping[str, str]) -> Draft:
        figures: dict[str, Figure] = {}
        faults: list[str] = []
        for cell, read in self._cells(values):
            try:
                found = read()
            except InputError as error:
                faults.append(str(error))
                continue
            if found is not None:
                figures[cell] = found
        try:
            day = self._day(values)
        except InputError as error:
            faults.append(str(error))
        if faults:
            raise InputError(" ".join(faults))
        draft = sowing_draft(name, figures, day, self._today, values.get("note", ""))
        record = Record("", draft.day or self._today, draft.kind, name, dict(draft.figures))
        _, doubts = fold_batch(name, (record,))
        if doubts:
            raise InputError(doubts[0])
        return draft

    def _cells(
        self, values: Mapping[str, str]
    ) -> Iterator[tuple[str, Callable[[], Figure | None]]]:
        """Each cell that is filled in, and how it is read; a crop there must be."""
        yield "crop", partial(self._crop_of, values.get("crop", ""))
        if "place" in values:
            read = partial(read_place, values["place"], self._season.places, whole=True)
            yield "place", partial(naming, "place", read)
        for name, reader in CELLS.items():
            if name in values:
                yield name, partial(naming, name, partial(reader, values[name]))

    def _crop_of(self, text: str) -> str:
        if not text:
            raise InputError("crop: it is empty.")
        return self._crop(text)

    def _day(self, values: Mapping[str, str]) -> date:
        if "sown" not in values:
            return self._today
        read = partial(read_day, values["sown"], self._today, month_first=self._month_first)
        day = naming("sown", read)
        if not self._today - FURTHEST_BACK <= day <= self._today + FURTHEST_AHEAD:
            raise InputError(f"sown: {day.isoformat()} is too far off: look at the year again.")
        return day


def _measure(text: str) -> float | None:
    return read_number(text, 0, MOST_COUNT)


CELLS: Mapping[str, Callable[[str], Figure | None]] = {
    **dict.fromkeys(TEXTS, str),
    **dict.fromkeys(WHOLE, read_whole),
    **dict.fromkeys(MEASURES, _measure),
}
"""How the cells of a row are read that stand for themselves."""
