import math
import subprocess
import sys
from datetime import date, timedelta

import pandas as pd
import pvlib
import pytest

from benchround.core.errors import OutOfRangeError, UnknownNameError
from benchround.core.sky import sun
from tests.core.published import Seen, clock_minutes, minutes, rows

USNO = "US Naval Observatory"


def assert_times(found: sun.SunDay, rise: str, fall: str, within_min: float) -> None:
    assert found.sunrise is not None
    assert found.sunset is not None
    assert minutes(found.sunrise) == pytest.approx(clock_minutes(rise), abs=within_min)
    assert minutes(found.sunset) == pytest.approx(clock_minutes(fall), abs=within_min)


def test_almanac_of_a_whole_year() -> None:
    # S11: US Naval Observatory, annual table 2023, 36.95 N 112.52 W, 730 printed minutes (read)
    table = rows("usno_sun_36n95_112w52_2023.csv")
    assert len(table) == 365
    for row in table:
        found = sun.sun_day(date.fromisoformat(row["date"]), 36.95, -112.52, -7.0)
        assert_times(found, row["sunrise"], row["sunset"], within_min=1.0)


@pytest.mark.parametrize(
    ("day", "lat_deg", "lon_deg", "offset_h", "rise", "fall", "within_min"),
    [
        pytest.param(date(2015, 1, 2), 39.0, -105.0, -7.0, "07:19", "16:49", 1.0,
                     id=f"S16 winter: {USNO} in pvlib tests ({Seen.SECOND_HAND})"),
        pytest.param(date(2015, 4, 2), 39.0, -105.0, -7.0, "05:43", "18:24", 1.0,
                     id=f"S16 spring: {USNO} in pvlib tests ({Seen.SECOND_HAND})"),
        pytest.param(date(2015, 8, 2), 39.0, -105.0, -7.0, "05:01", "19:10", 1.0,
                     id=f"S16 summer: {USNO} in pvlib tests ({Seen.SECOND_HAND})"),
        pytest.param(date(2015, 12, 2), 39.0, -105.0, -7.0, "07:01", "16:38", 1.0,
                     id=f"S16 autumn: {USNO} in pvlib tests ({Seen.SECOND_HAND})"),
        pytest.param(date(2018, 9, 12), 40.8939, -83.8917, 0.0, "11:13", "23:50", 1.0,
                     id=f"S19: {USNO} in skyfield tests ({Seen.SECOND_HAND})"),
        pytest.param(date(1996, 7, 5), -35.0, 0.0, 0.0, "07:08:15", "17:01:04", 0.3,
                     id=f"S13 July: NREL solar position algorithm ({Seen.SECOND_HAND})"),
        pytest.param(date(2004, 12, 4), -35.0, 0.0, 0.0, "04:38:57", "19:02:03", 0.3,
                     id=f"S13 December: NREL solar position algorithm ({Seen.SECOND_HAND})"),
        pytest.param(date(1994, 1, 2), 35.0, 0.0, 0.0, "07:08:12", "16:59:55", 0.3,
                     id=f"S13 January: NREL solar position algorithm ({Seen.SECOND_HAND})"),
        pytest.param(date(2023, 3, 20), 36.95, -112.52, -7.0, "06:34", "18:42", 1.0,
                     id=f"S12 March: {USNO} ({Seen.READ})"),
        pytest.param(date(2023, 6, 21), 36.95, -112.52, -7.0, "05:11", "19:53", 1.0,
                     id=f"S12 June: {USNO} ({Seen.READ})"),
        pytest.param(date(2023, 9, 23), 36.95, -112.52, -7.0, "06:19", "18:26", 1.0,
                     id=f"S12 September: {USNO} ({Seen.READ})"),
        pytest.param(date(2023, 12, 21), 36.95, -112.52, -7.0, "07:39", "17:17", 1.0,
                     id=f"S12 December: {USNO} ({Seen.READ})"),
    ],
)  # fmt: skip
def test_single_days(
    day: date,
    lat_deg: float,
    lon_deg: float,
    offset_h: float,
    rise: str,
    fall: str,
    within_min: float,
) -> None:
    assert_times(sun.sun_day(day, lat_deg, lon_deg, offset_h), rise, fall, within_min)


STROUS = {-50: "3:55", -40: "4:35", -20: "5:24", 0: "6:00", 20: "6:35", 40: "7:22", 50: "7:59"}


@pytest.mark.parametrize(
    ("lat_deg", "rise"),
    STROUS.items(),
    ids=[f"S21 lat {lat}: Strous, Astronomy Answers ({Seen.READ})" for lat in STROUS],
)
def test_sunrise_on_new_year_by_latitude(lat_deg: float, rise: str) -> None:
    found = sun.sun_day(date(2025, 1, 1), lat_deg, 0.0).sunrise
    assert found is not None
    assert minutes(found) == pytest.approx(clock_minutes(rise), abs=1.5)


@pytest.mark.parametrize("lat_deg", [-55.0, -35.0, 0.0, 35.0, 51.5, 60.0])
def test_pvlib_agrees_at_the_height_it_gives_our_times(lat_deg: float) -> None:
    # The altitude root is the referee (S11): pvlib's own transit helper strays from the almanac.
    # At 60 deg in midsummer the sun takes 0.4 min for 0.03 deg, elsewhere less.
    for day in pd.date_range("2025-01-05", "2025-12-31", freq="36D"):
        found = sun.sun_day(day.date(), lat_deg, 0.0)
        assert found.sunrise is not None
        assert found.sunset is not None
        stamps = pd.DatetimeIndex(
            [f"{day.date()} {moment}" for moment in (found.sunrise, found.sunset)], tz="UTC"
        )
        heights = pvlib.solarposition.spa_python(stamps, lat_deg, 0.0)["elevation"]
        assert list(heights) == pytest.approx([-0.833, -0.833], abs=0.03)


@pytest.mark.parametrize(
    ("day", "lat_deg", "lon_deg", "length_h"),
    [
        pytest.param(date(2019, 6, 5), 69.6, 18.95, 24.0,
                     id=f"S22 midnight sun: astral tests ({Seen.SECOND_HAND})"),
        pytest.param(date(2025, 12, 21), 70.0, 0.0, 0.0,
                     id=f"S23 polar night: astral and pvlib agree ({Seen.DERIVED})"),
        pytest.param(date(2025, 6, 21), 70.0, 0.0, 24.0,
                     id=f"S23 midnight sun: astral and pvlib agree ({Seen.DERIVED})"),
        pytest.param(date(2025, 6, 21), 90.0, 0.0, 24.0, id="north pole, summer: geometry"),
        pytest.param(date(2025, 6, 21), -90.0, 0.0, 0.0, id="south pole, winter: geometry"),
    ],
)  # fmt: skip
def test_polar_days_have_no_times_but_a_length(
    day: date, lat_deg: float, lon_deg: float, length_h: float
) -> None:
    assert sun.sun_day(day, lat_deg, lon_deg) == sun.SunDay(None, None, length_h)


def test_the_shortest_day_below_the_polar_circle() -> None:
    # S23: 66.5 N 2025-12-21; astral 10:52:39/13:03:44, pvlib 10:50:56/13:05:25 (derived)
    found = sun.sun_day(date(2025, 12, 21), 66.5, 0.0)
    assert_times(found, "10:50:56", "13:05:25", within_min=3.0)


@pytest.mark.parametrize(
    ("day", "length_h"),
    [(date(2025, 6, 21), 16.63), (date(2025, 12, 21), 7.82)],
    ids=[f"S24 {name}: astral and pvlib ({Seen.DERIVED})" for name in ("midsummer", "midwinter")],
)
def test_true_day_length_at_51_5_north(day: date, length_h: float) -> None:
    assert sun.sun_day(day, 51.5, 0.0).day_length_h == pytest.approx(length_h, abs=0.02)


@pytest.mark.parametrize(
    ("day", "length_h"),
    [(date(2025, 6, 21), 16.40), (date(2025, 12, 21), 7.60)],
    ids=[f"S24 {name}: the FAO-56 figure for the same day" for name in ("midsummer", "midwinter")],
)
def test_the_radiation_formula_is_not_the_day_a_plant_sees(day: date, length_h: float) -> None:
    fao = sun.daylight_hours_fao(51.5, day.timetuple().tm_yday)
    assert fao == pytest.approx(length_h, abs=0.02)
    assert sun.sun_day(day, 51.5, 0.0).day_length_h - fao > 0.19


def test_far_east_and_far_west_get_the_local_day() -> None:
    # Mirror places 12 h apart must see the same clock times within a minute
    east = sun.sun_day(date(2025, 4, 10), -41.0, 175.0, 175.0 / 15.0)
    west = sun.sun_day(date(2025, 4, 10), -41.0, -175.0, -175.0 / 15.0)
    greenwich = sun.sun_day(date(2025, 4, 10), -41.0, 0.0, 0.0)
    for found in (east, west):
        assert_times(found, str(greenwich.sunrise), str(greenwich.sunset), within_min=1.5)
        assert found.day_length_h == pytest.approx(greenwich.day_length_h, abs=0.05)


def test_summer_time_is_in_the_named_zone() -> None:
    winter_clock = sun.sun_day(date(2025, 6, 21), 53.3, -6.3, 0.0)
    summer_clock = sun.sun_day(date(2025, 6, 21), 53.3, -6.3, "Europe/Dublin")
    assert winter_clock.sunrise is not None
    assert summer_clock.sunrise is not None
    assert minutes(summer_clock.sunrise) - minutes(winter_clock.sunrise) == pytest.approx(60.0)
    assert summer_clock.day_length_h == pytest.approx(winter_clock.day_length_h)


def test_sunset_after_midnight_keeps_the_length_of_the_day() -> None:
    # Just before the midnight sun the sun sets after midnight and rises soon after: first a day
    # without a sunset, then days whose sunset comes before their sunrise.
    without = sun.sun_day(date(2025, 6, 4), 65.9, 14.0, 2.0)
    assert without.sunrise is not None
    assert without.sunset is None
    assert without.day_length_h == pytest.approx(24.0 - minutes(without.sunrise) / 60.0, abs=0.01)
    after = sun.sun_day(date(2025, 6, 5), 65.9, 14.0, 2.0)
    assert after.sunrise is not None
    assert after.sunset is not None
    assert after.sunset < after.sunrise
    dark_h = (minutes(after.sunrise) - minutes(after.sunset)) / 60.0
    assert after.day_length_h == pytest.approx(24.0 - dark_h, abs=0.01)


@pytest.mark.parametrize("lon_deg", [-180.0, -90.0, 75.0, 90.0, 105.0, 180.0])
def test_no_day_loses_its_sunrise_where_it_falls_near_midnight_utc(lon_deg: float) -> None:
    for number in range(365):
        day = date(2025, 1, 1) + timedelta(days=number)
        found = sun.sun_day(day, 30.0, lon_deg, lon_deg / 15.0)
        assert found.sunrise is not None, day
        assert found.sunset is not None, day
        assert 10.0 < found.day_length_h < 14.2, day


def test_solar_noon_halves_the_day() -> None:
    for lon_deg, offset_h in ((0.0, 0.0), (174.8, 12.0), (-123.1, -8.0)):
        day = sun.sun_day(date(2025, 9, 10), 10.0, lon_deg, offset_h)
        assert day.sunrise is not None
        assert day.sunset is not None
        middle_h = (minutes(day.sunrise) + minutes(day.sunset)) / 120.0
        noon_h = sun.solar_noon_h(date(2025, 9, 10), lon_deg, offset_h)
        assert noon_h == pytest.approx(middle_h, abs=0.02)


def test_bad_places_and_clocks_are_named() -> None:
    day = date(2025, 6, 1)
    with pytest.raises(OutOfRangeError, match="latitude is 95 deg, outside -90 to 90 deg"):
        sun.sun_day(day, 95.0, 0.0)
    with pytest.raises(OutOfRangeError, match="longitude is nan deg, outside -180 to 180 deg"):
        sun.sun_day(day, 50.0, math.nan)
    with pytest.raises(OutOfRangeError, match="UTC offset is 60 h, outside -14 to 14 h"):
        sun.sun_day(day, 50.0, 0.0, 60.0)
    with pytest.raises(UnknownNameError, match="no time zone is called 'Nowhere/Such'"):
        sun.sun_day(day, 50.0, 0.0, "Nowhere/Such")
    with pytest.raises(UnknownNameError, match=r"no time zone is called '\.\./etc'"):
        sun.sun_day(day, 50.0, 0.0, "../etc")


def test_astral_is_not_loaded_before_it_is_needed() -> None:
    code = "import sys, benchround.core.sky.sun; print('astral' in sys.modules)"
    shown = subprocess.run(  # a fresh interpreter is the only honest witness
        [sys.executable, "-c", code], capture_output=True, text=True, check=True
    )
    assert shown.stdout.strip() == "False"
