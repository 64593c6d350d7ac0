import math

import pytest
from scipy import stats

from benchround.core.errors import OutOfRangeError
from benchround.core.seed.tolerances import (
    RANGE_DEVIATE_OF_FOUR,
    binomial_range_limit,
    error_percent,
    large_sample_range,
    tolerated_difference,
    tolerated_range,
    two_agree,
)

CFR = "7 CFR 201.55(a), older printing (read)"
SEED_ACT = "Federal Seed Act tolerances as printed in Louisiana Admin. Code 7 XIII-139 (read)"


def test_w10_the_printed_ranges_are_binomial() -> None:
    # match own; table: 7 CFR 201.55(a)
    off = [binomial_range_limit(mean, 4) - (tolerated_range(mean) or 0) for mean in range(70, 100)]
    assert off.count(0) == 25
    assert max(abs(x) for x in off) == 1


# The printed column of two replicates, 97 to 71 %, from memory.
RANGE_OF_TWO = ((97, 97, 6), (96, 96, 6), (95, 95, 7), (93, 94, 8), (90, 92, 9), (88, 89, 10),
                (84, 87, 11), (81, 83, 12), (76, 80, 13), (71, 75, 14))  # fmt: skip


def test_w11_the_printed_ranges_of_two_are_binomial() -> None:
    # 7 CFR 201.55(a): 23 of 27 rows the same and none more than one off (match own)
    off = [
        binomial_range_limit(mean, 2) - allowed
        for low, high, allowed in RANGE_OF_TWO
        for mean in range(low, high + 1)
    ]
    assert len(off) == 27
    assert off.count(0) == 23
    assert max(abs(x) for x in off) == 1


@pytest.mark.parametrize(
    ("mean", "allowed"),
    [(95, 9), (90, 12), (85, 14), (80, 16), (75, 17), (70, 18)],
    ids=lambda n: f"W12 {n}: {CFR}",
)
def test_printed_range(mean: int, allowed: int) -> None:
    assert tolerated_range(mean) == allowed


def test_w13_large_sample_range() -> None:
    # own worked example; q(0.975; 4, inf) by scipy
    assert float(stats.studentized_range.ppf(0.975, 4, math.inf)) == pytest.approx(
        RANGE_DEVIATE_OF_FOUR, abs=5e-4
    )
    rounded = [math.floor(large_sample_range(m) + 0.5) for m in range(70, 100)]
    matches = sum(r == tolerated_range(m) for r, m in zip(rounded, range(70, 100), strict=True))
    assert matches == 24


def test_w14_two_tests_agree() -> None:
    assert two_agree(96, 92) is True, SEED_ACT
    assert two_agree(97, 91) is False
    assert (tolerated_difference(94), tolerated_difference(81)) == (4, 8)


UK_ROWS = ((99, 99, 2), (97, 98, 3), (94, 96, 4), (91, 93, 5), (87, 90, 6), (82, 86, 7),
           (76, 81, 8), (69, 75, 9), (65, 68, 10))  # fmt: skip


def test_w15_a_second_printing_differs_at_one_mean() -> None:
    # UK SSI 2005/328 Sch. 7 (read)
    differ = [
        mean
        for low, high, allowed in UK_ROWS
        for mean in range(low, high + 1)
        if tolerated_difference(mean) != allowed
    ]
    assert differ == [69]


@pytest.mark.parametrize(("seeds", "error"), [(20, 7.98), (400, 1.79)])
def test_w16_a_small_home_test_confirms_nothing(seeds: int, error: float) -> None:
    # own worked example: binomial, 85 %
    assert error_percent(85, seeds) == pytest.approx(error, abs=0.006)


def test_outside_the_tables_there_is_no_answer() -> None:
    assert tolerated_range(69) is None
    assert tolerated_range(100) is None
    assert tolerated_difference(50) is None
    assert two_agree(100, 100) is None


def test_impossible_tests_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match="first test"):
        two_agree(101, 90)
    with pytest.raises(OutOfRangeError, match="replicates"):
        binomial_range_limit(90, 1)
    with pytest.raises(OutOfRangeError, match="mean germination"):
        binomial_range_limit(100, 4)
    with pytest.raises(OutOfRangeError, match="seeds tested"):
        error_percent(85, 0)
