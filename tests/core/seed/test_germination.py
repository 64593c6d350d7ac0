import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from benchround.core.errors import OutOfRangeError
from benchround.core.numbers.shares import none_up_limit, wilson
from benchround.core.seed.germination import germination_summary
from benchround.core.seed.germination_times import germination_curve
from benchround.core.seed.looks import Look, Looks
from tests.core.published import Figure, Seen, figure_cases
from tests.core.samples import LOBELIA_15, REFERENCE


def test_summary_of_the_reference_sample() -> None:
    # values G01-G21 of germinationmetrics (read); interval: Wilson
    found = germination_summary(REFERENCE)
    assert (found.sown, found.up, found.final_share) == (50, 40, 0.8)
    assert found.t50_coolbear == pytest.approx(5.97058823529412)
    assert found.t50_farooq == found.t50_days == pytest.approx(5.94117647058824)
    assert found.mean_days == pytest.approx(6.7)
    assert found.mean_days_middle == pytest.approx(6.2)
    assert found.speed == pytest.approx(6.13892496392496)
    assert found.uniformity == pytest.approx(0.709219858156028)
    assert found.synchrony == pytest.approx(0.266666666666667)
    assert (found.low, found.high) == wilson(40, 50)


def test_summary_fits_the_time_of_those_that_came_up() -> None:
    found = germination_summary(LOBELIA_15)
    assert found.median_fit is not None and found.sigma_fit is not None
    # below the 9.39 d (T10) that counts the eight seeds never up as still to come
    assert 7.5 < found.median_fit < 9.39
    assert found.median_fit_error is not None and found.median_fit_error > 0.4


def test_summary_takes_plain_tuples() -> None:
    plain = [(step[0], step[1], step[2]) for step in REFERENCE.steps]
    assert germination_summary(plain, 50) == germination_summary(REFERENCE)
    assert germination_summary(REFERENCE, 200).final_share == 0.2


@pytest.mark.parametrize(
    ("steps", "undefined"),
    [
        ([], {"t50_days", "mean_days", "speed", "uniformity", "synchrony", "median_fit"}),
        ([(0, 5, 0)], {"t50_days", "mean_days", "speed", "uniformity", "synchrony"}),
        ([(0, 5, 1)], {"uniformity", "synchrony", "median_fit", "spread_days"}),
        ([(0, 5, 4)], {"uniformity", "median_fit"}),
    ],
    ids=["never looked", "nothing up", "one up", "all at one look"],
)
def test_summary_leaves_undefined_figures_out(
    steps: list[tuple[float, float, int]], undefined: set[str]
) -> None:
    found = germination_summary(steps, 10)
    for name in undefined:
        assert getattr(found, name) is None, name
    assert 0.0 <= found.low <= found.final_share <= found.high <= 1.0


def test_curve() -> None:
    looks = Looks.on_days([4, 6, 9], [1, 3, 0], 8)
    assert germination_curve(looks) == ((0.0, 0.0), (4, 0.125), (6, 0.5), (9, 0.5))


FIGURES = (
    Figure("L11 low", "Wilson 1927 formula", Seen.FROM_MEMORY, 0.4901625, 1e-6,
           lambda: wilson(8, 10)[0]),
    Figure("L11 high", "Wilson 1927 formula", Seen.FROM_MEMORY, 0.9433178, 1e-6,
           lambda: wilson(8, 10)[1]),
    Figure("L13 of 10", "own worked example", Seen.DERIVED, 0.258866, 1e-6,
           lambda: none_up_limit(10)),
    Figure("L13 of 20", "own worked example", Seen.DERIVED, 0.139108, 1e-6,
           lambda: none_up_limit(20)),
    Figure("L13 of 50", "own worked example", Seen.DERIVED, 0.058155, 1e-6,
           lambda: none_up_limit(50)),
)  # fmt: skip


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_limits_of_a_share(figure: Figure) -> None:
    figure.assert_reproduced()


@pytest.mark.parametrize(("y", "n"), [(8, 10), (0, 40), (45, 50), (40, 40), (1, 1)])
def test_l12_wilson_agrees_with_scipy(y: int, n: int) -> None:
    expected = stats.binomtest(y, n).proportion_ci(0.95, method="wilson")
    assert wilson(y, n) == pytest.approx((float(expected.low), float(expected.high)), abs=1e-7)


@given(st.integers(1, 500), st.data())
def test_wilson_holds_the_share(n: int, data: st.DataObject) -> None:
    y = data.draw(st.integers(0, n))
    low, high = wilson(y, n)
    assert 0.0 <= low <= y / n <= high <= 1.0


@pytest.mark.parametrize(
    ("steps", "sown"),
    [
        ([(0, 5, 11)], 10),
        ([(0, 5, -1)], 10),
        ([(5, 5, 1)], 10),
        ([(0, 5, 1), (4, 7, 1)], 10),
        ([(-1, 5, 1)], 10),
        ([(0, 5, 1)], 0),
        ([(0, float("nan"), 1)], 10),
    ],
    ids=["too many up", "negative", "no time", "overlap", "before sowing", "none sown", "nan"],
)
def test_impossible_looks_are_refused(steps: list[tuple[float, float, int]], sown: int) -> None:
    with pytest.raises(OutOfRangeError):
        Looks.of(steps, sown)


def test_impossible_questions_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match="missing"):
        germination_summary([(0, 5, 1)])
    with pytest.raises(OutOfRangeError, match="one count for each"):
        Looks.on_days([1, 2], [3], 10)
    with pytest.raises(OutOfRangeError, match="12 are up of 10"):
        wilson(12, 10)
    with pytest.raises(OutOfRangeError, match="seeds sown"):
        none_up_limit(0)
    with pytest.raises(OutOfRangeError, match="not a whole number"):
        Looks((Look(0, 5, 2.5),), 10)  # type: ignore[arg-type]  # a wrong count on purpose
