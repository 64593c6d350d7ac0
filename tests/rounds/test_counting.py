"""The final count is asked for by the rule that the card, the learning and the review go by."""

from __future__ import annotations

from datetime import date

import pytest

from benchround.core.record import Figure, Kind
from benchround.core.seed.final_count import final_count
from benchround.core.task import Family
from tests.rounds.small_season import Story, begin, place

SOWN, UP, DUE = date(2026, 5, 1), date(2026, 5, 9), date(2026, 5, 17)
COUNTED = date(2026, 5, 11)


def story(kind: Kind | None = None, **figures: Figure) -> Story:
    told = begin()
    place(told, "bench", name="Bench", kind="bench")
    told.tell(SOWN, Kind.SOWN, "b1", crop="halfling", seeds=40, place="bench", raising="tray")
    told.tell(UP, Kind.FIRST_UP, "b1")
    if kind is not None:
        told.tell(COUNTED, kind, "b1", **figures)
    return told


@pytest.mark.parametrize(
    ("kind", "figures"),
    [
        pytest.param(None, {}, id="not counted"),
        pytest.param(Kind.COUNTED, {"count": 20}, id="counted too early"),
        pytest.param(Kind.TRUE_LEAVES, {"count": 40}, id="leaves noted"),
    ],
)
def test_a_final_count_that_can_come_is_asked_for_and_says_why_it_is_owed(
    kind: Kind | None, figures: dict[str, Figure]
) -> None:
    told = story(kind, **figures)
    season = told.season()
    found = final_count(season.batches["b1"], season.crop("halfling"))
    assert found.can_come
    (count,) = told.tasks(DUE, Family.COUNT)
    assert f"no final count yet: {found.because}" in count.why.figures


@pytest.mark.parametrize(
    ("kind", "figures"),
    [
        pytest.param(Kind.COUNTED, {"count": 40}, id="all are up"),
        pytest.param(Kind.COUNTED, {"count": 20, "final": True}, id="called final"),
        pytest.param(Kind.THINNED, {"count": 20}, id="thinned"),
        pytest.param(Kind.WASHED_OUT, {}, id="washed out"),
    ],
)
def test_a_count_that_would_tell_nothing_is_not_asked_for(
    kind: Kind, figures: dict[str, Figure]
) -> None:
    told = story(kind, **figures)
    season = told.season()
    assert not final_count(season.batches["b1"], season.crop("halfling")).can_come
    assert told.tasks(DUE, Family.COUNT) == []
