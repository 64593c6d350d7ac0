"""The sowings that follow one another, on the sowing sheet, the crop card and the year.

Days and reasons are tested in tests/core/planning; here they are held against what the round will
ask for next.
"""

from __future__ import annotations

from datetime import date

import pytest

from benchround.core.dates import say_day
from benchround.core.planning.in_turn import next_in_turn
from benchround.core.planning.row_in_turn import mean_here
from benchround.core.record import Draft, Kind
from benchround.desk import Desk
from tests.screens.stage import app_on, seen

LETTUCE = "b14"


def next_day(desk: Desk, crop: str, sown: date) -> str:
    """The day the round will think best for the next sowing."""
    season = desk.season
    turn = next_in_turn(
        season.crop(crop), sown, season.site.year, lambda day: mean_here(season, day)
    )
    assert turn is not None
    return say_day(turn.best)


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 50)])
async def test_the_sheet_says_when_to_sow_again(desk: Desk, size: tuple[int, int]) -> None:
    app = app_on(desk)
    async with app.run_test(size=size) as pilot:
        await pilot.press("s", *"lettu")
        await pilot.pause()
        words = " ".join(seen(app).split())
    day = next_day(desk, "lettuce", desk.today)
    assert f"again {day}" in words or f"again about {day}" in words


async def test_another_day_in_the_sheet_moves_the_row(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("s", *"radish", *["tab"] * 7, *"+20")
        await pilot.pause()
        words = " ".join(seen(app).split())
    assert f"again {next_day(desk, 'radish', date(2026, 6, 16))}" in words


async def test_the_sheet_says_so_where_another_sowing_comes_too_late(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("s", *"sweetc")
        await pilot.pause()
        assert "is too late for another" in seen(app)
        await pilot.press("escape")
    async with app_on(desk).run_test(size=(80, 40)) as pilot:
        await pilot.press("s", *"sweetc")
        await pilot.pause()
        words = " ".join(seen(pilot.app).split())  # type: ignore[arg-type]  # the program's own
        assert "is too late for another: frost may come before it pays" in words


async def test_a_crop_sown_once_is_said_nothing_of(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(120, 50)) as pilot:
        await pilot.press("s", *"tomato")
        await pilot.pause()
        assert "again" not in seen(app)
        await pilot.press("escape", "g", "c", *"tomato", "enter", "tab")
        await pilot.pause()
        assert "Sown in turn" not in seen(app)


async def test_the_crop_card_counts_from_the_last_sowing(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(120, 50)) as pilot:
        await pilot.press("g", "c", *"lettu", "enter", "tab")
        await pilot.pause()
        text = seen(app)
    sowing = desk.season.batches[LETTUCE].sowing
    assert sowing is not None
    assert f"after {say_day(sowing.day)} ({LETTUCE}, sown" in text
    assert f" to {next_day(desk, 'lettuce', sowing.day)}" in text
    assert "Ottosson" in text


async def test_a_planned_sowing_is_what_the_next_follows(desk: Desk) -> None:
    figures = {"crop": "lettuce", "sow_on": "2026-06-20", "raising": "cells"}
    desk.record([Draft(Kind.PLANNED, "b40", figures)])
    app = app_on(desk)
    async with app.run_test(size=(80, 50)) as pilot:
        await pilot.press("g", "c", *"lettu", "enter", "tab")
        await pilot.pause()
        assert "after Sat 20 Jun (b40, the day you set)" in seen(app)


async def test_the_year_says_it_of_the_last_sowing_only(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 40)) as pilot:
        app.open("year", LETTUCE)
        await pilot.pause()
        sowing = desk.season.batches[LETTUCE].sowing
        assert sowing is not None
        day = next_day(desk, "lettuce", sowing.day)
        assert f"Sow again about {day}" in " ".join(seen(app).split())
        desk.record([Draft(Kind.SOWN, "b40", {"crop": "lettuce", "raising": "cells", "seeds": 9})])
        app.open("year", LETTUCE)
        await pilot.pause()
        assert "Sow again" not in seen(app)
        app.open("year", "b40")
        await pilot.pause()
        assert "Sow again about" in seen(app)
