"""What own records teach about losses per tray-week, and about crops beside each other."""

from __future__ import annotations

import math
from collections.abc import Sequence

from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import whole, within


@dataclass(frozen=True, slots=True)
class LossBelief:
    """Losses per tray-week as Gamma(a, b): mean a / b, worth b tray-weeks."""

    a: float
    b: float

    def __post_init__(self) -> None:
        within("loss belief a", self.a, 0.0, low_open=True)
        within("loss belief b (tray-weeks)", self.b, 0.0, low_open=True)

    @property
    def mean(self) -> float:
        """Losses to expect per tray-week."""
        return self.a / self.b

    def update(self, losses: int, tray_weeks: float) -> LossBelief:
        """Return Gamma(a + k, b + t) (rule read in Berry's slides, pnl.gov/bayesian)."""
        whole("losses", losses, 0)
        within("tray-weeks", tray_weeks, 0.0)
        return LossBelief(self.a + losses, self.b + tray_weeks)

    def chance_none(self, tray_weeks: float = 1.0) -> float:
        """Return the chance of no loss in the time ahead, (b / (b + t))^a."""
        within("tray-weeks", tray_weeks, 0.0)
        return float((self.b / (self.b + tray_weeks)) ** self.a)


def james_stein_factor(values: Sequence[float], variance: float) -> float:
    """Return c = 1 - (k - 3) s^2 / sum (y - mean)^2, kept from falling below 0.

    Efron & Morris 1977, Scientific American 236(5):119-127 (quoted second-hand).

    Args:
        values: One figure for each of k > 3 crops or packets.
        variance: s^2, the chance variance of each figure, above 0.
    """
    k = len(values)
    if k <= 3:
        raise OutOfRangeError(f"{k} figures are too few to compare: give at least four.")
    within("variance of a figure", variance, 0.0, low_open=True)
    mean = math.fsum(values) / k
    squares = math.fsum((y - mean) ** 2 for y in values)
    return max(0.0, 1.0 - (k - 3) * variance / squares) if squares > 0.0 else 0.0


def shrink_together(values: Sequence[float], variance: float) -> tuple[float, ...]:
    """Return each figure drawn to the mean of all: z = mean + c (y - mean)."""
    c = james_stein_factor(values, variance)
    mean = math.fsum(values) / len(values)
    return tuple(mean + c * (y - mean) for y in values)
