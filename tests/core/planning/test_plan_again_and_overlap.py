"""Sowing again by heat units, and which flowerings meet."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.dates import Span
from benchround.core.errors import OutOfRangeError
from benchround.core.planning.plan import flowering_overlap, flowerless, sow_again

SOWN, HARVEST = date(2027, 3, 1), date(2027, 6, 1)
OTTOSSON = "Ottosson, vining peas, ISHS article 27_34 (rule read, numbers own)"


@pytest.mark.parametrize(
    ("spring_c", "days"),
    [(9.0, 21), (13.0, 12)],
    ids=[f"D01: {OTTOSSON}", f"D02: {OTTOSSON}"],
)
def test_the_heat_of_the_gap_at_harvest_lies_between_the_sowings(
    spring_c: float, days: int
) -> None:
    # base 4.4 C, harvests 7 days apart at 18 C: 95.2 degree-days
    again = sow_again(
        SOWN, HARVEST, 7, 4.4, lambda day: spring_c if day < date(2027, 5, 1) else 18.0
    )
    assert again.heat == pytest.approx(95.2)
    assert again.next_sowing == SOWN + timedelta(days=days)
    assert "Ottosson" in again.source


def test_a_climate_below_the_base_has_no_next_sowing() -> None:
    warm_harvest = sow_again(SOWN, HARVEST, 7, 4.4, lambda day: 18.0 if day in _week() else 2.0)
    assert warm_harvest.next_sowing is None or warm_harvest.next_sowing >= HARVEST
    assert sow_again(SOWN, HARVEST, 7, 4.4, lambda _: 2.0).next_sowing is None


def _week() -> list[date]:
    return [HARVEST + timedelta(days=n) for n in range(1, 8)]


def test_a_gap_out_of_range_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="days between harvests"):
        sow_again(SOWN, HARVEST, 0, 4.4, lambda _: 15.0)


def test_flowerings_meet_follow_or_leave_a_gap() -> None:
    tulip = ("tulip", Span(date(2027, 4, 20), date(2027, 5, 10)))
    wallflower = ("wallflower", Span(date(2027, 5, 1), date(2027, 5, 31)))
    cosmos = ("cosmos", Span(date(2027, 6, 1), date(2027, 9, 30)))
    pairs = flowering_overlap([tulip, wallflower, cosmos])
    assert [(p.first, p.second, p.days_together, p.gap_days) for p in pairs] == [
        ("tulip", "wallflower", 10, 0),
        ("tulip", "cosmos", 0, 21),
        ("wallflower", "cosmos", 0, 0),
    ]
    assert pairs[0].together == Span(date(2027, 5, 1), date(2027, 5, 10))


def test_the_stretches_without_a_flower() -> None:
    year = Span(date(2027, 4, 1), date(2027, 10, 31))
    spans = [
        Span(date(2027, 6, 1), date(2027, 9, 30)),
        Span(date(2027, 4, 20), date(2027, 5, 10)),
        Span(date(2027, 5, 1), date(2027, 5, 20)),
    ]
    assert flowerless(spans, year) == (
        Span(date(2027, 4, 1), date(2027, 4, 19)),
        Span(date(2027, 5, 21), date(2027, 5, 31)),
        Span(date(2027, 10, 1), date(2027, 10, 31)),
    )
    assert flowerless([], year) == (year,)
    assert flowerless([Span(date(2027, 1, 1), date(2027, 12, 31))], year) == ()


DAYS = st.dates(date(2027, 1, 1), date(2027, 12, 31))
SPANS = st.tuples(DAYS, DAYS).map(lambda pair: Span(min(pair), max(pair)))


def days_of(span: Span) -> set[date]:
    return {span.opens + timedelta(days=n) for n in range(span.days)}


@given(SPANS, SPANS)
def test_days_together_are_the_common_days(one: Span, other: Span) -> None:
    (pair,) = flowering_overlap([("one", one), ("other", other)])
    assert pair.days_together == len(days_of(one) & days_of(other))
    assert (pair.together is None) == (pair.days_together == 0)
    between = max(one.opens, other.opens) - min(one.closes, other.closes)
    assert pair.gap_days == (max(0, between.days - 1))


@given(st.lists(SPANS, max_size=6), SPANS)
def test_a_day_is_flowerless_exactly_when_no_span_has_it(spans: list[Span], over: Span) -> None:
    bare = set().union(*(days_of(gap) for gap in flowerless(spans, over)))
    assert bare == {day for day in days_of(over) if not any(day in span for span in spans)}
