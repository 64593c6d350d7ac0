import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import InputError, OutOfRangeError
from benchround.core.seed.cold_soil import cold_soil_words, needed_first_words
from benchround.core.seed.emergence import (
    EmergenceDays,
    days_at,
    give_up_heat,
    late_heat,
    median_early_late,
    why_none,
)
from benchround.core.seed.emergence_fit import fit_from_table
from benchround.core.seed.thermal_model import (
    ThermalModel,
    chance_nothing,
    emerged_share,
    heat_for_share,
    heat_of_day,
    heat_of_hours,
)
from benchround.crops.library import load_library
from tests.core.published import Seen

ONION = ThermalModel(2.5, 25.0, 38.0, 80.0, 0.25)
BREWSTER = f"Brewster, Onions and Other Vegetable Alliums, from Harrington 1962 ({Seen.READ})"
CALENDULA = ThermalModel(5.5, 25.0, 35.0, 89.0, 0.25)
models = st.builds(
    lambda base, rise, fall, theta, sigma: ThermalModel(
        base, base + rise, base + rise + fall, theta, sigma
    ),
    st.floats(-5, 15),
    st.floats(5, 25),
    st.floats(1, 15),
    st.floats(10, 500),
    st.floats(0.05, 1.0),
)


@pytest.mark.parametrize(
    ("model", "temp_c", "days", "within"),
    [
        pytest.param(ONION, 22.5, 4.0, 1e-9, id=f"onion 80 C d at 22.5 C: {BREWSTER}"),
        pytest.param(ONION, 7.5, 16.0, 1e-9, id=f"onion 80 C d at 7.5 C: {BREWSTER}"),
        pytest.param(
            CALENDULA, 18.2, 7.0, 0.05, id=f"D14 calendula, Joly et al. 2013 ({Seen.READ})"
        ),
    ],
)
def test_days_at_a_temperature(
    model: ThermalModel, temp_c: float, days: float, within: float
) -> None:
    assert days_at(model, temp_c) == pytest.approx(days, abs=within)


@pytest.mark.parametrize(
    ("mean_c", "heat"),
    [(2.5, 0.0), (-30.0, 0.0), (3.5, 1.0), (25.0, 22.5), (30.0, 22.5), (38.0, 0.0), (50.0, 0.0)],
)
def test_heat_rises_from_base_holds_and_ends_at_the_ceiling(mean_c: float, heat: float) -> None:
    assert heat_of_day(ONION, mean_c) == pytest.approx(heat)


def test_heat_falls_in_a_straight_line_after_the_plateau() -> None:
    start = ONION.fall_starts_c
    assert start == pytest.approx(25.0 + 0.7 * 13.0)
    assert heat_of_day(ONION, (start + 38.0) / 2.0) == pytest.approx(22.5 / 2.0)


def test_hours_add_up_to_days_and_show_what_a_mean_hides() -> None:
    assert heat_of_hours(ONION, [12.5] * 24) == pytest.approx(heat_of_day(ONION, 12.5))
    swinging = [0.0] * 12 + [10.0] * 12
    assert heat_of_day(ONION, 5.0) == pytest.approx(2.5)
    assert heat_of_hours(ONION, swinging) == pytest.approx(3.75)
    assert heat_of_hours(ONION, []) == 0.0


def test_nothing_comes_up_outside_base_and_ceiling_and_the_reason_is_told() -> None:
    assert days_at(ONION, 2.5) is None
    assert "below its base of 2.5 C" in (why_none(ONION, 2.5) or "")
    assert days_at(ONION, 40.0) is None
    assert "above its ceiling of 38 C" in (why_none(ONION, 40.0) or "")
    assert why_none(ONION, 20.0) is None
    assert median_early_late(ONION, 1.0) is None


def test_packet_days_are_read_as_tenth_and_ninetieth_percentile() -> None:
    # common practice, no source: "7 to 14 days at 20 C"
    model = ThermalModel.from_days(7.0, 14.0, 20.0, 5.0, 25.0, 35.0)
    span = median_early_late(model, 20.0)
    assert isinstance(span, EmergenceDays)
    assert (span.early, span.median, span.late) == pytest.approx(
        (7.0, math.sqrt(98.0), 14.0), rel=1e-4
    )


def test_packet_days_without_a_range_get_the_least_spread() -> None:
    model = ThermalModel.from_days(10.0, 10.0, 20.0, 5.0, 25.0, 35.0)
    assert model.sigma == 0.10
    assert days_at(model, 20.0) == pytest.approx(10.0)


def test_shares_of_the_log_normal() -> None:
    assert emerged_share(ONION, 80.0) == pytest.approx(0.5)
    assert emerged_share(ONION, 80.0 * math.exp(0.25)) == pytest.approx(0.841344746, abs=1e-8)
    assert emerged_share(ONION, 0.0) == 0.0
    assert chance_nothing(ONION, 80.0 * math.exp(0.25)) == pytest.approx(0.158655254, abs=1e-8)


def test_late_and_give_up_heat_follow_the_published_example_in_heat() -> None:
    # germination figures T25, T26 with degree-days in place of days (own worked example)
    model = ThermalModel(0.0, 20.0, 30.0, 10.0, 0.30)
    assert late_heat(model) == pytest.approx(14.69, abs=0.005)
    assert give_up_heat(model) == pytest.approx(17.76, abs=0.005)


@given(models, st.floats(0.01, 0.99))
def test_share_and_heat_are_inverse(model: ThermalModel, share: float) -> None:
    assert emerged_share(model, heat_for_share(model, share)) == pytest.approx(share, abs=1e-9)


@given(models, st.floats(-20, 60))
def test_heat_is_never_negative_nor_above_the_optimum(model: ThermalModel, mean_c: float) -> None:
    heat = heat_of_day(model, mean_c)
    assert 0.0 <= heat <= model.optimum_c - model.base_c + 1e-9
    assert (days_at(model, mean_c) is None) == (why_none(model, mean_c) is not None)


@given(models, st.floats(-20, 59.8), st.floats(0.001, 0.2))
def test_heat_has_no_jumps(model: ThermalModel, mean_c: float, step: float) -> None:
    steepest = max(
        1.0,
        (model.optimum_c - model.base_c) / (model.ceiling_c - model.fall_starts_c),
    )
    change = abs(heat_of_day(model, mean_c + step) - heat_of_day(model, mean_c))
    assert change <= steepest * step * 1.0001 + 1e-9


@pytest.mark.parametrize(
    "wrong",
    [
        (10.0, 5.0, 30.0, 80.0, 0.2),
        (5.0, 30.0, 30.0, 80.0, 0.2),
        (5.0, 25.0, 35.0, 0.0, 0.2),
        (5.0, 25.0, 35.0, 80.0, 0.0),
        (5.0, 25.0, 35.0, math.nan, 0.2),
        (5.0, 25.0, 35.0, math.inf, 0.2),
        (math.nan, 25.0, 35.0, 80.0, 0.2),
    ],
)
def test_impossible_models_are_refused(wrong: tuple[float, float, float, float, float]) -> None:
    with pytest.raises(OutOfRangeError):
        ThermalModel(*wrong)


def test_impossible_questions_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match="share up"):
        days_at(ONION, 20.0, 1.0)
    with pytest.raises(OutOfRangeError, match="heat"):
        emerged_share(ONION, -1.0)
    with pytest.raises(OutOfRangeError, match="mean"):
        heat_of_day(ONION, math.nan)
    with pytest.raises(OutOfRangeError, match="2 C"):
        ThermalModel.from_days(5.0, 9.0, 2.0, 5.0, 25.0, 35.0)
    with pytest.raises(OutOfRangeError, match="days to the last"):
        ThermalModel.from_days(9.0, 5.0, 20.0, 5.0, 25.0, 35.0)


def test_a_row_made_by_the_model_is_found_again() -> None:
    true = ThermalModel(4.0, 26.0, 38.0, 120.0, 0.25)
    points = [(t, days_at(true, t)) for t in (0.0, 8.0, 12.0, 16.0, 20.0, 26.0, 30.0, 36.5, 38.0)]
    found = fit_from_table(points)
    assert found.base_c == pytest.approx(true.base_c, abs=0.7)
    assert found.optimum_c == pytest.approx(true.optimum_c, abs=1.0)
    for temp_c, days in points[1:-2]:
        assert days_at(found, temp_c) == pytest.approx(days, rel=0.08)


def test_fitting_is_deterministic_and_ignores_the_order_of_the_row() -> None:
    row = [(15.0, 14.0), (5.0, None), (20.0, 8.0), (30.0, 6.0), (35.0, 9.0), (40.0, None)]
    assert fit_from_table(row) == fit_from_table(row[::-1]) == fit_from_table(row)


def test_cold_and_heat_where_nothing_came_up_bound_base_and_ceiling() -> None:
    found = fit_from_table([(10.0, None), (15.0, 25.0), (20.0, 13.0), (30.0, 8.0), (35.0, None)])
    assert found.base_c >= 10.0
    assert found.ceiling_c <= 35.0


@pytest.mark.parametrize(
    "row",
    [
        [],
        [(20.0, 8.0)],
        [(15.0, None), (20.0, None)],
        [(15.0, 9.0), (20.0, None), (25.0, 6.0)],
    ],
)
def test_rows_that_cannot_be_fitted_are_refused(row: list[tuple[float, float | None]]) -> None:
    with pytest.raises(InputError):
        fit_from_table(row)


def test_days_that_cannot_be_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match="days to emergence"):
        fit_from_table([(15.0, 0.0), (20.0, 5.0)])


@pytest.mark.parametrize(
    ("key", "least_c"),
    [  # 60 F and 50 F: J.F. Harrington, Oregon State University Extension (read)
        ("french-bean", 15.0),
        ("runner-bean", 15.0),
        ("cucumber", 15.0),
        ("courgette", 15.0),
        ("sweetcorn", 10.0),
    ],
)
def test_seed_of_warm_crops_rots_in_cold_soil(key: str, least_c: float) -> None:
    """Cold wet soil rots it (common practice, no source)."""
    crop = load_library()[key]
    assert "rots" in cold_soil_words(crop, least_c - 0.5)
    assert cold_soil_words(crop, least_c) == ""
    assert cold_soil_words(load_library()["broad-bean"], 5.0) == ""


@pytest.mark.parametrize(
    ("key", "words"),
    [  # warmth, then cold, as a hellebore has them from summer to spring (common practice)
        ("hellebore", "days of warmth at 20 C, then 56 days of cold at 4 C first"),
        ("aquilegia", "42 days of cold"),
        ("primrose", "28 days of cold at 4 C first"),
    ],
)
def test_seed_that_wants_warmth_or_cold_first_says_so(key: str, words: str) -> None:
    assert words in needed_first_words(load_library()[key])
    assert needed_first_words(load_library()["tomato"]) == ""
