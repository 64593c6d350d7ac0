"""Seasons of every sort: empty, for reading only, on a full disk, written by two computers."""

from __future__ import annotations

import shutil
from datetime import date, timedelta
from pathlib import Path

from benchround.clock import SampleClock
from benchround.core.errors import SeasonError
from benchround.core.record import Draft, Kind, Record
from benchround.core.task import Family
from benchround.core.typed.date import DATE_ORDER, MONTH_FIRST
from benchround.desk import Desk
from benchround.screens.palettes import LIGHT
from benchround.screens.sitting import LOOK
from tests.sample.story import DAY_0
from tests.screens.stage import (
    MACHINE,
    app_on,
    figures,
    first_with,
    front,
    said,
    seen,
    stand_on,
    tasks_of,
)


async def test_an_empty_season_says_what_to_do_first(empty_desk: Desk) -> None:
    app = app_on(empty_desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.pause()
        assert "No batch yet. Press s to sow your first one" in seen(app)
        await pilot.press("s", *"cosm", "ctrl+s")
        await pilot.pause()
        assert "No batch yet" not in seen(app)
    assert empty_desk.season.batches["b01"].crop == "cosmos"


async def test_keys_on_a_day_without_tasks_say_so(empty_desk: Desk) -> None:
    app = app_on(empty_desk)
    async with app.run_test() as pilot:
        await pilot.press("left")
        tasks_of(app).show((), empty_desk.season)
        for key in ("space", "enter", "p", "w", "r", "m", "f"):
            await pilot.press(key)
            await pilot.pause()
            assert front(app) == "round"
            assert said(app).startswith("There is no task here")


async def test_a_season_held_by_another_program_is_shown_and_refuses(
    folder: Path, desk: Desk, clock: SampleClock
) -> None:
    second = Desk.open(folder, today=clock, machine=MACHINE)
    app = app_on(second)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.pause()
        assert "Read only: " in seen(app)
        for key in ("space", "enter", "r", "p", "s"):
            await pilot.press(key)
            await pilot.pause()
            assert front(app) == "round"
            assert said(app).startswith("Nothing can be recorded: ")
        await pilot.press("w")
        await pilot.pause()
        assert front(app) == "why"
    second.close()


class FullDesk(Desk):
    """A desk whose disk is full."""

    def record(self, drafts: object, day: date | None = None) -> tuple[Record, ...]:
        raise SeasonError("The disk is full: nothing was written. Make room and try again.")


async def test_what_cannot_be_written_is_said_and_the_sheet_stays(
    folder: Path, clock: SampleClock
) -> None:
    desk = FullDesk.open(folder, today=clock, machine=MACHINE)
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        task = first_with(app)
        await pilot.press("space")
        await pilot.pause()
        assert said(app).startswith("The disk is full")
        assert tasks_of(app).current == task
        await pilot.press("s", *"cornfl", "ctrl+s")
        await pilot.pause()
        assert front(app) == "sow"
        assert said(app).startswith("The disk is full")
        await pilot.press("escape", "p", "enter", "enter")
        await pilot.pause()
        assert front(app) == "put off"
        assert said(app).startswith("The disk is full")
    desk.close()


def bring_from_another_computer(folder: Path, copy: Path) -> None:
    """What a synced folder does: the other computer's files turn up beside one's own."""
    shutil.copytree(folder, copy)
    other = Desk.open(copy, today=lambda: DAY_0, machine="kitchen")
    other.record((Draft(Kind.SOWN, "b77", figures(crop="zinnia", place="bench-1")),))
    other.close()
    for path in copy.rglob("*kitchen*"):
        if path.is_file():
            shutil.copy2(path, folder / path.relative_to(copy))


async def test_records_of_another_computer_come_in(
    folder: Path, desk: Desk, tmp_path: Path
) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("f5")
        await pilot.pause()
        assert said(app) == "No other computer has written anything."
        bring_from_another_computer(folder, tmp_path / "copy")
        await pilot.press("f5")
        await pilot.pause()
        assert said(app) == "More records came in."
    assert "b77" in desk.season.batches


async def test_the_day_turns_by_itself(desk: Desk, clock: SampleClock) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        task = stand_on(app, Family.THIN, "b20")
        clock.step()
        app.round_screen._turn_day()
        await pilot.pause()
        assert seen(app).startswith("Thu 28 May 2026  ")
        current = tasks_of(app).current
        assert current is not None
        assert current.key == task.key


async def test_a_look_chosen_in_the_settings_is_the_first_one(desk: Desk) -> None:
    desk.record((Draft(Kind.SETTING, LOOK, figures(value=LIGHT)),))
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        assert app.theme == LIGHT


async def test_month_first_is_read_where_the_grower_says_so(desk: Desk) -> None:
    desk.record((Draft(Kind.SETTING, DATE_ORDER, figures(value=MONTH_FIRST)),))
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        task = stand_on(app, Family.THIN, "b20")
        await pilot.press("p", *"6/5", "enter")
        await pilot.pause()
        assert "put off to Fri 5 Jun" in said(app)
    found = desk.round(DAY_0 + timedelta(days=1)).find(task.key)
    assert found is not None
    assert found.put_off == "put off to Fri 5 Jun"
