"""The tray a reckoning counts in: a container by name, or its cells alone."""

from __future__ import annotations

import argparse

from benchround.core.containers import container
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import whole
from benchround.core.seed.room_needed import (
    bench_area_m2,
    compost_litres,
    trays_needed,
    vermiculite_litres,
)
from benchround.plain import JsonValue
from benchround.reckoning.answer import rounded
from benchround.reckoning.figures import count, number

COVER_MM = 4.0
"""Depth of a vermiculite cover; common practice, no source."""


@dataclass(frozen=True, slots=True)
class TrayRoom:
    """What the cells take; None where the tray is not known well enough."""

    trays: int | None = None
    compost_l: float | None = None
    vermiculite_l: float | None = None
    bench_m2: float | None = None

    def value(self) -> dict[str, JsonValue]:
        """The same as JSON-ready values."""
        return {
            "trays": self.trays,
            "compost_l": rounded(self.compost_l, 2),
            "vermiculite_l": rounded(self.vermiculite_l, 2),
            "bench_m2": rounded(self.bench_m2, 3),
        }

    def words(self) -> str:
        """The same in words; empty where no tray was named."""
        if self.trays is None:
            return ""
        parts = [f"{self.trays} tray{'' if self.trays == 1 else 's'}"]
        if self.compost_l is not None and self.bench_m2 is not None:
            parts += [f"{self.compost_l:.1f} l compost", f"{self.vermiculite_l:.1f} l vermiculite"]
            parts.append(f"{self.bench_m2:.2f} m2 of bench")
        return ", ".join(parts)


def tray_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments that say which tray."""
    tray = parser.add_mutually_exclusive_group()
    tray.add_argument(
        "--cells-per-tray", type=count, metavar="N", help="cells in a tray, for the trays alone"
    )
    tray.add_argument(
        "--container", metavar="NAME", default="", help="a known tray or pot, as '40-cell tray'"
    )
    parser.add_argument(
        "--cover-mm",
        type=number,
        default=COVER_MM,
        metavar="MM",
        help="depth of the vermiculite cover (4)",
    )


def tray_room(given: argparse.Namespace, cells: int) -> TrayRoom:
    """What so many cells take in the tray that was named.

    Raises:
        UnknownNameError: no container has that name.
        OutOfRangeError: a figure is outside its range.
    """
    if given.cells_per_tray is not None:
        return TrayRoom(
            trays=trays_needed(cells, whole("cells in a tray", given.cells_per_tray, 1, 1000))
        )
    if not given.container:
        return TrayRoom()
    tray = container(given.container)
    trays = trays_needed(cells, tray.cells)
    width_mm, length_mm = tray.width_m * 1000.0, tray.length_m * 1000.0
    return TrayRoom(
        trays=trays,
        compost_l=compost_litres(cells, tray.cell_ml),
        vermiculite_l=vermiculite_litres(trays, width_mm, length_mm, given.cover_mm),
        bench_m2=bench_area_m2(trays, width_mm, length_mm),
    )
