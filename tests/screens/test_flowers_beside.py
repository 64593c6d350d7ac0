"""What flowers together is told on the sowing sheet, before anything is sown.

The days are held against a plain count of the days both strips of the year are in flower.
"""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from benchround.core.batch.batch import fold_batch
from benchround.core.record import Draft, Kind, Record
from benchround.desk import Desk
from benchround.drawing.year_strips import YearStrip, batch_strips
from benchround.screens.flowers_beside import FlowersBeside
from benchround.screens.text import plain
from tests.screens.stage import app_on, seen

TULIP = "b30"


def days_of(strip: YearStrip) -> set[date]:
    """Every day a strip is in flower."""
    return {
        span.opens + timedelta(days=n)
        for span in strip.flowerings
        for n in range((span.closes - span.opens).days + 1)
    }


def beside(desk: Desk, crop: str) -> tuple[str, str]:
    """What is said of a crop sown today: at length, and by name only."""
    batch, _ = fold_batch("b90", (Record("", desk.today, Kind.SOWN, "b90", {"crop": crop}),))
    assert batch is not None
    flowers = FlowersBeside(desk.season, desk.today)
    return plain(list(flowers.lines(batch, 100))), flowers.names(batch)


async def test_a_biennial_sown_now_is_held_against_next_springs_bulbs(desk: Desk) -> None:
    season = desk.season
    record = Record("", desk.today, Kind.SOWN, "b90", {"crop": "forget-me-not"})
    batch, _ = fold_batch("b90", (record,))
    assert batch is not None
    mine = days_of(batch_strips(season, batch, desk.today)[0])
    tulip = days_of(batch_strips(season, season.batches[TULIP], desk.today)[0])
    both = len(mine & tulip)
    assert both > 0
    words = " ".join(beside(desk, "forget-me-not")[0].split())
    assert f"{both} days with {TULIP} Tulip 'Tall Cherry', 20-65 cm, red" in words
    assert "Its flowers: 15-30 cm, blue, pink or white" in words


@pytest.mark.parametrize("size", [(120, 44), (80, 44)])
async def test_the_sheet_shows_it_where_there_is_room(desk: Desk, size: tuple[int, int]) -> None:
    app = app_on(desk)
    async with app.run_test(size=size) as pilot:
        await pilot.press("s", *"forget")
        await pilot.pause()
        assert f"with {TULIP} Tulip 'Tall Cherry', 20-65 cm" in " ".join(seen(app).split())


async def test_heights_follow_the_units(desk: Desk) -> None:
    desk.record([Draft(Kind.SETTING, "rain_units", {"value": "inch"})])
    app = app_on(desk)
    async with app.run_test(size=(80, 44)) as pilot:
        await pilot.press("s", *"forget")
        await pilot.pause()
        assert "Its flowers: 5.9-12 in, blue" in seen(app)  # 15 to 30 cm


async def test_what_is_grown_to_eat_is_not_told_of_flowers(desk: Desk) -> None:
    assert beside(desk, "lettuce") == ("", "")


async def test_with_nothing_on_the_books_it_says_so(empty_desk: Desk) -> None:
    words, names = beside(empty_desk, "cosmos")
    assert "Nothing on the books flowers with it." in words
    assert names == ""


async def test_what_has_ended_flowers_with_nothing(desk: Desk) -> None:
    assert TULIP in beside(desk, "forget-me-not")[1]
    desk.record([Draft(Kind.LIFTED, TULIP, {})])
    assert TULIP not in beside(desk, "forget-me-not")[1]


async def test_where_there_is_little_room_the_names_stand_beside_the_days(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("s", *"tulip")
        await pilot.pause()
        row = next(text for text in seen(app).splitlines() if text.startswith("in flower"))
        assert f"with {TULIP} Tulip" in row
