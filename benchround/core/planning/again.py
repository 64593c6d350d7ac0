"""Sowing again so that the next harvest follows by so many days."""

from __future__ import annotations

import math
from collections.abc import Callable
from datetime import date, timedelta

from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import whole
from benchround.core.planning.succession import degree_days, next_sowing

FURTHEST_DAYS = 366
RULE = (
    "as many heat units between sowings as lie between the harvests: Ottosson, heat unit "
    "calculations for sowing programmes of vining peas, ISHS article 27_34 (read)"
)


@dataclass(frozen=True, slots=True)
class Succession:
    """When to sow again.

    Attributes:
        heat: degree-days above base to leave between the sowings.
        next_sowing: the day to sow again; None where so much heat does not come within a year.
        source: where the rule comes from.
    """

    heat: float
    next_sowing: date | None
    source: str = RULE


def sow_in_turn(
    first: date,
    harvest: date,
    gap_days: int,
    times: int,
    base_c: float,
    mean_c: Callable[[date], float],
) -> tuple[Succession, ...]:
    """The sowings after the first one for harvests that follow each other by `gap_days`.

    Each is counted from the first by `sow_again`, so that no rounding adds up.

    Args:
        first: day of the first sowing.
        harvest: when that one is picked.
        gap_days: days wanted between two harvests.
        times: sowings in all, 2 to 60.
        base_c: temperature above which the crop grows.
        mean_c: day -> mean temperature, measured or usual.

    Raises:
        OutOfRangeError: a number is outside its range, or the last harvest 180 days after the
            first.
    """
    whole("sowings in all", times, 2, 60)
    whole("days between harvests", gap_days, 1, 180)
    whole("days from the first harvest to the last", gap_days * (times - 1), 1, 180)
    return tuple(
        sow_again(first, harvest, gap_days * number, base_c, mean_c) for number in range(1, times)
    )


def sow_again(
    previous: date,
    harvest: date,
    gap_days: int,
    base_c: float,
    mean_c: Callable[[date], float],
) -> Succession:
    """When to sow again for a harvest that follows the last one by `gap_days`.

    Args:
        previous: day of the previous sowing.
        harvest: when that sowing is picked.
        gap_days: days wanted between the harvests, 1 to 180.
        base_c: temperature above which the crop grows.
        mean_c: day -> mean temperature, measured or usual.

    Raises:
        OutOfRangeError: the gap is outside its range.
    """
    whole("days between harvests", gap_days, 1, 180)
    ripening = (harvest + timedelta(days=n) for n in range(1, gap_days + 1))
    heat = math.fsum(degree_days(mean_c(day), base_c) for day in ripening)
    ahead = (previous + timedelta(days=n) for n in range(1, FURTHEST_DAYS + 1))
    again = next_sowing(previous, heat, base_c, ((day, mean_c(day)) for day in ahead))
    return Succession(heat, again if heat > 0.0 else None)
