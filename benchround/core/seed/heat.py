"""The heat a sowing had: degree-days above the crop's base where it stood, day by day.

Warmth above the optimum counts as the optimum, so that a cooked tray is found late and its cause
named, instead of being excused by the heat that stalled it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from datetime import date
from functools import lru_cache

from benchround.core.batch.batch import Batch, Part
from benchround.core.batch.nouns import Moves
from benchround.core.crop.crop import Germination
from benchround.core.seed.thermal_model import ThermalModel
from benchround.core.sky.warmth import Warmth

WarmthOf = Callable[[str], Mapping[int, Warmth]]
"""By the code of a place, its warmth by the number of the day (`date.toordinal`)."""
FOR_GOOD = date.max.toordinal() + 1


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
    optimum_c = model.optimum_c
    heat = (mean_c if mean_c < optimum_c else optimum_c) - model.base_c
    return heat if heat > 0.0 else 0.0


def places_of(batch: Batch, part: Part) -> Moves:
    """From which day the part stood where, oldest first."""
    return part.moves or ((batch.begun, part.place),)


def place_on(moves: Moves, day: date) -> str:
    """The place a part stood at on a day, by `places_of`."""
    found = moves[0][1]
    for since, place in moves:
        if since > day:
            break
        found = place
    return found


def felt_since(moves: Moves, since: date, warmth_of: WarmthOf) -> Iterator[Warmth]:
    """The warmth of every day from `since` on, where the part stood on it; there is no end."""
    number = since.toordinal()
    leaves = [day.toordinal() for day, _ in moves[1:]]
    for (_, place), until in zip(moves, (*leaves, FOR_GOOD), strict=True):
        if number < until:
            days = warmth_of(place)
            while number < until:
                yield days[number]
                number += 1
