import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import OutOfRangeError
from benchround.core.seed.germination_times import (
    day_of_count,
    days_to_share_of_sown,
    days_to_share_of_up,
    t50_coolbear,
    t50_farooq,
    uniform_days,
)
from benchround.core.seed.looks import Looks
from tests.core.published import Figure, Seen, figure_cases
from tests.core.samples import GERMINATIONMETRICS, SAMPLES, SEEDCALC, SEEDCALC_1, daily

INTERVALS = Looks.of(
    [(0, 6, 3), (6, 7, 9), (7, 10, 3), (10, 13, 8), (13, 16, 1), (16, 22, 1), (22, 23, 5)], 35
)
DRCTE = "data and rule: drcte 1.0.65 man/quantile.drcte.Rd; values own"


def number(value: float | None) -> float:
    assert value is not None
    return value


FIGURES = (
    Figure("T15 10 %", DRCTE, Seen.READ, 6.05555556, 1e-6,
           lambda: number(days_to_share_of_sown(INTERVALS, 0.1))),
    Figure("T15 30 %", DRCTE, Seen.READ, 6.83333333, 1e-6,
           lambda: number(days_to_share_of_sown(INTERVALS, 0.3))),
    Figure("T15 50 %", DRCTE, Seen.READ, 10.9375, 1e-6,
           lambda: number(days_to_share_of_sown(INTERVALS, 0.5))),
    Figure("G516 more than half at the first look", "own worked example", Seen.DERIVED,
           0.6666666667, 1e-9, lambda: number(t50_farooq(daily("30 10", 40)))),
)  # fmt: skip


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_interpolated_days(figure: Figure) -> None:
    figure.assert_reproduced()


# Trap: where a count equals the target exactly, published programs print a later day than for
# a larger target, or nothing at all. The day the target is reached is the answer.
@pytest.mark.parametrize(
    ("ours", "printed"),
    [
        pytest.param(t50_coolbear(SAMPLES["G3 rep 1"]), 6.333333, id=f"G403: {GERMINATIONMETRICS}"),
        pytest.param(t50_farooq(SAMPLES["G4 rep 1"]), 6.225806, id=f"G404: {GERMINATIONMETRICS}"),
        pytest.param(t50_coolbear(SAMPLES["G4 rep 2"]), 6.310345, id=f"G409: {GERMINATIONMETRICS}"),
        pytest.param(t50_farooq(SAMPLES["G5 rep 3"]), 6.259259, id=f"G415: {GERMINATIONMETRICS}"),
    ],
)
def test_trap_an_exact_hit_is_the_answer_not_the_printed_value(
    ours: float | None, printed: float
) -> None:
    assert ours == 6.0
    assert ours != pytest.approx(printed, abs=0.1)


def test_g513_g514_trap_exact_hits_where_a_program_prints_nothing() -> None:
    # SeedCalc prints NaN for T50 and T90 of its own example (read); strict flanks give 4.87
    assert t50_farooq(SEEDCALC_1) == 5.0, SEEDCALC
    assert days_to_share_of_up(SEEDCALC_1, 0.9) == 7.0
    assert t50_farooq(SEEDCALC_1) != pytest.approx(4.869565217391, abs=0.05)


def test_g515_trap_a_plateau_at_half_gives_the_first_day_reached() -> None:
    # own worked example; strict flanks give 3.0
    assert t50_farooq(daily("0 10 0 0 10", 20)) == 2.0


def test_t50_does_not_run_backwards() -> None:
    # Ng/2 is below (Ng+1)/2, so the Farooq day may never be the later one
    for looks in SAMPLES.values():
        assert number(t50_farooq(looks)) <= number(t50_coolbear(looks))


@given(st.lists(st.integers(0, 9), min_size=1, max_size=12), st.floats(0.01, 1), st.floats(0.01, 1))
def test_days_grow_with_the_share(counts: list[int], one: float, other: float) -> None:
    looks = Looks.on_days(range(1, len(counts) + 1), counts, max(1, sum(counts)))
    first, last = (days_to_share_of_up(looks, s) for s in sorted((one, other)))
    if sum(counts) == 0:
        assert first is None and last is None and uniform_days(looks) is None
    else:
        assert 0.0 < number(first) <= number(last) <= len(counts)


def test_shares_not_reached_have_no_day() -> None:
    assert days_to_share_of_sown(INTERVALS, 0.9) is None
    assert day_of_count(INTERVALS, 31) is None
    assert day_of_count(INTERVALS, 30) == 23


def test_impossible_shares_are_refused() -> None:
    with pytest.raises(OutOfRangeError):
        days_to_share_of_up(INTERVALS, 0.0)
    with pytest.raises(OutOfRangeError):
        days_to_share_of_sown(INTERVALS, 1.1)
    with pytest.raises(OutOfRangeError):
        day_of_count(INTERVALS, 0)
