"""How well fitted crop parameters foretell days they were not fitted to.

Run `python -m tests.bench.emergence_accuracy` to write docs/emergence_accuracy.md, or with
`--held-out FILE` (crop,temp_c,days,state) to measure further cells of the printed table.
"""

from __future__ import annotations

import argparse
import csv
import functools
import math
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from benchround.core.seed.emergence import days_at
from benchround.core.seed.emergence_fit import fit_from_table
from benchround.core.seed.heat import thermal_model
from benchround.core.seed.thermal_model import ThermalModel
from tests.crops.published import crop as rules_of
from tests.crops.test_vegetables_against_harrington import KEY_OF

DATA = Path(__file__).parent.parent / "data"
REPORT = Path(__file__).parent.parent.parent / "docs" / "emergence_accuracy.md"


@dataclass(frozen=True, slots=True)
class Cell:
    """One printed cell; days is None where nothing came up."""

    crop: str
    temp_c: float
    days: int | None


@dataclass(frozen=True, slots=True)
class Foretold:
    """A cell and the days foretold without it; None where nothing is foretold to come up."""

    cell: Cell
    days: float | None

    @property
    def relative_error(self) -> float:
        """Size of the error over the printed days; infinite where nothing was foretold."""
        printed = self.cell.days
        if self.days is None or printed is None:
            return math.inf
        return abs(self.days - printed) / printed

    @property
    def days_off(self) -> float:
        """Size of the error in days; infinite where nothing was foretold."""
        printed = self.cell.days
        if self.days is None or printed is None:
            return math.inf
        return abs(self.days - printed)

    @property
    def is_close(self) -> bool:
        """Within a tenth or one day of the printed days."""
        printed = self.cell.days
        if self.days is None or printed is None:
            return False
        return abs(self.days - printed) <= max(1.0, 0.1 * printed)


def _rows(path: Path) -> list[dict[str, str]]:
    with path.open(newline="", encoding="utf-8") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


def read_cells(path: Path) -> tuple[Cell, ...]:
    """Return the tested cells of a table file."""
    return tuple(
        Cell(row["crop"], float(row["temp_c"]), int(row["days"]) if row["days"] else None)
        for row in _rows(path)
        if row["state"] != "not_tested"
    )


TABLE = read_cells(DATA / "harrington_minges.csv")
CHECK_10_C = read_cells(DATA / "harrington_minges_check.csv")
REMEMBERED = read_cells(DATA / "harrington_minges_remembered.csv")
"""The columns 10 and 25 C from memory; never fitted to."""
CROPS = tuple(dict.fromkeys(cell.crop for cell in TABLE))
HINTS = {
    row["crop"]: tuple(
        float(row[key]) if row[key] else None for key in ("least_c", "best_c", "greatest_c")
    )
    for row in _rows(DATA / "soil_temperatures.csv")
}


@functools.cache
def model_without(crop: str, left_out: frozenset[float], hints: bool = True) -> ThermalModel:
    """Return a crop's model from its printed cells except the temperatures left out."""
    points = [(c.temp_c, c.days) for c in TABLE if c.crop == crop and c.temp_c not in left_out]
    least, best, greatest = HINTS[crop] if hints else (None, None, None)
    return fit_from_table(points, least_c=least, best_c=best, greatest_c=greatest)


def foretell(
    cells: Iterable[Cell], left_out: frozenset[float] | None = None, hints: bool = True
) -> tuple[Foretold, ...]:
    """Return each cell with the days foretold by its crop's model without the cell's column.

    Crops with fewer than two other temperatures with days cannot be fitted and are left out.
    """
    found = []
    for cell in cells:
        without = left_out or frozenset({cell.temp_c})
        rest = [c for c in TABLE if c.crop == cell.crop and c.temp_c not in without and c.days]
        if len(rest) >= 2:
            model = model_without(cell.crop, without, hints)
            found.append(Foretold(cell, days_at(model, cell.temp_c)))
    return tuple(found)


def came_up(temp_c: float) -> tuple[Cell, ...]:
    """Return the printed cells of a column in which seedlings came up."""
    return tuple(c for c in TABLE if c.temp_c == temp_c and c.days is not None)


def quantile(values: Iterable[float], q: float) -> float:
    """Return a quantile by linear interpolation between the ordered values."""
    ordered = sorted(values)
    place = q * (len(ordered) - 1)
    low, part = math.floor(place), place - math.floor(place)
    high = min(low + 1, len(ordered) - 1)
    if part == 0.0 or ordered[low] == ordered[high]:
        return ordered[low]
    return ordered[low] + part * (ordered[high] - ordered[low])


def is_bracketed(cell: Cell) -> bool:
    """Return whether the crop came up at a colder and at a warmer printed temperature."""
    others = [c.temp_c for c in TABLE if c.crop == cell.crop and c.days is not None]
    return any(t < cell.temp_c for t in others) and any(t > cell.temp_c for t in others)


ERRORS_HEAD = (
    "| left out | cells | median error | 90th percentile | in days | within 10 % or 1 day |",
    "|---|---|---|---|---|---|",
)


def _summary_line(name: str, found: tuple[Foretold, ...]) -> str:
    errors = [item.relative_error for item in found]
    close = sum(item.is_close for item in found)
    return (
        f"| {name} | {len(found)} | {_percent(quantile(errors, 0.5))} | "
        f"{_percent(quantile(errors, 0.9))} | {_off(found)} | {close} of {len(found)} |"
    )


def _off(found: tuple[Foretold, ...]) -> str:
    median = quantile([item.days_off for item in found], 0.5)
    return "none foretold" if math.isinf(median) else f"{median:.1f} d"


def _percent(value: float) -> str:
    return "none foretold" if math.isinf(value) else f"{100 * value:.0f} %"


def _days(value: float | None) -> str:
    return "nothing" if value is None else f"{value:.1f}"


def _told_as_nothing(cells: tuple[Cell, ...]) -> str:
    return f"{sum(item.days is None for item in foretell(cells))} of {len(cells)}"


def nothing_line() -> tuple[int, int]:
    """Return (told as nothing, all) of the cells where nothing came up, each left out."""
    found = foretell(c for c in TABLE if c.days is None)
    return sum(item.days is None for item in found), len(found)


def nothing_missed() -> tuple[Foretold, ...]:
    """Return the cells where nothing came up and days were foretold without them."""
    return tuple(f for f in foretell(c for c in TABLE if c.days is None) if f.days is not None)


def nothing_wrong() -> tuple[Foretold, ...]:
    """Return the cells with days for which nothing was foretold without them."""
    return tuple(f for f in foretell(c for c in TABLE if c.days is not None) if f.days is None)


def _cells(found: Iterable[Foretold]) -> str:
    return "\n".join(
        f"- {item.cell.crop} at {item.cell.temp_c:g} C: printed "
        f"{item.cell.days or 'nothing'}, foretold {_days(item.days)}"
        for item in found
    )


def by_library(cells: Iterable[Cell]) -> tuple[Foretold, ...]:
    """Return each cell with the days the shipped crop library gives for it."""
    found = []
    for cell in cells:
        germination = rules_of(KEY_OF[cell.crop]).germination
        if germination is not None:
            found.append(Foretold(cell, days_at(thermal_model(germination), cell.temp_c)))
    return tuple(found)


def remembered(temp_c: float, *, up: bool) -> tuple[Cell, ...]:
    """Return the remembered cells of a column in which seedlings came up, or in which none did."""
    return tuple(c for c in REMEMBERED if c.temp_c == temp_c and (c.days is not None) is up)


def _remembered() -> list[str]:
    lines = list(ERRORS_HEAD)
    for temp_c in (10.0, 25.0):
        for name, foretold in (("", foretell), (" by the crop library", by_library)):
            found = foretold(remembered(temp_c, up=True))
            lines.append(_summary_line(f"{temp_c:g} C{name}", found))
    return lines


def _columns() -> list[str]:
    lines = list(ERRORS_HEAD)
    for temp_c in (0.0, 5.0, 15.0, 20.0, 30.0, 35.0, 40.0):
        lines.append(_summary_line(f"{temp_c:g} C", foretell(came_up(temp_c))))
    lines.append(_summary_line("10 C (six crops)", foretell(CHECK_10_C)))
    lines.append(_summary_line("10 C by the crop library", by_library(CHECK_10_C)))
    bracketed = [c for c in (*TABLE, *CHECK_10_C) if c.days is not None and is_bracketed(c)]
    lines.append(_summary_line("all cells between two others", foretell(bracketed)))
    blind = foretell(bracketed, hints=False)
    lines.append(_summary_line("the same without germination temperatures", blind))
    pair = foretell((*came_up(15.0), *came_up(20.0)), frozenset({15.0, 20.0}))
    lines.append(_summary_line("15 and 20 C together", pair))
    return lines


def _forecasts() -> list[str]:
    printed = {cell.crop: cell.days for cell in CHECK_10_C}
    lines = [
        "| crop | base | optimum | ceiling | C d | 10 C | 10 C printed | 25 C |",
        "|---|---|---|---|---|---|---|---|",
    ]
    for crop in CROPS:
        model = model_without(crop, frozenset())
        at_10, at_25 = days_at(model, 10.0), days_at(model, 25.0)
        lines.append(
            f"| {crop} | {model.base_c:.1f} | {model.optimum_c:.1f} | {model.ceiling_c:.1f} | "
            f"{model.theta50:.0f} | {_days(at_10)} | {printed.get(crop, '')} | {_days(at_25)} |"
        )
    return lines


def _misses() -> list[str]:
    cells = [c for c in (*TABLE, *CHECK_10_C) if c.days is not None and is_bracketed(c)]
    worst = sorted(foretell(cells), key=lambda item: -item.relative_error)[:8]
    return [
        f"- {item.cell.crop} at {item.cell.temp_c:g} C: printed {item.cell.days}, "
        f"foretold {_days(item.days)}"
        for item in worst
    ]


TEXT = (Path(__file__).parent / "emergence_accuracy_text.md").read_text(encoding="utf-8")


def report() -> str:
    """Return the whole of docs/emergence_accuracy.md."""
    right, tested = nothing_line()
    return TEXT.format(
        columns="\n".join(_columns()),
        remembered="\n".join(_remembered()),
        none_remembered=_told_as_nothing(remembered(10.0, up=False)),
        forecasts="\n".join(_forecasts()),
        misses="\n".join(_misses()),
        nothing=f"{right} of {tested}",
        missed=_cells(nothing_missed()),
        wrong=_cells(nothing_wrong()),
        library=_cells(f for f in by_library(c for c in TABLE if c.days) if f.days is None),
    )


def main() -> None:
    """Write the report, or print the errors of cells given in a file."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--held-out", type=Path, help="further cells: crop,temp_c,days,state")
    chosen: Path | None = parser.parse_args().held_out
    if chosen is None:
        REPORT.write_text(report(), encoding="utf-8")
        return
    cells = read_cells(chosen)
    for temp_c in sorted({cell.temp_c for cell in cells}):
        up = foretell([c for c in cells if c.temp_c == temp_c and c.days is not None])
        none = foretell([c for c in cells if c.temp_c == temp_c and c.days is None])
        print(_summary_line(f"{temp_c:g} C", up))
        print(f"  nothing came up: told {sum(f.days is None for f in none)} of {len(none)}")
        for item in (*up, *none):
            print(f"  {item.cell.crop}: printed {item.cell.days}, foretold {_days(item.days)}")


if __name__ == "__main__":
    main()
