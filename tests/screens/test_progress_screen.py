"""Long work on the screens: it is shown, it can be stopped, and it never goes on unseen."""

from __future__ import annotations

import threading
import time

import pytest

from benchround.core.errors import BenchroundError
from benchround.core.progress import Progress
from benchround.desk import Desk
from benchround.screens.key_screens import PROGRESS, ROUND
from benchround.screens.progress import Ended, LongWork, ProgressScreen
from tests.screens.golden import same_as_kept
from tests.screens.stage import SIZES, app_on, front, said, seen


def work_until(let_go: threading.Event, *, whole: bool = False) -> LongWork:
    """Work that stands at 300 of 1,200 rows until it is let go."""

    def does(progress: Progress) -> int:
        while not let_go.is_set():
            progress(300, 1200)
            time.sleep(0.001)
        return 1200

    return LongWork(does, "Reading sowings.csv", "rows", whole=whole)


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_what_remains_is_shown_and_the_result_comes_back(
    desk: Desk, size: tuple[int, int]
) -> None:
    let_go, came = threading.Event(), list[Ended | None]()
    app = app_on(desk)
    async with app.run_test(size=size) as pilot:
        app.push_screen(ProgressScreen(work_until(let_go)), came.append)
        await pilot.pause(0.25)
        same_as_kept(f"progress_{size[0]}x{size[1]}", seen(app))
        await pilot.press("ctrl+g", "g", "question_mark")
        assert front(app) == PROGRESS
        let_go.set()
        await app.workers.wait_for_complete()
        await pilot.pause()
        assert front(app) == ROUND
    assert came == [Ended(1200)]


async def test_escape_stops_it_and_says_what_was_done(desk: Desk) -> None:
    came: list[Ended | None] = []
    app = app_on(desk)
    async with app.run_test() as pilot:
        app.push_screen(ProgressScreen(work_until(threading.Event())), came.append)
        await pilot.pause()
        await pilot.press("escape")
        await app.workers.wait_for_complete()
        await pilot.pause()
    assert came[0] is not None
    assert str(came[0].error) == "Stopped after 300 of 1200 rows. Nothing was recorded."


async def test_what_is_done_at_once_is_not_stopped_half_way(desk: Desk) -> None:
    let_go, came = threading.Event(), list[Ended | None]()
    app = app_on(desk)
    async with app.run_test() as pilot:
        app.push_screen(ProgressScreen(work_until(let_go, whole=True)), came.append)
        await pilot.pause()
        await pilot.press("escape")
        await pilot.pause()
        assert said(app) == "All is written at once: it cannot be stopped half way."
        let_go.set()
        await app.workers.wait_for_complete()
        await pilot.pause()
    assert came == [Ended(1200)]


async def test_a_refusal_of_the_work_comes_back_as_one(desk: Desk) -> None:
    def does(progress: Progress) -> None:
        raise BenchroundError("The disk is full.")

    came: list[Ended | None] = []
    app = app_on(desk)
    async with app.run_test() as pilot:
        app.push_screen(ProgressScreen(LongWork(does, "Recording", "rows")), came.append)
        await app.workers.wait_for_complete()
        await pilot.pause()
    assert came[0] is not None
    assert str(came[0].error) == "The disk is full."


async def test_leaving_ends_the_work_too(desk: Desk) -> None:
    ended = threading.Event()

    def does(progress: Progress) -> None:
        try:
            while True:
                progress(1, 2)
                time.sleep(0.001)
        finally:
            ended.set()

    app = app_on(desk)
    async with app.run_test() as pilot:
        app.push_screen(ProgressScreen(LongWork(does, "Recording", "rows")))
        await pilot.pause()
        await pilot.press("ctrl+q")
        await pilot.pause()
    assert ended.wait(5)
    assert app.return_code == 0
