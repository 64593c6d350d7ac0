"""The row of sowings that follow one: how far apart, how far it goes, what comes too late."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise

import pytest

from benchround.core.crop.crop import Cropping, Germination
from benchround.core.planning.in_turn import next_in_turn
from benchround.core.planning.last_sowing import last_sowing
from benchround.core.planning.row_in_turn import (
    AFTER_WINDOW,
    BEFORE_FROST,
    RowInTurn,
    row_in_turn,
)
from benchround.core.site import Site
from benchround.crops.library import load_library

LIBRARY = load_library()
NORTH = Site(lat_deg=52.5, last_frost=(5, 11), last_frost_safe=(5, 30), first_frost=(10, 12))
SOUTH = Site(lat_deg=-38.0, last_frost=(9, 20), last_frost_safe=(10, 15), first_frost=(5, 10))
IN_TURN = [key for key in LIBRARY if LIBRARY[key].succession_days is not None]


def row_of(key: str, sown: date, site: Site = NORTH) -> RowInTurn:
    row = row_in_turn(LIBRARY[key], sown, site.year, site.usual_mean_c)
    assert row is not None
    return row


def test_vining_peas_follow_each_other_by_heat_until_it_is_as_warm_as_at_harvest() -> None:
    """Ottosson's rule (read), own example: 95.2 C d are 21 days at 9 C and 7 days at 18 C."""
    peas = replace(
        LIBRARY["radish"],
        succession_days=(7, 7),
        germination=Germination(4.4, 20, 30, 7, 12, 18),
        cropping=Cropping(from_sowing_days=(70, 70)),
        windows=(),
    )
    sown, warm = date(2026, 4, 1), date(2026, 5, 13)
    row = row_in_turn(peas, sown, NORTH.year, lambda day: 18.0 if day > warm else 9.0)
    assert row is not None
    days = [turn.best for turn in row.turns]
    apart = [(two - one).days for one, two in pairwise([sown, *days[:5]])]
    assert apart == [21, 21, 7, 7, 7]


@pytest.mark.parametrize("site", [NORTH, SOUTH], ids=["52 N", "38 S"])
@pytest.mark.parametrize("key", IN_TURN)
def test_every_row_goes_on_and_ends_within_its_growing_year(key: str, site: Site) -> None:
    sown = date(2026, *site.last_frost)
    least = LIBRARY[key].succession_days
    row = row_of(key, sown, site)
    days = [sown, *(turn.best for turn in row.turns)]
    winter = min(day for y in (2026, 2027) if (day := site.year.midwinter(y)) > sown)
    assert least is not None
    assert days[-1] < winter
    # none closer than half of the table's least days, the last one cut off by its window
    assert all((two - one).days * 2 >= least[0] for one, two in pairwise(days[:-1]))
    assert (row.too_late is None) == (row.because == "")
    assert row.too_late is None or row.too_late > days[-1]


def test_the_row_is_what_the_round_will_ask_for_one_after_the_other() -> None:
    """A regression test: each is the next sowing of the one before it."""
    crop, at = LIBRARY["lettuce"], date(2026, 5, 22)
    for turn in row_of("lettuce", at).turns:
        assert turn == next_in_turn(crop, at, NORTH.year, NORTH.usual_mean_c)
        at = turn.best
    assert next_in_turn(crop, at, NORTH.year, NORTH.usual_mean_c) is None


@pytest.mark.parametrize(("site", "sown"), [(NORTH, date(2026, 5, 27)), (SOUTH, date(2026, 11, 1))])
def test_a_tender_crop_ends_with_the_last_sowing_before_frost(site: Site, sown: date) -> None:
    """Days to flower and two weeks, counted back from the first frost: common practice."""
    row, last = row_of("cosmos", sown, site), last_sowing(LIBRARY["cosmos"], site.year, sown)
    assert last is not None
    assert row.turns
    assert row.turns[-1].best <= last
    assert row.too_late is not None
    assert row.too_late > last
    assert row.because == BEFORE_FROST


def test_a_hardy_crop_ends_with_its_sowing_time() -> None:
    row = row_of("pea", date(2026, 4, 10))
    assert row.because == AFTER_WINDOW
    assert row.turns[-1].closes is not None
    assert row.too_late is not None
    assert row.too_late > row.turns[-1].closes


def test_flowers_sown_in_autumn_follow_by_the_tables_days() -> None:
    """They open next spring: the heat of the November they are reckoned for says nothing.

    Hardy annuals are sown in late summer to flower in early summer (common practice, no source).
    """
    row = row_of("cornflower", date(2026, 8, 25))
    assert [turn.first for turn in row.turns] == [date(2026, 8, 25) + timedelta(days=21)]
    assert row.how == "every 21 to 28 days"


def test_a_crop_that_is_sown_once_has_no_row() -> None:
    tomato = LIBRARY["tomato"]
    assert row_in_turn(tomato, date(2026, 4, 1), NORTH.year, NORTH.usual_mean_c) is None


def test_its_words_name_the_days_and_what_is_too_late() -> None:
    """A regression test."""
    row = row_of("lettuce", date(2026, 5, 22))
    assert row.words(1).startswith("sow again about Tue 9 Jun and ")
    assert row.short() == "again Tue 9 Jun, 11 more"
    assert row.words().endswith(f"is too late: {AFTER_WINDOW}")
    late = row_of("sweetcorn", date(2026, 5, 27))
    assert late.words() == f"Mon 8 Jun is too late for another: {BEFORE_FROST}"
    assert late.short() == "Mon 8 Jun is too late for another"
