"""When a sowing comes up: thermal time between base and ceiling, log-normal between seeds.

At a steady temperature in days, and in heat when it counts as late and when to give it up: the
round's own limits, see `waiting`.
"""

from __future__ import annotations

from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import chance
from benchround.core.seed.lateness import (
    DEAD_PRIOR,
    GIVE_UP_ALIVE,
    LATE_SURVIVAL,
    survival_at_which_alive_is,
)
from benchround.core.seed.thermal_model import (
    ThermalModel,
    heat_for_share,
    heat_of_day,
)

EARLY_SHARE, LATE_SHARE = 0.10, 1.0 - LATE_SURVIVAL


@dataclass(frozen=True, slots=True)
class EmergenceDays:
    """Days until 10 %, half and 90 % of the viable seeds are up."""

    early: float
    median: float
    late: float


def days_at(model: ThermalModel, temp_c: float, share: float = 0.5) -> float | None:
    """Return the days until this share is up at a steady temperature.

    Returns:
        Days, or None where nothing comes up; `why_none` tells the reason.

    Raises:
        OutOfRangeError: The share is not between 0 and 1.
    """
    needed = heat_for_share(model, share)
    daily = heat_of_day(model, temp_c)
    return needed / daily if daily > 0.0 else None


def why_none(model: ThermalModel, temp_c: float) -> str | None:
    """Return why nothing comes up at this temperature, or None where it does."""
    if heat_of_day(model, temp_c) > 0.0:
        return None
    if temp_c <= model.base_c:
        return f"too cold: {temp_c:g} C is at or below its base of {model.base_c:g} C"
    return f"too hot: {temp_c:g} C is at or above its ceiling of {model.ceiling_c:g} C"


def median_early_late(model: ThermalModel, temp_c: float) -> EmergenceDays | None:
    """Return early, median and late days at a steady temperature, None where nothing comes up."""
    early = days_at(model, temp_c, EARLY_SHARE)
    median = days_at(model, temp_c)
    late = days_at(model, temp_c, LATE_SHARE)
    if early is None or median is None or late is None:
        return None
    return EmergenceDays(early, median, late)


def late_heat(model: ThermalModel, s: float = LATE_SURVIVAL) -> float:
    """Return the degree-days after which a batch that shows nothing counts as late."""
    return heat_for_share(model, 1.0 - chance("chance of nothing yet", s))


def give_up_heat(
    model: ThermalModel, alive: float = GIVE_UP_ALIVE, dead_prior: float = DEAD_PRIOR
) -> float:
    """Return the degree-days after which a batch that shows nothing is probably dead."""
    return heat_for_share(model, 1.0 - survival_at_which_alive_is(alive, dead_prior))
