"""The diary sheet: a line for each sowing, understood while typed, open for the next line."""

from __future__ import annotations

from datetime import date

import pytest
from textual.pilot import Pilot

from benchround.core.record import Draft, Kind
from benchround.core.typed.date import DATE_ORDER, MONTH_FIRST
from benchround.desk import Desk
from benchround.screens.app import BenchroundApp
from benchround.screens.key_screens import DIARY, ROUND
from benchround.screens.keys import Key, keys_on
from tests.screens.golden import same_as_kept
from tests.screens.stage import SIZES, app_on, form_of, front, said, seen

FIRST = "12 apr cosmos Night 40 seeds bench 1"


async def put(app: BenchroundApp, pilot: Pilot[None], text: str) -> None:
    """Let a line stand in the field as if typed, with a key pressed at its end."""
    form_of(app).field("line").put(text)
    await pilot.press("end")


async def test_a_line_is_understood_while_it_is_typed(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "n")
        await put(app, pilot, "12 apr cosmos 40")
        await pilot.pause()
        assert "Not yet: 40 of what?" in seen(app)
        await put(app, pilot, FIRST)
        await pilot.pause()
        assert (
            "Understood: b34 Cosmos 'Night', sown Sun 12 Apr 2026, 45 days ago, 40 seeds,"
            in seen(app)
        )
        assert "b34" not in desk.season.batches


async def test_it_stays_open_and_the_next_line_is_of_the_same_day(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "n")
        await put(app, pilot, FIRST)
        await pilot.press("enter")
        await pilot.pause()
        assert front(app) == DIARY
        assert "b34 Cosmos 'Night', sown Sun 12 Apr 2026" in seen(app)
        assert "without a day: Sun 12 Apr 2026" in seen(app)
        await put(app, pilot, "leek 60 seeds")
        await pilot.press("enter")
        assert desk.season.batches["b35"].begun == date(2026, 4, 12)
        await pilot.press("ctrl+z")
        assert set(desk.season.batches) >= {"b34"}
        assert "b35" not in desk.season.batches
        await pilot.press("escape")
        assert front(app) == ROUND
        assert said(app) == "1 line of the diary recorded (u takes the last one back)."
        await pilot.press("u")
        assert "b34" not in desk.season.batches


async def test_a_line_like_one_on_the_books_is_remarked(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "n")
        await put(app, pilot, "9 apr cosmos Paper Lantern 40 seeds")
        await pilot.pause()
        assert "Mind: like b01, which is on the books already." in seen(app)


async def test_a_wrong_line_is_refused_and_kept(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "n")
        await put(app, pilot, "nosuchcrop 40 seeds")
        await pilot.press("enter")
        assert said(app).startswith("Not recorded: 'nosuchcrop' is no crop")
        await pilot.press("escape", "g", "n")
        await pilot.pause()
        assert form_of(app).field("line").text == "nosuchcrop 40 seeds"


async def test_months_first_are_read_so(desk: Desk) -> None:
    desk.record((Draft(Kind.SETTING, DATE_ORDER, {"value": MONTH_FIRST}),))
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "n")
        await put(app, pilot, "4/12 cosmos 40 seeds")
        await pilot.press("enter")
        await pilot.pause()
    assert desk.season.batches["b34"].begun == date(2026, 4, 12)


@pytest.mark.parametrize("text", ["tray [A]", "[/]", "=1+1", "\u202egnp", "x" * 1_000_000])
async def test_hostile_lines_are_only_text(desk: Desk, text: str) -> None:
    app = app_on(desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press("g", "n")
        await put(app, pilot, f"cosmos {text}")
        await pilot.press("enter")
        await pilot.pause()
        assert front(app) == DIARY
        assert app.screen.size.height == len(seen(app).splitlines())


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_regression_of_the_sheet(desk: Desk, size: tuple[int, int]) -> None:
    app = app_on(desk)
    async with app.run_test(size=size) as pilot:
        await pilot.press("g", "n")
        await put(app, pilot, FIRST)
        await pilot.press("enter")
        await put(app, pilot, "leek 60 seeds 60 cells in frame a")
        await pilot.pause()
        same_as_kept(f"diary_{size[0]}x{size[1]}", seen(app))


BEFORE: dict[str, str] = {"undo-line": FIRST, "empty": ""}


@pytest.mark.parametrize(
    ("key", "name"),
    [pytest.param(key, name, id=f"{key.id} {name}") for key in keys_on(DIARY) for name in key.keys],
)
async def test_every_key_does_something(desk: Desk, key: Key, name: str) -> None:
    app = app_on(desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press("g", "n")
        await put(app, pilot, FIRST)
        if key.id == "undo-line":
            await pilot.press("enter")
        await pilot.pause()
        before = seen(app), app.theme
        await pilot.press(name)
        await pilot.pause()
        after = seen(app), app.theme
    assert app.return_code == 0 if key.id == "quit" else before != after


async def test_what_came_up_is_understood_and_recorded(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "n")
        await put(app, pilot, "b02 none up")
        await pilot.pause()
        assert "Not yet: b02 was 'first true leaves' by then: some were up." in seen(app)
        await put(app, pilot, "b06 36 up")
        await pilot.pause()
        assert "Understood: b06 Zinnia 'Market Row', 36 up Wed 27 May 2026" in seen(app)
        await pilot.press("enter")
        assert desk.season.batches["b06"].tally.up == 36
        await pilot.press("ctrl+z")
        assert desk.season.batches["b06"].tally.up == 35
