import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import OutOfRangeError
from benchround.core.sky import hourly
from tests.core.published import Figure, Seen, figure_cases

TRENCHR = "Parton & Logan 1981 with the parameters of Wann 1985, in TrenchR tests"
# Wann's maximum comes 2.59 h after noon and its minimum 1.55 h after sunrise; Parton & Logan's a
# is counted from a noon that is itself moved by c, so a = 2.59 - 1.55.
WANN = hourly.CurveShape(2.59 - 1.55, 2.2, 1.55)

FIGURES = [
    Figure("D13 11:00", TRENCHR, Seen.SECOND_HAND, 23.91954, 0.001,
           lambda: hourly.hour_temp_c(10.0, 30.0, 11.0, 6.0, 18.0, WANN)),
    Figure("D13 20:00", TRENCHR, Seen.SECOND_HAND, 20.46866, 0.001,
           lambda: hourly.hour_temp_c(10.0, 30.0, 20.0, 6.0, 18.0, WANN)),
    Figure("D13 03:00", TRENCHR, Seen.SECOND_HAND, 13.35971, 0.001,
           lambda: hourly.hour_temp_c(10.0, 30.0, 3.0, 6.0, 18.0, WANN)),
    Figure("D14 11:00", "Campbell & Norman 1998, eq. 2.3, in TrenchR tests", Seen.SECOND_HAND,
           25.08958, 0.001, lambda: hourly.hour_temp_two_harmonics_c(10.0, 30.0, 11.0)),
]  # fmt: skip


SOIL_SURFACE = hourly.CurveShape(0.50, 1.81, 0.49)
"""Bare soil surface; Parton & Logan 1981 (read)."""


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_published_figures(figure: Figure) -> None:
    figure.assert_reproduced()


def test_published_lags_of_air() -> None:
    # Parton & Logan 1981 (read): air at 150 cm
    air = hourly.AIR_AT_EYE_HEIGHT
    assert (air.lag_max_h, air.cooling, air.lag_min_h) == (1.86, 2.20, -0.17)


def test_the_maximum_comes_after_noon_by_the_lags() -> None:
    # Top of the sine: half of Y + 2a after the minimum, so at noon + c + a
    at_top = hourly.hour_temp_c(8.0, 20.0, 12.0 - 0.17 + 1.86, 6.0, 18.0)
    assert at_top == pytest.approx(20.0)


def test_soil_peaks_before_air() -> None:
    air = hourly.day_temps_c(8.0, 20.0, 5.0, 20.0)
    soil = hourly.day_temps_c(8.0, 20.0, 5.0, 20.0, shape=SOIL_SURFACE)
    assert soil.index(max(soil)) < air.index(max(air))


@given(st.floats(-20.0, 20.0), st.floats(0.0, 25.0), st.floats(0.0, 24.0), st.floats(7.0, 17.0))
def test_every_hour_lies_between_the_extremes(
    tmin_c: float, spread: float, hour: float, day_h: float
) -> None:
    rise, fall = 12.0 - day_h / 2.0, 12.0 + day_h / 2.0
    found = hourly.hour_temp_c(tmin_c, tmin_c + spread, hour, rise, fall)
    assert tmin_c - 1e-9 <= found <= tmin_c + spread + 1e-9


def test_a_day_is_its_24_hours() -> None:
    day = hourly.day_temps_c(10.0, 30.0, 6.0, 18.0, shape=WANN)
    assert len(day) == 24
    assert day[11] == pytest.approx(23.91954, abs=0.001)  # D13
    assert day[20] == pytest.approx(20.46866, abs=0.001)  # D13


def test_the_evening_heads_for_the_next_minimum() -> None:
    plain = hourly.day_temps_c(8.0, 20.0, 6.0, 18.0)
    same = hourly.day_temps_c(8.0, 20.0, 6.0, 18.0, next_tmin_c=8.0)
    frosty = hourly.day_temps_c(8.0, 20.0, 6.0, 18.0, next_tmin_c=-2.0)
    assert same == pytest.approx(plain)
    assert frosty[:19] == plain[:19]
    assert all(cold < mild for cold, mild in zip(frosty[19:], plain[19:], strict=True))


def test_two_harmonics_stay_near_the_extremes() -> None:
    # Campbell & Norman: the curve peaks in mid afternoon and is lowest about dawn
    day = [hourly.hour_temp_two_harmonics_c(10.0, 30.0, float(hour)) for hour in range(24)]
    assert day.index(max(day)) in (14, 15)
    assert day.index(min(day)) in (4, 5, 6)
    assert max(day) == pytest.approx(30.0, abs=0.6)
    assert min(day) == pytest.approx(10.0, abs=0.6)


def test_bad_figures_are_named() -> None:
    with pytest.raises(OutOfRangeError, match="minimum 30 degC is above the maximum 10 degC"):
        hourly.hour_temp_c(30.0, 10.0, 12.0, 6.0, 18.0)
    with pytest.raises(OutOfRangeError, match="maximum is 80 degC"):
        hourly.hour_temp_two_harmonics_c(30.0, 80.0, 12.0)
    with pytest.raises(OutOfRangeError, match="hour is 25 h, outside 0 to 24 h"):
        hourly.hour_temp_c(10.0, 30.0, 25.0, 6.0, 18.0)
    with pytest.raises(OutOfRangeError, match="sunset is 5 h, outside 6 to 24 h"):
        hourly.hour_temp_c(10.0, 30.0, 12.0, 6.0, 5.0)
    with pytest.raises(OutOfRangeError, match=r"sunset is 24 h, outside 0 to 23\.5 h"):
        hourly.hour_temp_c(10.0, 30.0, 12.0, 0.0, 24.0)
    with pytest.raises(OutOfRangeError, match="sunrise is nan h"):
        hourly.hour_temp_c(10.0, 30.0, 12.0, math.nan, 18.0)
    with pytest.raises(OutOfRangeError, match="next minimum is 80 degC"):
        hourly.day_temps_c(10.0, 30.0, 6.0, 18.0, next_tmin_c=80.0)
