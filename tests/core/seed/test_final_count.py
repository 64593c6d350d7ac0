"""One rule for the final count: what is final, what is still owed, and why.

That emergence is over 8 days after the first seedling, that a count reaching the usual share is
final, and that leaves noted with a number are not: common practice, no source.
"""

from __future__ import annotations

import pytest

from benchround.core.record import Cause, Kind
from benchround.core.seed.final_count import (
    NOT_YET,
    SINCE,
    TOO_EARLY,
    FinalCount,
    final_count,
)
from benchround.core.seed.looks_reading import NEVER_COUNTED, NOT_LOOKED_AT, SEEDS_NOT_SAID
from tests.core.seed_stories import TENBELL, Event, batch_of, on

UP = on(9, Kind.FIRST_UP)
FINAL = [
    pytest.param((UP, on(17, Kind.COUNTED, count=30)), 30, id="8 days after the first seedling"),
    pytest.param((UP, on(11, Kind.COUNTED, count=30, final=True)), 30, id="called final"),
    pytest.param((UP, on(11, Kind.COUNTED, count=40)), 40, id="the usual 80 % are up"),
]
NOT_FINAL = [
    pytest.param((), NOT_LOOKED_AT, True, id="nobody looked"),
    pytest.param((UP,), NEVER_COUNTED, True, id="not counted"),
    pytest.param((UP, on(11, Kind.COUNTED, count=39)), TOO_EARLY, True, id="counted too early"),
    pytest.param((UP, on(11, Kind.TRUE_LEAVES, count=45)), TOO_EARLY, True, id="leaves noted"),
    pytest.param(
        (UP, on(11, Kind.COUNTED, count=30), on(12, Kind.THINNED, count=20)),
        TOO_EARLY + SINCE,
        False,
        id="thinned before the final count",
    ),
    pytest.param(
        (UP, on(12, Kind.PRICKED_OUT, count=20)), NEVER_COUNTED + SINCE, False, id="pricked out"
    ),
    pytest.param(
        (on(9, Kind.WASHED_OUT),), "seed was washed out on Wed 10 Mar", False, id="washed out"
    ),
    pytest.param(
        (on(9, Kind.LOST, count=5, cause=str(Cause.MOUSE)), UP),
        "seed was lost before it came up (mouse)",
        False,
        id="lost before it was up",
    ),
]


@pytest.mark.parametrize(("events", "up"), FINAL)
def test_final(events: tuple[Event, ...], up: int) -> None:
    found = final_count(batch_of(*events), TENBELL)
    assert found == FinalCount(up, 50)
    assert not found.can_come


@pytest.mark.parametrize(("events", "because", "can_come"), NOT_FINAL)
def test_not_final(events: tuple[Event, ...], because: str, can_come: bool) -> None:
    found = final_count(batch_of(*events), TENBELL)
    assert (found.up, found.because, found.can_come) == (None, because, can_come)


def test_without_a_number_sown_no_count_can_be_final() -> None:
    batch = batch_of(UP, on(17, Kind.COUNTED, count=30, final=True), seeds=0)
    assert final_count(batch, TENBELL).because == SEEDS_NOT_SAID
    assert SEEDS_NOT_SAID not in NOT_YET
