"""Year, weather, lids, water, settings and their sheets: every key does something."""

from __future__ import annotations

import pytest

from benchround.clock import SampleClock
from benchround.core.task import Family
from benchround.desk import Desk
from benchround.screens.app import BenchroundApp
from benchround.screens.keys import (
    CHOICES,
    CONTAINER,
    KEYS_SHEET,
    LIDS,
    OUTLOOK,
    PLACE,
    READING,
    SETTINGS,
    SITE,
    WATER,
    WEATHER,
    WEIGHING,
    YEAR,
    Key,
    keys_on,
)
from tests.screens.stage import app_on, front, seen, stand_on

TO_SCREEN: dict[str, tuple[str, ...]] = {
    YEAR: ("g", "y"),
    WEATHER: ("g", "w"),
    LIDS: ("g", "l"),
    WATER: ("g", "d"),
    SETTINGS: ("g", "t"),
    OUTLOOK: ("g", "w", "o"),
    READING: ("g", "w", "m"),
    WEIGHING: ("g", "d", "m"),
    SITE: ("g", "t", "enter"),
    CHOICES: ("g", "t", *["down"] * 9, "enter"),
    PLACE: ("g", "t", "end", "enter"),
    CONTAINER: ("g", "t", "c"),
    KEYS_SHEET: ("g", "t", "k"),
}
BEFORE: dict[str, tuple[str, ...]] = {
    "row-up": ("down",),
    "rows-up": ("pagedown",),
    "rows-down": ("home",),
    "first-row": ("end",),
    "last-row": ("home",),
    "lid-day-before": ("right",),
    "days-fewer": ("a",),
    "days-more": ("a",),
    "leave-earlier": ("a",),
    "leave-later": ("a",),
    "walk-earlier": ("end",),
    "walk-later": ("end", "up"),
    "remove": ("end",),
    "field-before": ("tab",),
    "choice-up": ("tab",),
    "empty": ("a",),
}
"""Keys pressed first, so that there is something for the key to do."""
CASES = [
    pytest.param(screen, key, name, id=f"{screen}: {key.id} by {name}")
    for screen in TO_SCREEN
    for key in keys_on(screen)
    for name in key.keys
]


def state(app: BenchroundApp) -> tuple[object, ...]:
    """All that a key can change: what is seen, what is recorded, the look, whether it runs."""
    return seen(app), len(app.desk.folder.records()), app.theme, app.return_code


@pytest.mark.parametrize(("screen", "key", "name"), CASES)
async def test_every_key_does_something(
    desk: Desk, clock: SampleClock, screen: str, key: Key, name: str
) -> None:
    app = app_on(desk, clock)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.pause()
        stand_on(app, Family.UNCOVER, "b06")
        await pilot.press(*TO_SCREEN[screen])
        await pilot.pause()
        assert front(app) == screen
        await pilot.press(*BEFORE.get(key.id, ()))
        await pilot.pause()
        before = state(app)
        await pilot.press(name)
        await pilot.pause()
        after = state(app)
    assert app.return_code == 0 if key.id == "quit" else before != after
