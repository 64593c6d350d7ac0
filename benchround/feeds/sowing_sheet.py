"""Sowings from a spreadsheet: rows of a CSV table into records, each looked at on its own."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date

from benchround.core.crop.search import Named
from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.record import Draft, Figure
from benchround.core.season import Season
from benchround.core.typed.date import read_day
from benchround.core.typed.diary_line import crop_meant, place_meant, sowing_draft
from benchround.feeds.tables import unguarded

WHOLE = ("wanted", "seeds", "cells", "per_cell", "trays")
MEASURES = ("depth_mm", "heat_c", "row_m")
TEXTS = ("variety", "container", "packet", "raising", "covering")
COLUMNS = ("batch", "crop", "sown", "place", "note", *WHOLE, *MEASURES, *TEXTS)
NEEDED = ("crop",)
MOST_ROWS = 20_000
MOST_NUMBER = 1_000_000
LONGEST_TEXT = 200
DELIMITERS = ",;\t"


@dataclass(frozen=True, slots=True)
class SheetRow:
    """One row: the record it makes, or why it makes none.

    Attributes:
        line: its number in the table, the heading being line 1.
        remark: something to look at that does not forbid it.
    """

    line: int
    draft: Draft | None = None
    fault: str = ""
    remark: str = ""


def read_sheet(
    text: str,
    season: Season,
    crops: Iterable[Named],
    today: date,
    first_free: int,
) -> tuple[SheetRow, ...]:
    """The sowings of a table.

    Args:
        text: the table as CSV, with a heading; commas, semicolons or tabs between the cells.
        season: for places, and to see what is on the books already.
        crops: the crops that can be meant.
        today: rows with a later day become plans.
        first_free: number of the first free batch id.

    Raises:
        InputError: the table as a whole cannot be read.
    """
    heading, rows = _table(text)
    known = tuple(crops)
    taken = set(season.batches)
    found: list[SheetRow] = []
    for line, cells in rows:
        try:
            values = _values(heading, cells)
            name = values.get("batch", "")
            while not name or (name in taken and "batch" not in values):
                name = f"b{first_free:02d}"
                first_free += 1
            if name in taken:
                raise InputError(f"batch: {name[:40]} is on the books already.")
            draft = _draft(name, values, season, known, today)
        except InputError as error:
            found.append(SheetRow(line, fault=str(error)))
            continue
        taken.add(name)
        found.append(SheetRow(line, draft, remark=_seen(draft, season)))
    return tuple(found)


def _table(text: str) -> tuple[list[str], list[tuple[int, list[str]]]]:
    first = text.lstrip("\ufeff").lstrip().partition("\n")[0]
    between = max(DELIMITERS, key=first.count)
    try:
        reader = csv.reader(io.StringIO(text.lstrip("\ufeff")), delimiter=between, strict=True)
        lines = [(reader.line_num, cells) for cells in reader if any(c.strip() for c in cells)]
    except csv.Error as error:
        raise InputError(f"The table cannot be read ({error}): save it as CSV again.") from error
    if not lines:
        raise InputError("The table is empty: its first line must name the columns.")
    heading = [cell.strip().lower().replace(" ", "_") for cell in lines[0][1]]
    unknown = [name for name in heading if name and name not in COLUMNS]
    if unknown or any(name not in heading for name in NEEDED):
        what = f"'{unknown[0][:30]}' is no column" if unknown else "There is no column 'crop'"
        raise InputError(f"{what}. Columns: {', '.join(COLUMNS)}.")
    if len(set(heading) - {""}) < len([name for name in heading if name]):
        raise InputError("A column is there twice: leave one out.")
    if len(lines) - 1 > MOST_ROWS:
        raise InputError(f"{len(lines) - 1} rows are too many at once: {MOST_ROWS} at most.")
    return heading, lines[1:]


def _values(heading: Sequence[str], cells: Sequence[str]) -> dict[str, str]:
    if any(cell.strip() for cell in cells[len(heading) :]):
        raise InputError(f"there are {len(cells)} cells but {len(heading)} columns.")
    values: dict[str, str] = {}
    for name, cell in zip(heading, cells, strict=False):
        text = unguarded(cell.strip()).strip()
        if name and text:
            values[name] = text
    for name, text in values.items():
        if not text.isprintable() and name != "note":
            raise InputError(f"{name}: there are control characters in it.")
        if len(text) > LONGEST_TEXT:
            raise InputError(f"{name}: {len(text)} letters are too many, {LONGEST_TEXT} at most.")
    return values


def _draft(
    name: str, values: Mapping[str, str], season: Season, crops: Sequence[Named], today: date
) -> Draft:
    if "crop" not in values:
        raise InputError("crop: it is empty.")
    figures: dict[str, Figure] = {"crop": crop_meant(values["crop"], crops)}
    if "place" in values:
        figures["place"] = place_meant(values["place"], season.places)
    figures.update(_figures(values))
    try:
        day = read_day(values["sown"], today) if "sown" in values else today
    except InputError as error:
        raise InputError(f"sown: {error}") from error
    return sowing_draft(name, figures, day, today, values.get("note", ""))


def _figures(values: Mapping[str, str]) -> Iterator[tuple[str, Figure]]:
    for name in TEXTS:
        if name in values:
            yield name, values[name]
    for name in WHOLE:
        if name in values:
            yield name, _whole(name, values[name])
    for name in MEASURES:
        if name in values:
            yield name, _measure(name, values[name])


def _whole(name: str, text: str) -> int:
    if not (text.isascii() and text.isdigit()) or int(text[:9]) > MOST_NUMBER or len(text) > 9:
        raise InputError(f"{name}: '{text[:30]}' is no whole number from 0 to {MOST_NUMBER}.")
    return int(text)


def _measure(name: str, text: str) -> float:
    try:
        number = float(text.replace(",", "."))
    except ValueError:
        number = float("nan")
    if not 0 <= number <= MOST_NUMBER:
        raise InputError(f"{name}: '{text[:30]}' is no number from 0 up.")
    return number


def _seen(draft: Draft, season: Season) -> str:
    """Whether such a sowing is on the books already."""
    for batch in season.batches.values():
        same = (batch.crop, batch.variety) == (
            draft.figures.get("crop"),
            draft.figures.get("variety", ""),
        )
        if same and batch.sowing is not None and batch.sowing.day == draft.day:
            return f"like {batch.id}, which is on the books already"
    return ""
