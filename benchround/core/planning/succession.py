"""When to sow again, and when to sow so as to be ready: by weeks, by days and by heat."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from datetime import date, timedelta

from benchround.core.errors import InputError, OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import within
from benchround.core.units import F_DEGREE_C

SOW_AGAIN_HEAT_C = 100.0 * F_DEGREE_C
"""Degree-days C after the previous sowing germinated, sweet corn: 100 F-days above 50 F.

UConn IPM, Scheduling sweet corn plantings (read)."""

SOW_AGAIN_BASE_C = 10.0
"""Base of `SOW_AGAIN_HEAT_C`: 50 F."""

SOW_AGAIN_HEIGHT_MM = (12.7, 25.4)
"""Height of the previous sowing at which to sow again, 1/2 to 1 inch, sweet corn.

Ward Upham, Kansas State University (read)."""


def degree_days(temp_c: float, base_c: float, days: float = 1.0) -> float:
    """Return (T - base) x days, never below 0."""
    within("days", days, 0.0)
    return max(0.0, temp_c - base_c) * days


def heat_between_sowings(gap_days: float, harvest_mean_c: float, base_c: float) -> float:
    """Return the degree-days to leave between sowings for a wanted gap at harvest.

    As many heat units as lie between the harvest days (rule: Ottosson, heat units in sowing
    programmes of vining peas, ISHS article 27_34, read).
    """
    return degree_days(harvest_mean_c, base_c, gap_days)


def days_to_collect(heat: float, mean_c: float, base_c: float) -> int | None:
    """Return the whole days of a mean temperature that bring so much heat, stepped up.

    None where the mean is at or below the base.
    """
    within("heat (C d)", heat, 0.0)
    daily = degree_days(mean_c, base_c)
    return math.ceil(heat / daily - 1e-9) if daily > 0.0 else None


def next_sowing(
    previous: date, heat: float, base_c: float, means_c: Iterable[tuple[date, float]]
) -> date | None:
    """Return the day by whose end so much heat has come since the previous sowing.

    Args:
        previous: Day of the previous sowing; heat counts from the day after.
        heat: Degree-days to leave between sowings.
        base_c: Base temperature.
        means_c: (day, mean temperature) measured or expected, in order.

    Returns:
        The day, or None where the temperatures end before it.
    """
    within("heat (C d)", heat, 0.0)
    total = 0.0
    for day, mean_c in means_c:
        if day > previous:
            total += degree_days(mean_c, base_c)
            if total >= heat - 1e-9:
                return day
    return None


@dataclass(frozen=True, slots=True)
class TwoPointBase:
    """Base temperature and thermal time through two points; see `two_point_base`."""

    base_c: float
    heat: float


def two_point_base(days1: float, temp1_c: float, days2: float, temp2_c: float) -> TwoPointBase:
    """Return Tb = (T2 - r T1) / (1 - r), r = d1 / d2, and the heat d1 (T1 - Tb).

    For showing only. Of four perennials tried at 15 and 27 C two give a base below zero, as
    27 C is above their optimum (HortScience 30(4):861B): a base is learned with `learned_base`.

    Raises:
        OutOfRangeError: The warmer temperature is not the quicker one.
    """
    within("days at the first temperature", days1, 0.0, low_open=True)
    within("days at the second temperature", days2, 0.0, low_open=True)
    if (days1 - days2) * (temp2_c - temp1_c) <= 0.0:
        raise OutOfRangeError(
            f"{days1:g} d at {temp1_c:g} C and {days2:g} d at {temp2_c:g} C: the warmer one is "
            "not quicker, so no base temperature follows; it may lie above the optimum."
        )
    ratio = days1 / days2
    base = (temp2_c - ratio * temp1_c) / (1.0 - ratio)
    return TwoPointBase(base, days1 * (temp1_c - base))


def learned_base(points: Sequence[tuple[float, float]], optimum_c: float) -> TwoPointBase:
    """Return base and heat of the straight line through 1/days at three or more temperatures.

    Args:
        points: (temperature C, days).
        optimum_c: Only points up to here are used.

    Raises:
        InputError: Fewer than three different temperatures at or below the optimum, or days
            that do not fall with warmth.
    """
    used = [(t, 1.0 / within("days", d, 0.0, low_open=True)) for t, d in points if t <= optimum_c]
    if len({t for t, _ in used}) < 3:
        raise InputError(
            f"{len({t for t, _ in used})} temperature(s) up to the optimum {optimum_c:g} C are "
            "too few to learn a base temperature: give at least three."
        )
    mean_t = math.fsum(t for t, _ in used) / len(used)
    mean_r = math.fsum(r for _, r in used) / len(used)
    rise = math.fsum((t - mean_t) * (r - mean_r) for t, r in used)
    rise /= math.fsum((t - mean_t) ** 2 for t, _ in used)
    if rise <= 0.0:
        raise InputError("the days do not fall with warmth: no base temperature follows.")
    return TwoPointBase(mean_t - mean_r / rise, 1.0 / rise)


def days_at_temperature(heat: float, temp_c: float, base_c: float) -> float | None:
    """Return heat / (T - Tb), None where the temperature is at or below the base."""
    within("heat (C d)", heat, 0.0)
    daily = degree_days(temp_c, base_c)
    return heat / daily if daily > 0.0 else None


def start_for(wanted: date, days: float) -> date:
    """Return the day to start so as to be ready on the wanted day: wanted - ceil(days)."""
    within("days needed", days, 0.0)
    return wanted - timedelta(days=math.ceil(days - 1e-9))


def days_back(means_c: Sequence[float], heat: float, base_c: float) -> int | None:
    """Return how many days, counted back from the last, bring so much heat.

    Args:
        means_c: Daily means in order, the last belonging to the wanted day.
        heat: Degree-days needed, above 0.
        base_c: Base temperature.

    Returns:
        Days, the wanted day among them, or None where the means do not reach back far enough.
    """
    within("heat (C d)", heat, 0.0, low_open=True)
    total = 0.0
    for count, mean_c in enumerate(reversed(means_c), start=1):
        total += degree_days(mean_c, base_c)
        if total >= heat - 1e-9:
            return count
    return None


def sow_by_heat(wanted: date, means_c: Sequence[float], heat: float, base_c: float) -> date | None:
    """Return the day to sow so that the heat is collected by the end of the wanted day."""
    count = days_back(means_c, heat, base_c)
    return None if count is None else wanted - timedelta(days=count - 1)
