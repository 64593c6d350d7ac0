"""Sentences in F, inches and mph.

By definition (from memory): F = 1.8 C + 32, an inch is 25.4 mm, a mile 1.609344 km.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.unit_words import OWN_MARKS, UnitWords, own
from benchround.core.units import Degrees, Rain, Units

F, INCH, BOTH = Units(Degrees.F), Units(rain=Rain.INCH), Units(Degrees.F, Rain.INCH)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("0 C may come", "32 F may come"),
        ("it boils at 100 C", "it boils at 212 F"),
        ("5 to 23 C, dry", "41 to 73 F, dry"),
        ("-40 C", "-40 F"),
        ("-3 to 2 C tonight", "27 to 36 F tonight"),
        ("grows at 20-45 C", "grows at 68-113 F"),
        ("lowest, C", "lowest, F"),
        ("cooler by 3 to 6 C", "cooler by 5.4 to 10.8 F"),
        ("2 C warmer than before", "3.6 F warmer than before"),
        ("fleece is worth 1 to 2 C", "fleece is worth 1.8 to 3.6 F"),
        ("a mat adds 3 K or so", "a mat adds 5.4 F or so"),
        ("70 degree-days above its base", "126 F degree-days above its base"),
        ("62 of 119 degree-days, by which", "112 of 214 F degree-days, by which"),
        ("120 to 150 degree-days above 6 C", "216 to 270 F degree-days above 43 F"),
        (
            "300 degree-days where 50 are usual: a wrong day?",
            "540 F degree-days where 90 are usual: a wrong day?",
        ),
        ("it passes 30 C at 10:00", "it passes 86 F at 10:00"),
        ("cover with 4 mm of vermiculite", "cover with 0.16 in of vermiculite"),
        ("25.4 mm in an hour", "1 in in an hour"),
        ("9 cm pots", "9 cm pots"),
        ("12 in a 9 cm square pot", "12 in a 9 cm square pot"),
        ("stand in 2.54-7.62 cm of water", "stand in 1-3 in of water"),
        ("stand in 2-3 cm of water", "stand in 0.8-1.2 in of water"),
        ("Thin the row to 15 cm", "Thin the row to 5.9 in"),
        ("40 cm apart, 1 cm deep", "16 in apart, 0.39 in deep"),
        ("potted on: pot 9 cm, height 25.4 cm", "potted on: pot 9 cm, height 10 in"),
        ("121.9 x 61 cm", "48 x 24 in"),
        ("cells of 20 x 20 x 45 mm", "cells of 0.79 x 0.79 x 1.8 in"),
        ("rain, mm", "rain, in"),
        ("gusts of 68 km/h, limit 40 km/h", "gusts of 42 mph, limit 25 mph"),
        ("from 39 to 49 km/h", "from 24 to 30 mph"),
        ("wind not known: 1 m/s taken", "wind not known: 2 mph taken"),
        ("gust, km/h", "gust, mph"),
        ("0.1 mm", "0.004 in"),
    ],
)
def test_figures_are_turned(text: str, said: str) -> None:
    assert UnitWords(BOTH)(text) == said
    assert UnitWords(Units())(text) is text
    assert UnitWords(BOTH)(said) == said


PIECES = (
    "5",
    "-3",
    "2.5",
    "C",
    "K",
    "mm",
    "cm",
    "pots",
    "degree-days",
    "of",
    "to",
    "where",
    "are usual",
    "by",
)


@given(st.lists(st.sampled_from(PIECES), max_size=12), st.sampled_from((F, INCH, BOTH)))
def test_turning_again_changes_nothing(pieces: list[str], units: Units) -> None:
    words = UnitWords(units, ("5 mm",))
    once = words(" ".join(pieces))
    assert words(once) == once


@pytest.mark.parametrize(
    "text",
    ["Frame C", "b12, 5 Carrots", "C38", "12 Combs", "5'C", "3 C-ration", "4 mmx", "r22 g68"],
)
def test_what_is_no_figure_stays(text: str) -> None:
    assert UnitWords(BOTH)(text) == text


def test_each_choice_turns_its_own_figures_only() -> None:
    assert UnitWords(F)("5 C and 10 mm, 2 cm") == "41 F and 10 mm, 2 cm"
    assert UnitWords(INCH)("5 C and 10 mm") == "5 C and 0.39 in"


def test_what_the_grower_wrote_is_never_changed() -> None:
    words = UnitWords(BOTH, ("Cellar 5 C", "10 mm Ball", "plain", "5 C (a+b"))
    told = "Move 10 mm Ball to Cellar 5 C, not below 5 C; 5 C (a+b"
    assert words(told) == "Move 10 mm Ball to Cellar 5 C, not below 41 F; 5 C (a+b"


@pytest.mark.parametrize(
    "note",
    ["compost at 20 C, 5 mm deep", "20 C", "tray B, C", "62 of 119 degree-days", "a plain one"],
)
def test_a_marked_note_is_never_changed(note: str) -> None:
    words = UnitWords(BOTH)
    told = words(f"noted: {own(note)}, at 20 C")
    assert told.translate(dict.fromkeys(map(ord, OWN_MARKS))) == f"noted: {note}, at 68 F"
    assert words(told) == told


@given(st.integers(-40, 60))
def test_a_temperature_said_and_read_is_within_half_a_degree_f(temp_c: int) -> None:
    said = UnitWords(F)(f"{temp_c} C").removesuffix(" F")
    read = F.read_temp_c(said, -60, 70)
    assert read is not None
    assert abs(read - temp_c) <= 0.5 / 1.8 + 0.05


@given(st.floats(0, 2_000, allow_nan=False))
def test_a_length_said_and_read_is_the_same_to_its_last_place(length_mm: float) -> None:
    read = INCH.read_length_mm(INCH.length(length_mm), 3_000)
    assert read is not None
    assert abs(read - length_mm) <= 0.05 * 25.4 + 0.1


@given(st.text(max_size=60))
def test_any_text_is_turned_without_a_fault(text: str) -> None:
    assert isinstance(UnitWords(BOTH, (text,))(text), str)
    assert UnitWords(BOTH, (text,))(text) == text or not text
