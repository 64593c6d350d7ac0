"""A count of 0 is a look that saw nothing: seed is waited for (common practice, no source)."""

from __future__ import annotations

from datetime import date

import pytest

from benchround.core.lifecycle import Stage
from benchround.core.record import Figure, Kind
from benchround.core.seed.looks_of import germination_of
from benchround.core.task import Family
from benchround.feeds.review import counted_of
from tests.rounds.small_season import DAY, Story, begin, place, sown

SOWN = date(2026, 5, 1)
LOOKED = date(2026, 5, 4)


def waiting(*, chilled: bool = False) -> Story:
    told = begin()
    place(told, "bench", name="Bench", kind="propagator", set_c=18)
    sown(told, "b1", "halfling", SOWN, "bench", seeds=40)
    if chilled:
        told.tell(SOWN, Kind.STALLED, "b1", cause="cold")
    return told


@pytest.mark.parametrize("kind", [Kind.COUNTED, Kind.FIRST_UP])
@pytest.mark.parametrize("chilled", [False, True], ids=["sown", "stalled"])
def test_counting_none_leaves_the_batch_waiting_as_a_look_does(kind: Kind, chilled: bool) -> None:
    told, looked = waiting(chilled=chilled), waiting(chilled=chilled)
    told.tell(LOOKED, kind, "b1", count=0)
    looked.tell(LOOKED, Kind.LOOKED, "b1")
    counted, seen = told.season().batches["b1"], looked.season().batches["b1"]
    assert counted.main.stage is (Stage.STALLED if chilled else Stage.SOWN)
    assert (counted.main.stage, counted.main.since, counted.main.alive) == (
        seen.main.stage,
        seen.main.since,
        seen.main.alive,
    )
    told_tasks, seen_tasks = told.tasks(DAY, *Family), looked.tasks(DAY, *Family)
    assert [t.instruction for t in told_tasks] == [t.instruction for t in seen_tasks]
    assert Family.LOOK in {task.family for task in told_tasks}


def test_what_is_up_is_up_since_the_first_that_was_seen() -> None:
    """Leaves follow the first seedling, not the look in vain before it."""
    told = waiting()
    told.tell(LOOKED, Kind.COUNTED, "b1", count=0)
    told.tell(date(2026, 5, 9), Kind.FIRST_UP, "b1", count=3)
    batch = told.season().batches["b1"]
    assert batch.main.stage is Stage.EMERGING
    assert batch.main.since == date(2026, 5, 9)
    (count,) = told.tasks(date(2026, 5, 17), Family.COUNT)
    assert "first up Sat 9 May" in count.why.figures


def test_all_seedlings_lost_again_are_no_look_in_vain() -> None:
    told = waiting()
    told.tell(LOOKED, Kind.FIRST_UP, "b1", count=3)
    told.tell(date(2026, 5, 6), Kind.COUNTED, "b1", count=0)
    main = told.season().batches["b1"].main
    assert (main.stage, main.alive) == (Stage.EMERGING, 0)


def test_a_final_count_of_none_is_what_came_up() -> None:
    """None of 40: the share is 0 (plain arithmetic)."""
    told = waiting()
    said: dict[str, Figure] = {"count": 0, "final": True}
    told.tell(DAY, Kind.COUNTED, "b1", **said)
    season = told.season()
    batch = season.batches["b1"]
    assert counted_of(season, batch) == (0, 40)
    assert germination_of(batch).share == 0.0
