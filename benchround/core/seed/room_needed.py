"""What a number of cells takes in trays, compost, vermiculite and bench."""

from __future__ import annotations

import math

from benchround.core.numbers.ranges import whole, within


def trays_needed(cells: int, cells_per_tray: int) -> int:
    """Return how many trays hold so many cells."""
    whole("cells", cells, 0)
    whole("cells in a tray", cells_per_tray, 1)
    return -(-cells // cells_per_tray)


def compost_litres(cells: int, cell_ml: float, firming: float = 1.0) -> float:
    """Return the compost to fill so many cells, litres.

    Args:
        cells: Cells to fill.
        cell_ml: Compost one cell holds, ml, above 0.
        firming: Loose compost for one measure of firmed, 1 to 2; 1 adds nothing.
    """
    whole("cells", cells, 0)
    within("compost in a cell (ml)", cell_ml, 0.0, low_open=True)
    within("firming", firming, 1.0, 2.0)
    return cells * cell_ml * firming / 1000.0


def vermiculite_litres(trays: int, width_mm: float, length_mm: float, depth_mm: float) -> float:
    """Return the vermiculite to cover so many trays, litres: area times depth."""
    whole("trays", trays, 0)
    within("depth of the cover (mm)", depth_mm, 0.0, 50.0)
    return trays * _area_mm2(width_mm, length_mm) * depth_mm / 1e6


def bench_area_m2(trays: int, width_mm: float, length_mm: float) -> float:
    """Return the bench so many trays stand on, m2."""
    whole("trays", trays, 0)
    return trays * _area_mm2(width_mm, length_mm) / 1e6


def trays_that_fit(bench_m2: float, width_mm: float, length_mm: float) -> int:
    """Return how many trays a bench area takes at most, by area."""
    within("bench (m2)", bench_m2, 0.0)
    return math.floor(bench_m2 * 1e6 / _area_mm2(width_mm, length_mm) + 1e-9)


def _area_mm2(width_mm: float, length_mm: float) -> float:
    """Return the footprint of a tray."""
    within("width of a tray (mm)", width_mm, 0.0, low_open=True)
    within("length of a tray (mm)", length_mm, 0.0, low_open=True)
    return width_mm * length_mm
