"""Tables as CSV and JSON.

A spreadsheet takes a cell that begins with one of a few signs for a formula and carries it out, so
a name such as `=1+1` must never stand first in a cell. In CSV such a text gets an apostrophe in
front, and one is taken off again on reading; JSON holds every text as it is.
"""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Mapping

from benchround.core.frozen import dataclass

Cell = str | int | float | bool | None

FORMULA_SIGNS = frozenset("=+-@\t\r\n\uff1d\uff0b\uff0d\uff20")
"""First signs that make a cell a formula, and their wide forms (OWASP, CSV injection; memory)."""
GUARD = "'"


@dataclass(frozen=True, slots=True)
class Table:
    """Rows of cells under named columns; None is an empty cell."""

    name: str
    columns: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]


def csv_text(table: Table) -> tuple[str, int]:
    """The table as CSV (RFC 4180), and how many cells got an apostrophe in front."""
    out = io.StringIO(newline="")
    writer = csv.writer(out)
    writer.writerow(table.columns)
    guarded_cells = 0
    for row in table.rows:
        cells = [guarded(cell) if isinstance(cell, str) else _written(cell) for cell in row]
        guarded_cells += sum(
            1
            for cell, said in zip(row, cells, strict=True)
            if isinstance(cell, str) and cell != said
        )
        writer.writerow(cells)
    return out.getvalue(), guarded_cells


def json_value(table: Table) -> list[dict[str, Cell]]:
    """The table as a list of objects, one a row."""
    return [dict(zip(table.columns, row, strict=True)) for row in table.rows]


def json_text(value: object) -> str:
    """A value as JSON text, readable, with every letter as it is."""
    return json.dumps(value, ensure_ascii=False, allow_nan=False, indent=1) + "\n"


def guarded(text: str) -> str:
    """A text that no spreadsheet takes for a formula."""
    return f"{GUARD}{text}" if text.lstrip(GUARD)[:1] in FORMULA_SIGNS and text else text


def unguarded(cell: str) -> str:
    """The text a guarded cell stands for."""
    if cell.startswith(GUARD) and cell.lstrip(GUARD)[:1] in FORMULA_SIGNS and cell.lstrip(GUARD):
        return cell[1:]
    return cell


def _written(cell: int | float | bool | None) -> str:
    if cell is None:
        return ""
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    return repr(cell) if isinstance(cell, float) else str(cell)


def flat(figures: Mapping[str, str | int | float | bool]) -> str:
    """A record's figures in one cell, as JSON."""
    return json.dumps(dict(figures), ensure_ascii=False, sort_keys=True) if figures else ""
