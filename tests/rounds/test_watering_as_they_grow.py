"""Water for plants that outgrow their pots.

That 30 to 50 cm plants in 9 cm pots want water every day or every other day in May and June is
common practice, no source. FAO-56 (Allen et al. 1998, ch. 9) lets the loss go with the ground that
leaves cover; the areas are worked by hand beside the checks.
"""

from __future__ import annotations

from datetime import date, timedelta
from math import pi

import pytest

from benchround.core.record import Kind
from benchround.core.task import Family, Task
from benchround.core.water.balance import TrayWater
from benchround.core.water.canopy import Canopy
from benchround.core.water.place import Exposure, place_loss_mm
from benchround.core.water.tray_outlook import TrayOutlook, tray_outlook
from tests.rounds.small_season import outlook, sown
from tests.rounds.spring import Spring

SOWN = date(2026, 3, 8)
POT_M2 = 0.09 * 0.09


def tomatoes(where: str) -> Spring:
    """Sown in a tray, up after a week, pricked out into 9 cm pots on 31 March."""
    story = Spring()
    for number in range(120):
        outlook(story, SOWN + timedelta(days=number), 8, 19, rain_mm=0)
    sown(story, "b01", "tomato", SOWN, where, raising="tray", seeds=12)
    story.tell(date(2026, 3, 15), Kind.FIRST_UP, "b01", count=10)
    story.tell(date(2026, 3, 31), Kind.PRICKED_OUT, "b01", count=10, container="9 cm pot")
    story.tell(date(2026, 4, 7), Kind.TAKEN, "b01", count=10)
    return story


def tray(story: Spring, day: date) -> TrayOutlook:
    season = story.season()
    batch = season.batches["b01"]
    found = tray_outlook(season, batch, batch.main, day)
    assert found is not None
    return found


def watered_on(story: Spring, since: date, until: date) -> list[date]:
    """Water whenever the round asks for it; the days on which it did."""
    days: list[date] = []
    story.tell(since - timedelta(days=1), Kind.WATERED, "b01")
    for number in range((until - since).days):
        day = since + timedelta(days=number)
        asked: list[Task] = story.tasks(day, Family.WATER)
        if asked:
            days.append(day)
            story.tick(asked[0], day)
    return days


@pytest.mark.parametrize("where", ["sill", "house"])
def test_grown_tomatoes_in_small_pots_are_watered_every_day_or_every_other_day(where: str) -> None:
    days = watered_on(tomatoes(where), date(2026, 5, 25), date(2026, 6, 8))
    assert 7 <= len(days) <= 14


def test_on_a_sill_they_want_water_the_more_often_the_larger_they_are() -> None:
    """Small ones in their new pots go most of a week, and the spells only grow shorter."""
    often = [
        len(watered_on(tomatoes("sill"), since, since + timedelta(days=12)))
        for since in (date(2026, 4, 8), date(2026, 4, 28), date(2026, 5, 25))
    ]
    assert often == sorted(often)
    assert often[0] <= 3
    assert often[-1] >= 6


def test_the_leaves_of_a_grown_plant_by_hand() -> None:
    """Planted out at 70 days, 17 May: then 2.5 pots or 22.5 cm across, 398 cm2 over 81 cm2."""
    found = tray(tomatoes("sill"), date(2026, 5, 25))
    assert found.leaves.spread_cm(date(2026, 5, 17)) == pytest.approx(22.5)
    assert found.today.cover == pytest.approx(pi / 4 * 22.5**2 / 81, abs=0.05)
    assert "leaves 22 cm across dry over 4.9 times the pot" in " ".join(
        figure
        for task in tomatoes("sill").tasks(date(2026, 5, 25), Family.WATER)
        for figure in task.why.figures
    )


def test_leaves_spread_evenly_from_first_up_and_stop_when_grown() -> None:
    leaves = Canopy(date(2026, 3, 1), date(2026, 5, 10), 24.0, POT_M2)
    assert leaves.spread_cm(date(2026, 2, 28)) == 0.0
    assert leaves.spread_cm(date(2026, 3, 1)) == pytest.approx(3.0)
    assert leaves.spread_cm(date(2026, 4, 5)) == pytest.approx((3.0 + 24.0) / 2)
    assert leaves.spread_cm(date(2026, 7, 1)) == pytest.approx(24.0)
    assert leaves.cover(date(2026, 3, 1)) == 1.0


def test_neighbours_in_a_tray_of_cells_dry_no_more_than_their_tray() -> None:
    story = tomatoes("sill")
    story.tell(date(2026, 4, 10), Kind.PRICKED_OUT, "b01", count=10, container="24-cell tray")
    assert tray(story, date(2026, 5, 25)).today.cover == 1.0


def test_a_shut_lid_keeps_the_water_of_large_leaves_too() -> None:
    assert place_loss_mm(4.0, Exposure.SHUT, cover=5.0) == place_loss_mm(4.0, Exposure.SHUT)
    assert place_loss_mm(4.0, Exposure.OPEN, cover=5.0) == pytest.approx(20.0)


def test_a_window_takes_more_in_june_than_in_march() -> None:
    march, june = (place_loss_mm(mm, Exposure.INDOORS) for mm in (1.3, 4.5))
    assert march < june < 4.5
    assert TrayWater(1, 370.0, POT_M2).capacity_mm / march > 10  # a pot with nothing in leaf
