"""A weather line typed in degrees F; only the temperatures are read otherwise."""

from __future__ import annotations

from datetime import date

import pytest

from benchround.core.sky.weather import HOTTEST_C
from benchround.feeds.outlook_day import OutlookLineError
from benchround.feeds.outlook_line import read_outlook

TODAY = date(2026, 5, 27)


def test_the_same_line_says_the_same_in_both() -> None:
    """32 F is 0 C and 212 F 100 C by definition: 41 F is 5 C, 73.4 F is 23 C."""
    in_f = read_outlook("41 73.4 sun r22 g68 from 17", TODAY, 16.0, in_f=True).days[0]
    in_c = read_outlook("5 23 sun r22 g68 from 17", TODAY, 16.0).days[0]
    assert in_f.figures() == in_c.figures()


def test_lowest_and_highest_by_word() -> None:
    day = read_outlook("min28 max64", TODAY, 16.0, in_f=True).days[0]
    assert (day.min_c, day.max_c) == (-2.2, 17.8)


def test_a_hot_day_in_f_is_possible_and_one_beyond_all_heat_is_not() -> None:
    assert read_outlook("70 95", TODAY, 16.0, in_f=True).days[0].max_c == 35.0
    with pytest.raises(OutlookLineError, match=f"to {HOTTEST_C:g} C"):
        read_outlook("70 180", TODAY, 16.0, in_f=True)
