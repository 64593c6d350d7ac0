import math

import pytest

from benchround.core.errors import OutOfRangeError
from benchround.core.seed.weight import (
    SeedWeight,
    grams_of_seeds,
    seeds_in_grams,
    seeds_per_gram,
    seeds_per_gram_of_ounce,
    seeds_per_ounce,
    sowing_rate_kg_per_ha,
    weigh,
    working_sample_g,
)
from tests.core.published import Figure, Seen, figure_cases

FRSA = "FRSA tutorial on AOSA Appendix 4 (2001), Dimorphotheca sinuata; results own"
AOSA = "AOSA 2019 rule change proposals 15 and 10, Table 2A rows"

# The eight weights were read only as sum 1.7061 g and sum of squares 0.36397635 g^2: these
# eight have the same two sums, so every figure derived from them is the same.
_MEAN, _SD = 1.7061 / 8, math.sqrt((8 * 0.36397635 - 1.7061**2) / 56)
HUNDREDS = [_MEAN + sign * _SD * math.sqrt(7 / 8) for sign in (1, -1) * 4]
DIMORPHOTHECA = weigh(HUNDREDS)

FIGURES = (
    Figure("W01 mean", FRSA, Seen.READ, 0.2132625, 1e-9, lambda: DIMORPHOTHECA.mean_g),
    Figure("W02 variance", FRSA, Seen.READ, 1.8457e-05, 5e-9, lambda: DIMORPHOTHECA.variance),
    Figure("W02 CV", FRSA, Seen.READ, 2.0145, 5e-5, lambda: DIMORPHOTHECA.variation_percent),
    Figure("W03 thousand seeds", "own worked example", Seen.DERIVED, 2.132625, 1e-4,
           lambda: DIMORPHOTHECA.thousand_g),
    Figure("W03 seeds per gram", "own worked example", Seen.DERIVED, 468.9057, 1e-4,
           lambda: seeds_per_gram(2.132625)),
    Figure("W03 2500 seeds", "own worked example", Seen.DERIVED, 5.33156, 1e-4,
           lambda: grams_of_seeds(2500, 468.905691342829)),
    Figure("W05", "plantscienceconsulting.com.au crop seed quality test page", Seen.READ, 75.0,
           1e-9, lambda: sowing_rate_kg_per_ha(40, 150, 0.80)),
    Figure("W06 Sidalcea", AOSA, Seen.READ, 4547, 15, lambda: seeds_per_ounce(160)),
    Figure("W06 Lupinus", AOSA, Seen.READ, 1848, 15, lambda: seeds_per_ounce(65)),
    Figure("W07 Sidalcea", AOSA, Seen.READ, 16, 0, lambda: working_sample_g(160)),
    Figure("W07 Lupinus", AOSA, Seen.READ, 39, 0, lambda: working_sample_g(65)),
)  # fmt: skip


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_seed_weights(figure: Figure) -> None:
    figure.assert_reproduced()


@pytest.mark.parametrize(
    ("per_ounce", "per_gram"),
    [
        (8500, 300),
        (140000, 4900),
        (68000, 2400),
        (200000, 7000),
        (95000, 3325),
        (17400, 614),
        (90000, 3150),
        (56000, 1960),
        (28500, 1000),
        (70000, 2450),
    ],
    ids=lambda n: f"W08 {n}: Seed Crop Information sheet, paperzz.com/doc/8030900 (read)",
)
def test_printed_charts_agree_within_two_per_cent(per_ounce: int, per_gram: int) -> None:
    assert seeds_per_gram_of_ounce(per_ounce) == pytest.approx(per_gram, rel=0.015)


def test_w04_even_weighings() -> None:
    # limits of ISTA Rules ch. 10, from memory
    assert DIMORPHOTHECA.is_even()
    assert not SeedWeight(0.2, 1e-4, 2.0, 500.0, 5.0).is_even()
    assert SeedWeight(0.2, 1e-4, 2.0, 500.0, 5.0).is_even(chaffy=True)


def test_seeds_in_a_packet() -> None:
    assert seeds_in_grams(0.5, 300) == 150
    assert seeds_in_grams(0.0, 300) == 0


def test_impossible_weights_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match="at least two"):
        weigh([0.2])
    with pytest.raises(OutOfRangeError, match="100 seeds"):
        weigh([0.2, 0.0])
    with pytest.raises(OutOfRangeError, match="thousand-seed"):
        seeds_per_gram(0.0)
    with pytest.raises(OutOfRangeError, match="seeds per gram"):
        grams_of_seeds(10, 0.0)
    with pytest.raises(OutOfRangeError, match="germination share"):
        sowing_rate_kg_per_ha(40, 150, 0.0)
