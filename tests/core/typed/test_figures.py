"""Figures and names as they are typed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import InputError
from benchround.core.typed.figures import (
    LONGEST_NOTE,
    read_note,
    read_number,
    read_whole,
)


@given(st.integers(0, 1_000_000))
def test_whole_numbers_are_read_as_python_writes_them(number: int) -> None:
    assert read_whole(f" {number} ") == number
    assert read_whole(f"+{number}") == number


@pytest.mark.parametrize(
    "typed", ["1.5", "-1", "ten", "1e3", "\u0664", "12 13", "9" * 40, "\x1b[1m", "1_000", "++"]
)
def test_what_is_no_whole_number_is_refused(typed: str) -> None:
    with pytest.raises(InputError, match=r"is not (a whole number|between)") as refused:
        read_whole(typed)
    assert str(refused.value).isprintable()
    assert len(str(refused.value)) < 100


def test_limits_are_said() -> None:
    assert read_whole("40", most=40) == 40
    with pytest.raises(InputError, match="41 is not between 0 and 40"):
        read_whole("41", most=40)
    with pytest.raises(InputError, match="0 is not between 1 and 9"):
        read_whole("0", most=9, least=1)


@given(st.floats(0, 100, allow_nan=False))
def test_numbers_are_read_with_point_and_comma(number: float) -> None:
    typed = f"{number:.3f}"
    assert read_number(typed, 0, 100) == float(typed)
    assert read_number(typed.replace(".", ","), 0, 100) == float(typed)


@pytest.mark.parametrize(
    "typed",
    ["nan", "inf", "-inf", "1e999", "101", "-0.1", "warm", "1,2,3", "1_0", "\u0663", "1e1", "."],
)
def test_what_is_no_number_within_the_limits_is_refused(typed: str) -> None:
    with pytest.raises(InputError):
        read_number(typed, 0, 100, "mm")


def test_nothing_typed_is_nothing_said() -> None:
    assert read_whole("  ") is None
    assert read_number("", 0, 1) is None
    assert read_note("") == ""


def test_notes_stay_on_one_line_and_are_neither_endless_nor_commands() -> None:
    assert read_note("two\nlines ") == "two lines"
    assert read_note("tray [A] [/]") == "tray [A] [/]"
    with pytest.raises(InputError, match="2001 letters are too many"):
        read_note("x" * (LONGEST_NOTE + 1))
    with pytest.raises(InputError, match="control characters"):
        read_note("\x1b[31mred")
