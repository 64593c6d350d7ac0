"""Words in cells, held against rich, the library the screens measure with."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rich.cells import cell_len

from benchround.drawing.canvas import Glyphs
from benchround.drawing.cells import cell_width, clean, cut, fit
from benchround.drawing.wrapping import wrap, wrap_items
from tests.drawing.checks import CONTROL, SETS
from tests.drawing.fixed import HOSTILE

ANY_TEXT = st.text(st.characters(exclude_categories=()), max_size=60)
BY_NAME = pytest.mark.parametrize("glyphs", SETS, ids=lambda glyphs: glyphs.name)


def test_every_single_character_is_as_wide_as_rich_says() -> None:
    wrong = []
    for number in (*range(0x40000), *range(0xE0000, 0xE0200)):  # all that are assigned
        seen = clean("a" + chr(number))
        if cell_width(seen) != cell_len(seen):
            wrong.append(hex(number))
    assert not wrong, (len(wrong), wrong[:20])


@BY_NAME
@settings(deadline=None)
@given(text=ANY_TEXT)
def test_any_text_becomes_harmless_and_as_wide_as_rich_says(glyphs: Glyphs, text: str) -> None:
    seen = clean(text, glyphs)
    assert cell_width(seen) == cell_len(seen)
    assert not [sign for sign in seen if unicodedata.category(sign) in CONTROL]
    assert clean(seen, glyphs) == seen
    assert not glyphs.ascii_only or seen.isascii()


@BY_NAME
@settings(deadline=None)
@given(text=ANY_TEXT, width=st.integers(-3, 70), right=st.booleans())
def test_fitted_text_fills_its_cells_exactly(
    glyphs: Glyphs, text: str, width: int, right: bool
) -> None:
    assert cell_len(fit(text, width, glyphs, right=right)) == max(0, width)
    assert cell_len(cut(text, width, glyphs)) <= max(0, width)


@BY_NAME
@settings(deadline=None)
@given(text=ANY_TEXT, width=st.integers(2, 50), indent=st.sampled_from(("", "  ", "      ")))
def test_wrapped_text_keeps_its_width_and_loses_nothing(
    glyphs: Glyphs, text: str, width: int, indent: str
) -> None:
    lines = wrap(text, width, glyphs, indent)
    assert all(cell_len(line) <= width for line in lines)
    assert "".join("".join(lines).split()) == "".join(clean(text, glyphs).split())


@settings(deadline=None)
@given(items=st.lists(st.sampled_from(("S sown", "U up", "G growing on", "x" * 30)), max_size=9))
def test_items_are_broken_between_where_that_can_be(items: list[str]) -> None:
    lines = wrap_items(items, 20, SETS[0])
    assert all(cell_width(line) <= 20 for line in lines)
    if "x" * 30 not in items:
        assert [item for line in lines for item in line.rstrip(",").split(", ")] == items


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        # what each looks like in ASCII: common spelling, no source
        ("Café", "Cafe"),
        ("Weiße Rübe", "Weisse Rube"),
        ("1½ m", "11/2 m"),
        ("花", "?"),
        ("tab\tand\nline", "tab and line"),
        ("esc\x1b[2J", "esc?[2J"),
        ("right \u202eto left", "right ?to left"),
        ("\U0001f1ec\U0001f1e7 flag", "GB flag"),
        ("wide\u3000space", "wide space"),
    ],
)
def test_names_spelled_in_ascii(text: str, plain: str) -> None:
    assert clean(text, SETS[1]) == plain


def test_heaped_accents_are_thinned_out_and_joiners_dropped() -> None:
    assert clean("e" + "\u0301" * 50) == "é" + "\u0301" * 2
    assert clean("a\u200db") == "ab"
    assert clean("\u0301x").startswith("?")


def test_a_cut_shows_in_both_sets() -> None:
    assert cut("Purple sprouting broccoli", 12, SETS[0]) == "Purple spro…"
    assert cut("Purple sprouting broccoli", 12, SETS[1]) == "Purple sp..."
    assert cut("Purple sprouting", 9, SETS[0]) == "Purple s…"
    assert cut("花花花", 4, SETS[0]) == "花…"
    assert cut("abcdef", 2, SETS[1]) == ".."


def test_a_hostile_name_takes_the_same_room_as_a_good_one() -> None:
    for glyphs in SETS:
        for width in range(0, 60):
            assert cell_len(fit(HOSTILE, width, glyphs)) == width
