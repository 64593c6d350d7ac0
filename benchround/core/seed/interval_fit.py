"""Time to emergence by maximum likelihood from looks stored as intervals.

A seedling found at a look adds ln(F(R) - F(L)), L and R being the day of the look before and
of the look; a seed not up adds ln(1 - F) at the last look. Method: event-time model for
germination counts, Onofri, Piepho & Kozak (agriCensData, Example 2), whose estimates and
standard errors for Lobelia erinus it reproduces.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from benchround.core.frozen import dataclass
from benchround.core.numbers.matrices import apply, invert
from benchround.core.seed.interval_likelihood import (
    Cell,
    Law,
    cells_of,
    information,
    likelihood,
    logistic_law,
    normal_law,
)
from benchround.core.seed.looks import Looks

ROUNDS = 100
LEAST_LOG_SCALE = -6.0


@dataclass(frozen=True, slots=True)
class TimeFit:
    """A log-normal or log-logistic time fitted to one or more sowings with one spread.

    Attributes:
        mus: ln median days of each sowing.
        scale: sigma of the log-normal, 1/k of the log-logistic.
        covariance: Of the mus and ln scale, in that order (inverse observed information).
        log_likelihood: At the maximum.
    """

    mus: tuple[float, ...]
    scale: float
    covariance: tuple[tuple[float, ...], ...]
    log_likelihood: float

    @property
    def medians(self) -> tuple[float, ...]:
        """Median days of each sowing."""
        return tuple(math.exp(mu) for mu in self.mus)

    @property
    def mu_errors(self) -> tuple[float, ...]:
        """Standard error of each mu."""
        return tuple(math.sqrt(self.covariance[i][i]) for i in range(len(self.mus)))

    @property
    def median_errors(self) -> tuple[float, ...]:
        """Standard error of each median in days, by the delta method."""
        return tuple(m * e for m, e in zip(self.medians, self.mu_errors, strict=True))

    @property
    def log_scale_error(self) -> float:
        """Standard error of ln scale."""
        return math.sqrt(self.covariance[-1][-1])

    def difference_error(self, first: int, second: int) -> float:
        """Return the standard error of mu[second] - mu[first]."""
        c = self.covariance
        return math.sqrt(c[first][first] + c[second][second] - 2.0 * c[first][second])


def fit_lognormal(*sowings: Looks, count_never: bool = True) -> TimeFit | None:
    """Fit log-normal times with a median for each sowing and one sigma for all.

    Args:
        sowings: Looks of one or more sowings.
        count_never: Take seeds that are not up as still to come; False leaves them out, which
            gives the time of those that came up.

    Returns:
        The fit, or None where the looks do not tell a spread.
    """
    return _fit(sowings, count_never, normal_law, 1.0)


def fit_loglogistic(*sowings: Looks, count_never: bool = True) -> TimeFit | None:
    """Fit log-logistic times, F = 1 / (1 + (t / median)^-k), k = 1 / scale; see above."""
    return _fit(sowings, count_never, logistic_law, math.sqrt(3.0) / math.pi)


def _fit(
    sowings: Sequence[Looks], count_never: bool, law: Law, scale_per_sd: float
) -> TimeFit | None:
    """Climb the likelihood by Newton steps with halving."""
    groups = [cells_of(looks, count_never) for looks in sowings]
    if not groups or any(len(cells) < 3 for cells in groups):
        return None
    point = _start(groups, scale_per_sd)
    value, score = likelihood(groups, point, law)
    for _ in range(ROUNDS):
        step = _newton_step(groups, point, score, law)
        if step is None:
            return None
        length = 1.0
        while length > 1e-10:
            tried = [p + length * s for p, s in zip(point, step, strict=True)]
            if tried[-1] > LEAST_LOG_SCALE and likelihood(groups, tried, law)[0] >= value:
                break
            length /= 2.0
        else:
            break
        point = tried
        value, score = likelihood(groups, point, law)
        if max(abs(s) for s in step) < 1e-11:
            break
    return _finish(groups, point, value, score, law)


def _finish(
    groups: list[list[Cell]], point: list[float], value: float, score: list[float], law: Law
) -> TimeFit | None:
    """Return the fit, or None where the climb did not end on a summit."""
    covariance = invert(information(groups, point, law))
    seeds = sum(n for cells in groups for _, _, n in cells)
    if covariance is None or max(abs(s) for s in score) > 1e-5 * seeds:
        return None
    if any(covariance[i][i] <= 0.0 for i in range(len(point))):
        return None
    rows = tuple(tuple(row) for row in covariance)
    return TimeFit(tuple(point[:-1]), math.exp(point[-1]), rows, value)


def _start(groups: list[list[Cell]], scale_per_sd: float) -> list[float]:
    """Return first guesses: mean and spread of the ln middles."""
    mus, squares, seeds = [], 0.0, 0
    for cells in groups:
        middles = [(_middle(left, right), n) for left, right, n in cells]
        total = sum(n for _, n in middles)
        mu = math.fsum(x * n for x, n in middles) / total
        mus.append(mu)
        squares += math.fsum(n * (x - mu) ** 2 for x, n in middles)
        seeds += total
    sd = max(0.05, math.sqrt(squares / seeds))
    return [*mus, math.log(sd * scale_per_sd)]


def _middle(left: float, right: float) -> float:
    """Return a stand-in ln day for an interval that may be open."""
    if math.isinf(left):
        return right - 0.3
    return left + 0.5 if math.isinf(right) else 0.5 * (left + right)


def _newton_step(
    groups: list[list[Cell]], point: list[float], score: list[float], law: Law
) -> list[float] | None:
    """Return the Newton step, or a short climb along the slopes where it leads downhill."""
    inverse = invert(information(groups, point, law))
    if inverse is None:
        return None
    step = apply(inverse, score)
    if sum(a * b for a, b in zip(step, score, strict=True)) > 0.0:
        return [max(-1.0, min(1.0, s)) for s in step]
    steepest = max(abs(s) for s in score) or 1.0
    return [0.1 * s / steepest for s in score]
