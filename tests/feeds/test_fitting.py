"""Fitting text into boxes: properties over any text, with a typeface of one width per letter."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.feeds.fitting import LEAST_PT, POINT_MM, fit, line_height_mm, wrap

LETTER_MM = 0.5 * POINT_MM


def typewriter(text: str) -> float:
    """Every letter is half as wide as it is high."""
    return LETTER_MM * len(text)


TEXT = st.text(alphabet="abc de\u00e4 fgh", max_size=120)


def test_a_point_is_the_seventy_second_part_of_an_inch() -> None:
    """PDF 32000-1:2008, 8.3.2.3: default user space unit 1/72 inch (from memory)."""
    assert math.isclose(POINT_MM * 72, 25.4)


@given(text=TEXT, width=st.floats(8, 120), size=st.floats(2, 20))
def test_wrapped_lines_keep_every_letter_and_none_is_too_wide(
    text: str, width: float, size: float
) -> None:
    lines = wrap(text, width, size, typewriter)
    assert "".join("".join(lines).split()) == "".join(text.split())
    assert all(typewriter(line) * size <= width + 1e-6 for line in lines)


@given(
    texts=st.lists(TEXT, max_size=4),
    width=st.floats(15, 120),
    height=st.floats(4, 60),
    largest=st.floats(4, 30),
    unbroken=st.sampled_from([6.0, math.inf]),
)
def test_what_is_fitted_stands_in_its_box_and_is_all_there(
    texts: list[str], width: float, height: float, largest: float, unbroken: float
) -> None:
    fitted = fit(texts, width, height, largest, typewriter, unbroken)
    assert "".join("".join(fitted.lines).split()) == "".join("".join(texts).split())
    assert fitted.size_pt <= largest
    if fitted.size_pt > LEAST_PT:
        assert fitted.height_mm <= height + 1e-6
        assert all(typewriter(line) * fitted.size_pt <= width + 1e-6 for line in fitted.lines)


@pytest.mark.parametrize(
    ("text", "width", "height", "size", "lines"),
    [
        # by hand: 10 letters at 12 pt are 10 * 6 pt = 60 pt = 21.17 mm wide, a line is 14.4 pt high
        ("ten letter", 21.2, 5.1, 12.0, 1),
        ("ten letter", 21.1, 5.1, 11.75, 1),
        ("ten letter", 12.8, 10.2, 12.0, 2),  # 'letter' is 12.7 mm at 12 pt, two lines 10.16 mm
        ("ten letter", 12.6, 10.2, 11.75, 2),
    ],
)
def test_the_largest_size_is_found(
    text: str, width: float, height: float, size: float, lines: int
) -> None:
    """Worked by hand from the letter's width and the height of a line."""
    fitted = fit([text], width, height, 12.0, typewriter)
    assert (fitted.size_pt, len(fitted.lines)) == (size, lines)


def test_lines_are_kept_whole_where_they_stay_large_enough() -> None:
    broken = fit(["sown 14 May", "b02"], 20.0, 16.0, 11.0, typewriter)
    whole = fit(["sown 14 May", "b02"], 20.0, 16.0, 11.0, typewriter, 6.0)
    assert len(broken.lines) == 3
    assert whole.lines == ("sown 14 May", "b02")
    assert 6.0 <= whole.size_pt < broken.size_pt


def test_what_can_never_fit_is_set_beyond_the_box_rather_than_cut_off() -> None:
    fitted = fit(["x" * 4000], 10.0, 3.0, 12.0, typewriter)
    assert fitted.size_pt == LEAST_PT
    assert "".join(fitted.lines) == "x" * 4000
    assert fitted.height_mm > 3.0
    assert not fitted.readable
    assert fitted.line_mm == line_height_mm(LEAST_PT)
