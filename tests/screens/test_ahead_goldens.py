"""How year, weather, lids, water and settings look. Regression tests: looked at and kept."""

from __future__ import annotations

import pytest

from benchround.desk import Desk
from benchround.screens.palettes import LIGHT, SIXTEEN
from benchround.screens.pictures import glyphs
from benchround.screens.text import plain_letters_only
from tests.screens.golden import same_as_kept
from tests.screens.stage import SIZES, app_on, seen

KEYS_TO: dict[str, tuple[str, ...]] = {
    "year": ("g", "y", "home", "down", "down"),
    "year_flowers": ("g", "y", "f", "home", "down", "down"),
    "year_room": ("g", "y", "b", "home", "down"),
    "weather": ("g", "w", "down", "down"),
    "outlook": ("g", "w", "o", *"5", "space", *"23", "space", *"sun"),
    "reading": ("g", "w", "m", "9", "tab", "4", "ctrl+s"),
    "lids": ("g", "l", "down"),
    "water": ("g", "d", "down"),
    "water_away": ("g", "d", "a", "right"),
    "weighing": ("g", "d", "m", *"900"),
    "settings": ("g", "t", "end", "up", "up"),
    "site_sheet": ("g", "t", "down", "enter"),
    "place_sheet": ("g", "t", "n", *"Frame", "tab", *"fra"),
    "container_sheet": ("g", "t", "c", *"Tin", "tab", *"6", "tab", *"150"),
    "choices_sheet": ("g", "t", *["down"] * 9, "enter"),
}


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
@pytest.mark.parametrize("name", KEYS_TO)
async def test_regression_of_a_screen(name: str, size: tuple[int, int], desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=size) as pilot:
        await pilot.press(*KEYS_TO[name])
        await pilot.pause()
        same_as_kept(f"{name}_{size[0]}x{size[1]}", seen(app))


@pytest.mark.parametrize("name", KEYS_TO)
async def test_words_are_the_same_in_light_and_dark(name: str, desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press(*KEYS_TO[name])
        await pilot.pause()
        dark = seen(app)
        await pilot.press("f2")
        await pilot.pause()
        assert app.theme == LIGHT
        assert seen(app) == dark


@pytest.mark.parametrize("name", KEYS_TO)
async def test_plain_letters_and_sixteen_colours_are_enough(
    name: str, desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("LANG", "C")
    monkeypatch.setenv("NO_COLOR", "1")
    plain_letters_only.cache_clear()
    try:
        assert glyphs().ascii_only
        app = app_on(desk)
        async with app.run_test(size=(80, 24)) as pilot:
            await pilot.press(*KEYS_TO[name])
            await pilot.pause()
            assert app.theme == SIXTEEN
            assert seen(app).isascii()
    finally:
        plain_letters_only.cache_clear()
