"""Daily weather out of a table of text: one row a day, columns by name, faults by row.

Only readings come out of here: nothing in a file of the past is an outlook. A row with an
impossible figure is left out and named; nothing is repaired.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator, Mapping
from datetime import date, timedelta
from itertools import islice
from pathlib import Path
from types import MappingProxyType

from benchround.core.errors import InputError
from benchround.core.sky.known_day import MOST_GUST_KMH, MOST_RAIN_MM
from benchround.core.sky.weather import COLDEST_C, HOTTEST_C
from benchround.core.units import degrees
from benchround.feeds.daily_columns import UNITS, Column, Mapped, columns_of
from benchround.feeds.daily_reading import DailyFile, DailyReading, RowFault, read_date
from benchround.feeds.text_file import read_text

MOST_ROWS = 200_000
NOT_READ = frozenset({"", "-", "--", "na", "n/a", "nan", "null", "none", "m"})
MISSING = (-999.0, -9999.0, 9999.0)
"""Numbers that stand for a missing one in files of weather services."""
TRACE = "t"
"""Rain too little to measure, as North American stations write it: counted as none."""
LONGEST_DAY_H = 24.0
NO_UNITS: Mapping[Column, str] = MappingProxyType({})
NOTHING_TOLD: Mapping[Column, str] = MappingProxyType({})
_NUMBER = re.compile(r"[+-]?[0-9]{1,9}(\.[0-9]{1,9})?|[+-]?\.[0-9]{1,9}")


def read_daily_file(
    path: Path,
    told: Mapping[Column, str] = NOTHING_TOLD,
    units: Mapping[Column, str] = NO_UNITS,
    dates: str = "iso",
) -> DailyFile:
    """Read a file of daily weather; arguments as `read_daily`.

    Raises:
        InputError: it cannot be read, is too large, or is no table.
    """
    text = read_text(path)
    try:
        return read_daily(text, told, units, dates)
    except InputError as error:
        raise InputError(f"{path.name}: {error}") from None


def read_daily(
    text: str,
    told: Mapping[Column, str] = NOTHING_TOLD,
    units: Mapping[Column, str] = NO_UNITS,
    dates: str = "iso",
) -> DailyFile:
    """Read a table of daily weather.

    Args:
        text: the table, headings first; lines beginning with # are passed over. The columns are
            parted by commas, semicolons or tabs, with semicolons the decimal sign may be a comma.
        told: column -> heading; columns not told are guessed by their usual names.
        units: column -> unit, one of `UNITS`; else by the heading, else C, mm, km/h, h.
        dates: "iso" (2026-05-27 or 20260527), "dmy" (27/5/2026) or "mdy" (5/27/2026).

    Raises:
        InputError: no table, no usable columns, no usable row, or more than 200,000 rows.
    """
    if dates not in ("iso", "dmy", "mdy"):
        raise InputError(f"dates are written iso, dmy or mdy, not {dates[:20]!r}.")
    _require_units(units)
    parting = _parting(text)
    rows = _rows(text, parting)
    first = next(rows, None)
    if first is None:
        raise InputError("the file is empty: give a table with headings in its first row.")
    columns = columns_of(first[1], told, units)
    return _Table(columns, dates, parting == ";").read(rows)


def _require_units(units: Mapping[Column, str]) -> None:
    for column, unit in units.items():
        known = UNITS.get(column, {})
        if unit not in known:
            raise InputError(f"'{column}' is not measured in {unit!r}: use {', '.join(known)}.")


def _parting(text: str) -> str:
    lines = (line for line in text.splitlines() if line.strip() and not line.startswith("#"))
    head = next(lines, "")
    return max(",;\t", key=head.count)


def _rows(text: str, parting: str) -> Iterator[tuple[int, list[str]]]:
    """Rows with their line number; comments and blank lines left out."""
    reader = csv.reader(text.splitlines(), delimiter=parting)
    try:
        for cells in reader:
            if any(cell.strip() for cell in cells) and not cells[0].startswith("#"):
                yield reader.line_num, cells
    except csv.Error as error:
        raise InputError(f"line {reader.line_num} is no row of a table: {error}.") from None


class _Table:
    """Turns rows into readings and collects what is wrong with them."""

    def __init__(self, columns: dict[Column, Mapped], dates: str, decimal_comma: bool) -> None:
        self.columns = columns
        self.dates = dates
        self.decimal_comma = decimal_comma
        self.faults: list[RowFault] = []
        self.empty = 0

    def read(self, rows: Iterator[tuple[int, list[str]]]) -> DailyFile:
        found: dict[date, DailyReading] = {}
        last: date | None = None
        for row, cells in islice(rows, MOST_ROWS):
            reading = self._reading(row, cells)
            if reading is None:
                continue
            if reading.day in found:
                self._fault(row, f"{reading.day} was given before; the first row counts")
            else:
                found[reading.day] = reading
        if next(rows, None) is not None:
            raise InputError(f"more than {MOST_ROWS:,} rows are not read: cut it into years.")
        if not found:
            last_words = f": {self.faults[0]}" if self.faults else ""
            raise InputError(f"no row could be used{last_words}.")
        gaps: list[tuple[date, int]] = []
        for day in sorted(found):
            if last is not None and (day - last).days > 1:
                gaps.append((last + timedelta(days=1), (day - last).days - 1))
            last = day
        kept = tuple(found[day] for day in sorted(found) if found[day].figures())
        return DailyFile(kept, tuple(self.faults), tuple(gaps), self.columns, self.empty)

    def _fault(self, row: int, reason: str) -> None:
        self.faults.append(RowFault(row, reason))

    def _reading(self, row: int, cells: list[str]) -> DailyReading | None:
        written = _cell(cells, self.columns[Column.DAY])
        day = read_date(written, self.dates)
        if day is None:
            how = "say how dates are written: dmy or mdy" if self.dates == "iso" else "look at it"
            self._fault(row, f"{written[:20]!r} is no day ({self.dates}); {how}")
            return None
        figures: dict[Column, float | None] = {}
        for column in (Column.MIN, Column.MAX, Column.RAIN, Column.GUST, Column.SUN):
            figures[column] = self._figure(row, cells, column)
        low, high = figures[Column.MIN], figures[Column.MAX]
        if low is not None and high is not None and low > high:
            self._fault(
                row,
                f"lowest {degrees(low, 1)} C is above highest {degrees(high, 1)} C; "
                "neither is used",
            )
            figures[Column.MIN] = figures[Column.MAX] = None
        if all(value is None for value in figures.values()):
            self.empty += 1
        return DailyReading(
            day,
            figures[Column.MIN],
            figures[Column.MAX],
            figures[Column.RAIN],
            figures[Column.GUST],
            figures[Column.SUN],
        )

    def _figure(self, row: int, cells: list[str], column: Column) -> float | None:
        mapped = self.columns.get(column)
        if mapped is None:
            return None
        written = _cell(cells, mapped)
        if written.casefold() in NOT_READ:
            return None
        if column is Column.RAIN and written.casefold() == TRACE:
            return 0.0
        plain = written.replace(",", ".") if self.decimal_comma else written
        if not _NUMBER.fullmatch(plain):
            self._fault(row, f"{mapped.heading}: {written[:20]!r} is no number")
            return None
        if float(plain) in MISSING:
            return None
        value = round(UNITS[column][mapped.unit](float(plain)), 2)
        low, high, unit = _LIMITS[column]
        if not low <= value <= high:
            reason = f"{value:g} {unit} cannot be ({low:g} to {high:g}); left out"
            self._fault(row, f"{mapped.heading}: {reason}")
            return None
        return value


_LIMITS: Mapping[Column, tuple[float, float, str]] = MappingProxyType(
    {
        Column.MIN: (COLDEST_C, HOTTEST_C, "C"),
        Column.MAX: (COLDEST_C, HOTTEST_C, "C"),
        Column.RAIN: (0.0, MOST_RAIN_MM, "mm"),
        Column.GUST: (0.0, MOST_GUST_KMH, "km/h"),
        Column.SUN: (0.0, LONGEST_DAY_H, "h"),
    }
)


def _cell(cells: list[str], mapped: Mapped) -> str:
    return cells[mapped.index].strip() if mapped.index < len(cells) else ""
