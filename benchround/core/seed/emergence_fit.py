"""Emergence parameters of a crop from its days to emergence at several temperatures."""

from __future__ import annotations

import math
from collections.abc import Sequence

from benchround.core.seed.emergence_row import Corner, Point, Row, row_of
from benchround.core.seed.thermal_model import ThermalModel, heat_of_day

DEFAULT_SIGMA = 0.25
"""Spread of ln thermal time where a table gives one day only; our proposal.

Lies between 0.18 (Hill steepness 9.9 of the germinationmetrics sample) and 0.42 (onion,
sigma of log10 thermal time 0.184, Brewster, read second-hand).
"""

MODEL_ERROR = 0.08
"""Scatter of ln days that no straight line will follow."""

BASE_ERROR_C, CEILING_ERROR_C = 1.0, 0.5
"""How well base and ceiling fix a temperature: makes days close to them count less."""

ROUNDING_SD_DAYS = 0.289
"""Standard deviation of a day rounded to a whole one, 1 / sqrt(12)."""


def fit_from_table(
    points: Sequence[Point],
    *,
    least_c: float | None = None,
    best_c: float | None = None,
    greatest_c: float | None = None,
    sigma: float = DEFAULT_SIGMA,
) -> ThermalModel:
    """Return the thermal model that best follows a row of days at temperatures.

    Deterministic least squares on ln days, thermal time in closed form and the three
    temperatures by a compass search from fixed starts. Each residual is weighed by rounding
    (a printed day is right to half a day), by model scatter and by what an error of base
    or ceiling would change.
    Colder and warmer temperatures at which nothing came up bound base and ceiling. Printed
    least, best and greatest germination temperatures, if known, steer the three temperatures;
    since they come from tests about 10 F apart, nothing is taken to come up one step beyond.

    Args:
        points: (temperature C, days to emergence) with None where nothing came up; leave out
            what was not tested.
        least_c: Printed least germination temperature, C.
        best_c: Printed optimum, C.
        greatest_c: Printed greatest germination temperature, C.
        sigma: Spread to give the model; a table of single days does not tell it.

    Raises:
        InputError: Fewer than two temperatures have days, or nothing came up between two
            temperatures at which it did.
    """
    row = row_of(points, least_c, best_c, greatest_c)
    found = min((_search(row, start) for start in _starts(row)), key=lambda it: it[0])
    base, optimum, ceiling = (round(value, 2) for value in found[1])
    _, log_theta = _misfit(row, (base, optimum, ceiling))
    return ThermalModel(base, optimum, ceiling, round(math.exp(log_theta), 2), sigma)


def _loss(row: Row, corner: Corner) -> float:
    """Return the misfit of three temperatures, infinite outside their bounds."""
    base, optimum, ceiling = corner
    inside = all(
        low <= value <= high
        for low, value, high in zip(row.lowest, corner, row.highest, strict=True)
    )
    if not inside or optimum < base + 3.0 or ceiling < optimum + 0.5:
        return math.inf
    return _misfit(row, corner)[0]


def _misfit(row: Row, corner: Corner) -> tuple[float, float]:
    """Return (misfit, ln theta50), thermal time being the weighted mean of ln(days x heat)."""
    unit = ThermalModel(*corner, 1.0, 1.0)
    logs, variances, loss = [], [], 0.0
    for temp_c, days in row.days:
        exact = MODEL_ERROR**2 + (ROUNDING_SD_DAYS / days) ** 2
        variances.append(exact + _shift_error(unit, temp_c) ** 2)
        logs.append(math.log(days * heat_of_day(unit, temp_c)))
        loss += math.log(variances[-1] / exact)
    weight = sum(1.0 / v for v in variances)
    log_theta = sum(y / v for y, v in zip(logs, variances, strict=True)) / weight
    loss += sum((y - log_theta) ** 2 / v for y, v in zip(logs, variances, strict=True))
    loss += sum(((corner[index] - mean) / sd) ** 2 for index, mean, sd in row.beliefs)
    return loss, log_theta


def _shift_error(model: ThermalModel, temp_c: float) -> float:
    """Return what the error of base or ceiling is worth in ln days at this temperature."""
    if temp_c <= model.optimum_c:
        return BASE_ERROR_C / (temp_c - model.base_c)
    if temp_c <= model.fall_starts_c:
        return 0.0
    return CEILING_ERROR_C / (model.ceiling_c - temp_c)


def _starts(row: Row) -> list[Corner]:
    """Return fixed starting points moved inside the bounds."""
    return [
        (
            min(max(base, row.lowest[0]), row.highest[0]),
            min(max(optimum, row.lowest[1]), row.highest[1], row.highest[2] - 1.0),
            min(max(ceiling, row.lowest[2], optimum + 1.0), row.highest[2]),
        )
        for base in (0.0, 5.0, 10.0)
        for optimum in (20.0, 25.0, 31.0)
        for ceiling in (33.0, 41.0)
    ]


def _search(row: Row, start: Corner) -> tuple[float, Corner]:
    """Walk downhill along the axes and the diagonals of base and optimum, halving the step."""
    ways = ((1, 0, 0), (0, 1, 0), (0, 0, 1), (1, 1, 0), (1, -1, 0), (0, 1, 1), (0, 1, -1))
    here, lowest = start, _loss(row, start)
    step = 2.0
    while step > 0.01:
        moved = False
        for way in ways:
            for sign in (step, -step):
                there = (
                    here[0] + sign * way[0],
                    here[1] + sign * way[1],
                    here[2] + sign * way[2],
                )
                loss = _loss(row, there)
                if loss < lowest - 1e-12:
                    here, lowest, moved = there, loss, True
        if not moved:
            step /= 2.0
    return lowest, here
