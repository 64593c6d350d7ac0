"""How the screens look at three sizes. Regression tests: they hold what was looked at and kept."""

from __future__ import annotations

import pytest

from benchround.desk import Desk
from benchround.screens.theme import LIGHT
from tests.screens.golden import same_as_kept
from tests.screens.stage import SIZES, app_on, seen

KEYS_TO: dict[str, tuple[str, ...]] = {
    "round": ("down", "down"),
    "round_folded": ("e", "end"),
    "sow_begun": ("s",),
    "sow": ("s", *"cosm", "tab"),
    "sheet": ("down", "down", "down", "enter"),
    "sheet_wrong": ("down", "down", "down", "down", "enter", *"99x", "enter"),
    "record": ("down", "down", "r", *"los", "tab", "2", "tab", *"sl"),
    "put_off": ("down", "down", "p", *"mon", "tab"),
    "why": ("down", "down", "w"),
    "help": ("question_mark",),
}


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
@pytest.mark.parametrize("name", KEYS_TO)
async def test_regression_of_a_screen(name: str, size: tuple[int, int], still_desk: Desk) -> None:
    app = app_on(still_desk)
    async with app.run_test(size=size) as pilot:
        await pilot.press(*KEYS_TO[name])
        await pilot.pause()
        same_as_kept(f"{name}_{size[0]}x{size[1]}", seen(app))


async def test_words_are_the_same_in_light_and_dark(still_desk: Desk) -> None:
    app = app_on(still_desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        dark = seen(app)
        await pilot.press("f2")
        await pilot.pause()
        assert app.theme == LIGHT
        assert seen(app) == dark
