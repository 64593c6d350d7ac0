import math

import pandas as pd
import pyet
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import OutOfRangeError
from benchround.core.sky import sun
from tests.core.published import FAO56, MCMAHON, Figure, Seen, figure_cases

SECOND = Seen.SECOND_HAND
MID_MONTH_DAYS = (15, 46, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349)

FIGURES = [
    Figure("S01 Ra 20 S, day 246", f"{FAO56}, ex. 8", SECOND, 32.2, 0.05,
           lambda: sun.extraterrestrial_mj(-20.0, 246)),
    Figure("S02 relative distance, day 246", f"{FAO56}, ex. 8", SECOND, 0.985, 0.0005,
           lambda: sun.relative_distance(246)),
    Figure("S03 declination, day 246", f"{FAO56}, ex. 8", SECOND, 0.120, 0.0005,
           lambda: sun.declination_rad(246)),
    Figure("S04 sunset angle 20 S, day 246", f"{FAO56}, ex. 8", SECOND, 1.527, 0.0005,
           lambda: sun.sunset_angle_rad(-20.0, 246)),
    Figure("S05 daylight hours 20 S, day 246", f"{FAO56}, ex. 9", SECOND, 11.7, 0.05,
           lambda: sun.daylight_hours_fao(-20.0, 246)),
    Figure("S05 the same to five places", "NCL function page daylight_fao56", Seen.READ,
           11.66559, 0.0005, lambda: sun.daylight_hours_fao(-20.0, 246)),
    Figure("S06 Ra 50.80 N, day 187", f"{FAO56}, ex. 18", SECOND, 41.09, 0.01,
           lambda: sun.extraterrestrial_mj(50.80, 187)),
    Figure("S07 Ra 45.72 N, day 196", f"{FAO56}, ex. 15 and 20", SECOND, 40.55, 0.06,
           lambda: sun.extraterrestrial_mj(45.72, 196)),
    Figure("S08 Ra 23.7951 S, day 202", f"{MCMAHON}, ex. 1", SECOND, 23.6182, 0.01,
           lambda: sun.extraterrestrial_mj(-23.7951, 202)),
    Figure("S09 Ra 22.9 S, day 135", f"{FAO56}, ex. 10", SECOND, 25.1, 0.05,
           lambda: sun.extraterrestrial_mj(-22.9, 135)),
    Figure("S09 daylight hours 22.9 S, day 135", f"{FAO56}, ex. 10", SECOND, 10.9, 0.05,
           lambda: sun.daylight_hours_fao(-22.9, 135)),
    Figure("S10 Rs from sunshine", f"{FAO56}, ex. 10", SECOND, 14.45, 0.01,
           lambda: sun.radiation_from_sunshine_mj(25.1, 7.1, 10.9)),
    Figure("E11 Rs from temperature range", f"{FAO56}, ex. 15", SECOND, 22.3, 0.05,
           lambda: sun.radiation_from_range_mj(40.6, 26.6, 14.8)),
    Figure("E13 clear-sky Rs, 100 m", f"{FAO56}, ex. 18", SECOND, 30.90, 0.01,
           lambda: sun.clear_sky_mj(41.09, 100.0)),
]  # fmt: skip

DAYLIGHT_50N = (8.3, 9.8, 11.6, 13.5, 15.2, 16.1, 15.7, 14.3, 12.3, 10.4, 8.7, 7.9)
RADIATION_50N = (8.9, 14.4, 22.2, 31.5, 38.5, 41.7, 40.2, 34.3, 25.6, 16.8, 10.2, 7.5)
WRONG_RADIATION_50N = (8.8, 15.0, 22.9, 32.4, 38.8, 41.6, 40.2, 34.4, 25.2, 16.2, 9.5, 7.2)


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_published_figures(figure: Figure) -> None:
    figure.assert_reproduced()


@pytest.mark.parametrize(
    ("day", "hours"),
    list(zip(MID_MONTH_DAYS, DAYLIGHT_50N, strict=True)),
    ids=[f"S25 50 N day {d}: {FAO56}, table 2.7 ({Seen.FROM_MEMORY})" for d in MID_MONTH_DAYS],
)
def test_daylight_hours_row_of_50_north(day: int, hours: float) -> None:
    assert sun.daylight_hours_fao(50.0, day) == pytest.approx(hours, abs=0.05)


@pytest.mark.parametrize(
    ("day", "mj"),
    list(zip(MID_MONTH_DAYS, RADIATION_50N, strict=True)),
    ids=[f"S26 50 N day {d}: {FAO56}, eq. 21 ({Seen.DERIVED})" for d in MID_MONTH_DAYS],
)
def test_radiation_row_of_50_north(day: int, mj: float) -> None:
    assert sun.extraterrestrial_mj(50.0, day) == pytest.approx(mj, abs=0.1)


def test_the_row_for_50_north_in_circulation_is_not_reproduced() -> None:
    # S26: a public test calls these figures the FAO row; they contradict eq. 21 by up to 0.9
    ours = [sun.extraterrestrial_mj(50.0, day) for day in MID_MONTH_DAYS]
    gaps = [abs(a - b) for a, b in zip(ours, WRONG_RADIATION_50N, strict=True)]
    assert max(gaps) > 0.7
    assert sum(gap > 0.1 for gap in gaps) >= 8


@pytest.mark.parametrize("lat_deg", [-45.0, -36.0, 0.0, 23.0, 40.0, 52.0, 60.0])
def test_pyet_agrees_on_radiation_and_daylight_all_year(lat_deg: float) -> None:
    days = pd.date_range("2023-01-01", "2023-12-31")
    theirs_ra = pyet.extraterrestrial_r(days, math.radians(lat_deg))
    theirs_n = pyet.daylight_hours(days, math.radians(lat_deg))
    for day, ra_mj, hours in zip(range(1, 366), theirs_ra, theirs_n, strict=True):
        assert sun.extraterrestrial_mj(lat_deg, day) == pytest.approx(float(ra_mj), abs=0.01)
        assert sun.daylight_hours_fao(lat_deg, day) == pytest.approx(float(hours), abs=0.001)


def test_polar_day_and_night_are_held_not_refused() -> None:
    assert sun.daylight_hours_fao(75.0, 172) == pytest.approx(24.0)
    assert sun.daylight_hours_fao(75.0, 355) == 0.0
    assert sun.extraterrestrial_mj(75.0, 355) == 0.0
    assert sun.extraterrestrial_mj(75.0, 172) > 40.0
    assert sun.radiation_from_sunshine_mj(0.0, 0.0, 0.0) == 0.0


def test_a_coast_gets_more_sun_for_the_same_range() -> None:
    # FAO-56 eq. 50, kRs 0.19 against 0.16 (read second-hand)
    inland = sun.radiation_from_range_mj(40.6, 26.6, 14.8)
    coast = sun.radiation_from_range_mj(40.6, 26.6, 14.8, coastal=True)
    assert coast / inland == pytest.approx(0.19 / 0.16)


def test_sky_words_span_a_quarter_to_three_quarters() -> None:
    # FAO-56 eq. 35 with a = 0.25, b = 0.50 (read second-hand)
    assert sun.radiation_from_sky_word_mj(40.0, 0.0) == pytest.approx(10.0)
    assert sun.radiation_from_sky_word_mj(40.0, 0.5) == pytest.approx(20.0)
    assert sun.radiation_from_sky_word_mj(40.0, 1.0) == pytest.approx(30.0)


@given(st.floats(-89.0, 89.0), st.integers(1, 366), st.floats(0.0, 40.0), st.floats(0.0, 23.9))
def test_hours_add_up_to_the_day(lat_deg: float, day: int, daily: float, noon_h: float) -> None:
    if sun.extraterrestrial_mj(lat_deg, day) == 0.0:
        daily = 0.0
    hours = sun.hourly_radiation_wm2(lat_deg, day, daily, noon_h)
    assert len(hours) == 24
    assert min(hours) >= 0.0
    assert sum(hours) * 0.0036 == pytest.approx(daily, abs=1e-6)


def test_hours_lie_evenly_about_noon() -> None:
    hours = sun.hourly_radiation_wm2(52.0, 135, 20.0)
    assert hours == pytest.approx(hours[::-1])
    assert hours[:4] == (0.0,) * 4


def test_half_a_sine_at_the_equinox() -> None:
    # Integral of cos over the hour before noon, divided by that over the whole day of 12 h
    hours = sun.hourly_radiation_wm2(0.0, 80, 12.0)
    share = math.sin(math.pi / 12.0) / 2.0
    assert hours[11] == pytest.approx(share * 12.0e6 / 3600.0, rel=1e-3)


def test_clock_shift_moves_the_peak() -> None:
    hours = sun.hourly_radiation_wm2(52.0, 172, 24.0, noon_h=13.1)
    assert max(range(24), key=lambda hour: hours[hour]) == 13
    assert hours[3] == 0.0
    assert hours[20] > 0.0


def test_sunless_day_takes_no_radiation() -> None:
    assert sun.hourly_radiation_wm2(75.0, 355, 0.0) == (0.0,) * 24
    with pytest.raises(OutOfRangeError, match="radiation of a day without sun is 5 MJ/m2"):
        sun.hourly_radiation_wm2(75.0, 355, 5.0)


def test_noon_height_is_what_the_latitude_leaves() -> None:
    # Spherical astronomy: noon height = 90 - latitude + declination
    declination = math.degrees(sun.declination_rad(172))
    assert sun.elevation_deg(52.0, 172, 12.0) == pytest.approx(90.0 - 52.0 + declination)
    assert sun.elevation_deg(52.0, 172, 0.0) == pytest.approx(52.0 - 90.0 + declination)


def test_the_sun_is_level_at_the_sunset_angle() -> None:
    half_h = sun.daylight_hours_fao(52.0, 100) / 2.0
    assert sun.elevation_deg(52.0, 100, 12.0 + half_h) == pytest.approx(0.0, abs=1e-6)


@pytest.mark.parametrize("lat_deg", [91.0, -90.5, math.nan])
def test_impossible_latitude_is_named(lat_deg: float) -> None:
    with pytest.raises(OutOfRangeError, match=r"latitude is .* outside -90 to 90 deg"):
        sun.extraterrestrial_mj(lat_deg, 100)


@pytest.mark.parametrize("day", [0, 367])
def test_impossible_day_is_named(day: int) -> None:
    with pytest.raises(OutOfRangeError, match=r"day of the year is .* outside 1 to 366"):
        sun.declination_rad(day)


def test_swapped_or_impossible_temperatures_are_named() -> None:
    with pytest.raises(OutOfRangeError, match="minimum 26 degC is above the maximum 14 degC"):
        sun.radiation_from_range_mj(40.0, 14.0, 26.0)
    with pytest.raises(OutOfRangeError, match="maximum is 80 degC, outside -60 to 60 degC"):
        sun.radiation_from_range_mj(40.0, 80.0, 10.0)


def test_more_sunshine_than_day_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="hours of sunshine is 13 h, outside 0 to 12 h"):
        sun.radiation_from_sunshine_mj(30.0, 13.0, 12.0)
    with pytest.raises(OutOfRangeError, match=r"share of sun is 1\.2, outside 0 to 1"):
        sun.radiation_from_sky_word_mj(30.0, 1.2)


def test_radiation_in_the_wrong_unit_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="radiation is 400 MJ/m2 a day, outside 0 to 50"):
        sun.clear_sky_mj(400.0, 0.0)
