"""On a console without windows no screen shows a sign its font has not got."""

from __future__ import annotations

import pytest

from benchround.clock import SampleClock
from benchround.core.task import Family
from benchround.desk import Desk
from tests.screens.stage import app_on, seen, stand_on

SCREENS = {
    "round": (),
    "year": ("g", "y"),
    "flowers": ("g", "y", "f"),
    "bench room": ("g", "y", "b"),
    "lids": ("g", "l"),
    "water": ("g", "d"),
    "weather": ("g", "w"),
    "batch": ("b", "tab"),
    "sow": ("s", *"cosm"),
}


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 40)])
@pytest.mark.parametrize("name", SCREENS)
async def test_every_sign_is_in_code_page_437(
    desk: Desk,
    clock: SampleClock,
    name: str,
    size: tuple[int, int],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("TERM", "linux")
    app = app_on(desk, clock)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        stand_on(app, Family.UNCOVER, "b06")
        await pilot.press(*SCREENS[name])
        await pilot.pause()
        seen(app).encode("cp437")  # the table of Python's codec (read); raises at any other sign
        assert seen(app).strip()
