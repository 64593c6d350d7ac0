"""Seed by weight: seeds per gram, grams to weigh out, and the spread of test weighings."""

from __future__ import annotations

import math
from collections.abc import Sequence

from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import share, within

GRAMS_PER_OUNCE = 28.349523125
"""International avoirdupois ounce, exact by definition."""

CV_LIMIT, CV_LIMIT_CHAFFY = 4.0, 6.0
"""Greatest coefficient of variation of 8 x 100 seeds, %; ISTA Rules ch. 10, from memory."""

WORKING_SAMPLE_SEEDS = 2500
"""Seeds in a purity working sample; AOSA 2019 rule proposals 10 and 15."""


@dataclass(frozen=True, slots=True)
class SeedWeight:
    """Weighings of equal lots of 100 seeds.

    Attributes:
        mean_g: Mean weight of 100 seeds.
        variance: Variance between lots, g^2.
        thousand_g: Thousand-seed weight, 10 x mean.
        seeds_per_gram: 1000 / thousand-seed weight.
        variation_percent: Coefficient of variation.
    """

    mean_g: float
    variance: float
    thousand_g: float
    seeds_per_gram: float
    variation_percent: float

    def is_even(self, *, chaffy: bool = False) -> bool:
        """Return whether the weighings agree well enough; if not, weigh eight more."""
        return self.variation_percent <= (CV_LIMIT_CHAFFY if chaffy else CV_LIMIT)


def weigh(hundreds_g: Sequence[float]) -> SeedWeight:
    """Return the figures of some weighings of 100 seeds each.

    Variance (n sum x^2 - (sum x)^2) / (n (n - 1)), computed about the mean; formula read in the
    FRSA tutorial on AOSA Appendix 4 (2001).

    Raises:
        OutOfRangeError: Fewer than two weighings, or a weight not above 0.
    """
    n = len(hundreds_g)
    if n < 2:
        raise OutOfRangeError(f"{n} weighing(s) of 100 seeds: give at least two.")
    for weight in hundreds_g:
        within("weight of 100 seeds (g)", weight, 0.0, low_open=True)
    mean = math.fsum(hundreds_g) / n
    variance = math.fsum((x - mean) ** 2 for x in hundreds_g) / (n - 1)
    return SeedWeight(
        mean_g=mean,
        variance=variance,
        thousand_g=10.0 * mean,
        seeds_per_gram=100.0 / mean,
        variation_percent=100.0 * math.sqrt(variance) / mean,
    )


def seeds_per_gram(thousand_g: float) -> float:
    """Return seeds per gram from the thousand-seed weight in grams."""
    return 1000.0 / within("thousand-seed weight (g)", thousand_g, 0.0, low_open=True)


def grams_of_seeds(seeds: float, per_gram: float) -> float:
    """Return the weight of so many seeds, g."""
    within("seeds", seeds, 0.0)
    return seeds / within("seeds per gram", per_gram, 0.0, low_open=True)


def seeds_in_grams(grams: float, per_gram: float) -> int:
    """Return how many whole seeds so many grams hold."""
    within("weight of seed (g)", grams, 0.0)
    return math.floor(grams * within("seeds per gram", per_gram, 0.0, low_open=True) + 1e-9)


def seeds_per_ounce(per_gram: float) -> float:
    """Return seeds per ounce from seeds per gram; printed charts agree within 1 to 2 %."""
    return GRAMS_PER_OUNCE * within("seeds per gram", per_gram, 0.0, low_open=True)


def seeds_per_gram_of_ounce(per_ounce: float) -> float:
    """Return seeds per gram from seeds per ounce."""
    return within("seeds per ounce", per_ounce, 0.0, low_open=True) / GRAMS_PER_OUNCE


def working_sample_g(per_gram: float) -> int:
    """Return the weight of about 2500 seeds, in whole grams, stepped up."""
    return math.ceil(grams_of_seeds(WORKING_SAMPLE_SEEDS, per_gram) - 1e-9)


def sowing_rate_kg_per_ha(thousand_g: float, plants_per_m2: float, germination: float) -> float:
    """Return kg/ha = thousand-seed weight (g) x plants per m2 / germination %.

    Plant Science Consulting, crop seed quality test page.
    """
    within("thousand-seed weight (g)", thousand_g, 0.0, low_open=True)
    within("plants per m2", plants_per_m2, 0.0, low_open=True)
    return thousand_g * plants_per_m2 / (100.0 * share("germination share", germination))
