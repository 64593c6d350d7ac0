"""Tender stock ready after the first frost waits for the coming spring, before New Year as after.

Days are those of a made-up site: first frost 12 October, safe last-frost day 30 May; the southern
one is half a year away. The rule is common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.crop.crop import Anchor, Edge, Hardening
from benchround.core.planning.growing_season import hardening_opens, safe_from
from benchround.core.planning.last_sowing import first_frost_from
from benchround.core.planning.schedule import Step
from benchround.core.planning.season import after_frost, frost_before, frost_remark
from benchround.core.site import Site
from tests.core.planning.test_schedule import season, sown
from tests.core.planning.test_windows import LIBRARY, NORTH, SOUTH
from tests.rounds.small_season import CROPS

COSMOS, BEAN = LIBRARY["cosmos"], LIBRARY["broad-bean"]


@pytest.mark.parametrize(
    ("site", "ready", "planted"),
    [
        (NORTH, date(2026, 9, 1), date(2026, 9, 1)),
        (NORTH, date(2026, 10, 11), date(2026, 10, 11)),
        (NORTH, date(2026, 10, 12), date(2027, 5, 30)),
        (NORTH, date(2026, 11, 20), date(2027, 5, 30)),
        (NORTH, date(2026, 12, 10), date(2027, 5, 30)),
        (NORTH, date(2027, 1, 5), date(2027, 5, 30)),
        (NORTH, date(2027, 5, 29), date(2027, 5, 30)),
        (NORTH, date(2027, 6, 10), date(2027, 6, 10)),
        (SOUTH, date(2027, 1, 5), date(2027, 1, 5)),
        (SOUTH, date(2027, 4, 11), date(2027, 4, 11)),
        (SOUTH, date(2027, 4, 12), date(2027, 11, 30)),
        (SOUTH, date(2027, 7, 5), date(2027, 11, 30)),
    ],
)
def test_tender_stock_is_planned_for_a_day_without_frost(
    site: Site, ready: date, planted: date
) -> None:
    assert after_frost(COSMOS, site, ready) == planted
    assert after_frost(BEAN, site, ready) == ready


def test_the_schedule_of_a_batch_has_the_same_day() -> None:
    """Cosmos sown on 10 September is through its hardening after the first frost of 12 October."""
    found = sown(COSMOS, date(2026, 9, 10), season())
    assert found[Step.PLANT_OUT].day == date(2027, 5, 30)
    assert found[Step.HARDEN].day > date(2027, 3, 1)


def test_the_remark_says_which_frost_it_is() -> None:
    assert frost_before(COSMOS, NORTH, date(2026, 11, 20)) == date(2026, 10, 12)
    assert frost_before(COSMOS, NORTH, date(2027, 2, 1)) is None
    assert frost_before(BEAN, NORTH, date(2026, 11, 20)) is None
    assert "before the site's safe last-frost day, " in remark(date(2027, 2, 1))
    assert remark(date(2027, 6, 10)) == ""


def remark(day: date) -> str:
    return frost_remark(COSMOS, NORTH, day)


@given(st.dates(date(2000, 1, 1), date(2100, 1, 1)), st.sampled_from([NORTH, SOUTH]))
def test_between_the_safe_day_and_the_next_frost_lies_the_season(day: date, site: Site) -> None:
    safe = safe_from(site.year, day)
    assert day < first_frost_from(site.year, safe)
    assert (safe - day).days < 366
    if day > safe:
        assert first_frost_from(site.year, safe) - day < timedelta(days=366)


@pytest.mark.parametrize(
    ("site", "ready", "opens"),
    [
        (NORTH, date(2026, 11, 1), date(2026, 5, 11)),
        (NORTH, date(2027, 1, 5), date(2027, 5, 11)),
        (SOUTH, date(2027, 1, 5), date(2026, 11, 11)),
        (SOUTH, date(2027, 7, 5), date(2027, 11, 11)),
    ],
)
def test_hardy_stock_waits_only_from_midwinter_on(site: Site, ready: date, opens: date) -> None:
    course = Hardening(days=6, least_days=3, starts=Edge(Anchor.LAST_FROST))
    crop = replace(CROPS["hardling"], hardening=course)
    assert hardening_opens(crop, site.year, ready) == opens
