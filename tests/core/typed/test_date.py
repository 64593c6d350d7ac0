"""Days as they are typed. The calendar is checked against `calendar` of the standard library."""

from __future__ import annotations

import calendar
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import InputError
from benchround.core.typed.date import MOST_YEARS, read_day, say_full

WEDNESDAY = date(2026, 5, 27)  # calendar.weekday(2026, 5, 27) == 2
DAYS = st.dates(date(1999, 1, 1), date(2101, 12, 31))


@pytest.mark.parametrize(
    ("typed", "day"),
    [
        ("2026-05-27", date(2026, 5, 27)),
        ("2026-5-7", date(2026, 5, 7)),
        ("27.5.", date(2026, 5, 27)),
        ("27.5", date(2026, 5, 27)),
        ("27. 5. 2025", date(2025, 5, 27)),
        ("1.6.26", date(2026, 6, 1)),
        ("27/5", date(2026, 5, 27)),
        ("3/4", date(2026, 4, 3)),
        ("27/5/2025", date(2025, 5, 27)),
        ("today", date(2026, 5, 27)),
        ("TODAY ", date(2026, 5, 27)),
        ("yesterday", date(2026, 5, 26)),
        ("tomorrow", date(2026, 5, 28)),
        ("-1", date(2026, 5, 26)),
        ("+3", date(2026, 5, 30)),
        ("+ 10", date(2026, 6, 6)),
        ("wed", date(2026, 5, 27)),
        ("tue", date(2026, 5, 26)),
        ("thursday", date(2026, 5, 21)),
        ("last wed", date(2026, 5, 20)),
        ("next wed", date(2026, 6, 3)),
        ("27 may", date(2026, 5, 27)),
        ("1st june", date(2026, 6, 1)),
        ("may 3", date(2026, 5, 3)),
        ("3 sept 2025", date(2025, 9, 3)),
        ("28 dec", date(2025, 12, 28)),
        ("30.11.", date(2025, 11, 30)),
    ],
)
def test_what_is_typed_is_read_on_a_wednesday(typed: str, day: date) -> None:
    assert read_day(typed, WEDNESDAY) == day


@pytest.mark.parametrize(
    ("typed", "day"),
    [
        ("wed", date(2026, 6, 3)),
        ("thu", date(2026, 5, 28)),
        ("tue", date(2026, 6, 2)),
        ("28 dec", date(2026, 12, 28)),
        ("27 may", date(2026, 5, 27)),
        ("26/5", date(2027, 5, 26)),
    ],
)
def test_in_a_plan_the_next_such_day_is_meant(typed: str, day: date) -> None:
    assert read_day(typed, WEDNESDAY, ahead=True) == day


def test_month_first_counts_with_slashes_only() -> None:
    assert read_day("3/4", WEDNESDAY, month_first=True) == date(2026, 3, 4)
    assert read_day("3.4.", WEDNESDAY, month_first=True) == date(2026, 4, 3)
    with pytest.raises(InputError, match="in no calendar"):
        read_day("27/5", WEDNESDAY, month_first=True)


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("0415", "more than one way"),
        ("20260527", "more than one way"),
        ("0415-05-27", "year 415"),
        ("415-05-27", "is no day"),
        ("27.5.415", "is no day"),
        ("3", r"write 3\.5\. or \+3"),
        ("", "No day was typed"),
        ("   ", "No day was typed"),
        ("31.2.", "in no calendar"),
        ("29.2.", "in no calendar of 2025 to 2027"),
        ("2026-02-30", "in no calendar"),
        ("2026-13-01", "in no calendar"),
        ("0.5.", "in no calendar"),
        ("27 ma", "is no day"),
        ("27 blossom", "is no day"),
        ("+99999", "more than 20 years"),
        ("-99999", "more than 20 years"),
        ("2\u0667.5.", "is no day"),
        ("27\x1b.5.", "is no day"),
        ("x" * 10_000, "is no day"),
        ("next", "is no day"),
    ],
)
def test_what_is_no_day_or_could_be_two_is_refused(typed: str, says: str) -> None:
    with pytest.raises(InputError, match=says):
        read_day(typed, WEDNESDAY)


def test_a_day_without_a_year_is_the_nearest_one() -> None:
    assert read_day("28.12.", date(2027, 1, 3)) == date(2026, 12, 28)
    assert read_day("3.1.", date(2026, 12, 28)) == date(2027, 1, 3)
    assert read_day("29.2.", date(2027, 12, 1)) == date(2028, 2, 29)


@given(DAYS, DAYS)
def test_every_full_day_is_read_back(today: date, day: date) -> None:
    if abs(day.year - today.year) > MOST_YEARS:
        with pytest.raises(InputError):
            read_day(day.isoformat(), today)
        return
    name = calendar.month_name[day.month]
    for typed in (
        day.isoformat(),
        f"{day.day}.{day.month}.{day.year}",
        f"{day.day}/{day.month}/{day.year}",
        f"{day.day} {name} {day.year}",
        f"{name} {day.day}, {day.year}",
    ):
        assert read_day(typed, today) == day
    typed = f"{day.month}/{day.day}/{day.year}"
    assert read_day(typed, today, month_first=True) == day


@given(DAYS, st.integers(-180, 180))
def test_day_and_month_are_read_within_half_a_year(today: date, off: int) -> None:
    day = today + timedelta(days=off)
    assert read_day(f"{day.day}.{day.month}.", today) == day


@given(DAYS, st.integers(0, 6), st.booleans())
def test_a_weekday_is_within_a_week_and_is_that_weekday(
    today: date, number: int, ahead: bool
) -> None:
    name = calendar.day_abbr[number].lower()
    day = read_day(name, today, ahead=ahead)
    assert calendar.weekday(day.year, day.month, day.day) == number
    away = (day - today).days
    assert 1 <= away <= 7 if ahead else -6 <= away <= 0


@given(st.text(max_size=60) | st.text("0123456789./-+ maytodnexls", max_size=14), DAYS)
def test_anything_typed_gives_a_near_day_or_a_sentence(typed: str, today: date) -> None:
    try:
        day = read_day(typed, today)
    except InputError as error:
        assert str(error).endswith((".", "?"))
        assert str(error).isprintable()
        assert len(str(error)) < 200
    else:
        assert abs(day.year - today.year) <= MOST_YEARS


@given(DAYS, st.integers(-4000, 4000))
def test_the_echo_names_weekday_date_and_distance(today: date, off: int) -> None:
    day = today + timedelta(days=off)
    echo = say_full(day, today)
    assert echo.startswith(f"{calendar.day_abbr[day.weekday()]} {day.day} ")
    assert f" {calendar.month_abbr[day.month]} {day.year}, " in echo
    assert {0: "today", 1: "tomorrow", -1: "yesterday"}.get(off, str(abs(off))) in echo
