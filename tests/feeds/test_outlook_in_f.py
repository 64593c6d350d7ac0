"""A weather line typed in degrees F, and its rain in inches, as the grower chose."""

from __future__ import annotations

from datetime import date

import pytest

from benchround.core.sky.weather import HOTTEST_C
from benchround.core.units import Degrees, Rain, Units
from benchround.feeds.outlook_day import OutlookLineError
from benchround.feeds.outlook_line import read_outlook

TODAY = date(2026, 5, 27)
IN_F = Units(Degrees.F)
IN_INCHES = Units(Degrees.F, Rain.INCH)


def test_the_same_line_says_the_same_in_both() -> None:
    """32 F is 0 C and 212 F 100 C by definition: 41 F is 5 C, 73.4 F is 23 C."""
    in_f = read_outlook("41 73.4 sun r22 g68 from 17", TODAY, 16.0, IN_F).days[0]
    in_c = read_outlook("5 23 sun r22 g68 from 17", TODAY, 16.0).days[0]
    assert in_f.figures() == in_c.figures()


def test_lowest_and_highest_by_word() -> None:
    day = read_outlook("min28 max64", TODAY, 16.0, IN_F).days[0]
    assert (day.min_c, day.max_c) == (-2.2, 17.8)


def test_a_hot_day_in_f_is_possible_and_one_beyond_all_heat_is_not() -> None:
    assert read_outlook("70 95", TODAY, 16.0, IN_F).days[0].max_c == 35.0
    with pytest.raises(OutlookLineError, match=f"and {HOTTEST_C * 1.8 + 32:g} F"):
        read_outlook("70 180", TODAY, 16.0, IN_F)


def test_a_figure_with_its_own_unit_is_read_in_it_whatever_was_chosen() -> None:
    """41 F is 5 C and 73.4 F is 23 C by definition."""
    for units in (Units(), IN_F):
        for line in ("5c 23c", "5/23c", "41f 73.4f", "41/73.4f", "min5c max73.4f"):
            day = read_outlook(line, TODAY, 16.0, units).days[0]
            assert (day.min_c, day.max_c) == (5.0, 23.0), line


@pytest.mark.parametrize(
    ("line", "rain_mm", "hour_mm"),
    [
        ("r0.5", 12.7, None),
        ("rain .5", 12.7, None),
        ("r1 rh0.5", 25.4, 12.7),
        ("r1 0.5in/h", 25.4, 12.7),
        ("12mm 5mm/h", 12.0, 5.0),
    ],
)
def test_rain_is_read_in_inches_where_they_are_chosen(
    line: str, rain_mm: float, hour_mm: float | None
) -> None:
    """1 in is 25.4 mm: International yard and pound agreement, 1959 (from memory)."""
    day = read_outlook(line, TODAY, 16.0, IN_INCHES).days[0]
    assert (day.rain_mm, day.rain_hour_mm) == (rain_mm, hour_mm)


def test_rain_without_a_unit_stays_mm_where_mm_are_chosen() -> None:
    day = read_outlook("r30 1in/h", TODAY, 16.0, IN_F).days[0]
    assert (day.rain_mm, day.rain_hour_mm) == (30.0, 25.4)


def test_a_refusal_names_the_figure_as_it_was_typed() -> None:
    with pytest.raises(OutlookLineError, match=r"'40' could be lowest or highest.*max40"):
        read_outlook("40 sun", TODAY, 16.0, IN_F)
    with pytest.raises(OutlookLineError, match=r"write it like: 41 73 sun r0\.1"):
        read_outlook("xyzzy", TODAY, 16.0, IN_INCHES)
