"""The next sowing of a succession: by heat, by days, and when it ends."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from benchround.core.crop.crop import Cropping, Germination
from benchround.core.planning.in_turn import NextSowing, next_in_turn
from benchround.core.planning.last_sowing import last_sowing
from benchround.core.site import Site
from benchround.crops.library import load_library

LIBRARY = load_library()
NORTH = Site(lat_deg=52.5, last_frost=(5, 11), last_frost_safe=(5, 30), first_frost=(10, 12))
SOUTH = Site(lat_deg=-38.0, last_frost=(9, 20), last_frost_safe=(10, 15), first_frost=(5, 10))


def found(key: str, sown: date, site: Site = NORTH) -> NextSowing:
    turn = next_in_turn(LIBRARY[key], sown, site.year, site.usual_mean_c)
    assert turn is not None
    return turn


@pytest.mark.parametrize(
    ("cool_c", "days"),
    [
        pytest.param(9.0, 21, id="95.2 C d: 21 days at 9 C (own example on Ottosson's rule, read)"),
        pytest.param(13.0, 12, id="95.2 C d: 12 days at 13 C (own example on Ottosson's, read)"),
        pytest.param(18.0, 7, id="as warm as at harvest: as many days as between the harvests"),
    ],
)
def test_as_much_heat_parts_the_sowings_as_the_harvests(cool_c: float, days: int) -> None:
    """Vining peas, base 4.4 C, harvests 7 days apart at 18 C."""
    peas = replace(
        LIBRARY["radish"],
        succession_days=(7, 7),
        germination=Germination(4.4, 20, 30, 7, 12, 18),
        cropping=Cropping(from_sowing_days=(70, 70)),
        windows=(),
    )
    sown = date(2026, 4, 1)
    harvest = sown + timedelta(days=70)
    turn = next_in_turn(peas, sown, NORTH.year, lambda day: 18.0 if day > harvest else cool_c)
    assert turn is not None
    assert turn.first == turn.best == sown + timedelta(days=days)


def test_without_days_to_harvest_the_tables_own_days_count() -> None:
    plain = replace(LIBRARY["radish"], cropping=None, windows=())
    sown = date(2026, 5, 1)
    turn = next_in_turn(plain, sown, NORTH.year, lambda _: 15.0)
    assert turn is not None
    assert (turn.first, turn.best) == (sown + timedelta(days=7), sown + timedelta(days=14))
    assert turn.how == "every 7 to 14 days"


def test_lettuce_waits_longer_in_spring_than_in_summer() -> None:
    """Sixty days from a March sowing and thirty from one in May: a nursery's note (read)."""
    spring, summer = date(2026, 3, 10), date(2026, 5, 25)
    assert found("lettuce", spring).best - spring > 2 * (found("lettuce", summer).best - summer)


@pytest.mark.parametrize("site", [NORTH, SOUTH], ids=["52 N", "38 S"])
def test_the_offer_ends_with_the_last_useful_sowing(site: Site) -> None:
    sown = date(2026, *site.last_frost) + timedelta(days=20)
    turn = found("cosmos", sown, site)
    assert turn.closes == last_sowing(LIBRARY["cosmos"], site.year, sown)
    assert not turn.offered_on(turn.closes + timedelta(days=1)) if turn.closes else False


def test_windows_that_touch_are_one_and_those_apart_are_not() -> None:
    """Lettuce is sown from spring to autumn; spinach rests in the heat of summer."""
    lettuce, spinach = found("lettuce", date(2026, 4, 10)), found("spinach", date(2026, 4, 10))
    assert lettuce.closes == date(2026, 6, 21) + timedelta(days=90)
    assert spinach.closes == date(2026, 5, 11) + timedelta(days=7)
    late = found("spinach", date(2026, 5, 15))
    assert late.first == date(2026, 6, 21) + timedelta(days=35)


def test_nothing_is_left_when_the_years_windows_are_over() -> None:
    crop = LIBRARY["radish"]
    assert next_in_turn(crop, date(2026, 9, 8), NORTH.year, NORTH.usual_mean_c) is None
    assert next_in_turn(LIBRARY["leek"], date(2026, 4, 1), NORTH.year, lambda _: 12.0) is None


@pytest.mark.parametrize("site", [NORTH, SOUTH], ids=["52 N", "38 S"])
def test_whatever_the_day_the_figures_are_in_order(site: Site) -> None:
    """Property over every crop sown in turn and every week of a year."""
    keys = [key for key in sorted(LIBRARY) if LIBRARY[key].succession_days is not None]
    assert len(keys) > 30
    offers = 0
    for key in keys:
        for week in range(52):
            sown = date(2026, 1, 3) + timedelta(weeks=week)
            turn = next_in_turn(LIBRARY[key], sown, site.year, site.usual_mean_c)
            if turn is None:
                continue
            offers += 1
            assert sown < turn.first <= turn.best < turn.fades, f"{key} {sown}"
            assert turn.closes is None or turn.best <= turn.closes
            assert (turn.best - sown).days < 366
            assert turn.how and turn.source
    assert offers > 500
