"""Sheets of labels: where each lies, and what cannot be."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import BenchroundError, InputError, OutOfRangeError
from benchround.feeds.label_settings import sheet_from, sheet_words
from benchround.feeds.label_sheets import Sheet, Sides, laid_out, spots
from benchround.feeds.papers import PAPERS

A4 = PAPERS["a4"]

COUNTS = [
    # options, columns, rows; worked by hand: (paper - margins + gap) / (label + gap), rounded down
    ({}, 2, 10),  # (210 - 10) / 100, (297 - 16) / 26
    ({"sides": "two"}, 2, 21),  # (297 - 16) / 13
    ({"paper": "A5"}, 1, 7),  # (148 - 10) / 100, (210 - 16) / 26
    ({"paper": "Letter"}, 2, 10),  # 205.9 / 100, 263.4 / 26
    ({"size": "50x10", "left": "0", "top": "0"}, 4, 14),  # 210 / 50, 297 / 20
    ({"form": "stick-on"}, 3, 8),  # 210 / 70, 297 / 37
    ({"form": "stick-on", "size": "63.5x38.1", "left": "7.2", "top": "15.1", "gap": "2.5x0"}, 3, 7),
]


@pytest.mark.parametrize(("options", "columns", "rows"), COUNTS, ids=[str(c[0]) for c in COUNTS])
def test_as_many_as_fit(options: dict[str, str], columns: int, rows: int) -> None:
    sheet = sheet_from(options)
    assert (sheet.columns, sheet.rows) == (columns, rows)


def test_places_are_where_a_ruler_finds_them() -> None:
    """Worked by hand: 3 columns of 63.5 mm 2.5 mm apart from 7.2 mm, rows of 38.1 from 15.1."""
    sheet = sheet_from(
        {"form": "stick-on", "size": "63.5x38.1", "left": "7.2", "top": "15.1", "gap": "2.5x0"}
    )
    placed = list(spots(sheet, 23))
    assert (placed[0].left_mm, placed[0].top_mm) == (7.2, 15.1)
    assert math.isclose(placed[1].left_mm, 73.2)
    assert math.isclose(placed[2].left_mm, 139.2)
    assert math.isclose(placed[4].top_mm, 53.2)
    assert [spot.sheet for spot in placed[19:]] == [0, 0, 1, 1]
    assert math.isclose(placed[0].back_left_mm, 210 - 7.2 - 63.5)


def test_a_used_up_sheet_is_gone_on_with() -> None:
    sheet = sheet_from({"form": "stick-on", "first": "23"})
    placed = list(spots(sheet, 3))
    assert [(spot.sheet, spot.left_mm) for spot in placed] == [(0, 70.0), (0, 140.0), (1, 0.0)]


@given(
    width=st.floats(15, 150),
    height=st.floats(6, 80),
    left=st.floats(0, 20),
    top=st.floats(0, 20),
    gap=st.tuples(st.floats(0, 10), st.floats(0, 10)),
    paper=st.sampled_from(sorted(PAPERS)),
    sides=st.sampled_from(Sides),
    count=st.integers(1, 60),
)
def test_labels_lie_on_the_paper_and_never_on_each_other(
    width: float,
    height: float,
    left: float,
    top: float,
    gap: tuple[float, float],
    paper: str,
    sides: Sides,
    count: int,
) -> None:
    try:
        sheet = laid_out(
            PAPERS[paper], (width, height), left_mm=left, top_mm=top, gap_mm=gap, sides=sides
        )
    except InputError:
        return  # too large for the paper
    placed = list(spots(sheet, count))
    for spot in placed:
        for start in (spot.left_mm, spot.back_left_mm):
            assert -0.06 <= start <= sheet.paper.width_mm - width + 0.06
        assert spot.top_mm + sheet.laid_mm <= sheet.paper.height_mm + 0.06
    for one, other in pairwise(placed):
        if one.sheet == other.sheet:
            beside = abs(one.left_mm - other.left_mm) >= width - 1e-6
            below = abs(one.top_mm - other.top_mm) >= sheet.laid_mm - 1e-6
            assert beside or below


REFUSED = [
    ({"size": "300x13"}, "does not fit on A4"),
    ({"size": "10x13"}, "width of a label"),
    ({"size": "100x2"}, "height of a label"),
    ({"size": "100x400"}, "does not fit"),
    ({"columns": "3"}, "3 columns take 305 mm"),
    ({"columns": "0"}, "columns"),
    ({"columns": "-1"}, "columns: -1 is not between"),
    ({"left": "-3"}, "left margin"),
    ({"left": "nan"}, "'nan' is no length"),
    ({"top": "wide"}, "no length"),
    ({"gap": "3"}, "as 100x13"),
    ({"foot": "95"}, "foot"),
    ({"first": "21"}, "place of the first label"),
    ({"sides": "three"}, "none of one, two, folded"),
    ({"form": "glued"}, "neither"),
    ({"paper": "A0"}, "is no paper"),
]


@pytest.mark.parametrize(("options", "words"), REFUSED, ids=lambda v: str(v)[:40])
def test_what_cannot_be_is_named(options: dict[str, str], words: str) -> None:
    with pytest.raises((InputError, OutOfRangeError), match=words):
        sheet_from(options)


def test_too_many_rows_are_named_with_their_height() -> None:
    """11 folded labels: 8 + 11 x 26 = 294 mm would fit, 12 take 320."""
    assert sheet_from({"rows": "11"}).rows == 11
    with pytest.raises(InputError, match="12 rows take 320 mm, but A4 paper has 297 mm"):
        sheet_from({"rows": "12"})


OPTION = st.dictionaries(
    st.sampled_from(["form", "paper", "size", "sides", "columns", "rows", "left", "gap", "first"]),
    st.text(max_size=12),
)


@given(OPTION)
def test_whatever_is_typed_gives_a_sheet_or_a_sentence(options: dict[str, str]) -> None:
    try:
        assert isinstance(sheet_from(options), Sheet)
    except BenchroundError as error:
        assert str(error).endswith(".")


def test_a_remembered_sheet_is_the_same_sheet() -> None:
    options = {
        "form": "stick-on",
        "paper": "Letter",
        "size": "60 x 30",
        "columns": "3",
        "left": "4,5",
        "gap": "2.5x0",
        "first": "4",
    }
    words = sheet_words(options)
    pairs = (part.partition("=") for part in words.split())
    again = sheet_from({name: value for name, _, value in pairs})
    assert again == sheet_from({**options, "first": "1"})
