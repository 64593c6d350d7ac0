"""The pictures in a wide window. Regression tests: they hold what was looked at and kept."""

from __future__ import annotations

import pytest

from benchround.desk import Desk
from tests.screens.golden import same_as_kept
from tests.screens.stage import app_on, seen

WIDE = (200, 50)
KEYS_TO: dict[str, tuple[str, ...]] = {
    "year": ("g", "y"),
    "year_flowering": ("g", "y", "f"),
    "year_room": ("g", "y", "b"),
    "lids": ("g", "l"),
    "water": ("g", "d"),
    "batch": (*["tab"] * 4, "g", "b"),
    "round": ("down", "down"),
}


@pytest.mark.parametrize("name", KEYS_TO)
async def test_regression_of_a_picture_in_a_wide_window(name: str, desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=WIDE) as pilot:
        await pilot.press(*KEYS_TO[name])
        await pilot.pause()
        same_as_kept(f"{name}_{WIDE[0]}x{WIDE[1]}", seen(app))
