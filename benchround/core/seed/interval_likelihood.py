"""The likelihood of looks stored as intervals, its slopes and its curvature.

One or more sowings share a spread; the point is (mu of each sowing, ..., ln scale), where
(ln t - mu) / scale follows a standard law.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from benchround.core.numbers.matrices import Matrix
from benchround.core.numbers.normal import NORMAL
from benchround.core.seed.looks import Looks

Cell = tuple[float, float, int]
"""ln of the start and end of an interval (infinite where open) and the number of seeds in it."""

Law = Callable[[float], tuple[float, float]]
"""Distribution and density of a standardised ln time."""


def normal_law(z: float) -> tuple[float, float]:
    """Return distribution and density of the standard normal."""
    return NORMAL.cdf(z), NORMAL.pdf(z)


def logistic_law(z: float) -> tuple[float, float]:
    """Return distribution and density of the standard logistic."""
    if z < -700.0:
        return 0.0, 0.0
    below = 1.0 / (1.0 + math.exp(-z))
    return below, below * (1.0 - below)


def cells_of(looks: Looks, count_never: bool) -> list[Cell]:
    """Return the non-empty intervals in ln days."""
    cells = [
        (
            math.log(step.previous_look_day) if step.previous_look_day > 0.0 else -math.inf,
            math.log(step.this_look_day),
            step.newly_up,
        )
        for step in looks.steps
        if step.newly_up
    ]
    if count_never and looks.never and looks.steps:
        cells.append((math.log(looks.steps[-1].this_look_day), math.inf, looks.never))
    return cells


def likelihood(groups: list[list[Cell]], point: list[float], law: Law) -> tuple[float, list[float]]:
    """Return the log-likelihood and its slopes."""
    scale = math.exp(point[-1])
    value, score = 0.0, [0.0] * len(point)
    for index, cells in enumerate(groups):
        mu = point[index]
        for left, right, n in cells:
            below_l, density_l, reach_l = _at(left, mu, scale, law)
            below_r, density_r, reach_r = _at(right, mu, scale, law)
            inside = max(below_r - below_l, 1e-300)
            value += n * math.log(inside)
            score[index] -= n * (density_r - density_l) / (scale * inside)
            score[-1] -= n * (reach_r - reach_l) / inside
    return value, score


def _at(x: float, mu: float, scale: float, law: Law) -> tuple[float, float, float]:
    """Return distribution, density and density times z at a ln day that may be infinite."""
    if math.isinf(x):
        return (1.0 if x > 0.0 else 0.0), 0.0, 0.0
    z = (x - mu) / scale
    below, density = law(z)
    return below, density, density * z


def information(groups: list[list[Cell]], point: list[float], law: Law) -> Matrix:
    """Return minus the second derivatives, from central differences of the slopes."""
    size, width = len(point), 1e-5
    matrix = []
    for i in range(size):
        up, down = list(point), list(point)
        up[i] += width
        down[i] -= width
        more = likelihood(groups, up, law)[1]
        less = likelihood(groups, down, law)[1]
        matrix.append([(b - a) / (2.0 * width) for a, b in zip(more, less, strict=True)])
    return [[0.5 * (matrix[i][j] + matrix[j][i]) for j in range(size)] for i in range(size)]
