"""The list of tasks: headings, cursor and marks, and five thousand rows as quick as fifty."""

from __future__ import annotations

from itertools import pairwise

import pytest

from benchround.core.season import Season
from benchround.core.task import Round, Slot, Standing, Task
from benchround.desk import Desk
from benchround.screens.rows import Heading, Row, place_to_stand, rows_of
from benchround.screens.text import Line, plain
from benchround.screens.widgets.task_detail import TaskDetail
from tests.sample.story import DAY_0
from tests.screens.stage import MADE_ROUND, app_on, many_tasks, seen, task, tasks_of

SEASON = Season(crops={})


def keys_of(rows: tuple[object, ...]) -> list[str]:
    return [row.key for row in rows if isinstance(row, Task)]


def test_a_heading_stands_wherever_part_of_day_or_place_changes() -> None:
    rows = rows_of(Round(DAY_0, many_tasks(500)), SEASON)
    for above, below in pairwise(rows):
        if isinstance(above, Task) and isinstance(below, Task):
            assert (above.slot, above.place) == (below.slot, below.place)
        assert not (isinstance(above, Heading) and isinstance(below, Heading))
    assert isinstance(rows[0], Heading)
    assert sum(row.tasks for row in rows if isinstance(row, Heading)) == 500


def test_held_and_early_tasks_stand_last_under_their_own_headings() -> None:
    rows = rows_of(MADE_ROUND, SEASON)
    words = [row.words if isinstance(row, Heading) else row.standing for row in rows]
    assert words[-4:] == [
        "Held: weather or room forbids it",
        Standing.HELD,
        "Not due yet",
        Standing.EARLY,
    ]
    assert rows_of(MADE_ROUND, SEASON, folded=True) == (
        *rows[:-2],
        Heading("Not due yet", 1, "e shows them"),
    )


@pytest.mark.parametrize(
    ("left", "at", "stands_on"),
    [
        (("a", "b", "c"), 2, "b"),
        (("a", "c"), 2, "c"),
        (("a", "b"), 3, "b"),
        (("c",), 1, "c"),
        (("a",), 3, "a"),
    ],
)
def test_the_cursor_keeps_its_task_or_takes_the_next_or_the_one_before(
    left: tuple[str, ...], at: int, stands_on: str
) -> None:
    tasks = {name: task(name) for name in "abc"}
    old = rows_of(Round(DAY_0, tuple(tasks.values())), SEASON)
    new = rows_of(Round(DAY_0, tuple(tasks[name] for name in left)), SEASON)
    found = place_to_stand(old, at, new)
    assert found is not None
    row = new[found]
    assert isinstance(row, Task)
    assert row.about == stands_on


def test_nowhere_to_stand_where_there_is_no_task() -> None:
    old = rows_of(Round(DAY_0, (task("a"),)), SEASON)
    assert place_to_stand(old, 1, ()) is None


@pytest.mark.parametrize("width", [40, 60, 80, 120])
async def test_a_row_is_as_wide_as_the_list(still_desk: Desk, width: int) -> None:
    app = app_on(still_desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        tasks = tasks_of(app)
        for row in tasks.rows:
            assert len(plain([tasks.words(row, width)])) <= width


async def test_moving_goes_over_headings_and_stops_at_the_ends(still_desk: Desk) -> None:
    app = app_on(still_desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.pause()
        tasks = tasks_of(app)
        all_keys = keys_of(tasks.rows)
        met = []
        for _ in range(len(all_keys) + 3):
            assert tasks.current is not None
            met.append(tasks.current.key)
            await pilot.press("down")
        assert met[: len(all_keys)] == all_keys
        assert met[-1] == all_keys[-1]
        await pilot.press(*["up"] * (len(all_keys) + 3))
        assert tasks.position == (1, len(all_keys))


async def test_tab_goes_from_place_to_place(still_desk: Desk) -> None:
    app = app_on(still_desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        tasks = tasks_of(app)
        starts = [
            below.key
            for above, below in pairwise(tasks.rows)
            if isinstance(above, Heading) and isinstance(below, Task)
        ]
        met = []
        for _ in starts:
            assert tasks.current is not None
            met.append(tasks.current.key)
            await pilot.press("tab")
        assert met == starts
        await pilot.press("shift+tab")
        assert tasks.current is not None
        assert tasks.current.key == starts[-2]


async def test_the_cursor_s_row_and_its_heading_are_in_sight(still_desk: Desk) -> None:
    app = app_on(still_desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.pause()
        tasks = tasks_of(app)
        tasks.show(rows_of(Round(DAY_0, many_tasks(300)), SEASON), SEASON)
        for key in ("pagedown", "down", "tab", "pageup", "end", "up", "shift+tab", "home"):
            await pilot.press(key)
            await pilot.pause()
            assert tasks.current is not None
            lines = seen(app).splitlines()
            here = [number for number, text in enumerate(lines) if text.startswith(">")]
            assert len(here) == 1
            assert tasks.current.about in lines[here[0]]


async def test_the_cursor_stays_in_sight_when_the_status_takes_more_lines(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.pause()
        tasks = tasks_of(app)
        bottom = tasks.size.height - 1
        while tasks.cursor is not None and tasks.cursor < bottom:
            await pilot.press("down")
        app.round_screen.say("so many words that they take " + "three lines " * 12)
        await pilot.pause()
        assert tasks.size.height < bottom + 1
        assert any(text.startswith(">") for text in seen(app).splitlines())


async def test_of_five_thousand_rows_only_those_met_are_put_into_words(still_desk: Desk) -> None:
    app = app_on(still_desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        tasks = tasks_of(app)
        worded: list[Task] = []
        words_of_row = tasks.words

        def counting(row: Row, width: int) -> Line:
            if isinstance(row, Task):
                worded.append(row)
            return words_of_row(row, width)

        tasks.words = counting  # type: ignore[method-assign]  # counted, and done all the same
        tasks.show(rows_of(Round(DAY_0, many_tasks(5000)), SEASON), SEASON)
        await pilot.pause()
        at_first = len(worded)
        assert 0 < at_first <= tasks.size.height
        for _ in range(20):
            tasks.step(1)
            await pilot.pause()
        assert tasks.position == (21, 5000)
        assert len(worded) - at_first <= 3 * 20  # the row left, the row reached, one come in sight


async def test_a_move_draws_two_rows_and_what_follows_the_cursor_at_once(
    still_desk: Desk,
) -> None:
    app = app_on(still_desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        tasks, detail = tasks_of(app), app.screen.query_one(TaskDetail)
        before, told = list(tasks.render_lines(tasks.size.region)), detail.text
        tasks.step(1)
        assert detail.text != told  # told before anything is drawn
        after = tasks.render_lines(tasks.size.region)
        changed = [
            y for y, (one, other) in enumerate(zip(before, after, strict=True)) if one is not other
        ]
        assert len(changed) == 2


def test_every_part_of_the_day_has_a_heading() -> None:
    tasks = tuple(task(f"b{slot}", slot=slot) for slot in Slot)
    rows = rows_of(Round(DAY_0, tasks), SEASON)
    words = [
        row.words.partition(" - ")[0] for row in rows if isinstance(row, Heading) and row.tasks
    ]
    assert words == ["First thing", "Morning", "Midday", "Late afternoon", "Evening"]
