"""The cells of a table of sowings: its heading and its lines, whatever sign parts the columns."""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping, Sequence

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.typed.figures import shown
from benchround.feeds.tables import unguarded

WHOLE = ("wanted", "seeds", "cells", "per_cell", "trays")
MEASURES = ("depth_mm", "heat_c", "row_m")
TEXTS = ("variety", "container", "packet", "raising", "covering")
COLUMNS = ("batch", "crop", "sown", "place", "note", *WHOLE, *MEASURES, *TEXTS)
ALSO: Mapping[str, str] = {"day": "sown", "date": "sown", "notes": "note"}
"""Other headings of the same columns."""
NEEDED = ("crop",)
MOST_ROWS = 20_000
LONGEST_TEXT = 200
DELIMITERS = ",;\t"
OTHER_SIGNS = "|:^~"
SIGN_NAMES = {",": "commas", ";": "semicolons", "\t": "tabs"}
HOW = "save it as CSV, its columns parted by commas, semicolons or tabs"


@dataclass(frozen=True, slots=True)
class SowingTable:
    """A table as it was read.

    Attributes:
        between: the sign between the cells.
        heading: the names of the columns, empty for one without a name.
        lines: each line's number in the file, the heading being line 1, and its cells.
    """

    between: str
    heading: tuple[str, ...]
    lines: tuple[tuple[int, Sequence[str]], ...]

    def values(self, cells: Sequence[str]) -> dict[str, str]:
        """What a line says, by column; empty cells are left out.

        Raises:
            InputError: it has more cells than columns, or a cell cannot be.
        """
        columns = len(self.heading)
        if any(cell.strip() for cell in cells[columns:]):
            raise InputError(
                f"there are {len(cells)} cells but {columns} columns: put a cell that holds "
                f"{SIGN_NAMES[self.between]} in quotes."
            )
        if len(cells) == 1 < columns and any(sign in cells[0] for sign in DELIMITERS + OTHER_SIGNS):
            raise InputError(
                f"its cells are not parted by {SIGN_NAMES[self.between]} as the heading is: {HOW}."
            )
        return _checked(zip(self.heading, cells, strict=False))


def read_table(text: str) -> SowingTable:
    """The cells of a table.

    Raises:
        InputError: the table as a whole cannot be read.
    """
    plain = text.lstrip("\ufeff")
    first = plain.lstrip().partition("\n")[0]
    between = max(DELIMITERS, key=first.count)
    try:
        reader = csv.reader(io.StringIO(plain), delimiter=between, strict=True)
        lines = [(reader.line_num, cells) for cells in reader if any(c.strip() for c in cells)]
    except csv.Error as error:
        raise InputError(f"The table cannot be read ({error}): {HOW}.") from error
    if not lines:
        raise InputError("The table is empty: its first line must name the columns.")
    heading = tuple(map(_column, lines[0][1]))
    _require_columns(heading)
    if len(lines) - 1 > MOST_ROWS:
        raise InputError(f"{len(lines) - 1} rows are too many at once: {MOST_ROWS} at most.")
    return SowingTable(between, heading, tuple(lines[1:]))


def _column(cell: str) -> str:
    name = cell.strip().lower().replace(" ", "_")
    return ALSO.get(name, name)


def _require_columns(heading: Sequence[str]) -> None:
    named = [name for name in heading if name]
    if len(named) == 1 and named[0] not in COLUMNS:
        sign = next((sign for sign in OTHER_SIGNS if sign in named[0]), "")
        if sign:
            raise InputError(f"The columns are parted by '{sign}': {HOW}.")
    unknown = [name for name in named if name not in COLUMNS]
    if unknown or any(name not in named for name in NEEDED):
        what = f"'{shown(unknown[0])}' is no column" if unknown else "There is no column 'crop'"
        raise InputError(f"{what}. Columns: {', '.join(COLUMNS)}.")
    if len(set(named)) < len(named):
        raise InputError("A column is there twice: leave one out.")


def _checked(cells: zip[tuple[str, str]]) -> dict[str, str]:
    values: dict[str, str] = {}
    for name, cell in cells:
        text = unguarded(cell.strip()).strip()
        if name and text:
            values[name] = text
    for name, text in values.items():
        if not text.isprintable() and name != "note":
            raise InputError(f"{name}: there are control characters in it.")
        if len(text) > LONGEST_TEXT:
            raise InputError(f"{name}: {len(text)} letters are too many, {LONGEST_TEXT} at most.")
    return values
