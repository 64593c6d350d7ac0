"""Latitude, longitude and frost days as they are typed."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import InputError
from benchround.core.typed.site import (
    read_latitude,
    read_longitude,
    read_year_day,
    say_latitude,
    say_longitude,
    say_year_day,
)


@pytest.mark.parametrize(
    ("typed", "degrees"),
    [
        ("52.5", 52.5),
        ("52,5 n", 52.5),
        ("-33.9", -33.9),
        ("\N{MINUS SIGN}33.9", -33.9),
        ("33.9 S", -33.9),
        ("33 54 S", -33.9),  # 54 minutes are 0.9 degrees, by definition
        ("52\N{DEGREE SIGN}30'N", 52.5),
        ("90", 90.0),
        ("", None),
    ],
)
def test_a_latitude_is_read(typed: str, degrees: float | None) -> None:
    assert read_latitude(typed) == degrees


@pytest.mark.parametrize(
    ("typed", "degrees"), [("1 W", -1.0), ("-1.0", -1.0), ("151.2 e", 151.2), ("180", 180.0)]
)
def test_a_longitude_is_read(typed: str, degrees: float) -> None:
    assert read_longitude(typed) == degrees


@pytest.mark.parametrize("typed", ["north", "90.1", "52.5 W", "-33.9 S", "52 61", "1e1", "nan"])
def test_what_is_no_latitude_is_refused(typed: str) -> None:
    with pytest.raises(InputError, match="is no latitude"):
        read_latitude(typed)


@given(st.floats(-90, 90).map(lambda x: round(x, 4)))
def test_a_latitude_said_is_read_as_the_same(lat_deg: float) -> None:
    assert read_latitude(say_latitude(lat_deg)) == pytest.approx(lat_deg, abs=1e-4, rel=1e-5)


@given(st.floats(-180, 180).map(lambda x: round(x, 3)))
def test_a_longitude_said_is_read_as_the_same(lon_deg: float) -> None:
    assert read_longitude(say_longitude(lon_deg)) == pytest.approx(lon_deg, abs=1e-3)


@pytest.mark.parametrize(
    ("typed", "month_first", "kept"),
    [
        ("11 may", False, "05-11"),
        ("may 11", False, "05-11"),
        ("11.5.", False, "05-11"),
        ("05-11", True, "05-11"),
        ("5/11", True, "05-11"),
        ("11/5", False, "05-11"),
        ("1 jan", False, "01-01"),
        ("", False, ""),
    ],
)
def test_a_day_of_every_year_is_read(typed: str, month_first: bool, kept: str) -> None:
    assert read_year_day(typed, month_first=month_first) == kept


@pytest.mark.parametrize(
    "typed", ["29 feb", "feb 29", "29.2.", "02-29", "mon", "+3", "today", "31.4.", "11", "13-40"]
)
def test_what_is_no_day_of_every_year_is_refused(typed: str) -> None:
    with pytest.raises(InputError):
        read_year_day(typed)


@given(st.integers(0, 364))
def test_a_day_said_is_read_as_the_same(number: int) -> None:
    day = date(2025, 1, 1) + timedelta(days=number)
    kept = f"{day:%m-%d}"
    assert read_year_day(say_year_day(kept)) == kept


def test_what_is_kept_and_no_day_is_said_as_it_is() -> None:
    assert say_year_day("soon") == "soon"
    assert say_year_day("13-01") == "13-01"
