"""What came up, in one line of a diary."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.core.errors import InputError
from benchround.core.record import Draft, Kind
from benchround.core.typed.diary_up import Sown, read_up_line
from benchround.crops.library import load_library

TODAY = date(2026, 5, 27)  # a Wednesday
CROPS = load_library().names()
SOWINGS = (
    Sown("b05", "leek", "Winter Rung", date(2026, 2, 12), young=False),
    Sown("b09", "leek", "Blue Post", date(2026, 5, 1)),
    Sown("b12", "cosmos", "Paper Lantern", date(2026, 5, 14)),
    Sown("b20", "zinnia", "", date(2026, 4, 1)),
    Sown("b21", "zinnia", "", date(2026, 4, 20)),
    Sown("b30", "sweet-pea", "", date(2026, 3, 1)),
)


def read(text: str) -> Draft | None:
    return read_up_line(text, TODAY, CROPS, SOWINGS)


@pytest.mark.parametrize(
    ("text", "batch", "kind", "day", "count"),
    [
        ("28 feb leek up 50", "b05", Kind.COUNTED, date(2026, 2, 28), 50),
        ("28 feb leeks 50 up", "b05", Kind.COUNTED, date(2026, 2, 28), 50),
        ("leek up 50", "b09", Kind.COUNTED, TODAY, 50),
        ("yesterday leek Winter Rung 50 seedlings up", "b05", Kind.COUNTED, date(2026, 5, 26), 50),
        ("25/5 B12 first up", "b12", Kind.FIRST_UP, date(2026, 5, 25), None),
        ("cosmos 'Paper Lantern' came up 31", "b12", Kind.COUNTED, TODAY, 31),
        ("cosmos none up", "b12", Kind.LOOKED, TODAY, None),
        ("sweet peas 0 up", "b30", Kind.COUNTED, TODAY, 0),
        ("2026-04-10 zinnia up", "b20", Kind.FIRST_UP, date(2026, 4, 10), None),
    ],
)
def test_lines(text: str, batch: str, kind: Kind, day: date, count: int | None) -> None:
    draft = read(text)
    assert draft is not None
    assert (draft.about, draft.kind, draft.day) == (batch, kind, day)
    assert draft.figures.get("count") == count


@pytest.mark.parametrize(
    "text", ["cosmos", "12 apr cosmos Paper Lantern 40 seeds", "leek 'Stand Up'", "up leek 5 seeds"]
)
def test_a_sowing_tells_nothing_of_seedlings(text: str) -> None:
    assert read(text) is None


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("up 50", "No batch was named"),
        ("mon up", "No batch was named"),
        ("zinnia 12 up", "could be b20, b21: say which"),
        ("1 feb leek up 5", "No 'leek' was sown by Sun 1 Feb 2026"),
        ("tomato up 5", "No 'tomato' was sown: write the sowing first"),
        ("nosuchcrop up 5", "'nosuchcrop' is no crop"),
        ("+3 leek up 5", "still to come"),
        ("leek up 9999999", "cannot be"),
        ("31 feb leek up 5", "in no calendar"),
    ],
)
def test_what_cannot_be_understood_is_named(text: str, words: str) -> None:
    with pytest.raises(InputError, match=words):
        read(text)


WORDS = st.sampled_from(
    ["12", "may", "leek", "b12", "up", "50", "first", "none", "came", "mon", "+3", "'", "zinnia"]
)


@settings(deadline=None)
@given(st.one_of(st.text(max_size=40), st.lists(WORDS, max_size=8).map(" ".join)))
def test_any_line_is_something_seen_or_a_sentence_or_none_of_it(text: str) -> None:
    try:
        draft = read(text)
    except InputError as error:
        assert str(error)
        return
    if draft is not None:
        assert draft.about in {one.batch for one in SOWINGS}
        assert draft.kind in (Kind.COUNTED, Kind.FIRST_UP, Kind.LOOKED)
        assert draft.day is not None
        assert draft.day <= TODAY
