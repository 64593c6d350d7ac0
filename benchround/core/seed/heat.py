"""The heat a sowing had: degree-days above the crop's base where it stood, day by day.

Warmth above the optimum counts as the optimum, so that a cooked tray is found late and its cause
named, instead of being excused by the heat that stalled it.
"""

from __future__ import annotations

from datetime import date
from functools import lru_cache

from benchround.core.batch.batch import MAIN, Batch, Part
from benchround.core.crop.crop import Germination
from benchround.core.seed.thermal_model import ThermalModel

Moves = tuple[tuple[date, str], ...]
"""From which day a part stood where, oldest first."""


@lru_cache(maxsize=1024)
def thermal_model(germination: Germination) -> ThermalModel:
    """The thermal-time model of a crop's germination figures."""
    return ThermalModel.from_days(
        germination.days_first,
        germination.days_last,
        germination.at_c,
        germination.base_c,
        germination.optimum_c,
        germination.ceiling_c,
    )


def heat_felt(model: ThermalModel, mean_c: float) -> float:
    """Degree-days a day adds to the seed's clock: mean above base, at most up to the optimum."""
    return max(0.0, min(mean_c, model.optimum_c) - model.base_c)


def places_of(batch: Batch, part: Part) -> Moves:
    """From which day the part stood where, oldest first."""
    told, moves = (MAIN, part.name), []
    for record in batch.records:
        figures = record.figures
        if "place" in figures and ("part" not in figures or record.text("part") in told):
            place = record.text("place")
            if place:
                moves.append((record.day, place))
    return tuple(moves) or ((batch.begun, part.place),)


def place_on(moves: Moves, day: date) -> str:
    """The place a part stood at on a day, by `places_of`."""
    found = moves[0][1]
    for since, place in moves:
        if since > day:
            break
        found = place
    return found
