"""Edges of windows as text: read, written, refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.crop.crop import Anchor, Edge
from benchround.core.crop.edge import FURTHEST_DAYS, VALUE_RANGES, edge_from_text, edge_to_text
from benchround.core.errors import InputError


@pytest.mark.parametrize(
    ("text", "edge"),
    [
        ("last frost -56", Edge(Anchor.LAST_FROST, -56)),
        ("last frost safe +0", Edge(Anchor.LAST_FROST_SAFE, 0)),
        ("first frost -7", Edge(Anchor.FIRST_FROST, -7)),
        ("midsummer +19", Edge(Anchor.MIDSUMMER, 19)),
        ("  midwinter   -81 ", Edge(Anchor.MIDWINTER, -81)),
        ("day length falling 10 +0", Edge(Anchor.DAY_LENGTH_FALLING, 0, 10.0)),
        ("day length rising 11.5 -3", Edge(Anchor.DAY_LENGTH_RISING, -3, 11.5)),
        ("soil warming 8 +0", Edge(Anchor.SOIL_WARMING, 0, 8.0)),
        ("soil cooling 10 +14", Edge(Anchor.SOIL_COOLING, 14, 10.0)),
    ],
)
def test_an_edge_is_read(text: str, edge: Edge) -> None:
    assert edge_from_text(text) == edge


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "not a day of the site's year"),
        ("1 April", "not a day of the site's year"),
        ("april -3", "not a day of the site's year"),
        ("last frost", "not a day of the site's year"),
        ("last frost 28", "not a day of the site's year"),
        ("Last Frost -28", "not a day of the site's year"),
        ("last frost -28 days", "not a day of the site's year"),
        ("midsummer +1.5", "not a day of the site's year"),
        ("midsummer +201", "at most 200"),
        ("midsummer -999", "at most 200"),
        ("midsummer +1000", "not a day of the site's year"),
        ("midsummer 3 +0", "takes no value"),
        ("soil warming +0", "needs a value from 0 to 30"),
        ("soil warming 31 +0", "needs a value from 0 to 30"),
        ("day length rising 24 +0", "needs a value from 1 to 23"),
        ("last frost \u0663 +0", "not a day of the site's year"),
    ],
)
def test_what_is_not_an_edge_is_refused_with_the_form(text: str, said: str) -> None:
    with pytest.raises(InputError, match=said):
        edge_from_text(text)


@st.composite
def edges(draw: st.DrawFn) -> Edge:
    anchor = draw(st.sampled_from(list(Anchor)))
    days = draw(st.integers(-FURTHEST_DAYS, FURTHEST_DAYS))
    if anchor not in VALUE_RANGES:
        return Edge(anchor, days)
    low, high = VALUE_RANGES[anchor]
    return Edge(anchor, days, draw(st.integers(int(low * 2), int(high * 2))) / 2)


@given(edges())
def test_writing_and_reading_give_the_edge_back(edge: Edge) -> None:
    assert edge_from_text(edge_to_text(edge)) == edge
