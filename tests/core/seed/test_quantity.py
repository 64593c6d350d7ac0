import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, stats

from benchround.core.errors import OutOfRangeError
from benchround.core.seed.cells_needed import (
    blank_share,
    blank_share_uncertain,
    cells_needed,
    cells_needed_uncertain,
    chance_enough,
    chance_enough_uncertain,
    first_guess,
    least_germination,
    seeds_per_cell,
    share_with_plant,
)
from benchround.core.seed.quantity import germination_belief, how_many
from benchround.core.seed.room_needed import (
    bench_area_m2,
    compost_litres,
    trays_needed,
    trays_that_fit,
    vermiculite_litres,
)
from tests.core.published import Figure, Seen, figure_cases

NDSU = "Helms 2000, NDSU genetics course ds02"
SEDCOLE = "Sedcole 1977, Crop Science 17:667-668"
R = (1, 2, 3, 4, 5, 6, 8, 10, 15)
P = 0.80 * 0.95 * 0.90
OWN = "own worked example, two methods"
KEPT = (0.95, 0.90)

NEEDED = (
    *((f"S01 step up from 10.4: {NDSU} ({Seen.READ})", 1, 0.95, 0.25, 11),),
    *((f"S02 step up from 16.0: {NDSU} ({Seen.READ})", 1, 0.99, 0.25, 17),),
    (f"S04 selfers: Brown & Marshall 1995 in US Seeds of Success sec. 8 ({Seen.SECOND_HAND})",
     1, 0.95, 0.05, 59),
    (f"S04 outbreeders: Brown & Marshall 1995 in US Seeds of Success sec. 8 ({Seen.SECOND_HAND})",
     1, 0.95, 1 - 0.95**2, 30),
    *((f"S21 S22 P {c}: {OWN}", 24, c, P, n)
      for c, n in ((0.5, 35), (0.8, 38), (0.9, 40), (0.95, 42), (0.99, 46))),
    *((f"S25 two seeds, P {c}: {OWN}", 24, c, (1 - 0.2**2) * 0.855, n)
      for c, n in ((0.8, 31), (0.9, 33), (0.95, 34))),
)  # fmt: skip
TABLE = (
    ("S11", 1 / 2, 0.95, (5, 8, 11, 13, 16, 18, 23, 28, 40), Seen.FROM_MEMORY),
    ("S12", 1 / 4, 0.95, (11, 18, 23, 29, 34, 40, 50, 60, 84), Seen.FROM_MEMORY),
    ("S13", 1 / 8, 0.95, (23, 37, 49, 60, 71, 82, 103, 123, 172), Seen.FROM_MEMORY),
    ("S14", 1 / 16, 0.95, (47, 75, 99, 122, 144, 166, 208, 248, 347), Seen.FROM_MEMORY),
    ("S15", 1 / 32, 0.95, (95, 150, 200, 246, 291, 334, 418, 500, 697), Seen.FROM_MEMORY),
    ("S16", 1 / 64, 0.95, (191, 302, 401, 494, 584, 671, 839, 1002, 1397), Seen.FROM_MEMORY),
    ("S17", 3 / 4, 0.95, (3, 5, 6, 8, 9, 11, 14, 17, 25), Seen.DERIVED),
    ("S18", 1 / 4, 0.99, (17, 24, 31, 37, 43, 49, 60, 70, 96), Seen.FROM_MEMORY),
)


@pytest.mark.parametrize(
    ("want", "chance", "p", "cells"), [row[1:] for row in NEEDED], ids=[row[0] for row in NEEDED]
)
def test_cells_needed(want: int, chance: float, p: float, cells: int) -> None:
    assert cells_needed(want, chance, p) == cells
    assert want + int(stats.nbinom.ppf(chance, want, p)) == cells


@pytest.mark.parametrize(
    ("q", "chance", "row"),
    [row[1:4] for row in TABLE],
    ids=[f"{row[0]} q {row[1]:.3g}: {SEDCOLE} ({row[4]})" for row in TABLE],
)
def test_table_of_least_plants(q: float, chance: float, row: tuple[int, ...]) -> None:
    assert tuple(cells_needed(r, chance, q) for r in R) == row


def test_s01_s02_s03_trap_rounding_plants_down_misses_the_chance() -> None:
    # own worked example: 10 plants for 95 % and 16 for 99 % are one too few
    assert [chance_enough(n, 1, 0.25) for n in (10, 11, 16, 17)] == pytest.approx(
        [0.943686, 0.957765, 0.989977, 0.992483], abs=1e-6
    )


def test_s17_trap_the_recalled_three_quarter_row_is_not_reproduced() -> None:
    # the row recalled for q = 3/4 gives 13, 16, 23 at r = 8, 10, 15, short of 0.95
    for want, recalled in ((8, 13), (10, 16), (15, 23)):
        assert chance_enough(recalled, want, 0.75) < 0.95
        assert cells_needed(want, 0.95, 0.75) > recalled


@pytest.mark.parametrize(("want", "p"), [(1000, 0.684), (5000, 0.9), (900, 0.5)])
def test_trap_no_overflow_near_a_thousand_plants(want: int, p: float) -> None:
    cells = cells_needed(want, 0.95, p)
    assert cells == want + int(stats.nbinom.ppf(0.95, want, p))
    assert chance_enough(cells, want, p) == pytest.approx(
        float(stats.binom.sf(want - 1, cells, p)), abs=1e-9
    )


def test_trap_factorials_overflow_at_n_1000_where_the_exact_sum_does_not() -> None:
    # n = 1000 written out with factorials leaves the range of a float
    with pytest.raises(OverflowError):
        float(math.factorial(1000))
    for want in (1, 500, 684, 900, 1000):
        expected = float(stats.binom.sf(want - 1, 1000, P))
        assert chance_enough(1000, want, P) == pytest.approx(expected, abs=1e-12)
        unsure = float(stats.betabinom.sf(want - 1, 1000, 16, 4))
        assert chance_enough_uncertain(1000, want, 16, 4) == pytest.approx(unsure, abs=1e-5)


FIGURES = (
    Figure("S20 N/p", "own worked example", Seen.DERIVED, 35.0877, 5e-4, lambda: 24 / P),
    Figure("S20 odds of N/p", "own worked example", Seen.DERIVED, 0.572, 5e-4,
           lambda: chance_enough(35, 24, P)),
    Figure("S23 39 cells", OWN, Seen.DERIVED, 0.8623789, 1e-7, lambda: chance_enough(39, 24, P)),
    Figure("S23 40 cells", OWN, Seen.DERIVED, 0.9033814, 1e-7, lambda: chance_enough(40, 24, P)),
    Figure("S06", "scoins.net sixth-form paper Seeds, question 1c; value own", Seen.READ, 0.624,
           5e-4, lambda: least_germination(0.98, 4)),
    Figure("S07", "Montessori Muddle, Planting Probabilities", Seen.READ, 8 / 9, 1e-12,
           lambda: share_with_plant(2 / 3, 2)),
    Figure("S32", "Schubert & Fowells, US Forest Service Research Note 44; value own", Seen.READ,
           0.762695, 1e-6, lambda: share_with_plant(0.25, 5)),
    Figure("S31", "Gravner 65d at gateoverflow.in/246657; value own", Seen.READ, 0.576921998941,
           5e-6, lambda: chance_enough(3000, 3, 0.001)),
    Figure("S29 known", "own worked example", Seen.DERIVED, 0.04, 1e-12,
           lambda: blank_share(0.8, 2)),
    Figure("S29 uncertain", "own worked example", Seen.DERIVED, 0.0476, 5e-5,
           lambda: blank_share_uncertain(16, 4, 2)),
)  # fmt: skip


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_chances(figure: Figure) -> None:
    figure.assert_reproduced()


def test_s33_rare_success_needs_no_approximation() -> None:
    # Gravner 65d (question read, values own): Poisson says 11229
    assert cells_needed(3, 0.999, 0.001) == pytest.approx(11225, abs=12)


@pytest.mark.parametrize(
    ("filled", "germination", "seeds"),
    [
        pytest.param(0.97, 0.40, 7, id=f"S05: scoins.net Seeds 1d ({Seen.READ})"),
        *(
            pytest.param(0.95, g, n, id=f"S30 g {g}: own worked example")
            for g, n in ((0.9, 2), (0.8, 2), (0.7, 3), (0.6, 4), (0.5, 5), (0.4, 6))
        ),
        pytest.param(0.99, 0.9, 2, id="exactly reached: own worked example"),
        pytest.param(0.99, 1.0, 1, id="all come up: own worked example"),
    ],
)
def test_seeds_per_cell(filled: float, germination: float, seeds: int) -> None:
    assert seeds_per_cell(filled, germination) == seeds


@pytest.mark.parametrize(
    ("chance", "cells"), [(0.8, 40), (0.9, 43), (0.95, 47)], ids="S26 S27 P {}: own".format
)
def test_uncertain_germination_needs_more(chance: float, cells: int) -> None:
    assert cells_needed_uncertain(24, chance, 16, 4, 1, KEPT) == cells


@pytest.mark.parametrize(("seeds", "cells"), [(1, 43), (2, 33), (3, 32)])
def test_s28_the_third_seed_buys_one_cell(seeds: int, cells: int) -> None:
    found = how_many(24, 0.8, 20, KEPT, 0.9, seeds)
    assert (found.cells, found.seeds) == (cells, cells * seeds)


@pytest.mark.parametrize(
    ("a", "b", "per_cell", "kept"),
    [(16, 4, 1, KEPT), (16, 4, 2, KEPT), (400, 100, 1, ()), (24.5, 0.5, 1, ()), (0.5, 0.5, 2, ())],
)
def test_uncertain_chance_agrees_with_quadrature(
    a: float, b: float, per_cell: int, kept: tuple[float, ...]
) -> None:
    def at_quantile(u: float) -> float:
        g = float(stats.beta.ppf(u, a, b))
        return float(stats.binom.sf(23, 40, (1 - (1 - g) ** per_cell) * math.prod(kept)))

    expected = integrate.quad(at_quantile, 0, 1, limit=400)[0]
    ours = chance_enough_uncertain(40, 24, a, b, per_cell, kept)
    assert ours == pytest.approx(float(expected), abs=2e-6)


def test_beta_binomial_by_scipy() -> None:
    ours = chance_enough_uncertain(35, 24, 16, 4)
    assert ours == pytest.approx(float(stats.betabinom.sf(23, 35, 16, 4)), abs=1e-9)


def test_how_many_tells_all_figures() -> None:
    found = how_many(24, 0.80, survival=KEPT)
    assert (found.cells, found.seeds) == (40, 40)
    assert found.p == pytest.approx(0.684)
    assert found.expected_plants == pytest.approx(27.36)
    assert found.chance == pytest.approx(0.9033814, abs=1e-7)


def test_a_big_test_comes_to_the_same_as_a_known_share() -> None:
    known, tested = how_many(24, 0.8), how_many(24, 0.8, 100_000)
    assert tested.cells == known.cells
    assert tested.chance == pytest.approx(known.chance, abs=1e-3)


@pytest.mark.parametrize("germination", [1e-320, 5e-324, 1e-200, 1e-17])
def test_a_share_too_small_to_reckon_with_is_refused_in_words(germination: float) -> None:
    for survival in ((), (1e-10,)):
        with pytest.raises(OutOfRangeError, match=r"ask for fewer|give a figure above 0"):
            how_many(1, germination, None, survival)


@given(st.integers(1, 60), st.floats(0.3, 0.99), st.integers(5, 200))
def test_seeds_are_scipys_fewest(want: int, germination: float, tested: int) -> None:
    seeds = how_many(want, germination, tested).seeds
    belief = germination_belief(germination, tested)
    assert stats.betabinom.sf(want - 1, seeds, *belief) >= 0.9 - 1e-9
    assert seeds == want or stats.betabinom.sf(want - 1, seeds - 1, *belief) < 0.9 + 1e-9


def test_all_up_in_a_small_test_is_no_proof() -> None:
    assert how_many(24, 1.0).cells == 24
    assert how_many(24, 1.0, 20).cells > 24
    assert germination_belief(1.0, 20) == (20.0, 0.5)


@given(st.integers(1, 200), st.floats(0.05, 0.999), st.floats(0.02, 1.0))
def test_cells_are_enough_and_one_fewer_is_not(want: int, chance: float, p: float) -> None:
    cells = cells_needed(want, chance, p)
    assert chance_enough(cells, want, p) >= chance - 1e-9
    assert cells == want or chance_enough(cells - 1, want, p) < chance


@given(st.integers(1, 60), st.floats(0.3, 0.95), st.floats(0.2, 0.98), st.integers(5, 60))
def test_doubt_never_needs_fewer_cells_at_high_chance(
    want: int, chance: float, germination: float, tested: int
) -> None:
    high = max(chance, 0.9)
    known = how_many(want, germination, chance=high)
    doubted = how_many(want, germination, tested, chance=high)
    assert doubted.cells >= known.cells - 1


@given(st.integers(1, 500), st.floats(0.5, 0.99), st.floats(0.1, 0.99))
def test_first_guess_is_near(want: int, chance: float, p: float) -> None:
    # S24: exact or one off for the worked example's range; never far off
    exact = cells_needed(want, chance, p)
    assert abs(max(want, first_guess(want, chance, p)) - exact) <= 2 + 0.03 * exact + 2 / p


@pytest.mark.parametrize("p", [P, 0.5, 0.8, 0.9])
def test_s24_first_guess_is_exact_or_one_off(p: float) -> None:
    for chance in (0.5, 0.8, 0.9, 0.95, 0.99):
        assert abs(first_guess(24, chance, p) - cells_needed(24, chance, p)) <= 1


@pytest.mark.parametrize(
    ("call", "names"),
    [
        (lambda: how_many(0, 0.8), "plants wanted is 0.*from 1"),
        (lambda: how_many(24, 0.0), "germination share is 0.*above 0 and up to 1"),
        (lambda: how_many(24, 1.01), "germination share is 1.01.*above 0 and up to 1"),
        (lambda: how_many(24, -0.2), "germination share"),
        (lambda: how_many(24, math.nan), "germination share is nan"),
        (lambda: how_many(24, 0.8, chance=1.0), "chance wanted is 1.*above 0 and below 1"),
        (lambda: how_many(24, 0.8, chance=0.0), "chance wanted is 0.*above 0 and below 1"),
        (lambda: how_many(24, 0.8, per_cell=0), "seeds in a cell is 0, outside 1 to 1000"),
        (lambda: how_many(24, 0.8, survival=(0.9, 0.0)), "survival is 0"),
        (lambda: how_many(24, 0.8, tested=0), "seeds tested is 0"),
        (lambda: cells_needed(24, 0.9, 0.0), "above 0 and up to 1"),
        (lambda: cells_needed_uncertain(24, 0.9, 0.0, 1.0), "germination parameter a"),
        (lambda: cells_needed(10_000_000, 0.9, 0.5), "ask for fewer"),
        (lambda: cells_needed_uncertain(24, 0.999, 0.5, 20.0), "20000 cells"),
        (lambda: how_many(2.5, 0.8), "whole number"),  # type: ignore[arg-type]  # on purpose
        (lambda: seeds_per_cell(1.0, 0.8), "share of cells to fill"),
        (lambda: chance_enough(-1, 1, 0.5), "cells"),
    ],
)
def test_impossible_wishes_are_refused_by_name(call: object, names: str) -> None:
    assert callable(call)
    with pytest.raises(OutOfRangeError, match=names):
        call()


def test_room() -> None:
    # plain geometry: tray 380 x 240 mm, 6 mm of cover, cells of 25 ml
    assert trays_needed(40, 40) == 1
    assert trays_needed(41, 40) == 2
    assert trays_needed(0, 40) == 0
    assert compost_litres(84, 25.0) == pytest.approx(2.1)
    assert compost_litres(84, 25.0, 1.2) == pytest.approx(2.52)
    assert vermiculite_litres(2, 240.0, 380.0, 6.0) == pytest.approx(1.0944)
    assert bench_area_m2(10, 240.0, 380.0) == pytest.approx(0.912)
    assert trays_that_fit(0.912, 240.0, 380.0) == 10
    with pytest.raises(OutOfRangeError, match="cells in a tray"):
        trays_needed(10, 0)
    with pytest.raises(OutOfRangeError, match="width"):
        bench_area_m2(1, 0.0, 380.0)
    with pytest.raises(OutOfRangeError, match="depth"):
        vermiculite_litres(1, 240.0, 380.0, -1.0)
