"""Cold that counts: chill of hours for woody plants, cold days for seed that must be stratified."""

from collections.abc import Iterable

from benchround.core.errors import OutOfRangeError
from benchround.core.numbers.ranges import require_air_temp

UTAH_STEPS: tuple[tuple[float, float], ...] = (
    (1.4, 0.0),
    (2.4, 0.5),
    (9.1, 1.0),
    (12.4, 0.5),
    (15.9, 0.0),
    (18.0, -0.5),
)
"""Warmest temperature of each step (degC) and its units per hour; Richardson, Seeley & Walker
1974, HortScience 9:331."""
UTAH_WARMEST = -1.0
"""Units per hour above the last step; same source."""
CHILL_HOUR_COLDEST_C = 0.0
CHILL_HOUR_WARMEST_C = 7.2
"""Hours between these count as chill hours (45 degF); from memory."""
STRATIFYING_COLDEST_C = 1.0
STRATIFYING_WARMEST_C = 5.0
"""Daily means between these count toward cold stratification; from memory. Some growers count up
to 8 degC."""


def utah_units(hourly_c: Iterable[float]) -> float:
    """Return the chill units of hourly temperatures; warm hours take units away.

    Richardson, Seeley & Walker 1974, HortScience 9:331, the Utah model: per hour 0 up to 1.4
    degC, 0.5 to 2.4, 1 to 9.1, 0.5 to 12.4, 0 to 15.9, -0.5 to 18, -1 above.

    Args:
        hourly_c: one temperature for each hour, degC, -60 to 60.

    Raises:
        OutOfRangeError: a temperature is outside that range.
    """
    return sum(_utah_unit(require_air_temp("the hour's temperature", c)) for c in hourly_c)


def _utah_unit(temp_c: float) -> float:
    return next((units for warmest, units in UTAH_STEPS if temp_c <= warmest), UTAH_WARMEST)


def chill_hours(hourly_c: Iterable[float]) -> int:
    """Return how many of the hourly temperatures lie between 0 and 7.2 degC, both counted.

    The chill-hour rule (from memory). Raises OutOfRangeError outside -60 to 60 degC.
    """
    temps = [require_air_temp("the hour's temperature", temp_c) for temp_c in hourly_c]
    return sum(CHILL_HOUR_COLDEST_C <= temp_c <= CHILL_HOUR_WARMEST_C for temp_c in temps)


def cold_days(
    daily_mean_c: Iterable[float],
    coldest_c: float = STRATIFYING_COLDEST_C,
    warmest_c: float = STRATIFYING_WARMEST_C,
) -> int:
    """Return how many days had a mean between two limits, both counted: cold stratification.

    Limits 1 to 5 degC unless others are given (from memory).

    Raises:
        OutOfRangeError: a temperature is outside -60 to 60 degC, or the limits are swapped.
    """
    if not coldest_c <= warmest_c:
        raise OutOfRangeError(
            f"the cold limit {coldest_c:g} degC must not lie above the warm limit"
            f" {warmest_c:g} degC: were the two swapped?"
        )
    temps = [require_air_temp("the day's mean", temp_c) for temp_c in daily_mean_c]
    return sum(coldest_c <= temp_c <= warmest_c for temp_c in temps)
