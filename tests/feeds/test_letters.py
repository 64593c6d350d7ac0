"""Letters a typeface has not: written otherwise, never left out."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.feeds.letters import one_line, printable


def ascii_only(sign: str) -> bool:
    return sign.isascii() and sign.isprintable()


@pytest.mark.parametrize(
    ("text", "said", "source"),
    [
        ("Ärenröschen", "Arenroschen", "Unicode canonical decomposition (unicodedata)"),
        ("Žluťoučký kůň", "Zlutoucky kun", "Unicode canonical decomposition"),
        ("Łódź", "Lodz", "common practice, no source"),
        ("Straße", "Strasse", "German spelling rules (from memory)"),
        ("Бархатцы", "Barkhattsy", "BGN/PCGN romanisation of Russian (from memory)"),
        ("Ещё", "Eshche", "ICAO Doc 9303 style, letter by letter (from memory)"),
        ("Ρόδο", "Rodo", "ISO 843 (from memory); accents left off"),
        ("\u201eRose\u201c \u2013 \u00bd", '"Rose" - [U+00BD]', "common practice, no source"),
        ("日本", "[U+65E5][U+672C]", "our proposal: the number of what has no Latin form"),
        ("\U0001f33b sun", "[U+1F33B] sun", "our proposal"),
    ],
    ids=lambda value: value[:12] if isinstance(value, str) else "",
)
def test_what_a_poor_typeface_prints(text: str, said: str, source: str) -> None:
    ready = printable(text, ascii_only)
    assert ready.text == said, source
    assert ready.replaced


def test_a_rich_typeface_prints_it_as_it_is() -> None:
    ready = printable("Žluťoučký 日本", lambda _: True)
    assert (ready.text, ready.replaced, ready.unjoined) == ("Žluťoučký 日本", (), False)


def test_letters_that_should_be_joined_are_remarked() -> None:
    assert printable("وردة", lambda _: True).unjoined
    assert printable("यूरोप", lambda _: True).unjoined
    assert not printable("ורד דבר ไทย", lambda _: True).unjoined


@given(st.text(max_size=60))
def test_every_visible_sign_leaves_a_mark_and_only_known_letters_are_used(text: str) -> None:
    ready = printable(text, ascii_only)
    assert all(ascii_only(sign) for sign in ready.text)
    silent = set("\u044c\u044a\u042c\u042a")  # signs that are not written in Latin letters
    seen = unicodedata.normalize("NFC", one_line(text))
    for sign in seen:
        if sign not in silent and not ascii_only(sign):
            assert sign in ready.replaced
    if any(sign not in silent for sign in seen):
        assert ready.text


@given(st.text(max_size=60))
def test_one_line_is_one_line_and_turns_nothing_round(text: str) -> None:
    line = one_line(text)
    assert len(line.splitlines()) <= 1
    assert not any(unicodedata.category(sign) in ("Cf", "Cc", "Cs") for sign in line)
    assert line == line.strip()
    assert one_line(line) == line
