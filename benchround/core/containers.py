"""Trays, cells and pots: how much compost they hold and how much ground they cover.

Volumes of common trays are nearly all recalled and differ by maker, so each carries its source and
status, and the grower can define containers of their own or weigh one.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import pi
from types import MappingProxyType

from benchround.core.errors import UnknownNameError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import within

RECALLED = "recalled; check against a maker's sheet or fill one with a measuring jug"
TAPER = 0.6
"""Bottom width over top width of a usual cell; an assumption."""


@dataclass(frozen=True, slots=True)
class Container:
    """One tray or pot as it stands on the bench.

    Attributes:
        name: what the grower calls it.
        cells: how many cells, 1 to 1000; a seed tray or a pot has one.
        cell_ml: compost in one cell, 0.5 to 50,000 ml.
        length_m: length of the surface, 0.02 to 2 m.
        width_m: width of the surface, 0.02 to 2 m.
        source: where the volume comes from.
        status: how far the source was read.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """

    name: str
    cells: int
    cell_ml: float
    length_m: float
    width_m: float
    source: str = "the grower's own"
    status: str = "own figure"

    def __post_init__(self) -> None:
        within(f"cells of {self.name}", self.cells, 1, 1000, "")
        within(f"one cell of {self.name}", self.cell_ml, 0.5, 50_000.0, "ml")
        within(f"length of {self.name}", self.length_m, 0.02, 2.0, "m")
        within(f"width of {self.name}", self.width_m, 0.02, 2.0, "m")

    @property
    def area_m2(self) -> float:
        """Surface that dries, m2."""
        return self.length_m * self.width_m

    @property
    def volume_l(self) -> float:
        """Compost it holds, litres."""
        return self.cells * self.cell_ml / 1000.0


def prism_ml(width_mm: float, length_mm: float, depth_mm: float) -> float:
    """Return the volume of a straight-sided cell in ml: the most a cell of that top can hold.

    Plain geometry; sizes in mm, 1 to 2000.
    """
    for name, size in (("width", width_mm), ("length", length_mm), ("depth", depth_mm)):
        within(f"the cell's {name}", size, 1.0, 2000.0, "mm")
    return width_mm * length_mm * depth_mm / 1000.0


def tapered_ml(width_mm: float, length_mm: float, depth_mm: float, taper: float = TAPER) -> float:
    """Return the volume of a cell that narrows evenly to `taper` of its top width, ml.

    Plain geometry, a cut-off pyramid: (1 + t + t^2) / 3 of the straight-sided cell. Sizes in mm,
    taper 0 (a point) to 1 (straight).
    """
    within("the taper", taper, 0.0, 1.0, "")
    return prism_ml(width_mm, length_mm, depth_mm) * (1.0 + taper + taper**2) / 3.0


def round_cell_ml(top_mm: float, depth_mm: float, taper: float = TAPER) -> float:
    """Return the volume of a round cell or pot that narrows evenly, ml.

    Plain geometry, a cut-off cone; top diameter and depth in mm, taper 0 (a cone) to 1 (a
    cylinder).
    """
    return pi / 4.0 * tapered_ml(top_mm, top_mm, depth_mm, taper)


_FULL_M = (0.37, 0.23)  # inside of a standard tray, 23 x 37 cm, read
_ASSUMED_TAPERS = "geometry with assumed tapers"

_USUAL = (
    Container("full tray", 1, 3700.0, *_FULL_M, "inside 14 x 8 x 2 in, level full", "read"),
    Container("half tray", 1, 1850.0, 0.185, 0.23, "half a full tray", "derived"),
    Container("quarter tray", 1, 925.0, 0.185, 0.115, "a quarter of a full tray", "derived"),
    Container("deep quarter tray", 1, 1500.0, 0.185, 0.115, RECALLED, "from memory"),
    Container("6-cell tray", 6, 305.0, *_FULL_M, RECALLED, "from memory"),
    Container("12-cell tray", 12, 160.0, *_FULL_M, RECALLED, "from memory"),
    Container("24-cell tray", 24, 103.0, *_FULL_M, _ASSUMED_TAPERS, "derived"),
    Container("40-cell tray", 40, 72.0, *_FULL_M, _ASSUMED_TAPERS, "derived"),
    Container("60-cell tray", 60, 37.5, *_FULL_M, RECALLED, "from memory"),
    Container("84-cell tray", 84, 21.0, *_FULL_M, _ASSUMED_TAPERS, "derived"),
    Container("104-cell tray", 104, 19.0, *_FULL_M, _ASSUMED_TAPERS, "derived"),
    Container(
        "128-cell tray", 128, 25.0, 0.590, 0.300, "tray size read, cell recalled", "from memory"
    ),
    Container(
        "200-cell tray", 200, 18.4, 0.590, 0.300, "25 x 25 x 45 mm cells, tapered", "derived"
    ),
    Container(
        "288-cell tray", 288, 10.5, 0.590, 0.300, "20 x 20 x 40 mm cells, tapered", "derived"
    ),
    Container("240-cell tray", 240, 7.8, 0.56, 0.30, "20 x 20 x 30 mm cells, tapered", "derived"),
    Container("deep cells", 24, 200.0, *_FULL_M, RECALLED, "from memory"),
    Container("7 cm pot", 1, 240.0, 0.07, 0.07, RECALLED, "from memory"),
    Container("9 cm pot", 1, 370.0, 0.09, 0.09, "round, by geometry", "from memory"),
    Container("9 cm square pot", 1, 490.0, 0.09, 0.09, "square, by geometry", "from memory"),
    Container("1 L pot", 1, 1000.0, 0.13, 0.13, RECALLED, "from memory"),
    Container("2 L pot", 1, 2000.0, 0.17, 0.17, RECALLED, "from memory"),
    Container("deep pot", 1, 1300.0, 0.11, 0.11, RECALLED, "from memory"),
)

USUAL_CONTAINERS: Mapping[str, Container] = MappingProxyType({c.name: c for c in _USUAL})
"""The containers known from the start, by name."""

_BY_LOWER = {c.name.lower(): c for c in _USUAL}


CELL_TRAYS: Mapping[int, str] = MappingProxyType(
    {c.cells: c.name for c in sorted(_USUAL, key=lambda c: c.cells) if "-cell tray" in c.name}
)
"""The usual trays of cells by their number, smallest first."""
COMMON_CELLS = 40
"""Cells of the tray most people sow into."""


def usual_called(name: str) -> Container | None:
    """The usual container a name means, one or several of it: "9 cm pot", "9 cm pots"."""
    said = " ".join(name.lower().split())
    return _BY_LOWER.get(said) or _BY_LOWER.get(said.removesuffix("s"))


def tray_of_cells(cells: int) -> str:
    """The usual tray of so many cells.

    Where there is none: several of the common one if they come out even, else the smallest tray
    that takes so many, else several of the common one.
    """
    if cells in CELL_TRAYS or cells % COMMON_CELLS == 0:
        return CELL_TRAYS.get(cells, CELL_TRAYS[COMMON_CELLS])
    return next((name for n, name in CELL_TRAYS.items() if n > cells), CELL_TRAYS[COMMON_CELLS])


def pots_a_tray(pot_cm: float) -> int:
    """How many pots of a width stand in a full tray, side by side; at least one."""
    full = USUAL_CONTAINERS["full tray"]
    length, width = (int(side * 100.0 / pot_cm) for side in (full.length_m, full.width_m))
    return max(1, length * width)


def container(name: str, own: Mapping[str, Container] = MappingProxyType({})) -> Container:
    """Return the container of a name, the grower's own before the usual ones.

    Raises:
        UnknownNameError: no container has that name.
    """
    found = own.get(name) or USUAL_CONTAINERS.get(name)
    if found is None:
        known = ", ".join(sorted({*own, *USUAL_CONTAINERS}))
        raise UnknownNameError(f"no container is called {name!r}: use one of {known}, or define it")
    return found
