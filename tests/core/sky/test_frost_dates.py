import math
from datetime import date, timedelta
from functools import cache
from statistics import NormalDist, fmean, median, stdev

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import InputError, OutOfRangeError
from benchround.core.sky.frost_dates import DailyMinimum, FrostDates, YearFrosts, frost_dates
from benchround.core.sky.frost_line import quantile
from tests.core.published import Seen, rows

STATION = "NOAA GHCN-Daily USC00010655; Utah Climate Center rule"


@cache
def station() -> tuple[DailyMinimum, ...]:
    return tuple(
        DailyMinimum(
            date.fromisoformat(row["date"]), float(row["tmin_c"]) if row["tmin_c"] else None
        )
        for row in rows("ghcnd_USC00010655_minima_2003-2024.csv")
    )


@cache
def station_dates() -> FrostDates:
    return frost_dates(station(), lat_deg=34.7)


def in_year(found: FrostDates, year: int) -> YearFrosts:
    return next(frosts for frosts in found.per_year if frosts.year == year)


def plain_day_number(day: date) -> int:
    return day.replace(year=2001).timetuple().tm_yday


def weather(
    start: date, days: int, frosty: set[date], missing: frozenset[date] = frozenset()
) -> list[DailyMinimum]:
    every = [start + timedelta(days=offset) for offset in range(days)]
    return [
        DailyMinimum(day, None if day in missing else -1.0 if day in frosty else 6.0)
        for day in every
    ]


@pytest.mark.parametrize(
    ("year", "last_spring", "first_autumn"),
    [
        (2005, date(2005, 4, 25), date(2005, 10, 24)),
        (2012, date(2012, 4, 13), date(2012, 10, 31)),
        (2020, date(2020, 3, 7), date(2020, 11, 3)),
    ],
    ids=[f"F08 {year}: {STATION} ({Seen.DERIVED})" for year in (2005, 2012, 2020)],
)
def test_years_of_the_station(year: int, last_spring: date, first_autumn: date) -> None:
    found = in_year(station_dates(), year)
    assert (found.last_spring, found.first_autumn) == (last_spring, first_autumn)


def test_spring_statistics_of_the_station() -> None:
    # F09: 22 springs, mean 91.41, sd 13.09, median 90.0, q10 76.3, q90 106.9 (derived)
    days = [plain_day_number(y.last_spring) for y in station_dates().per_year if y.last_spring]
    assert len(days) == 22
    assert fmean(days) == pytest.approx(91.41, abs=0.1)
    assert stdev(days) == pytest.approx(13.09, abs=0.1)
    assert median(days) == pytest.approx(90.0, abs=0.1)
    assert quantile(sorted(days), 0.1) == pytest.approx(76.3, abs=0.1)
    assert quantile(sorted(days), 0.9) == pytest.approx(106.9, abs=0.1)


def test_spring_dates_of_the_station() -> None:
    # F09: 17 Mar / 31 Mar / 17 Apr, normal 16 Mar / 1 Apr / 18 Apr (derived)
    line = station_dates().last_spring
    assert line is not None
    assert (line.p10, line.p50, line.p90) == ((3, 17), (3, 31), (4, 17))
    assert (line.normal_p10, line.normal_p50, line.normal_p90) == ((3, 16), (4, 1), (4, 18))
    assert (line.years, line.frost_years) == (22, 22)


def test_autumn_dates_of_the_station() -> None:
    # 21 autumns, mean day 304.9, 19 Oct / 31 Oct / 14 Nov (derived)
    found = station_dates()
    line = found.first_autumn
    assert line is not None
    assert (line.p10, line.p50, line.p90) == ((10, 19), (10, 31), (11, 14))
    assert line.years == 21
    days = [plain_day_number(y.first_autumn) for y in found.per_year if y.first_autumn]
    assert fmean(days) == pytest.approx(304.9, abs=0.1)


def test_frost_free_days_of_the_station() -> None:
    # F11: 21 years, mean 212.8, median 212, least 181, most 247 (derived)
    lengths = [y.frost_free_days for y in station_dates().per_year if y.frost_free_days is not None]
    assert len(lengths) == 21
    assert fmean(lengths) == pytest.approx(212.8, abs=0.1)
    assert median(lengths) == 212
    assert (min(lengths), max(lengths)) == (181, 247)


def test_the_autumn_with_a_gap_is_void_and_named() -> None:
    found = station_dates()
    assert found.years == 22
    assert found.void_years == (2007,)
    assert in_year(found, 2007).autumn_void
    assert not in_year(found, 2007).spring_void
    read = {reading.day for reading in station() if reading.tmin_c is not None}
    autumn = [date(2007, 7, 24) + timedelta(days=offset) for offset in range(161)]
    assert sum(day not in read for day in autumn) > 10


def test_the_cautious_planting_date_leaves_one_year_in_ten() -> None:
    # The meaning of the words: after the 10 % date at most about a tenth of springs had a frost
    found = station_dates()
    late, middle, early = (found.planting_date(risk) for risk in (10, 50, 90))
    assert (late, middle, early) == ((4, 17), (3, 31), (3, 17))
    for month_day, share in (((4, 17), 0.10), ((3, 31), 0.50), ((3, 17), 0.90)):
        springs = [y.last_spring for y in found.per_year if y.last_spring is not None]
        after = [spring for spring in springs if (spring.month, spring.day) > month_day]
        assert len(after) / 22 == pytest.approx(share, abs=0.06)


def test_another_risk_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="frost risk is 25 %: ask for 10, 50 or 90"):
        station_dates().planting_date(25)


def test_a_colder_threshold_gives_an_earlier_spring() -> None:
    hard = frost_dates(station(), lat_deg=34.7, threshold_c=-2.2)
    assert hard.last_spring is not None
    assert hard.last_spring.p50 < (3, 31)
    assert hard.threshold_c == -2.2


def test_a_threshold_never_reached_gives_no_dates() -> None:
    # Dates only where the threshold is reached in a tenth of years: NCEI 2020 (read)
    found = frost_dates(station(), lat_deg=34.7, threshold_c=-40.0)
    assert found.last_spring is None
    assert found.first_autumn is None
    assert found.planting_date(10) is None
    assert found.years == 22


def test_the_threshold_itself_counts() -> None:
    readings = [DailyMinimum(r.day, 0.0 if r.tmin_c == -1.0 else r.tmin_c)
                for r in weather(date(2021, 1, 1), 365, {date(2021, 5, 4)})]  # fmt: skip
    assert in_year(frost_dates(readings, 52.0), 2021).last_spring == date(2021, 5, 4)
    assert in_year(frost_dates(readings, 52.0, -0.1), 2021).last_spring is None


def test_the_north_is_cut_on_24_july() -> None:
    frosty = {date(2017, 7, 20), date(2017, 7, 24)}
    found = in_year(frost_dates(weather(date(2017, 1, 1), 365, frosty), 60.0), 2017)
    assert found.last_spring == date(2017, 7, 20)
    assert found.first_autumn == date(2017, 7, 24)
    assert found.frost_free_days == 3


def test_the_south_is_cut_on_24_january_and_its_year_runs_over_new_year() -> None:
    frosty = {date(2021, 9, 12), date(2021, 11, 2), date(2022, 4, 20), date(2022, 6, 1)}
    found = frost_dates(weather(date(2021, 7, 1), 365, frosty), -41.0)
    assert [frosts.year for frosts in found.per_year] == [2021]
    assert found.per_year[0].last_spring == date(2021, 11, 2)
    assert found.per_year[0].first_autumn == date(2022, 4, 20)
    assert found.per_year[0].frost_free_days == 168
    assert found.planting_date(10) == (11, 2)
    midsummer = {date(2022, 1, 23), date(2022, 1, 24)}
    cut = frost_dates(weather(date(2021, 7, 1), 365, midsummer), -41.0).per_year[0]
    assert (cut.last_spring, cut.first_autumn) == (date(2022, 1, 23), date(2022, 1, 24))


def test_southern_dates_are_counted_across_new_year() -> None:
    # Last frosts on 20 Dec and 10 Jan: the middle lies between them, not in June
    frosty = {date(2019, 12, 20), date(2021, 1, 10)}
    found = frost_dates(weather(date(2019, 7, 1), 731, frosty), -45.0)
    assert found.last_spring is not None
    assert found.last_spring.p50 == (12, 31)


@pytest.mark.parametrize(("gap", "void"), [(10, False), (11, True)])
def test_more_than_ten_missing_days_void_a_half_year(gap: int, void: bool) -> None:
    # Utah Climate Center (read)
    missing = frozenset(date(2021, 2, 1) + timedelta(days=offset) for offset in range(gap))
    readings = weather(date(2021, 1, 1), 365, {date(2021, 5, 4), date(2021, 10, 9)}, missing)
    found = frost_dates(readings, 52.0)
    frosts = found.per_year[0]
    assert frosts.spring_void is void
    assert not frosts.autumn_void
    assert (frosts.last_spring is None) is void
    assert frosts.first_autumn == date(2021, 10, 9)
    assert found.void_years == ((2021,) if void else ())


def test_days_never_given_count_as_missing_and_whole_years_between_are_void() -> None:
    readings = [
        *weather(date(2018, 1, 1), 365, {date(2018, 4, 2)}),
        *weather(date(2020, 1, 1), 366, {date(2020, 4, 8)}),
    ]
    found = frost_dates(readings, 52.0)
    assert found.void_years == (2019,)
    assert found.years == 2
    assert found.last_spring is not None
    assert (found.last_spring.years, found.last_spring.p50) == (2, (4, 5))


def test_leap_day_counts_as_the_day_before() -> None:
    found = frost_dates(weather(date(2024, 1, 1), 366, {date(2024, 2, 29)}), 52.0)
    assert found.last_spring is not None
    assert found.last_spring.p50 == (2, 28)
    assert found.per_year[0].last_spring == date(2024, 2, 29)


def test_one_year_gives_one_date_and_no_spread() -> None:
    found = frost_dates(weather(date(2021, 1, 1), 365, {date(2021, 5, 4)}), 52.0)
    assert found.last_spring is not None
    assert found.last_spring.p10 == found.last_spring.p90 == (5, 4)
    assert found.last_spring.normal_p50 is None


def test_a_frost_free_autumn_is_not_a_void_one() -> None:
    found = frost_dates(weather(date(2021, 1, 1), 365, {date(2021, 5, 4)}), 52.0)
    assert found.first_autumn is None
    assert found.per_year[0].first_autumn is None
    assert not found.per_year[0].autumn_void
    assert found.per_year[0].frost_free_days is None


def test_no_readings_give_no_years() -> None:
    found = frost_dates([], 52.0)
    assert found == FrostDates(0.0, None, None, 0, (), ())


def test_order_of_readings_does_not_matter() -> None:
    assert frost_dates(reversed(station()), lat_deg=34.7) == station_dates()


@given(st.lists(st.integers(0, 364), min_size=1, max_size=40), st.floats(0.0, 1.0))
def test_quantile_is_numpys_linear_one(days: list[int], share: float) -> None:
    expected = float(np.quantile(days, share))
    assert quantile(sorted(days), share) == pytest.approx(expected, abs=1e-9)


def test_normal_dates_use_the_normal_quantile() -> None:
    # z of 0.9 is 1.2816 in any table of the normal distribution
    assert NormalDist().inv_cdf(0.9) == pytest.approx(1.2816, abs=5e-5)
    springs = {date(2019, 4, 10), date(2020, 4, 20), date(2021, 4, 30)}
    line = frost_dates(weather(date(2019, 1, 1), 1096, springs), 52.0).last_spring
    assert line is not None
    assert line.normal_p90 == (5, 3)  # 20 Apr + 1.2816 * 10 days


def test_bad_input_is_named() -> None:
    day = date(2021, 3, 1)
    with pytest.raises(InputError, match="2021-03-01 has two minima, 1 and 2 degC"):
        frost_dates([DailyMinimum(day, 1.0), DailyMinimum(day, 2.0)], 52.0)
    with pytest.raises(OutOfRangeError, match="minimum of 2021-03-01 is 80 degC, outside -60 to"):
        frost_dates([DailyMinimum(day, 80.0)], 52.0)
    with pytest.raises(OutOfRangeError, match="minimum of 2021-03-01 is nan degC"):
        frost_dates([DailyMinimum(day, math.nan)], 52.0)
    with pytest.raises(OutOfRangeError, match="latitude is 120 deg, outside -90 to 90 deg"):
        frost_dates([], 120.0)
    with pytest.raises(OutOfRangeError, match="frost threshold is nan degC"):
        frost_dates([], 52.0, math.nan)
