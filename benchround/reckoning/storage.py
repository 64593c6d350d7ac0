"""`benchround reckon storage`: how long sealed seed keeps, and how dry and cool it must lie."""

from __future__ import annotations

import argparse
from collections.abc import Callable

from benchround.core.errors import InputError, OutOfRangeError
from benchround.core.seed.age import DAYS_A_YEAR
from benchround.core.seed.viability import (
    ViabilityConstants,
    adjusted_percent,
    days_until,
    dry_basis,
    equilibrium_moisture,
    half_life_days,
    moisture_for,
    temperature_for,
    viability_after,
    wet_basis,
)
from benchround.core.seed.viability_species import CONSTANTS
from benchround.core.units import degrees
from benchround.reckoning.answer import Answer, rounded
from benchround.reckoning.crop_named import crop_named
from benchround.reckoning.figures import count, number, share

HELP = "how long sealed seed keeps, and how dry and cool it must lie"
EXAMPLE = "benchround reckon storage lettuce --moisture 6 --temp 5 --from 95% --to 80% --years 5"
EQUATION = "viability equation, Ellis & Roberts 1980, for sealed seed"
HUMID = "moisture in moist air: Cromarty, Ellis & Roberts 1982 (from memory)"


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument("crop", metavar="CROP", help="a crop or a Latin name")
    moist = parser.add_mutually_exclusive_group(required=True)
    moist.add_argument("--moisture", type=number, metavar="M", help="moisture, %% of fresh weight")
    moist.add_argument("--humidity", type=number, metavar="RH", help="of the air it dried in, %%")
    parser.add_argument("--oil", type=number, default=20.0, metavar="P", help="oil, %% (20)")
    parser.add_argument("--temp", type=number, required=True, metavar="C", help="of the store")
    parser.add_argument(
        "--from", dest="start", type=share, default=0.95, metavar="G", help="share now (95%%)"
    )
    parser.add_argument("--tested", type=count, metavar="N", help="seeds --from was counted of")
    parser.add_argument("--to", type=share, default=0.8, metavar="G", help="least wanted (80%%)")
    parser.add_argument("--years", type=number, default=5.0, metavar="Y", help="to keep it (5)")


def reckon(given: argparse.Namespace) -> Answer:
    """Years to the share wanted and to half, the share after the years, and the store they ask."""
    name, species = _species(given.crop)
    start = 100.0 * given.start
    if given.tested is not None:
        start = adjusted_percent(start, given.tested)
    end, days = 100.0 * given.to, given.years * DAYS_A_YEAR
    moisture = given.moisture
    if moisture is None:
        moisture = wet_basis(equilibrium_moisture(given.oil, given.humidity, given.temp))
    keeps = days_until(species, start, end, moisture, given.temp) / DAYS_A_YEAR
    half = (
        half_life_days(species, start, moisture, given.temp) / DAYS_A_YEAR if start > 50 else None
    )
    left = viability_after(species, start, days, moisture, given.temp)
    moistest, too_moist = _or_why(lambda: moisture_for(species, start, end, days, given.temp))
    warmest, too_warm = _or_why(lambda: temperature_for(species, start, end, days, moisture))
    source = f"{EQUATION}; constants: {species.reference}"
    source += f"; {HUMID}" if given.moisture is None else ""
    wish = f"to keep {start:.0f} % above {end:.0f} % for {given.years:g} years"
    return Answer(
        value={
            "crop": name,
            "moisture_percent": rounded(moisture, 2),
            "moisture_dry_percent": rounded(dry_basis(moisture), 2),
            "temp_c": given.temp,
            "years_to_share": rounded(keeps, 2),
            "years_to_half": rounded(half, 2),
            "share_after": rounded(left / 100.0, 4),
            "most_moisture_percent": rounded(moistest, 2),
            "most_moisture_reason": too_moist or None,
            "warmest_c": rounded(warmest, 2),
            "warmest_reason": too_warm or None,
            "source": source,
        },
        lines=(
            f"{name}, sealed at {moisture:.1f} % moisture of fresh weight "
            f"({dry_basis(moisture):.1f} % of dry) and {given.temp:g} C",
            f"  falls from {start:.0f} to {end:.0f} % in {keeps:.1f} years"
            + (f", to half in {half:.1f}" if half is not None else ""),
            f"  after {given.years:g} years {left:.0f} % still come up",
            f"  {wish}, at {given.temp:g} C: "
            + (f"at most {moistest:.1f} % moisture" if moistest is not None else too_moist),
            f"  {wish}, at {moisture:.1f} %: "
            + (f"no warmer than {degrees(warmest, 1)} C" if warmest is not None else too_warm),
            f"  formula: {source}",
        ),
    )


def _species(text: str) -> tuple[str, ViabilityConstants]:
    """Constants by Latin name, or by that of a crop.

    Raises:
        InputError: nobody measured them for this crop; those known are named.
    """
    latin = " ".join(text.split()[:2]).capitalize()
    if latin in CONSTANTS:
        return latin, CONSTANTS[latin]
    crop = crop_named(text)
    known = CONSTANTS.get(" ".join(crop.latin.split()[:2]))
    if known is None:
        raise InputError(
            f"{crop.name}: no viability constants are known; there are some for "
            f"{', '.join(sorted(CONSTANTS))}."
        )
    return crop.name, known


def _or_why(ask: Callable[[], float]) -> tuple[float | None, str]:
    """The answer and nothing, or None and why there is none."""
    try:
        return ask(), ""
    except OutOfRangeError as error:
        return None, str(error).rstrip(".")
