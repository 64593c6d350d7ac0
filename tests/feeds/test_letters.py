"""Letters a typeface has not: written otherwise, never left out."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.feeds.letters import JOINERS, clusters, one_line, printable


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
    assert (ready.text, ready.replaced, ready.joined) == ("Žluťoučký 日本", (), False)


def test_letters_that_are_joined_or_stacked_are_known() -> None:
    assert printable("وردة", lambda _: True).joined
    assert printable("यूरोप", lambda _: True).joined
    assert not printable("ורד דבר ไทย", lambda _: True).joined


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
    unseen = [sign for sign in line if unicodedata.category(sign) in ("Cf", "Cc", "Cs")]
    assert set(unseen) <= set(JOINERS)
    assert line == line.strip()
    assert one_line(line) == line


@pytest.mark.parametrize(
    ("text", "said", "source"),
    [
        (
            "\u0645\u06cc\u200c\u062e\u0648",
            "\u0645\u06cc\u200c\u062e\u0648",
            "Persian verbs (memory)",
        ),
        (
            "\u0915\u094d\u200d\u0937",
            "\u0915\u094d\u200d\u0937",
            "Unicode ch. 12, half forms (memory)",
        ),
        ("rose\u200c\u200dbud", "rosebud", "Latin letters are not joined"),
        ("\u200c\u0645", "\u0645", "nothing to keep apart"),
        ("\u0645\u200c\u202e\u062e", "\u0645\u062e", "directions are taken out"),
    ],
    ids=lambda value: value[:20] if isinstance(value, str) and value.isascii() else "",
)
def test_what_joins_or_parts_letters_stays_where_letters_are_joined(
    text: str, said: str, source: str
) -> None:
    assert one_line(text) == said, source
    assert printable(text, lambda sign: sign not in JOINERS).replaced == ()


@pytest.mark.parametrize(
    ("word", "pieces", "source"),
    [
        ("cafe\u0301s", ["c", "a", "f", "e\u0301", "s"], "Unicode Annex 29: Extend (memory)"),
        (
            "\u0915\u094d\u0937\u092e\u093e",
            ["\u0915\u094d\u0937", "\u092e\u093e"],
            "Annex 29, rule 9c: a conjunct (memory)",
        ),
        ("\u0e19\u0e49\u0e33", ["\u0e19\u0e49", "\u0e33"], "marks stay with their letter"),
        ("a[U+65E5][U+1F33B]", ["a", "[U+65E5]", "[U+1F33B]"], "a letter told by its number"),
    ],
    ids=lambda value: "",
)
def test_a_letter_is_never_parted_from_its_marks(word: str, pieces: list[str], source: str) -> None:
    assert list(clusters(word)) == pieces, source


@given(st.text(max_size=60))
def test_clusters_are_the_word(word: str) -> None:
    assert "".join(clusters(word)) == word
    assert all(clusters(word))
