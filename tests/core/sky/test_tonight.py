import math

import pytest

from benchround.core.errors import OutOfRangeError
from benchround.core.sky import tonight
from benchround.core.sky.tonight import MinimumRange, NightWeather
from tests.core.published import Figure, Seen, figure_cases

NODE149 = "weatherfaqs.org.uk, node 149"

FIGURES = [
    Figure("F03 McKenzie, light wind and little cloud", NODE149, Seen.READ, 1.0, 1e-9,
           lambda: tonight.mckenzie_c(12.0, 4.0, 7.0)),
    Figure("F04 Craddock & Pritchard, calm and clear", NODE149, Seen.READ, 2.54, 0.01,
           lambda: tonight.craddock_pritchard_c(12.0, 4.0, -2.2)),
    Figure("F05 Smith, grass in September", "wiki.crowe.co.nz, worked example", Seen.READ,
           -5.5, 0.01, lambda: tonight.smith_grass_c(6.0, 3.0, 9)),
]  # fmt: skip


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_published_figures(figure: Figure) -> None:
    figure.assert_reproduced()


MCKENZIE = {
    NightWeather.DEAD_CALM_CLEAR: (8.0, 9.0),
    NightWeather.LIGHT_WIND_LITTLE_CLOUD: (6.0, 8.0),
    NightWeather.LIGHT_WIND_CHANGING_CLOUD: (4.0, 7.0),
    NightWeather.LIGHT_WIND_CLOUDY: (2.0, 3.0),
    NightWeather.MODERATE_WIND_LITTLE_CLOUD: (3.0, 5.0),
    NightWeather.MODERATE_WIND_CHANGING_CLOUD: (2.0, 4.0),
    NightWeather.MODERATE_WIND_CLOUDY: (1.0, 2.0),
    NightWeather.BRISK_WIND: (1.0, 2.0),
}


@pytest.mark.parametrize(
    "night", NightWeather, ids=[f"F03 {night}: {NODE149} ({Seen.READ})" for night in NightWeather]
)
def test_mckenzies_table(night: NightWeather) -> None:
    least, most = MCKENZIE[night]
    found = tonight.mckenzie_range(12.0, 4.0, night)
    assert found == MinimumRange(coldest_c=8.0 - most, warmest_c=8.0 - least)


def test_craddock_pritchard_range_spans_all_weathers() -> None:
    # K from -2.2 to +3 (read)
    found = tonight.craddock_pritchard_range(12.0, 4.0)
    assert found.coldest_c == pytest.approx(2.544, abs=0.001)
    assert found.warmest_c - found.coldest_c == pytest.approx(5.2)


@pytest.mark.parametrize(
    ("month", "constant_c"),
    [(5, 8.0), (6, 9.0), (8, 9.0), (9, 8.0), (10, 8.0)],
    ids=[f"month {month}: wiki.crowe.co.nz ({Seen.READ})" for month in (5, 6, 8, 9, 10)],
)
def test_smiths_constants(month: int, constant_c: float) -> None:
    assert tonight.smith_grass_c(0.0, 0.0, month) == -constant_c


def test_without_a_hygrometer_the_night_before_serves_and_the_range_sinks() -> None:
    # FAO-56 eq. 48 (read second-hand); margin of 1 to 2 K (common practice, no source)
    dew_point = tonight.guessed_dew_point_c(3.0)
    assert dew_point == 3.0
    plain = tonight.mckenzie_range(14.0, dew_point, NightWeather.DEAD_CALM_CLEAR)
    careful = plain.lowered(*tonight.GUESSED_DEW_POINT_MARGIN_C)
    assert careful.coldest_c == pytest.approx(plain.coldest_c - 2.0)
    assert careful.warmest_c == pytest.approx(plain.warmest_c - 1.0)


def test_trays_are_colder_than_the_screen_under_a_clear_sky_only() -> None:
    # 2 to 4 K (from memory)
    screen = MinimumRange(1.0, 3.0)
    assert tonight.at_tray_level(screen, clear_sky=True) == MinimumRange(-3.0, 1.0)
    assert tonight.at_tray_level(screen, clear_sky=False) == screen


def test_bad_figures_are_named() -> None:
    with pytest.raises(OutOfRangeError, match="maximum is 80 degC, outside -60 to 60 degC"):
        tonight.mckenzie_c(80.0, 4.0, 7.0)
    with pytest.raises(OutOfRangeError, match="dew point 14 degC is above the air, 12 degC"):
        tonight.mckenzie_c(12.0, 14.0, 7.0)
    with pytest.raises(OutOfRangeError, match="McKenzie's constant is 12 degC, outside 1 to 9"):
        tonight.mckenzie_c(12.0, 4.0, 12.0)
    with pytest.raises(OutOfRangeError, match=r"correction K is -5 degC, outside -2\.2 to 3 degC"):
        tonight.craddock_pritchard_c(12.0, 4.0, -5.0)
    with pytest.raises(OutOfRangeError, match="dew point is nan degC"):
        tonight.craddock_pritchard_range(12.0, math.nan)
    with pytest.raises(OutOfRangeError, match="month 7 has no constant in Smith's rule"):
        tonight.smith_grass_c(6.0, 3.0, 7)
