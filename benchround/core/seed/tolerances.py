"""Do germination tests agree? Printed tolerances, and the binomial behind them.

For a bench test of 20 seeds (8 points of standard deviation at 85 %) these limits are of no
use: compare beliefs instead, see `core/learning`.
"""

from __future__ import annotations

import math

from benchround.core.errors import OutOfRangeError
from benchround.core.numbers.distributions import binomial_log_pmf
from benchround.core.numbers.ranges import chance, whole, within

RANGE_OF_FOUR: tuple[tuple[int, int, int], ...] = (
    (99, 99, 5),
    (98, 98, 6),
    (97, 97, 7),
    (96, 96, 8),
    (95, 95, 9),
    (93, 94, 10),
    (91, 92, 11),
    (89, 90, 12),
    (87, 88, 13),
    (84, 86, 14),
    (81, 83, 15),
    (78, 80, 16),
    (73, 77, 17),
    (70, 72, 18),
)
"""(lowest mean, highest mean, range allowed) of 4 x 100 seeds, %; 7 CFR 201.55(a), older
printing, read at anthonygarvan.github.io/allregs. Rows below 70 % were not read."""

TWO_TESTS: tuple[tuple[int, int, int], ...] = (
    (99, 99, 2),
    (97, 98, 3),
    (94, 96, 4),
    (91, 93, 5),
    (87, 90, 6),
    (82, 86, 7),
    (76, 81, 8),
    (70, 75, 9),
    (60, 69, 10),
    (51, 59, 11),
)
"""(lowest mean, highest mean, difference allowed) of two 400-seed tests, %; Federal Seed Act
tolerances after Miles 1963 as printed in Louisiana Admin. Code 7 XIII-139 (read)."""

RANGE_DEVIATE_OF_FOUR = 3.984
"""Upper 2.5 % point of the studentized range of four with known spread."""


def tolerated_range(mean_percent: float) -> int | None:
    """Return the printed range four tests of 100 may span, None for means not printed."""
    return _look_up(RANGE_OF_FOUR, mean_percent)


def tolerated_difference(mean_percent: float) -> int | None:
    """Return the printed difference of two 400-seed tests, None for means not printed."""
    return _look_up(TWO_TESTS, mean_percent)


def two_agree(first_percent: float, second_percent: float) -> bool | None:
    """Return whether two 400-seed tests agree, None where the table does not reach."""
    within("first test (%)", first_percent, 0.0, 100.0)
    within("second test (%)", second_percent, 0.0, 100.0)
    allowed = tolerated_difference((first_percent + second_percent) / 2.0)
    return None if allowed is None else abs(first_percent - second_percent) <= allowed


def binomial_range_limit(
    mean_percent: float, replicates: int, seeds: int = 100, doubt: float = 0.025
) -> int:
    """Return the smallest r with P(range of the replicates > r) <= doubt, pure binomial.

    The rule behind the printed table: 25 of its 30 rows come out the same, the rest one off.

    Args:
        mean_percent: Mean germination, between 0 and 100 %.
        replicates: Number of replicates, 2 to 10.
        seeds: Seeds in each.
        doubt: Chance of a wider range that is put up with.
    """
    within("mean germination (%)", mean_percent, 0.0, 100.0, low_open=True, high_open=True)
    whole("replicates", replicates, 2, 10)
    whole("seeds in a replicate", seeds, 2, 10_000)
    chance("chance of a wider range", doubt)
    pmf = [math.exp(binomial_log_pmf(k, seeds, mean_percent / 100.0)) for k in range(seeds + 1)]
    sums = [0.0]
    for value in pmf:
        sums.append(sums[-1] + value)
    for r in range(seeds + 1):
        if 1.0 - _chance_range_within(pmf, sums, r, replicates) <= doubt:
            return r
    raise OutOfRangeError(f"no range of {replicates} x {seeds} seeds is that unlikely.")


def _chance_range_within(pmf: list[float], sums: list[float], r: int, replicates: int) -> float:
    """Return P(range <= r): over the least count m, all in m..m+r less all in m+1..m+r."""
    last = len(pmf) - 1
    return math.fsum(
        (sums[min(m + r, last) + 1] - sums[m]) ** replicates
        - (sums[min(m + r, last) + 1] - sums[m + 1]) ** replicates
        for m in range(last + 1)
    )


def large_sample_range(mean_percent: float) -> float:
    """Return q sqrt(P (100 - P) / 100), the range of four tests of 100 in a large sample."""
    within("mean germination (%)", mean_percent, 0.0, 100.0)
    return RANGE_DEVIATE_OF_FOUR * math.sqrt(mean_percent * (100.0 - mean_percent) / 100.0)


def error_percent(mean_percent: float, seeds: int) -> float:
    """Return the binomial standard deviation of a test, in percentage points."""
    within("mean germination (%)", mean_percent, 0.0, 100.0)
    whole("seeds tested", seeds, 1)
    return math.sqrt(mean_percent * (100.0 - mean_percent) / seeds)


def _look_up(table: tuple[tuple[int, int, int], ...], mean_percent: float) -> int | None:
    """Return the table's value for a mean rounded to a whole per cent."""
    within("mean germination (%)", mean_percent, 0.0, 100.0)
    mean = math.floor(mean_percent + 0.5)
    return next((value for low, high, value in table if low <= mean <= high), None)
