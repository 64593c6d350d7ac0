"""Seed in a cool house is late, and given up, when it would be at the cold end of what is known.

Harrington & Minges 1954, as in Knott's Handbook, 4th ed. 1997 (read): lettuce is up after 15 days
at 5 C, 7 at 10 C and 4 at 15 C. By the spread of the model nine in ten sowings are up by 1.26 times
the median, and the chance that one is alive has fallen to one in five at 1.42 times it: both by
hand from ln(last / first) of the crop, 2.5 and 4 days.
"""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from benchround.core.record import Kind
from benchround.core.seed.waiting import Waiting, forecast
from benchround.core.task import Family, Standing
from tests.rounds.small_season import outlook, sown
from tests.rounds.spring import Spring

SOWN = date(2026, 4, 9)
LATE, GIVEN_UP = 1.26, 1.42


def lettuce(low: float, high: float, *, read: bool = False, where: str = "house") -> Spring:
    story = Spring()
    for number in range(60):
        day = SOWN + timedelta(days=number)
        if read:
            story.tell(day, Kind.READING, where, min_c=low, max_c=high)
        outlook(story, day, low, high, rain_mm=0)
    sown(story, "b01", "lettuce", SOWN, where)
    return story


def waiting(story: Spring, day: date = SOWN) -> Waiting:
    season = story.season()
    batch = season.batches["b01"]
    found = forecast(season, batch, batch.main, season.crop("lettuce"), day)
    assert found is not None
    return found


@pytest.mark.parametrize(("mean_c", "published"), [(5.0, 15), (10.0, 7), (15.0, 4)])
def test_where_the_house_is_read_the_days_are_those_published(
    mean_c: float, published: int
) -> None:
    """A quarter from the table in the cold cells, as thermal time above a base can do no better."""
    found = waiting(lettuce(mean_c - 4, mean_c + 4, read=True))
    assert found.half_by is not None
    assert found.late_from is not None
    assert found.give_up_on is not None
    assert (found.half_by - SOWN).days == pytest.approx(published, rel=0.27, abs=1.3)
    assert (found.late_from - SOWN).days >= LATE * published - 1.3
    assert (found.give_up_on - SOWN).days >= GIVEN_UP * published - 1.3


def test_an_unheated_house_that_nobody_reads_is_trusted_no_warmer_than_outside() -> None:
    """5 to 16 C outside: at 10.5 C late after nine days, given up after ten, not six and seven."""
    story = lettuce(5, 16)
    found = waiting(story)
    assert found.late_from == SOWN + timedelta(days=9)
    assert found.give_up_on == SOWN + timedelta(days=10)
    assert found.look_from is not None
    assert found.look_from <= SOWN + timedelta(days=5)  # worth a look from what glass usually adds
    for number in range(9):
        tasks = story.tasks(SOWN + timedelta(days=number), Family.LOOK, Family.RESOW)
        assert not [task for task in tasks if task.standing is Standing.LATE]
        assert not [task for task in tasks if task.family is Family.RESOW]


def test_a_look_in_between_leaves_it_more_alive_than_dead() -> None:
    story = lettuce(5, 16)
    story.tell(SOWN + timedelta(days=7), Kind.LOOKED, "b01")
    assert waiting(story, SOWN + timedelta(days=7)).alive > 0.5


def test_sown_again_the_days_start_again() -> None:
    story = lettuce(5, 16)
    again = SOWN + timedelta(days=11)
    story.tell(again, Kind.RESOWN, "b01", seeds=20)
    found = waiting(story, again)
    assert found.late_from == again + timedelta(days=9)
    assert found.give_up_on == again + timedelta(days=10)
