"""A sowing in one line of a diary."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.core.errors import InputError
from benchround.core.record import Draft, Kind
from benchround.core.site import Place, PlaceKind
from benchround.core.typed.diary_line import (
    crop_meant,
    read_diary_line,
    sowing_draft,
)
from benchround.crops.library import load_library

TODAY = date(2026, 5, 27)  # a Wednesday
CROPS = load_library().names()
PLACES = (
    Place("bench-1", "Bench 1", PlaceKind.BENCH, 1),
    Place("bench-2", "Bench 2", PlaceKind.BENCH, 2),
    Place("frame-a", "Frame A", PlaceKind.FRAME, 3),
    Place("arch", "The long arch", PlaceKind.BED, 4),
)


def read(text: str) -> Draft:
    return read_diary_line(text, TODAY, CROPS, PLACES, "b40")


LINES = [
    (
        "12 apr cosmos Paper Lantern 40 seeds bench 1",
        date(2026, 4, 12),
        {"crop": "cosmos", "variety": "Paper Lantern", "seeds": 40, "place": "bench-1"},
    ),
    ("cosmos", TODAY, {"crop": "cosmos"}),
    ("yesterday sowed leeks 220 seeds", TODAY - timedelta(days=1), {"crop": "leek", "seeds": 220}),
    (
        "sat sweet pea 'Bench 2' 40 seeds 8 cells 5 per cell in frame a packet p01",
        date(2026, 5, 23),
        {
            "crop": "sweet-pea",
            "variety": "Bench 2",
            "seeds": 40,
            "cells": 8,
            "per_cell": 5,
            "place": "frame-a",
            "packet": "p01",
        },
    ),
    (
        "2026-03-06 leek Winter Rung wanted 150 220 seeds on bench-2",
        date(2026, 3, 6),
        {
            "crop": "leek",
            "variety": "Winter Rung",
            "wanted": 150,
            "seeds": 220,
            "place": "bench-2",
        },
    ),
    (
        "27/5 zinnia 18 wanted 40seeds 2 a cell 20 cells the long arch",
        TODAY,
        {
            "crop": "zinnia",
            "wanted": 18,
            "seeds": 40,
            "per_cell": 2,
            "cells": 20,
            "place": "arch",
        },
    ),
    (
        "1.5. French marigold Brass Button 80 seeds 2 trays",
        date(2026, 5, 1),
        {"crop": "french-marigold", "variety": "Brass Button", "seeds": 80, "trays": 2},
    ),
    (
        "may 3 cosmos Row 7 12 seeds",
        date(2026, 5, 3),
        {"crop": "cosmos", "variety": "Row 7", "seeds": 12},
    ),
    (
        'leek "Bleu de 1900" 10 seeds',
        TODAY,
        {"crop": "leek", "variety": "Bleu de 1900", "seeds": 10},
    ),
]


@pytest.mark.parametrize(("text", "day", "figures"), LINES, ids=[line[0] for line in LINES])
def test_lines(text: str, day: date, figures: dict[str, object]) -> None:
    draft = read(text)
    assert (draft.kind, draft.about, draft.day) == (Kind.SOWN, "b40", day)
    assert dict(draft.figures) == figures


def test_a_day_to_come_makes_a_plan() -> None:
    draft = read("+3 lettuce 80 seeds")
    assert (draft.kind, draft.day) == (Kind.PLANNED, TODAY)
    assert draft.figures["sow_on"] == "2026-05-30"
    assert sowing_draft("b1", {}, TODAY, TODAY).kind is Kind.SOWN


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "No crop was named"),
        ("12 apr", "No crop was named"),
        ("sown", "No crop was named"),
        ("31 feb cosmos", "in no calendar"),
        ("12 cosmos", "no day"),
        ("1/13 cosmos", "no calendar"),
        ("1 apr 1826 cosmos", "look at the year"),
        ("nosuchcrop 40 seeds", "'nosuchcrop' is no crop"),
        ("b 40 seeds", "more than one crop"),
        ("cosmos 40", "40 of what"),
        ("cosmos 40 seeds 12", "12 of what"),
        ("cosmos 40 seeds 50 seeds", "twice"),
        ("cosmos 9999999 seeds", "cannot be"),
        ("cosmos 40 seeds on the moon", "no place answers to 'the moon': Bench 1"),
        ("cosmos 40 seeds quickly", "'quickly' is not understood"),
        ("cosmos 40 seeds bench 1 bench 2", "'bench' is not understood"),
        ("cosmos \x1b[31m", "control characters"),
        ("cosmos " * 200, "too long"),
    ],
)
def test_what_cannot_be_understood_is_named(text: str, words: str) -> None:
    with pytest.raises(InputError, match=words):
        read(text)


SIGNS = st.one_of(st.sampled_from(" 0123456789.-+/'\"abcdeklmnorst"), st.characters())
WORDS = st.sampled_from(
    [
        "12",
        "apr",
        "cosmos",
        "leek",
        "40",
        "seeds",
        "cells",
        "per",
        "cell",
        "wanted",
        "bench",
        "1",
        "in",
        "packet",
        "'",
        '"x',
        "Paper",
        "sat",
        "2026-04-12",
        "+3",
        "frame",
        "a",
    ]
)


@settings(deadline=None)
@given(st.one_of(st.text(alphabet=SIGNS, max_size=60), st.lists(WORDS, max_size=12).map(" ".join)))
def test_any_line_is_a_sowing_or_a_sentence(text: str) -> None:
    try:
        draft = read(text)
    except InputError as error:
        assert str(error)
        return
    assert draft.kind in (Kind.SOWN, Kind.PLANNED)
    assert draft.day is not None
    assert draft.figures["crop"] in load_library()
    for name in ("seeds", "cells", "per_cell", "wanted", "trays"):
        assert isinstance(draft.figures.get(name, 0), int)
    assert draft.figures.get("place", "arch") in {place.code for place in PLACES}


@settings(deadline=None)
@given(
    day=st.dates(date(2008, 1, 1), TODAY),
    crop=st.sampled_from([name.key for name in CROPS]),
    variety=st.lists(st.text("ABCabc\u00e4-", min_size=3, max_size=9), max_size=3).map(" ".join),
    seeds=st.one_of(st.none(), st.integers(0, 1_000_000)),
    place=st.sampled_from([None, *PLACES]),
)
def test_what_is_written_as_shown_is_read_as_meant(
    day: date, crop: str, variety: str, seeds: int | None, place: Place | None
) -> None:
    said = [day.isoformat(), crop, f"'{variety}'" if variety else ""]
    said += [f"{seeds} seeds" if seeds is not None else "", f"in {place.name}" if place else ""]
    draft = read(" ".join(part for part in said if part))
    assert draft.day == day
    assert draft.figures["crop"] == crop
    assert draft.figures.get("variety", "") == variety
    assert draft.figures.get("seeds") == seeds
    assert draft.figures.get("place") == (place.code if place else None)


@pytest.mark.parametrize(
    ("text", "key"),
    [("Cosmos", "cosmos"), ("leeks", "leek"), ("tomatoes", "tomato"), ("LUPIN", "lupin")],
)
def test_crops_go_by_their_names_and_plurals(text: str, key: str) -> None:
    assert crop_meant(text, CROPS) == key


def test_places_go_by_code_and_name() -> None:
    for name in ("BENCH 1", "bench-1", "on Bench-1"):
        draft = read_diary_line(f"cosmos 40 seeds {name}", TODAY, CROPS, PLACES)
        assert draft.figures["place"] == "bench-1"
    with pytest.raises(InputError, match="none set up yet"):
        read_diary_line("cosmos 40 seeds on bench 1", TODAY, CROPS, ())
