"""Degrees F and inches: fixed points, what is read, what always holds."""

from __future__ import annotations

import re
from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import InputError
from benchround.core.season import Season
from benchround.core.seed.stall import Stall
from benchround.core.site import Site
from benchround.core.sky.weather import COLDEST_C, HOTTEST_C
from benchround.core.units import Degrees, Rain, Units, celsius, degrees, fahrenheit, units_of
from benchround.rounds.build import assumed

PACKAGE = Path(__file__).resolve().parents[2] / "benchround"

PLAIN, AMERICAN = Units(), Units(Degrees.F, Rain.INCH)
FIXED = [
    pytest.param(0.0, 32.0, id="ice point, 32 F by definition"),
    pytest.param(100.0, 212.0, id="boiling point, 212 F by definition"),
    pytest.param(-40.0, -40.0, id="where the scales meet, from memory"),
    pytest.param(37.0, 98.6, id="body heat, from memory"),
]


@pytest.mark.parametrize(("temp_c", "temp_f"), FIXED)
def test_fixed_points_of_the_scales(temp_c: float, temp_f: float) -> None:
    assert fahrenheit(temp_c) == pytest.approx(temp_f)
    assert celsius(temp_f) == pytest.approx(temp_c)


@pytest.mark.parametrize(
    ("units", "temp_c", "said"),
    [(PLAIN, 5.0, "5 C"), (PLAIN, 4.25, "4.2 C"), (AMERICAN, 5.0, "41 F"), (AMERICAN, -18, "0 F")],
)
def test_a_temperature_is_said(units: Units, temp_c: float, said: str) -> None:
    assert units.temp(temp_c) == said


def test_what_is_not_known_is_a_question_mark() -> None:
    assert PLAIN.span(None, 23.0) == "? to 23 C"
    assert AMERICAN.span(5.0, None) == "41 to ? F"


@pytest.mark.parametrize(
    ("rain_mm", "said"),
    [(0.0, "0.00 in"), (25.4, "1.00 in"), (0.05, "under 0.01 in"), (12.7, "0.50 in")],
    ids=lambda value: str(value),
)
def test_rain_in_inches_of_25_4_mm(rain_mm: float, said: str) -> None:
    """The inch is 25.4 mm by the agreement of 1959 (from memory)."""
    assert AMERICAN.fall(rain_mm) == said


@pytest.mark.parametrize(
    ("units", "typed", "temp_c"),
    [
        (PLAIN, "5", 5.0),
        (PLAIN, "-2,5", -2.5),
        (PLAIN, "41 F", 5.0),
        (AMERICAN, "41", 5.0),
        (AMERICAN, "5 c", 5.0),
        (AMERICAN, "5\N{DEGREE SIGN}C", 5.0),
        (PLAIN, "  ", None),
    ],
)
def test_a_temperature_is_read(units: Units, typed: str, temp_c: float | None) -> None:
    assert units.read_temp_c(typed, COLDEST_C, HOTTEST_C) == temp_c


@pytest.mark.parametrize("typed", ["warm", "5 mm", "nan", "1e3", "--5", "80", "-50"])
def test_what_is_no_temperature_is_refused(typed: str) -> None:
    with pytest.raises(InputError):
        PLAIN.read_temp_c(typed, COLDEST_C, HOTTEST_C)


def test_a_refusal_is_said_in_the_growers_degrees() -> None:
    with pytest.raises(InputError, match=r"^200 F is not between -49 F and 158 F\.$"):
        AMERICAN.read_temp_c("200", COLDEST_C, HOTTEST_C)


def test_rain_is_read() -> None:
    assert AMERICAN.read_fall_mm("1", 500.0) == 25.4
    assert AMERICAN.read_fall_mm("3 mm", 500.0) == 3.0
    assert PLAIN.read_fall_mm('0.5"', 500.0) == 12.7
    assert PLAIN.read_fall_mm("", 500.0) is None
    with pytest.raises(InputError, match="is not between 0 and 500 mm"):
        PLAIN.read_fall_mm("501", 500.0)
    with pytest.raises(InputError, match="is no amount of rain"):
        PLAIN.read_fall_mm("5 c", 500.0)


@given(st.integers(-40, 140))
def test_whole_degrees_f_come_back_as_typed(temp_f: int) -> None:
    kept = AMERICAN.read_temp_c(str(temp_f), COLDEST_C, HOTTEST_C)
    assert kept is not None
    assert AMERICAN.figure(kept) == str(temp_f)


@given(st.text(max_size=20))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        temp_c = PLAIN.read_temp_c(text, COLDEST_C, HOTTEST_C)
    except InputError as error:
        assert str(error).isprintable()
    else:
        assert temp_c is None or COLDEST_C <= temp_c <= HOTTEST_C


def test_settings_that_cannot_be_are_taken_as_the_usual() -> None:
    assert units_of({"units": "K", "rain_units": "cups"}) == PLAIN
    assert units_of({"units": "F", "rain_units": "inch"}) == AMERICAN


@pytest.mark.parametrize(
    ("temp_c", "places", "said"),
    [(-0.04, 0, "0"), (-0.5, 0, "0"), (-0.6, 0, "-1"), (-0.04, 1, "0.0"), (-0.06, 1, "-0.1")],
)
def test_nothing_has_no_minus_before_it(temp_c: float, places: int, said: str) -> None:
    """Rounding half to even, as Python does; the sign of nothing is nothing."""
    assert degrees(temp_c, places) == said
    assert not PLAIN.temp(temp_c / 10).startswith("-0 ")


@given(st.floats(COLDEST_C, HOTTEST_C), st.sampled_from([PLAIN, AMERICAN]))
def test_no_temperature_is_minus_nothing(temp_c: float, units: Units) -> None:
    assert units.figure(temp_c) != "-0"
    assert degrees(temp_c) != "-0"
    for typed in (f"{fahrenheit(temp_c):.2f} f", f"{temp_c:.2f} c"):
        read = units.read_temp_c(typed, COLDEST_C - 1, HOTTEST_C + 1)
        assert read is not None
        assert f"{read:g}" != "-0"


def test_every_reason_that_names_a_temperature_says_it_so() -> None:
    """No sentence formats degrees by itself: the package is read for it."""
    by_itself = re.compile(r":\.[0-9]f\} ?C\b")
    found = [
        f"{path.name}:{number}"
        for path in sorted(PACKAGE.rglob("*.py"))
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), start=1)
        if by_itself.search(line)
    ]
    assert found == []


def test_a_usual_day_and_a_stall_are_said_without_minus_nothing() -> None:
    assert "cold: 0 C on 15 Jan" in str(Stall("cold", date(2026, 1, 15), -0.3, 4.0))
    site = Site(lat_deg=52.5, last_frost=(5, 11), first_frost=(10, 12))
    said = [
        words
        for number in range(365)
        for words in assumed(Season(crops={}, site=site), date(2026, 1, 1) + timedelta(days=number))
    ]
    assert said
    assert not [words for words in said if "-0 " in words]
