"""What own records teach about days, or degree-days, to emergence. All on the log scale."""

from __future__ import annotations

import math
from collections.abc import Sequence

from benchround.core.frozen import dataclass
from benchround.core.numbers.distributions import t_quantile
from benchround.core.numbers.ranges import within

PRIOR_BATCHES = 4.0
"""Own batches a crop's library figure is worth; our proposal."""

PRIOR_ALPHA = 3.0
"""Half the degrees of freedom behind the library's spread; our proposal."""


def middle_of_look(previous_look_day: float, this_look_day: float) -> float:
    """Return the middle of the interval in which something came up.

    Learning from the day of finding instead makes the median late by about half the interval:
    0.5, 1.0 and 1.5 days for looks every 1, 2 and 3 days.
    """
    within("day of the look before", previous_look_day, 0.0)
    within("day of the look", this_look_day, previous_look_day)
    return 0.5 * (previous_look_day + this_look_day)


def shrunk_median(
    prior_days: float, own_days: Sequence[float], weight: float = PRIOR_BATCHES
) -> float:
    """Return exp((k ln m0 + sum ln x) / (k + n)), the library's median drawn to own batches.

    Args:
        prior_days: m0, the library's median in days or degree-days.
        own_days: Own batches, in the same unit.
        weight: k, own batches the library's figure is worth.
    """
    within("library's median", prior_days, 0.0, low_open=True)
    within("weight of the library's figure (batches)", weight, 0.0, low_open=True)
    total = weight * math.log(prior_days)
    for days in own_days:
        total += math.log(within("own batch's days", days, 0.0, low_open=True))
    return math.exp(total / (weight + len(own_days)))


@dataclass(frozen=True, slots=True)
class DaysBelief:
    """ln days as normal-inverse-gamma (Murphy 2007, Conjugate Bayesian analysis; from memory).

    Attributes:
        mean_log: Expected mean of ln days.
        kappa: Batches that mean is worth.
        alpha: Half the degrees of freedom behind the spread, above 0.
        beta: Scale of the spread, above 0.
    """

    mean_log: float
    kappa: float
    alpha: float
    beta: float

    def __post_init__(self) -> None:
        within("belief kappa", self.kappa, 0.0, low_open=True)
        within("belief alpha", self.alpha, 0.0, low_open=True)
        within("belief beta", self.beta, 0.0, low_open=True)

    @classmethod
    def of_library(
        cls, median: float, sigma: float, weight: float = PRIOR_BATCHES, alpha: float = PRIOR_ALPHA
    ) -> DaysBelief:
        """Return the belief before own batches, expecting sigma^2 as the variance of ln days."""
        within("library's median", median, 0.0, low_open=True)
        within("library's spread (sigma)", sigma, 0.0, low_open=True)
        within("belief alpha", alpha, 1.0, low_open=True)
        return cls(math.log(median), weight, alpha, sigma * sigma * (alpha - 1.0))

    @property
    def median(self) -> float:
        """Median days of the next batch."""
        return math.exp(self.mean_log)

    def update(self, own_days: Sequence[float]) -> DaysBelief:
        """Return the belief after own batches."""
        n = len(own_days)
        if n == 0:
            return self
        logs = [math.log(within("own batch's days", x, 0.0, low_open=True)) for x in own_days]
        mean = math.fsum(logs) / n
        kappa = self.kappa + n
        squares = math.fsum((x - mean) ** 2 for x in logs)
        pull = self.kappa * n * (mean - self.mean_log) ** 2 / (2.0 * kappa)
        return DaysBelief(
            mean_log=(self.kappa * self.mean_log + n * mean) / kappa,
            kappa=kappa,
            alpha=self.alpha + n / 2.0,
            beta=self.beta + 0.5 * squares + pull,
        )

    def next_batch(self, q: float) -> float:
        """Return the days by which the next batch is up with chance q.

        exp(m + t(q; 2 alpha) sqrt(beta (kappa + 1) / (alpha kappa))).
        """
        scale = math.sqrt(self.beta * (self.kappa + 1.0) / (self.alpha * self.kappa))
        return math.exp(self.mean_log + t_quantile(q, 2.0 * self.alpha) * scale)

    def log_variance(self) -> float | None:
        """Return the variance of ln days of the next batch, beta (1 + 1/kappa) / (alpha - 1).

        None where alpha <= 1: too few batches for a variance to exist.
        """
        if self.alpha <= 1.0:
            return None
        return self.beta * (1.0 + 1.0 / self.kappa) / (self.alpha - 1.0)

    def sigma(self) -> float | None:
        """Return the spread of ln days to use for lateness, None where none exists yet."""
        variance = self.log_variance()
        return None if variance is None else math.sqrt(variance)
