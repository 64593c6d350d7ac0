"""`benchround reckon emergence`: when a crop comes up at a temperature."""

from __future__ import annotations

import argparse

from benchround.core.crop.crop import Crop
from benchround.core.errors import InputError
from benchround.core.numbers.ranges import require_air_temp
from benchround.core.seed.emergence import median_early_late, why_none
from benchround.core.seed.waiting import thermal_model
from benchround.reckoning.answer import Answer, rounded, said
from benchround.reckoning.crop_named import crop_named
from benchround.reckoning.figures import number

HELP = "days until a crop comes up at a steady temperature"
EXAMPLE = "benchround reckon emergence tomato --temp 18"
FORMULA = (
    "thermal time between base and ceiling after Garcia-Huidobro, Monteith & Squire 1982, "
    "J. Exp. Bot. 33:288, log-normal between seeds"
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument("crop", metavar="CROP", help="key, name or synonym")
    parser.add_argument(
        "--temp", type=number, required=True, metavar="C", help="temperature of the compost, C"
    )


def reckon(given: argparse.Namespace) -> Answer:
    """Days until 10 %, half and 90 % of the viable seeds are up."""
    crop = crop_named(given.crop)
    temp_c: float = require_air_temp("the temperature", given.temp)
    if crop.germination is None:
        raise InputError(
            f"{crop.name} has no germination figures: it is {crop.raising}-raised, or nothing is "
            "known. Give it some in a crop file."
        )
    model = thermal_model(crop.germination)
    span, reason = median_early_late(model, temp_c), why_none(model, temp_c)
    return Answer(
        value={
            "crop": crop.key,
            "name": crop.name,
            "temp_c": temp_c,
            "early_days": rounded(span.early if span else None, 3),
            "median_days": rounded(span.median if span else None, 3),
            "late_days": rounded(span.late if span else None, 3),
            "reason": reason,
            "base_c": model.base_c,
            "optimum_c": model.optimum_c,
            "ceiling_c": model.ceiling_c,
            "theta50": rounded(model.theta50, 3),
            "sigma": rounded(model.sigma, 4),
            "source": _source(crop),
            "formula": FORMULA,
        },
        lines=(
            f"{crop.name} at {temp_c:g} C",
            f"  nothing comes up: {reason}"
            if span is None
            else f"  half of the good seed is up after {said(span.median)} days; one in ten after "
            f"{said(span.early)}, nine in ten after {said(span.late)}",
            f"  it moves above {model.base_c:g} C (base), no faster from {model.optimum_c:g} C "
            f"(optimum), not at all from {model.ceiling_c:g} C (ceiling)",
            f"  half of it needs {model.theta50:.0f} degree-days above the base",
            f"  figures: {_source(crop)}",
            f"  formula: {FORMULA}",
        ),
    )


def _source(crop: Crop) -> str:
    return crop.source("germination.days_first")
