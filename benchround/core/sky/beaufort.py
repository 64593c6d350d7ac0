"""Wind as a word: the Beaufort scale, both ways between what is seen and metres per second."""

from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import within

LOWER_LIMITS_MS = (0.0, 0.3, 1.6, 3.4, 5.5, 8.0, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7)
"""Least mean wind of force 0 to 12, m/s; Beaufort table at delta-s.org/weer/beaufort.html."""
LOWER_LIMITS_KNOTS = (0, 1, 4, 7, 11, 17, 22, 28, 34, 41, 48, 56, 64)
"""Least mean wind of force 0 to 12, knots; UK Met Office table."""
MEAN_WIND_COEFFICIENT = 0.836
"""Mean wind of a force, v = 0.836 B^1.5 m/s; WMO Code 1100, from memory."""


@dataclass(frozen=True, slots=True)
class WindForce:
    """One step of the scale: its name, and what it does in a garden."""

    force: int
    name: str
    sign: str


WIND_FORCES: tuple[WindForce, ...] = (
    WindForce(0, "calm", "smoke rises straight up"),
    WindForce(1, "light air", "smoke drifts, leaves hang still"),
    WindForce(2, "light breeze", "felt on the face, leaves rustle"),
    WindForce(3, "gentle breeze", "leaves and twigs never still"),
    WindForce(4, "moderate breeze", "dust and loose paper fly up"),
    WindForce(5, "fresh breeze", "small trees sway"),
    WindForce(6, "strong breeze", "an umbrella is hard to hold"),
    WindForce(7, "near gale", "hard to walk against"),
    WindForce(8, "gale", "twigs break off trees"),
    WindForce(9, "strong gale", "roof tiles and lids come loose"),
    WindForce(10, "storm", "trees are uprooted"),
    WindForce(11, "violent storm", "damage far and wide"),
    WindForce(12, "hurricane force", "devastation"),
)
"""Names of the scale, and a sign for each; those of forces 3 to 7 as read, others from memory."""


def beaufort_force(wind_ms: float) -> int:
    """Return the Beaufort force of a mean wind.

    Lower limits in m/s as `LOWER_LIMITS_MS`.

    Args:
        wind_ms: wind averaged over ten minutes at 10 m, m/s, 0 to 120; a gust gives too much.

    Raises:
        OutOfRangeError: the wind is outside that range.
    """
    within("the wind", wind_ms, 0.0, 120.0, "m/s")
    return sum(wind_ms >= limit for limit in LOWER_LIMITS_MS) - 1


def beaufort_force_from_knots(wind_knots: float) -> int:
    """Return the Beaufort force of a mean wind in whole knots, as forecasts give it.

    Lower limits as `LOWER_LIMITS_KNOTS`; a wind between two classes is rounded to whole knots.
    The published tables part here and there: 16 knots are force 4, the same wind in m/s is 5.

    Raises:
        OutOfRangeError: the wind is outside 0 to 240 knots.
    """
    within("the wind", wind_knots, 0.0, 240.0, "knots")
    whole = int(wind_knots + 0.5)
    return sum(whole >= limit for limit in LOWER_LIMITS_KNOTS) - 1


def wind_range_ms(force: int) -> tuple[float, float | None]:
    """Return the least wind of a force and the least of the next, m/s; None above force 12.

    Raises:
        OutOfRangeError: the force is not a whole number from 0 to 12.
    """
    wind_force(force)
    above = LOWER_LIMITS_MS[force + 1] if force < 12 else None
    return LOWER_LIMITS_MS[force], above


def mean_wind_ms(force: int) -> float:
    """Return the wind a force stands for, m/s, 10 m above the ground: 0.836 B^1.5.

    WMO Code 1100, from memory.

    Raises:
        OutOfRangeError: the force is not a whole number from 0 to 12.
    """
    return MEAN_WIND_COEFFICIENT * float(wind_force(force).force ** 1.5)


def wind_force(force: int) -> WindForce:
    """Return the name and the sign of a Beaufort force.

    Raises:
        OutOfRangeError: the force is not a whole number from 0 to 12.
    """
    if force not in range(len(WIND_FORCES)):
        raise OutOfRangeError(f"Beaufort force {force} does not exist: give 0 to 12")
    return WIND_FORCES[force]
