"""`benchround reckon wind`: the force of a wind, and the wind of a force."""

from __future__ import annotations

import argparse

from benchround.core.sky.beaufort import (
    beaufort_force,
    beaufort_force_from_knots,
    mean_wind_ms,
    wind_force,
    wind_range_ms,
)
from benchround.reckoning.answer import Answer, rounded
from benchround.reckoning.figures import count, number

HELP = "the Beaufort force of a wind, its name and its sign"
EXAMPLE = "benchround reckon wind --kmh 45"
SOURCE = (
    "Beaufort scale, lower limits in m/s and in knots as printed; mean of a force WMO Code 1100 "
    "(from memory)"
)
KMH_PER_MS = 3.6


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    known = parser.add_mutually_exclusive_group(required=True)
    known.add_argument("--ms", type=number, metavar="V", help="mean wind, m/s")
    known.add_argument("--kmh", type=number, metavar="V", help="mean wind, km/h")
    known.add_argument("--knots", type=number, metavar="V", help="mean wind, knots")
    known.add_argument("--force", type=count, metavar="B", help="Beaufort force, 0 to 12")


def reckon(given: argparse.Namespace) -> Answer:
    """Force, name, sign, and the winds it goes from and to."""
    force = _force(given)
    named, (least, above) = wind_force(force), wind_range_ms(force)
    to = "more" if above is None else f"{above:g}"
    return Answer(
        value={
            "force": force,
            "name": named.name,
            "sign": named.sign,
            "from_ms": rounded(least),
            "below_ms": rounded(above),
            "mean_ms": rounded(mean_wind_ms(force), 3),
            "source": SOURCE,
        },
        lines=(
            f"force {force}, {named.name}: {named.sign}",
            f"  from {least:g} to {to} m/s ({KMH_PER_MS * least:.0f} km/h on), about "
            f"{mean_wind_ms(force):.1f}; a gust gives too much, take the mean of ten minutes",
            f"  figures: {SOURCE}",
        ),
    )


def _force(given: argparse.Namespace) -> int:
    if given.force is not None:
        return int(wind_force(given.force).force)
    if given.knots is not None:
        return beaufort_force_from_knots(given.knots)
    return beaufort_force(given.ms if given.ms is not None else given.kmh / KMH_PER_MS)
