"""`benchround reckon emergence`: when a crop comes up at a temperature."""

from __future__ import annotations

import argparse

from benchround.core.crop.crop import Crop
from benchround.core.errors import InputError
from benchround.core.learning.days import shrunk_median
from benchround.core.numbers.ranges import require_air_temp, require_min_max
from benchround.core.seed.cold_soil import cold_soil_words, needed_first_words
from benchround.core.seed.emergence import EmergenceDays, median_early_late, why_none
from benchround.core.seed.thermal_model import (
    ThermalModel,
    heat_for_share,
    heat_of_day,
    heat_of_hours,
)
from benchround.core.seed.waiting import thermal_model
from benchround.core.sky.hourly import day_temps_c
from benchround.reckoning.answer import Answer, rounded, said
from benchround.reckoning.crop_named import crop_named
from benchround.reckoning.figures import number, pair

HELP = "days until a crop comes up at a steady temperature"
EXAMPLE = "benchround reckon emergence tomato --temp 18"
FORMULA = (
    "thermal time between base and ceiling after Garcia-Huidobro, Monteith & Squire 1982, "
    "J. Exp. Bot. 33:288, log-normal between seeds"
)

SUNRISE_H, SUNSET_H = 6.0, 18.0
"""A day of 12 hours, for the hours between lowest and highest (Parton & Logan 1981)."""
OWN = "library worth 4 own batches, our proposal"


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument("crop", metavar="CROP", help="key, name or synonym")
    warm = parser.add_mutually_exclusive_group(required=True)
    warm.add_argument("--temp", type=number, metavar="C", help="steady temperature of the compost")
    warm.add_argument(
        "--range", type=pair, metavar="C,C", help="lowest and highest of every day, as 12,24"
    )
    parser.add_argument(
        "--own", type=number, nargs="+", default=[], metavar="D", help="own batches' days to half"
    )


def reckon(given: argparse.Namespace) -> Answer:
    """Days until 10 %, half and 90 % of the viable seeds are up."""
    crop = crop_named(given.crop)
    low_c, high_c = (given.temp, given.temp) if given.range is None else given.range
    require_air_temp("the temperature", low_c)
    require_min_max(low_c, high_c)
    temp_c: float = (low_c + high_c) / 2.0
    if crop.germination is None:
        raise InputError(
            f"{crop.name} has no germination figures: it is {crop.raising}-raised, or nothing is "
            "known. Give it some in a crop file."
        )
    model = thermal_model(crop.germination)
    daily = _heat_a_day(model, low_c, high_c)
    if low_c == high_c:
        span = median_early_late(model, temp_c)
    else:
        span = _span(model, daily) if daily > 0.0 else None
    cold, first = cold_soil_words(crop, temp_c), needed_first_words(crop)
    reason = (cold or None) if span else why_none(model, temp_c)
    remarks = tuple(words for words in (cold if span else "", first) if words)
    own = shrunk_median(span.median, given.own) if span and given.own else None
    return Answer(
        value={
            "crop": crop.key,
            "name": crop.name,
            "temp_c": temp_c,
            "early_days": rounded(span.early if span else None, 3),
            "median_days": rounded(span.median if span else None, 3),
            "late_days": rounded(span.late if span else None, 3),
            "own_median_days": rounded(own, 3),
            "heat_a_day": rounded(daily, 4),
            "reason": reason,
            "remarks": list(remarks),
            "base_c": model.base_c,
            "optimum_c": model.optimum_c,
            "ceiling_c": model.ceiling_c,
            "theta50": rounded(model.theta50, 3),
            "sigma": rounded(model.sigma, 4),
            "source": _source(crop),
            "formula": FORMULA,
        },
        lines=(
            f"{crop.name} at {temp_c:g} C"
            + (f", {low_c:g} to {high_c:g} C every day" if given.range is not None else ""),
            f"  nothing comes up: {reason}"
            if span is None
            else f"  by heat alone half of it would be up after {said(span.median)} days, but:"
            if cold
            else f"  half of the good seed is up after {said(span.median)} days; one in ten after "
            f"{said(span.early)}, nine in ten after {said(span.late)}",
            *(f"  mind: {words}" for words in remarks),
            *(
                [f"  drawn to your {len(given.own)} own, half is up after {own:.1f} days ({OWN})"]
                if own is not None
                else []
            ),
            f"  it moves above {model.base_c:g} C (base), no faster from {model.optimum_c:g} C "
            f"(optimum), not at all from {model.ceiling_c:g} C (ceiling)",
            f"  half of it needs {model.theta50:.0f} degree-days above the base",
            f"  figures: {_source(crop)}",
            f"  formula: {FORMULA}",
        ),
    )


def _heat_a_day(model: ThermalModel, low_c: float, high_c: float) -> float:
    """Degree-days of a day, by the hour where it warms and cools, day and night 12 h each."""
    if low_c == high_c:
        return heat_of_day(model, low_c)
    return heat_of_hours(model, day_temps_c(low_c, high_c, SUNRISE_H, SUNSET_H))


def _span(model: ThermalModel, daily: float) -> EmergenceDays:
    early, half, late = (heat_for_share(model, share) / daily for share in (0.1, 0.5, 0.9))
    return EmergenceDays(early, half, late)


def _source(crop: Crop) -> str:
    return crop.source("germination.days_first")
