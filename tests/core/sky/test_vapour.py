import math

import pyet
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import OutOfRangeError
from benchround.core.sky import vapour
from tests.core.published import FAO56, Figure, Seen, figure_cases

SECOND = Seen.SECOND_HAND

FIGURES = [
    Figure("E01 pressure at 1800 m", f"{FAO56}, ex. 2", SECOND, 81.8, 0.05,
           lambda: vapour.pressure_kpa(1800.0)),
    Figure("E02 psychrometric constant", f"{FAO56}, ex. 2", SECOND, 0.054, 0.0005,
           lambda: vapour.psychrometric_kpa_per_c(81.8)),
    Figure("E04 mean saturation 24.5/15", f"{FAO56}, ex. 3", SECOND, 2.39, 0.005,
           lambda: vapour.mean_saturation_kpa(15.0, 24.5)),
    Figure("E06 actual from extremes", f"{FAO56}, ex. 5", SECOND, 1.70, 0.005,
           lambda: vapour.actual_from_extremes_kpa(18.0, 25.0, 82.0, 54.0)),
    Figure("E07 actual from mean humidity", f"{FAO56}, ex. 5", SECOND, 1.78, 0.005,
           lambda: vapour.actual_from_mean_humidity_kpa(18.0, 25.0, 68.0)),
    Figure("E08 actual from wet bulb", f"{FAO56}, ex. 4", SECOND, 1.91, 0.005,
           lambda: vapour.actual_from_wet_bulb_kpa(25.6, 19.5, 87.9)),
    Figure("V01 deficit at 31 degC 24 %", f"{FAO56}, eq. 11", SECOND, 3.42, 0.01,
           lambda: vapour.deficit_kpa(31.0, 24.0)),
    Figure("V01 actual at 31 degC 24 %", f"{FAO56}, eq. 11", SECOND, 1.08, 0.01,
           lambda: vapour.saturation_kpa(31.0) - vapour.deficit_kpa(31.0, 24.0)),
]  # fmt: skip

SATURATION = {15.0: 1.705, 20.0: 2.338, 24.5: 3.075, 25.0: 3.168, 30.0: 4.243, 35.0: 5.623}
SLOPE = {20.0: 0.145, 25.0: 0.189, 30.0: 0.243}
DEFICIT = {(10.0, 80.0): 0.2456, (5.0, 90.0): 0.0872, (20.0, 60.0): 0.9353, (25.0, 54.0): 1.4572}


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_published_figures(figure: Figure) -> None:
    figure.assert_reproduced()


@pytest.mark.parametrize(
    ("temp_c", "published_kpa"),
    SATURATION.items(),
    ids=[f"E03 {t} degC: {FAO56}, table 2.3 ({SECOND})" for t in SATURATION],
)
def test_saturation_table(temp_c: float, published_kpa: float) -> None:
    assert vapour.saturation_kpa(temp_c) == pytest.approx(published_kpa, abs=0.001)


@pytest.mark.parametrize(
    ("temp_c", "published"),
    SLOPE.items(),
    ids=[f"E05 {t} degC: {FAO56}, table 2.4 ({SECOND})" for t in SLOPE],
)
def test_slope_table(temp_c: float, published: float) -> None:
    assert vapour.slope_kpa_per_c(temp_c) == pytest.approx(published, abs=0.0006)


@pytest.mark.parametrize(
    ("air", "derived_kpa"),
    DEFICIT.items(),
    ids=[f"V03 {t} degC {rh} %: FAO form ({Seen.DERIVED})" for t, rh in DEFICIT],
)
def test_deficit(air: tuple[float, float], derived_kpa: float) -> None:
    assert vapour.deficit_kpa(*air) == pytest.approx(derived_kpa, abs=0.001)


@pytest.mark.parametrize("temp_c", [-20.0, -5.0, 0.0, 7.5, 18.0, 33.0])
def test_pyet_agrees_on_saturation_and_slope(temp_c: float) -> None:
    assert vapour.saturation_kpa(temp_c) == pytest.approx(float(pyet.calc_e0(temp_c)), rel=2e-4)
    assert vapour.slope_kpa_per_c(temp_c) == pytest.approx(float(pyet.calc_vpc(temp_c)), rel=2e-4)


@pytest.mark.parametrize("altitude_m", [0.0, 100.0, 546.0, 1800.0, 3500.0])
def test_pyet_agrees_on_pressure_and_psychrometric_constant(altitude_m: float) -> None:
    pressure = vapour.pressure_kpa(altitude_m)
    assert pressure == pytest.approx(float(pyet.calc_press(altitude_m)), rel=1e-4)
    assert vapour.psychrometric_kpa_per_c(pressure) == pytest.approx(
        float(pyet.calc_psy(pressure)), rel=1e-3
    )


@given(st.floats(-50.0, 70.0))
def test_dew_point_undoes_saturation(temp_c: float) -> None:
    assert vapour.dew_point_c(vapour.saturation_kpa(temp_c)) == pytest.approx(temp_c, abs=1e-6)


@given(st.floats(-59.0, 74.0))
def test_slope_is_the_derivative_of_saturation(temp_c: float) -> None:
    step = 0.01
    rise = vapour.saturation_kpa(temp_c + step) - vapour.saturation_kpa(temp_c - step)
    assert vapour.slope_kpa_per_c(temp_c) == pytest.approx(rise / (2.0 * step), rel=1e-3)


def test_air_with_dew_point_at_the_minimum_holds_what_the_minimum_can() -> None:
    assert vapour.actual_from_minimum_kpa(15.0) == pytest.approx(1.705, abs=0.001)
    assert vapour.actual_from_dew_point_kpa(15.0) == pytest.approx(1.705, abs=0.001)


@pytest.mark.parametrize("temp_c", [80.0, -61.0, math.nan, math.inf])
def test_impossible_temperature_is_named_with_its_range(temp_c: float) -> None:
    with pytest.raises(OutOfRangeError, match=r"air temperature is .* outside -60 to 75 degC"):
        vapour.saturation_kpa(temp_c)


@pytest.mark.parametrize("humidity_pct", [-1.0, 100.5, math.nan])
def test_impossible_humidity_is_named_with_its_range(humidity_pct: float) -> None:
    with pytest.raises(OutOfRangeError, match=r"relative humidity is .* outside 0 to 100 %"):
        vapour.deficit_kpa(20.0, humidity_pct)


def test_impossible_altitude_and_pressure_are_named() -> None:
    with pytest.raises(OutOfRangeError, match=r"altitude is 9000 m, outside -500 to 6000 m"):
        vapour.pressure_kpa(9000.0)
    with pytest.raises(OutOfRangeError, match=r"air pressure is 1013 kPa, outside 40 to 110 kPa"):
        vapour.psychrometric_kpa_per_c(1013.0)


def test_wet_bulb_above_dry_bulb_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="wet bulb is 21 degC, outside -60 to 20 degC"):
        vapour.actual_from_wet_bulb_kpa(20.0, 21.0, 101.3)


def test_wet_bulb_too_far_below_dry_bulb_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="below 0 kPa"):
        vapour.actual_from_wet_bulb_kpa(45.0, 2.0, 101.3)


def test_dew_point_of_nothing_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="vapour pressure is 0 kPa"):
        vapour.dew_point_c(0.0)
