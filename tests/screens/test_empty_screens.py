"""In a season nothing has happened in, every screen says what to do first, with the keys for it."""

from __future__ import annotations

import pytest

from benchround.core.record import Kind
from benchround.desk import Desk
from tests.screens.stage import SIZES, app_on, seen

FIRST: dict[str, tuple[tuple[str, ...], str]] = {
    "round": ((), "Press s to sow your first one"),
    "batch": (("g", "b"), "Press s to sow your first one"),
    "sow": (("g", "s"), "Type the first letters of the crop and save"),
    "diary": (("g", "n"), "Day, crop and variety first"),
    "sheet in": (("g", "i"), "Press o and name a CSV file"),
    "packets": (("g", "p"), "Press n to put the first one there"),
    "review": (("g", "v"), "Press g then s to sow the first batch"),
    "year": (("g", "y"), "Press g, then s to sow your first one"),
    "flowers": (("g", "y", "f"), "Press g, then s to sow your first one"),
    "room": (("g", "y", "b"), "No place that holds trays is set up: g, then t does it"),
    "weather": (("g", "w"), "No weather is known from today on: o types it"),
    "lids": (("g", "l"), "No frame or tunnel is set up: g, then t does it"),
    "water": (("g", "d"), "g, then s sows the first"),
    "settings": (("g", "t", "end"), "No place yet: n sets the first one up"),
    "find": (("g", "f"), "s on the round sows one"),
}


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
@pytest.mark.parametrize("name", FIRST)
async def test_an_empty_screen_says_what_to_do_first(
    name: str, size: tuple[int, int], empty_desk: Desk
) -> None:
    keys, words = FIRST[name]
    app = app_on(empty_desk)
    async with app.run_test(size=size) as pilot:
        await pilot.press(*keys)
        await pilot.pause()
        shown = " ".join(seen(app).split())
        assert words in shown


FEET = {
    "batch": (("g", "b"), {"s", "g", "?"}),
    "packets": (("g", "p"), {"n", "g", "?"}),
    "lids": (("g", "l"), {"g", "?"}),
    "water": (("g", "d"), {"g", "?"}),
    "year": (("g", "y"), {"f", "b", "g", "?"}),
    "sheet in": (("g", "i"), {"o", "g", "?"}),
    "diary": (("g", "n"), {"enter", "esc", "f1"}),
}
"""The keys at the foot of a screen with nothing on it: those that do something."""


@pytest.mark.parametrize("name", FEET)
async def test_the_foot_of_an_empty_screen_names_no_key_that_does_nothing(
    name: str, empty_desk: Desk
) -> None:
    keys, named = FEET[name]
    app = app_on(empty_desk)
    async with app.run_test(size=(120, 24)) as pilot:
        await pilot.press(*keys)
        await pilot.pause()
        foot = seen(app).rstrip("\n").splitlines()[-1]
        assert {part.split()[0] for part in foot.split("  ")} == named


async def test_the_foot_names_them_again_once_there_is_something(empty_desk: Desk) -> None:
    app = app_on(empty_desk)
    async with app.run_test(size=(120, 24)) as pilot:
        await pilot.press("g", "b", "s", *"cosm", "ctrl+s")
        await pilot.pause()
        foot = seen(app).rstrip("\n").splitlines()[-1]
        assert foot.startswith("r record  s sow again  x withdraw")


async def test_what_is_not_to_be_told_twice_is_told_once(empty_desk: Desk) -> None:
    app = app_on(empty_desk)
    async with app.run_test(size=(80, 24)) as pilot:
        for screen, words in (("l", "No frame or tunnel"), ("d", "Nothing stands in a tray")):
            await pilot.press("g", screen)
            await pilot.pause()
            assert seen(app).count(words) == 1


async def test_sowing_without_any_place_says_how_to_set_one_up_and_is_saved(
    empty_desk: Desk,
) -> None:
    app = app_on(empty_desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "s", *"cosm", *["tab"] * 6)
        await pilot.pause()
        shown = " ".join(seen(app).split())
        assert "none set up yet: may stay empty; ctrl+g, t, then n sets one up" in shown
        await pilot.press("ctrl+s")
        await pilot.pause()
    assert [record.kind for record in empty_desk.folder.records()] == [Kind.SOWN]
