"""How much heat a day gives a sown seed, and how much a crop needs to come up."""

from __future__ import annotations

import math
from collections.abc import Sequence

from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.normal import NORMAL
from benchround.core.numbers.ranges import require_air_temp, within

PLATEAU_SHARE = 0.7
"""How far from optimum to ceiling the full rate holds before it falls (0 to 1).

Chosen on the emergence days of Harrington & Minges 1954: many crops there take the same days
at 30 and 35 C and stop coming up one step higher, so a fall that starts at the optimum is far
too slow at 30 C; see docs/emergence_accuracy.md.
"""

TEN_TO_NINETY_IN_SIGMAS = 2.5631
"""Standard deviations between the 10th and the 90th percentile of a normal distribution."""

LEAST_SIGMA = 0.10
"""Floor on the spread read from a range of days; common practice, no source."""


@dataclass(frozen=True, slots=True)
class ThermalModel:
    """A crop's emergence in thermal time, log-normal between seeds.

    Shape above the base after Garcia-Huidobro, Monteith & Squire 1982, J. Exp. Bot. 33:288-296
    (rate rises in a straight line to the optimum, then falls in a straight line to the
    ceiling), with a level stretch put between the two lines.

    Attributes:
        base_c: Temperature at and below which nothing advances.
        optimum_c: Temperature at which the rate stops rising.
        ceiling_c: Temperature at and above which nothing advances.
        theta50: Degree-days above base until half have come up.
        sigma: Standard deviation of the natural log of thermal time.
    """

    base_c: float
    optimum_c: float
    ceiling_c: float
    theta50: float
    sigma: float

    def __post_init__(self) -> None:
        within("base temperature (C)", self.base_c, -20.0, 40.0)
        within("ceiling temperature (C)", self.ceiling_c, 0.0, 60.0)
        if not self.base_c < self.optimum_c < self.ceiling_c:
            raise OutOfRangeError(
                f"the temperatures {self.base_c:g}, {self.optimum_c:g}, {self.ceiling_c:g} C are "
                "not in rising order: give base, optimum and ceiling from cold to warm."
            )
        within("thermal time to half emergence (C d)", self.theta50, 0.0, low_open=True)
        within("spread of emergence (sigma)", self.sigma, 0.0, 5.0, low_open=True)

    @classmethod
    def from_days(
        cls,
        days_first: float,
        days_last: float,
        at_temp_c: float,
        base_c: float,
        optimum_c: float,
        ceiling_c: float,
    ) -> ThermalModel:
        """Make a model from a packet's "n to m days at t C".

        The two days are read as the 10th and 90th percentile: common practice, no source.
        The median is their geometric mean, sigma = ln(last / first) / 2.5631, at least 0.10.

        Raises:
            OutOfRangeError: The days are not in order, or nothing comes up at that temperature.
        """
        within("days to the first (d)", days_first, 0.0, low_open=True)
        within("days to the last (d)", days_last, days_first)
        sigma = max(LEAST_SIGMA, math.log(days_last / days_first) / TEN_TO_NINETY_IN_SIGMAS)
        unit = cls(base_c, optimum_c, ceiling_c, 1.0, sigma)
        daily = heat_of_day(unit, at_temp_c)
        if daily <= 0.0:
            raise OutOfRangeError(
                f"the days were given for {at_temp_c:g} C, where nothing comes up between base "
                f"{base_c:g} and ceiling {ceiling_c:g} C: correct one of the three."
            )
        median_days = math.sqrt(days_first * days_last)
        return cls(base_c, optimum_c, ceiling_c, median_days * daily, sigma)

    @property
    def fall_starts_c(self) -> float:
        """Temperature above which the rate falls."""
        return self.optimum_c + PLATEAU_SHARE * (self.ceiling_c - self.optimum_c)


def heat_of_day(model: ThermalModel, mean_c: float) -> float:
    """Return the degree-days a day of this mean temperature adds towards emergence.

    Zero at or below base; mean minus base up to the optimum; level to `fall_starts_c`; then a
    straight fall to zero at the ceiling. Garcia-Huidobro, Monteith & Squire 1982 (shape).

    Args:
        model: The crop.
        mean_c: Mean temperature of the compost over the day, C.
    """
    require_air_temp("the day's mean", mean_c)
    if mean_c <= model.base_c or mean_c >= model.ceiling_c:
        return 0.0
    full = model.optimum_c - model.base_c
    if mean_c <= model.fall_starts_c:
        return min(mean_c - model.base_c, full)
    return full * (model.ceiling_c - mean_c) / (model.ceiling_c - model.fall_starts_c)


def heat_of_hours(model: ThermalModel, temps_c: Sequence[float]) -> float:
    """Return the degree-days of a run of hourly temperatures, each worth 1/24 of a day."""
    return math.fsum(heat_of_day(model, temp_c) for temp_c in temps_c) / 24.0


def emerged_share(model: ThermalModel, heat: float) -> float:
    """Return the share of the viable seeds up after so many degree-days.

    Phi(ln(heat / theta50) / sigma), the log-normal thermal-time model (Covell et al. 1986,
    J. Exp. Bot. 37:705-715, with log time; formula from memory).
    """
    within("heat (C d)", heat, 0.0)
    return NORMAL.cdf(math.log(heat / model.theta50) / model.sigma) if heat > 0.0 else 0.0


def heat_for_share(model: ThermalModel, share: float) -> float:
    """Return the degree-days by which this share (0 to 1, both excluded) is up."""
    within("share up", share, 0.0, 1.0, low_open=True, high_open=True)
    return model.theta50 * math.exp(model.sigma * NORMAL.inv_cdf(share))


def chance_nothing(model: ThermalModel, heat: float) -> float:
    """Return S, the chance that a good batch still shows nothing after so many degree-days."""
    return 1.0 - emerged_share(model, heat)
