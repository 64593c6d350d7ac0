"""What own counts teach about a share: germination of a packet, take at pricking out, ..."""

from __future__ import annotations

import math
from collections.abc import Sequence

from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.distributions import beta_quantile
from benchround.core.numbers.ranges import share, whole, within

PRIOR_SEEDS = 25.0
"""Seeds a packet's germination figure is worth; our proposal.

Plates of one lot under laboratory conditions differ as if a figure were worth 78 or 80 seeds
(Crowder 1978, two data sets), which is an upper bound for an open bench.
"""

GERMINATION_PER_YEAR = 0.8
"""How much a year-old count is worth of a fresh one; our proposal."""


@dataclass(frozen=True, slots=True)
class ShareBelief:
    """A share known as Beta(a, b): worth a + b seeds, mean a / (a + b)."""

    a: float
    b: float

    def __post_init__(self) -> None:
        within("belief parameter a", self.a, 0.0, low_open=True)
        within("belief parameter b", self.b, 0.0, low_open=True)

    @property
    def mean(self) -> float:
        """Expected share."""
        return self.a / (self.a + self.b)

    @property
    def seeds(self) -> float:
        """Seeds the belief is worth."""
        return self.a + self.b

    def interval(self, confidence: float = 0.90) -> tuple[float, float]:
        """Return the range the share lies in with this confidence, equal tails."""
        within("confidence", confidence, 0.0, 1.0, low_open=True, high_open=True)
        tail = (1.0 - confidence) / 2.0
        return beta_quantile(tail, self.a, self.b), beta_quantile(1.0 - tail, self.a, self.b)


def packet_belief(packet_share: float, weight: float = PRIOR_SEEDS) -> ShareBelief:
    """Return the belief before any own count: Beta(k m, k (1 - m)).

    Args:
        packet_share: m, between 0 and 1 (a printed 100 % is kept just below 1).
        weight: k, the seeds the figure is worth.
    """
    share("packet's germination share", packet_share)
    within("weight of the packet figure (seeds)", weight, 0.0, low_open=True)
    mean = min(packet_share, 1.0 - 1e-3)
    return ShareBelief(weight * mean, weight * (1.0 - mean))


def beta_update(belief: ShareBelief, up: int, sown: int) -> ShareBelief:
    """Return the belief after y of n came up: Beta(a + y, b + n - y)."""
    _check(up, sown)
    return ShareBelief(belief.a + up, belief.b + sown - up)


def shrunk_share(packet_share: float, up: int, sown: int, weight: float = PRIOR_SEEDS) -> float:
    """Return (k m + y) / (k + n), the mean of the updated belief."""
    within("packet's germination share", packet_share, 0.0, 1.0)
    within("weight of the packet figure (seeds)", weight, 0.0, low_open=True)
    _check(up, sown)
    return (weight * packet_share + up) / (weight + sown)


def belief_from_lots(shares: Sequence[float]) -> ShareBelief:
    """Return the belief that own past lots suggest, by moments: a + b = m (1 - m) / v - 1.

    Args:
        shares: Germination of equal big lots, 0 to 1, at least two and not all alike.

    Raises:
        OutOfRangeError: Too few lots, or a spread no beta distribution has.
    """
    if len(shares) < 2:
        raise OutOfRangeError(f"{len(shares)} lot(s) tell no spread: give at least two.")
    for value in shares:
        within("germination share of a lot", value, 0.0, 1.0)
    mean = math.fsum(shares) / len(shares)
    variance = math.fsum((x - mean) ** 2 for x in shares) / (len(shares) - 1)
    if not 0.0 < variance < mean * (1.0 - mean):
        raise OutOfRangeError(
            f"the lots' spread (variance {variance:g}) fits no belief: give lots that differ, "
            "but are not all 0 or 1."
        )
    seeds = mean * (1.0 - mean) / variance - 1.0
    return ShareBelief(mean * seeds, (1.0 - mean) * seeds)


def old_seed_belief(
    counts: Sequence[tuple[int, int, float]],
    per_year: float = GERMINATION_PER_YEAR,
    prior: ShareBelief | None = None,
) -> ShareBelief:
    """Return Beta(1 + sum d^age y, 1 + sum d^age (n - y)): older counts weigh less.

    Power prior, Ibrahim & Chen 2000 (idea, from memory).

    Args:
        counts: (up, sown, age in years) of each count.
        per_year: d, above 0 and up to 1.
        prior: Belief before any count; Beta(1, 1) if None.
    """
    share("worth of a year-old count", per_year)
    start = prior or ShareBelief(1.0, 1.0)
    a, b = start.a, start.b
    for up, sown, age in counts:
        _check(up, sown)
        within("age of a count (years)", age, 0.0)
        worth = float(per_year**age)
        a, b = a + worth * up, b + worth * (sown - up)
    return ShareBelief(a, b)


def count_sd(sown: int, mean_share: float, phi: float = 0.0) -> float:
    """Return the standard deviation of a count, sqrt(n p q (1 + (n - 1) phi)).

    Beta-binomial variance as in the documentation of aod::betabin; phi = 1 / (a + b + 1).
    """
    whole("seeds sown", sown, 1)
    within("germination share", mean_share, 0.0, 1.0)
    within("spread between trays (phi)", phi, 0.0, 1.0)
    return math.sqrt(sown * mean_share * (1.0 - mean_share) * (1.0 + (sown - 1) * phi))


def _check(up: int, sown: int) -> None:
    """Refuse counts that cannot be."""
    whole("seeds sown", sown, 0)
    whole("seeds up", up, 0)
    if up > sown:
        raise OutOfRangeError(f"{up} are up of {sown} sown: correct the count.")
