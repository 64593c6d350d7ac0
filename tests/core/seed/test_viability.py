from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import OutOfRangeError
from benchround.core.seed.viability import (
    ViabilityConstants,
    adjusted_percent,
    days_per_deviate,
    days_until,
    dry_basis,
    equilibrium_moisture,
    half_life_days,
    moisture_for,
    normal_deviate,
    temperature_for,
    viability_after,
    wet_basis,
)
from benchround.core.seed.viability_species import CONSTANTS, SHELF_YEARS
from tests.core.published import Figure, Seen, figure_cases

DOCS = "viabilitymetrics documentation output, github.com/aravind-j/viabilitymetrics docs/reference"
RICE = ViabilityConstants(8.242, 4.345, 0.0307, 0.000501, "Ellis & Hong 2007")
SOYBEAN_59 = ViabilityConstants(7.525, 4.086, 0.0329, 0.000478, "Ellis et al. 1982; Dickie 1990")
SOYBEAN_60 = ViabilityConstants(7.292, 3.996, 0.0295, 0.000491, "Ellis 1988")
CHICKPEA = ViabilityConstants(8.901, 4.847, 0.0329, 0.000478, "Ellis et al. 1982; Dickie 1990")

FIGURES = (
    Figure("sigma rice 10 % 5 C", DOCS, Seen.READ, 5382.388, 0.001,
           lambda: days_per_deviate(RICE, 10, 5)),
    Figure("sigma soybean (59) 8 % -18 C", DOCS, Seen.READ, 18719.85, 0.01,
           lambda: days_per_deviate(SOYBEAN_59, 8, -18)),
    Figure("sigma soybean (60) 8 % -18 C", DOCS, Seen.READ, 11354.51, 0.01,
           lambda: days_per_deviate(SOYBEAN_60, 8, -18)),
    Figure("rice 98 % after 365 d", DOCS, Seen.READ, 97.64797, 1e-5,
           lambda: viability_after(RICE, 98, 365, 10, 5)),
    Figure("rice 100 % of 50 seeds after 365 d", DOCS, Seen.READ, 99.39294, 1e-5,
           lambda: viability_after(RICE, adjusted_percent(100, 50), 365, 10, 5)),
    Figure("rice days 98 to 95 %", DOCS, Seen.READ, 2200.833, 0.001,
           lambda: days_until(RICE, 98, 95, 10, 5)),
    Figure("rice moisture for 3650 d", DOCS, Seen.READ, 8.900918, 1e-6,
           lambda: moisture_for(RICE, 98, 95, 3650, 5)),
    Figure("rice temperature for 3650 d", DOCS, Seen.READ, 10.252, 5e-4,
           lambda: temperature_for(RICE, 98, 95, 3650, 8)),
    Figure("P50 chickpea (24) 5 % -20 C", DOCS, Seen.READ, 1960829, 1,
           lambda: half_life_days(CHICKPEA, 98, 5, -20)),
    Figure("equilibrium moisture, dry basis", DOCS, Seen.READ, 4.03387, 5e-6,
           lambda: equilibrium_moisture(29, 13, 25)),
    Figure("equilibrium moisture, fresh basis", DOCS, Seen.READ, 3.877459, 1e-6,
           lambda: wet_basis(equilibrium_moisture(29, 13, 25))),
    Figure("fresh to dry basis 25 %", DOCS, Seen.READ, 33.33333, 1e-5, lambda: dry_basis(25)),
    Figure("dry to fresh basis 30 %", DOCS, Seen.READ, 23.07692, 1e-5, lambda: wet_basis(30)),
    Figure("deviate of 25 %", DOCS, Seen.READ, -0.6744898, 1e-7, lambda: normal_deviate(25)),
    Figure("probit of 99.5 %", DOCS, Seen.READ, 7.575829, 1e-6, lambda: 5 + normal_deviate(99.5)),
)  # fmt: skip


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_worked_cases(figure: Figure) -> None:
    figure.assert_reproduced()


@pytest.mark.parametrize("species", CONSTANTS)
def test_dry_and_cool_keeps_every_species_longer(species: str) -> None:
    one = CONSTANTS[species]
    room = half_life_days(one, 95, 8, 20)
    assert half_life_days(one, 95, 6, 20) > room
    assert half_life_days(one, 95, 8, 5) > room
    # a lot at 8 % in a room lasts more than a month and less than 100 years
    assert 30 < room < 100 * 365
    assert one.reference


@given(st.floats(60, 99), st.floats(1, 3000), st.floats(4, 14), st.floats(0, 30))
def test_days_and_viability_are_inverse(
    start: float, days: float, moisture: float, temp_c: float
) -> None:
    onion = CONSTANTS["Allium cepa"]
    left = viability_after(onion, start, days, moisture, temp_c)
    if 0.01 < left < start - 0.01:
        assert days_until(onion, start, left, moisture, temp_c) == pytest.approx(days, rel=1e-4)


def test_shelf_years_follow_the_lists() -> None:
    # Knott's Handbook 1997 via Iowa State (read in a copy); Christoffel list (read)
    assert [SHELF_YEARS[c] for c in ("onion", "leek", "carrot", "tomato", "lettuce")] == [
        1, 2, 3, 4, 6,
    ]  # fmt: skip
    assert [SHELF_YEARS[c] for c in ("delphinium", "sweet pea", "pansy", "zinnia")] == [1, 2, 3, 5]


@pytest.mark.parametrize(
    "call",
    [
        lambda: days_per_deviate(RICE, 0.0, 5),
        lambda: days_per_deviate(RICE, 40.0, 5),
        lambda: days_per_deviate(RICE, 10.0, 90),
        lambda: viability_after(RICE, 100.0, 10, 10, 5),
        lambda: viability_after(RICE, 98.0, -1, 10, 5),
        lambda: days_until(RICE, 90.0, 95.0, 10, 5),
        lambda: temperature_for(RICE, 98, 95, 1e12, 20),
        lambda: dry_basis(100.0),
        lambda: wet_basis(-1.0),
        lambda: equilibrium_moisture(29, 100, 25),
        lambda: adjusted_percent(101, 50),
        lambda: normal_deviate(0.0),
    ],
)
def test_impossible_stores_are_refused(call: object) -> None:
    assert callable(call)
    with pytest.raises(OutOfRangeError):
        call()


LETTUCE = CONSTANTS["Lactuca sativa"]


@pytest.mark.parametrize(
    ("answer", "words"),
    [
        # 10 ** ((6.895 + 0.0329 x 20 - 0.000478 x 400 - log10(1 / 0.3633)) / 4.2) = 44.5 % by hand
        (lambda: moisture_for(LETTUCE, 95, 90, 1, -20), "more than 25 %.*ask for more days"),
        (lambda: moisture_for(LETTUCE, 95, 90, 1e6, 40), "less than 2 %.*ask for fewer days"),
        (lambda: temperature_for(LETTUCE, 95, 90, 0.01, 10), "warmer than 60 C.*more days"),
        (lambda: temperature_for(LETTUCE, 95, 90, 600, 10), "less than -20 C.*fewer days"),
    ],
)
def test_what_the_equation_was_not_fitted_for_is_not_answered(
    answer: Callable[[], float], words: str
) -> None:
    with pytest.raises(OutOfRangeError, match=words):
        answer()
