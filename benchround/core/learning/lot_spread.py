"""How much lots of the same seed differ, beyond chance: the beta-binomial by likelihood."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.distributions import log_beta, log_choose
from benchround.core.numbers.ranges import whole

Lot = tuple[int, int]
"""(up, sown)."""

GOLDEN = (math.sqrt(5.0) - 1.0) / 2.0


@dataclass(frozen=True, slots=True)
class LotSpread:
    """Groups of lots with a mean each and one spread.

    Attributes:
        means: Mean share of each group.
        seeds: a + b, the seeds a lot's share is worth as a forecast of the next lot.
        log_likelihood: At the maximum.
    """

    means: tuple[float, ...]
    seeds: float
    log_likelihood: float

    @property
    def phi(self) -> float:
        """Correlation within a lot, 1 / (a + b + 1)."""
        return 1.0 / (self.seeds + 1.0)


def spread_of_lots(groups: Sequence[Sequence[Lot]]) -> LotSpread:
    """Fit a beta-binomial with a mean per group and a common a + b by maximum likelihood.

    Model of Crowder 1978, Appl. Statist. 27:34-37; a + b is sought between 0.1 and 100,000
    (the upper end means no spread beyond chance).

    Raises:
        OutOfRangeError: No lots, or a lot with more up than sown.
    """
    if not groups or any(not lots for lots in groups):
        raise OutOfRangeError("a group has no lots: give at least one count for each.")
    for lots in groups:
        for up, sown in lots:
            whole("seeds sown", sown, 1)
            whole("seeds up", up, 0, sown)

    def best(log_seeds: float) -> float:
        seeds = math.exp(log_seeds)
        return math.fsum(_group_best(lots, seeds)[1] for lots in groups)

    seeds = math.exp(_maximum(best, math.log(0.1), math.log(1e5)))
    found = [_group_best(lots, seeds) for lots in groups]
    return LotSpread(tuple(mean for mean, _ in found), seeds, math.fsum(ll for _, ll in found))


def _group_best(lots: Sequence[Lot], seeds: float) -> tuple[float, float]:
    """Return the best mean of a group and its log-likelihood, given a + b."""

    def likelihood(mean: float) -> float:
        a, b = mean * seeds, (1.0 - mean) * seeds
        return math.fsum(
            log_choose(n, y) + log_beta(a + y, b + n - y) - log_beta(a, b) for y, n in lots
        )

    mean = _maximum(likelihood, 1e-6, 1.0 - 1e-6)
    return mean, likelihood(mean)


def _maximum(of: Callable[[float], float], low: float, high: float) -> float:
    """Return where a one-peaked function is greatest, by golden section."""
    left, right = high - GOLDEN * (high - low), low + GOLDEN * (high - low)
    at_left, at_right = of(left), of(right)
    while high - low > 1e-9 * max(1.0, abs(low)):
        if at_left < at_right:
            low, left, at_left = left, right, at_right
            right = low + GOLDEN * (high - low)
            at_right = of(right)
        else:
            high, right, at_right = right, left, at_left
            left = high - GOLDEN * (high - low)
            at_left = of(left)
    return 0.5 * (low + high)
