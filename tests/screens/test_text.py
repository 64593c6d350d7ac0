"""What is drawn of anything typed: one line, no controls, cut to the room, no markup."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len
from rich.style import Style

from benchround.drawing import cells
from benchround.drawing.glyphs import ASCII, UNICODE
from benchround.screens import text
from benchround.screens.drawn import strip
from benchround.screens.text import (
    MOST_LETTERS,
    Role,
    clean,
    fit,
    line,
    paragraph,
    plain,
    wrap,
)
from benchround.screens.widgets.line_edit import MOST_TYPED, LineEdit, line_of

HOSTILE = (
    "tray [A]",
    "[/]",
    "[bold red]",
    "\x1b[31mred\x1b[0m",
    "a\nb\tc\rd",
    "\x07\x00\x9b31m",
    "x" * 10_000,
    "\u202eabc\u202c",
    "\u05e9\u05dc\u05d5\u05dd",
    "e" + "\u0301" * 500,
    "\U0001f331 \u4e2d\u6587",
    "\ud800",
)
PLAIN_STYLE = Style()


def plain_style(role: Role) -> Style:
    return PLAIN_STYLE


@pytest.mark.parametrize("said", HOSTILE, ids=ascii)
def test_hostile_text_stays_on_its_line_and_in_its_room(said: str) -> None:
    for width in (1, 7, 40):
        drawn = strip(line(said, (" end", Role.KEY)), width, plain_style).text
        assert cell_len(drawn) == width
        assert all(unicodedata.category(sign) not in text.UNSEEN for sign in drawn)


def test_brackets_are_letters() -> None:
    assert clean("tray [A] [/] [b]x[/b]") == "tray [A] [/] [b]x[/b]"


@given(st.text(max_size=300), st.integers(0, 60))
def test_a_text_fits_exactly(said: str, width: int) -> None:
    assert cell_len(fit(said, width)) == width


@given(st.text(max_size=3000))
def test_a_clean_text_is_printable_short_and_stays_clean(said: str) -> None:
    seen = clean(said)
    assert seen.isprintable()
    assert len(seen) <= MOST_LETTERS
    assert clean(seen) == seen


@given(st.text(max_size=300), st.integers(1, 60))
def test_wrapping_keeps_every_word_and_never_overflows(said: str, width: int) -> None:
    lines = wrap(said, width)
    widest = max((cell_len(sign) for sign in clean(said)), default=1)
    assert all(cell_len(row) <= max(width, widest) for row in lines)
    assert "".join("".join(lines).split()) == "".join(clean(said).split())


@given(st.lists(st.text(max_size=20), max_size=8), st.integers(1, 60))
def test_a_strip_is_as_wide_as_it_is_asked_to_be(spans: list[str], width: int) -> None:
    drawn = strip(tuple((span, Role.INK) for span in spans), width, plain_style)
    assert cell_len(drawn.text) == width


def test_long_words_are_cut_through_and_short_ones_are_not() -> None:
    assert wrap("abc defgh ij", 5) == ["abc", "defgh", "ij"]
    assert wrap("abcdefgh", 3) == ["abc", "def", "gh"]
    assert wrap("one two three", 8, "  ") == ["one two", "  three"]
    assert plain(paragraph("one two", 3, Role.QUIET)) == "one\ntwo"


@pytest.mark.parametrize(
    ("env", "plainly"),
    [
        ({"LANG": "C"}, True),
        ({"LANG": "POSIX"}, True),
        ({"LC_ALL": "C", "LANG": "de_DE.UTF-8"}, True),
        ({"LANG": "C", "LC_CTYPE": "C.UTF-8"}, True),
        ({"LANG": "de_DE.ISO-8859-1"}, True),
        ({"LANG": "de_DE.UTF-8"}, False),
        ({"LANG": "en_GB.utf8"}, False),
        ({}, False),
    ],
)
def test_plain_letters_where_the_terminal_has_no_others(
    env: dict[str, str], plainly: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("LC_ALL", "LC_CTYPE", "LANG"):
        monkeypatch.delenv(name, raising=False)
    for name, value in env.items():
        monkeypatch.setenv(name, value)
    text.plain_letters_only.cache_clear()
    try:
        assert text.plain_letters_only() is plainly
        expected = "Lowenmaul ?" if plainly else "L\u00f6wenmaul \u4e2d"
        assert clean("L\u00f6wenmaul \u4e2d") == expected
    finally:
        text.plain_letters_only.cache_clear()


EDITS = st.lists(
    st.one_of(
        st.tuples(st.just("put"), st.text(max_size=5)),
        st.tuples(st.sampled_from(("back", "delete", "start", "end")), st.just("")),
        st.tuples(st.sampled_from(("left", "right")), st.just("")),
    ),
    max_size=30,
)


@given(EDITS)
def test_the_caret_stays_within_the_line(edits: list[tuple[str, str]]) -> None:
    now = LineEdit()
    for name, typed in edits:
        before = now
        match name:
            case "put":
                now = now.put(typed)
                assert len(now.text) >= len(before.text)
            case "left":
                now = now.move(-1)
            case "right":
                now = now.move(1)
            case _:
                now = getattr(now, name)()
        assert 0 <= now.at <= len(now.text)
        assert "\n" not in now.text


def test_a_line_is_edited_as_a_line_is() -> None:
    now = line_of("coss").back().put("mos").start().put("a ").end().back()
    assert (now.text, now.at) == ("a cosmo", 7)
    assert line_of("abc").start().delete().text == "bc"
    assert len(LineEdit().put("x" * 50_000).text) == MOST_TYPED


@pytest.mark.parametrize("lang", ["en_GB.UTF-8", "C"])
@pytest.mark.parametrize(
    "said",
    [
        "esc\x1b[2J",
        "right \u202eto left",
        "half \ud800 sign",
        "own \ue000 sign",
        "Weiße Rübe",
        "Ærø, Łódź",
        "two\nlines\tand a tab",
        "12 °C",
    ],
)
def test_what_cannot_be_shown_is_marked_in_sentences_as_in_pictures(
    said: str, lang: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A name reads the same in the list and in the picture beside it."""
    monkeypatch.setenv("LANG", lang)
    text.plain_letters_only.cache_clear()
    try:
        assert clean(said) == cells.clean(said, ASCII if lang == "C" else UNICODE)
    finally:
        text.plain_letters_only.cache_clear()
