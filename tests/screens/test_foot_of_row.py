"""The foot names a key only on the rows it does something on; elsewhere it still says why not."""

from __future__ import annotations

from benchround.core.record import Draft, Kind
from benchround.desk import Desk
from benchround.screens.card import CardScreen
from tests.screens.stage import app_on, said, seen


def foot(app: object) -> str:
    """The last line of the screen."""
    return seen(app).rstrip().splitlines()[-1]  # type: ignore[arg-type]  # the program's own


def go_to_row(app: object, key: str) -> None:
    """Put the cursor on a row by its key."""
    screen = getattr(app, "screen", None)
    assert isinstance(screen, CardScreen)
    screen.picks.go(next(n for n, row in enumerate(screen.picks.rows) if row.key == key))


async def test_remove_is_named_on_places_and_own_containers(desk: Desk) -> None:
    sizes = {"cells": 1, "cell_ml": 900.0, "length_m": 0.23, "width_m": 0.17}
    desk.record([Draft(Kind.CONTAINER, "Seed pan", dict(sizes))])
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("g", "t")
        await pilot.pause()
        assert "x remove" not in foot(app)
        await pilot.press("x")
        await pilot.pause()
        assert said(app).startswith("Only a place or a container")
        for row in ("place\nbench-1", "container\nSeed pan"):
            go_to_row(app, row)
            await pilot.pause()
            assert "x remove" in foot(app), row
        await pilot.press("home")
        await pilot.pause()
        assert "x remove" not in foot(app)


async def test_the_librarys_is_named_on_own_figures(desk: Desk) -> None:
    desk.record([Draft(Kind.CROP_RULE, "cosmos", {"germination.base_c": 8})])
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("g", "c", *"cosm", "enter")
        await pilot.pause()
        assert "x library's" not in foot(app)
        go_to_row(app, "germination.base_c")
        await pilot.pause()
        assert "x library's" in foot(app)
        await pilot.press("x", "x")
        await pilot.pause()
        assert "x library's" not in foot(app)


async def test_sow_is_named_on_packets_that_hold_seed(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("g", "p")
        await pilot.pause()
        for name, named in (("p03", True), ("p05", False), ("p02", True)):  # p05 is used up
            go_to_row(app, name)
            await pilot.pause()
            assert ("s sow" in foot(app)) is named, name
        go_to_row(app, "p05")
        await pilot.pause()
        assert "none of 60, used up" in seen(app)
