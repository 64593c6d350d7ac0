import numpy
import pytest
from scipy import integrate, special, stats

from benchround.core.errors import OutOfRangeError
from benchround.core.seed.partial_count import (
    chance_dead_after_none,
    chance_final_at_least,
    chance_none_up,
    expected_final,
    expected_final_uncertain,
    final_count_chances,
    germination_after_none,
)

# T30-T36: own worked examples, checked by several methods.
N, A, B, DUE = 12, 16.0, 4.0, 0.30


def test_t30_t31_none_up_by_sum_quadrature_and_hypergeometric() -> None:
    ours = chance_none_up(N, A, B, DUE)
    assert ours == pytest.approx(0.040346992283, abs=1e-10)
    assert ours == pytest.approx(float(special.hyp2f1(-N, A, A + B, DUE)), abs=1e-10)
    quad = integrate.quad(lambda g: (1 - g * DUE) ** N * stats.beta.pdf(g, A, B), 0, 1)[0]
    assert ours == pytest.approx(float(quad), abs=1e-10)


def test_t32_germination_after_none() -> None:
    assert germination_after_none(N, A, B, DUE) == pytest.approx(0.7600543104, abs=1e-9)


def test_t33_dead_after_none() -> None:
    dead = chance_dead_after_none(chance_none_up(N, A, B, DUE), 0.05)
    assert dead == pytest.approx(0.56605, abs=5e-5)


def test_t34_t35_final_count() -> None:
    assert expected_final_uncertain(20, 6, A, B, 0.5) == pytest.approx(14.948261803477, abs=1e-8)
    assert chance_final_at_least(20, 6, A, B, 0.5, 12) == pytest.approx(0.918491630743, abs=1e-6)
    assert sum(final_count_chances(20, 6, A, B, 0.5)) == pytest.approx(1.0)


def test_t34_against_quadrature() -> None:
    def weight(g: float) -> float:
        return float(g**6 * (1 - g * 0.5) ** 14 * stats.beta.pdf(g, A, B))

    def mean(g: float) -> float:
        return expected_final(20, 6, g, 0.5) if g > 0 else 6.0

    top = integrate.quad(lambda g: mean(g) * weight(g), 0, 1)[0]
    bottom = integrate.quad(weight, 0, 1)[0]
    assert expected_final_uncertain(20, 6, A, B, 0.5) == pytest.approx(
        float(top / bottom), abs=1e-6
    )


def test_t36_known_germination() -> None:
    assert expected_final(20, 6, 0.8, 0.5) == pytest.approx(15.3333333, abs=1e-6)


def test_edges() -> None:
    assert expected_final(20, 6, 1.0, 1.0) == 6.0
    assert expected_final(20, 20, 0.9, 0.5) == 20.0
    assert expected_final(20, 0, 0.8, 0.0) == pytest.approx(16.0)
    assert expected_final_uncertain(20, 6, A, B, 1.0) == pytest.approx(6.0)
    assert chance_final_at_least(20, 6, A, B, 0.5, 3) == pytest.approx(1.0)
    assert chance_final_at_least(20, 6, A, B, 0.5, 21) == 0.0
    assert chance_none_up(5, A, B, 0.0) == pytest.approx(1.0)


@pytest.mark.parametrize("due", [0.0, 0.5, 0.9999999, 1.0])
def test_chances_follow_the_gamma_functions(due: float) -> None:
    """Each weight from scipy's logarithms of C(n, k) and B, in one go instead of step by step."""
    more = numpy.arange(141)
    logs = special.betaln(18 + 60 + more, 7 + 140 - more) + special.gammaln(141.0)
    logs -= special.gammaln(more + 1.0) + special.gammaln(141.0 - more)
    logs += special.xlogy(more, 1.0 - due)
    weights = numpy.exp(logs - logs.max())
    assert final_count_chances(200, 60, 18.0, 7.0, due) == pytest.approx(weights / weights.sum())


@pytest.mark.parametrize("up", [300, 600, 1000])
def test_seed_sold_as_sure_of_which_half_never_comes_leaves_a_number(up: int) -> None:
    """A belief near 100 %, 2,000 seeds and all that live up: the weights span 600 powers of ten."""
    chances = final_count_chances(2000, up, 24.975, 0.025, 1.0)
    assert chances[0] == 1.0 and sum(chances) == 1.0
    assert len(chances) == 2001 - up
    assert expected_final_uncertain(2000, up, 24.975, 0.025, 1.0 - 1e-12) >= up


def test_impossible_inputs_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match="25 are up of 20"):
        expected_final(20, 25, 0.8, 0.5)
    with pytest.raises(OutOfRangeError, match="germination share"):
        expected_final(20, 5, 0.0, 0.5)
    with pytest.raises(OutOfRangeError, match="by now"):
        chance_none_up(12, A, B, 1.5)
    with pytest.raises(OutOfRangeError, match="seeds sown"):
        chance_none_up(0, A, B, 0.5)
