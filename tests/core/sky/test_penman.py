import pandas as pd
import pyet
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import OutOfRangeError
from benchround.core.sky import penman, sun, vapour
from tests.core.published import FAO56, MCMAHON, Figure, Seen, figure_cases

SECOND = Seen.SECOND_HAND
UCCLE = f"{FAO56}, ex. 18"
BANGKOK = f"{FAO56}, ex. 17"


def uccle_vapour_kpa() -> float:
    return vapour.actual_from_extremes_kpa(12.3, 21.5, 84.0, 63.0)


def uccle_sunshine_mj() -> float:
    ra_mj = sun.extraterrestrial_mj(50.80, 187)
    return sun.radiation_from_sunshine_mj(ra_mj, 9.25, sun.daylight_hours_fao(50.80, 187))


def uccle_net_mj() -> float:
    clear_mj = sun.clear_sky_mj(sun.extraterrestrial_mj(50.80, 187), 100.0)
    rs_mj = uccle_sunshine_mj()
    lost_mj = penman.net_longwave_mj(12.3, 21.5, rs_mj, clear_mj, uccle_vapour_kpa())
    return penman.net_shortwave_mj(rs_mj) - lost_mj


def uccle_mm() -> float:
    wind_ms = penman.wind_at_2m_ms(2.78, 10.0)
    return penman.penman_monteith_mm(
        12.3, 21.5, uccle_net_mj(), uccle_vapour_kpa(), 100.0, wind_2m_ms=wind_ms
    )


def bangkok_net_mj() -> float:
    ra_mj = sun.extraterrestrial_mj(13.73, 105)
    rs_mj = sun.radiation_from_sunshine_mj(ra_mj, 8.5, sun.daylight_hours_fao(13.73, 105))
    clear_mj = sun.clear_sky_mj(ra_mj, 2.0)
    return penman.net_shortwave_mj(rs_mj) - penman.net_longwave_mj(
        25.6, 34.8, rs_mj, clear_mj, 2.85
    )


def bangkok_mm(ground_heat_mj: float) -> float:
    return penman.penman_monteith_mm(
        25.6, 34.8, bangkok_net_mj(), 2.85, 2.0, wind_2m_ms=2.0, ground_heat_mj=ground_heat_mj
    )


def alice_springs_water_mm() -> float:
    actual = vapour.actual_from_extremes_kpa(2.0, 21.0, 71.0, 25.0)
    return penman.open_water_mm(2.0, 21.0, 8.6401, actual, 546.0, wind_2m_ms=0.5903)


FIGURES = [
    Figure("E09 net long-wave", f"{FAO56}, ex. 11", SECOND, 3.5, 0.05,
           lambda: penman.net_longwave_mj(19.1, 25.1, 14.5, 18.8, 2.1)),
    Figure("E10 wind at 2 m", f"{FAO56}, ex. 14", SECOND, 2.4, 0.05,
           lambda: penman.wind_at_2m_ms(3.2, 10.0)),
    Figure("E12 Bangkok, April", BANGKOK, SECOND, 5.72, 0.02,
           lambda: bangkok_mm(0.14)),
    Figure("E12 net radiation", BANGKOK, SECOND, 14.33, 0.05, bangkok_net_mj),
    Figure("E12 mean saturation", BANGKOK, SECOND, 4.42, 0.005,
           lambda: vapour.mean_saturation_kpa(25.6, 34.8)),
    Figure("E12 slope", BANGKOK, SECOND, 0.246, 0.0006, lambda: vapour.slope_kpa_per_c(30.2)),
    Figure("E12 psychrometric constant", BANGKOK, SECOND, 0.0674, 0.0005,
           lambda: vapour.psychrometric_kpa_per_c(vapour.pressure_kpa(2.0))),
    Figure("E13 Uccle, 6 July", UCCLE, SECOND, 3.88, 0.02, uccle_mm),
    Figure("E13 actual vapour", UCCLE, SECOND, 1.409, 0.001, uccle_vapour_kpa),
    Figure("E13 mean saturation", UCCLE, SECOND, 1.997, 0.001,
           lambda: vapour.mean_saturation_kpa(12.3, 21.5)),
    Figure("E13 Rs", UCCLE, SECOND, 22.07, 0.01, uccle_sunshine_mj),
    Figure("E13 Rn", UCCLE, SECOND, 13.28, 0.02, uccle_net_mj),
    Figure("E13 wind at 2 m", UCCLE, SECOND, 2.078, 0.002,
           lambda: penman.wind_at_2m_ms(2.78, 10.0)),
    Figure("E20 open water, Alice Springs", f"{MCMAHON}, ex. 3", SECOND, 2.9797, 0.01,
           alice_springs_water_mm),
]  # fmt: skip


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_published_figures(figure: Figure) -> None:
    figure.assert_reproduced()


def test_leaving_out_ground_heat_gives_pyets_figure_not_the_published_one() -> None:
    # E12: pyet 1.5 with G = 0 gives 5.755, FAO-56 ex. 17 with G = 0.14 gives 5.72
    assert bangkok_mm(0.0) == pytest.approx(5.755, abs=0.01)


@pytest.mark.parametrize(
    ("tmin_c", "tmax_c", "humidity_pct", "wind_ms", "net_mj", "altitude_m"),
    [
        (12.3, 21.5, 70.0, 2.0, 13.3, 100.0),
        (-2.0, 6.0, 85.0, 1.0, 2.0, 0.0),
        (18.0, 35.0, 40.0, 4.0, 17.0, 800.0),
        (4.0, 14.0, 60.0, 0.5, 8.0, 50.0),
    ],
)
def test_pyet_agrees_on_penman_monteith(
    tmin_c: float,
    tmax_c: float,
    humidity_pct: float,
    wind_ms: float,
    net_mj: float,
    altitude_m: float,
) -> None:
    days = pd.date_range("2024-05-01", periods=1)
    ea = vapour.actual_from_mean_humidity_kpa(tmin_c, tmax_c, humidity_pct)
    theirs = pyet.pm_fao56(
        pd.Series([(tmin_c + tmax_c) / 2.0], index=days),
        pd.Series([wind_ms], index=days),
        rn=pd.Series([net_mj], index=days),
        tmax=pd.Series([tmax_c], index=days),
        tmin=pd.Series([tmin_c], index=days),
        ea=pd.Series([ea], index=days),
        elevation=altitude_m,
    )
    ours = penman.penman_monteith_mm(tmin_c, tmax_c, net_mj, ea, altitude_m, wind_2m_ms=wind_ms)
    assert ours == pytest.approx(float(theirs.iloc[0]), abs=0.02)


@given(st.floats(0.0, 5.0), st.floats(0.0, 3.0))
def test_more_wind_or_drier_air_never_draws_less(wind_ms: float, more_ms: float) -> None:
    def mm(wind: float, ea: float) -> float:
        return penman.penman_monteith_mm(10.0, 20.0, 0.0, ea, 0.0, wind_2m_ms=wind)

    assert mm(wind_ms + more_ms, 1.0) >= mm(wind_ms, 1.0) - 1e-12
    assert mm(wind_ms, 0.8) >= mm(wind_ms, 1.0)


def test_dew_is_not_counted_as_negative_evaporation() -> None:
    damp = vapour.mean_saturation_kpa(2.0, 6.0)
    assert penman.penman_monteith_mm(2.0, 6.0, -2.0, damp, 0.0) == 0.0
    assert penman.open_water_mm(2.0, 6.0, -2.0, damp, 0.0) == 0.0


def test_night_sky_of_a_sunless_day_is_taken_as_clear() -> None:
    dark = penman.net_longwave_mj(-10.0, -2.0, 0.0, 0.0, 0.3)
    clear = penman.net_longwave_mj(-10.0, -2.0, 10.0, 10.0, 0.3)
    assert dark == clear > 0.0


def test_more_radiation_than_a_clear_sky_gives_counts_as_clear() -> None:
    over = penman.net_longwave_mj(10.0, 20.0, 31.0, 30.0, 1.2)
    assert over == penman.net_longwave_mj(10.0, 20.0, 30.0, 30.0, 1.2)


def test_bad_figures_are_named() -> None:
    with pytest.raises(OutOfRangeError, match="minimum 21 degC is above the maximum 12 degC"):
        penman.penman_monteith_mm(21.0, 12.0, 10.0, 1.0, 0.0)
    with pytest.raises(OutOfRangeError, match="maximum is 80 degC, outside -60 to 60 degC"):
        penman.penman_monteith_mm(21.0, 80.0, 10.0, 1.0, 0.0)
    with pytest.raises(OutOfRangeError, match="net radiation is nan MJ/m2 a day"):
        penman.penman_monteith_mm(12.0, 21.0, float("nan"), 1.0, 0.0)
    with pytest.raises(OutOfRangeError, match=r"vapour pressure is 9 kPa, outside 0 to 2\.48"):
        penman.penman_monteith_mm(12.0, 21.0, 10.0, 9.0, 0.0)
    with pytest.raises(OutOfRangeError, match="wind is -1 m/s, outside 0 to 60 m/s"):
        penman.penman_monteith_mm(12.0, 21.0, 10.0, 1.0, 0.0, wind_2m_ms=-1.0)
    with pytest.raises(OutOfRangeError, match=r"height of the wind gauge is 0\.05 m"):
        penman.wind_at_2m_ms(3.0, 0.05)
    with pytest.raises(OutOfRangeError, match=r"albedo is 23, outside 0 to 1"):
        penman.net_shortwave_mj(20.0, 23.0)
