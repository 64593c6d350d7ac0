"""The round: ticking, taking back, putting off, other days, marks. One key each."""

from __future__ import annotations

from datetime import timedelta

import pytest

from benchround.clock import SampleClock
from benchround.core.dates import say_day
from benchround.core.record import Kind
from benchround.core.site import PlaceKind
from benchround.core.task import Family, Standing, Task
from benchround.desk import Desk
from benchround.screens.round import RoundScreen
from benchround.screens.rows import Heading
from benchround.screens.widgets.task_detail import TaskDetail
from tests.sample.story import DAY_0
from tests.screens.stage import (
    app_on,
    first_with,
    form_of,
    front,
    said,
    seen,
    stand_on,
    tasks_of,
)


def number_of_records(desk: Desk) -> int:
    return len(desk.folder.records())


async def test_the_head_tells_day_counts_and_weather(desk: Desk, clock: SampleClock) -> None:
    app = app_on(desk, clock)
    made = desk.round()
    async with app.run_test() as pilot:
        await pilot.pause()
        first, second, third = seen(app).splitlines()[:3]
    assert first.startswith("Wed 27 May 2026")
    assert f"{len(made.today)} to do, {len(made.overdue)} overdue" in first
    assert f"{len(made.held)} held" in first
    assert second.startswith("5 to 23 C, dry, gusts 22 km/h")
    assert third == "Sample, not kept when you leave; day pinned to 27 May 2026; > is the next day"


async def test_the_first_picture_is_laid_out_for_the_size_of_the_terminal(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    show, classes = RoundScreen.show_round, list[frozenset[str]]()

    def noted(screen: RoundScreen, key: str = "") -> None:
        classes.append(screen.classes)
        show(screen, key)

    monkeypatch.setattr(RoundScreen, "show_round", noted)
    async with app_on(desk).run_test(size=(120, 40)):
        assert classes[0] >= {"-wide", "-high"}


async def test_tasks_stand_in_the_order_of_the_round_under_their_places(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        rows = tasks_of(app).rows
        made = desk.round()
    doing = [row for row in rows if isinstance(row, Task)]
    assert doing == [*made.today, *made.held, *made.early]
    words = [row.words for row in rows if isinstance(row, Heading)]
    assert words[-2:] == ["Held: weather or room forbids it", "Not due yet"]
    morning = [word for word in words if word.startswith("Morning - ")]
    walk = [f"Morning - {place.name}" for place in desk.season.places]
    assert morning == [word for word in walk if word in morning]


async def test_the_state_is_a_word_before_it_is_a_mark_or_a_colour(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 60)) as pilot:
        await pilot.pause()
        text = seen(app)
    for task in desk.round().overdue:
        assert f" overdue {task.overdue_days} " in text
    assert " late " in text
    assert " held " in text


async def test_space_writes_the_defaults_and_says_so(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        task = first_with(app, needed=False)
        before = number_of_records(desk)
        await pilot.press("space")
        await pilot.pause()
        record = desk.folder.records()[before]
        assert record.about == task.about
        assert record.day == DAY_0
        assert record.kind is task.ticks[0].kind
        assert said(app).startswith("Recorded: ")
        assert "u takes it back" in said(app)
        assert desk.round().find(task.key) is None


async def test_the_cursor_goes_to_the_next_task_when_its_own_is_gone(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.THIN, "b20")
        tasks = tasks_of(app)
        at = tasks.cursor or 0
        after = next(row for row in tasks.rows[at + 1 :] if isinstance(row, Task))
        await pilot.press("space")
        await pilot.pause()
        assert tasks.current is not None
        assert tasks.current.key == after.key


async def test_the_cursor_stays_on_its_task_while_it_is_there(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        task = stand_on(app, Family.LOOK, "b14")
        await pilot.press("e", "e", "f5")
        await pilot.pause()
        current = tasks_of(app).current
        assert current is not None
        assert current.key == task.key


async def test_undo_takes_back_and_the_cursor_is_on_the_task_again(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        made = desk.round()
        task = first_with(app, needed=False)
        await pilot.press("space", "end", "u")
        await pilot.pause()
        assert desk.round() == made
        assert said(app).startswith("Taken back: ")
        current = tasks_of(app).current
        assert current is not None
        assert current.key == task.key
        await pilot.press("u")
        await pilot.pause()
        assert said(app).startswith("Nothing was recorded in this sitting")


async def test_a_needed_figure_opens_the_sheet_and_saves_with_enter(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        task = stand_on(app, Family.COUNT, "b02")
        await pilot.press("space")
        await pilot.pause()
        assert front(app) == "task"
        await pilot.press("3", "5", "enter")
        await pilot.pause()
        assert front(app) == "round"
    record = desk.folder.records()[-1]
    assert (record.kind, record.about, record.count()) == (Kind.COUNTED, "b02", 35)
    assert desk.round().find(task.key) is None


async def test_a_look_takes_a_count_in_four_keys(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.LOOK, "b06")
        await pilot.press("enter", "3", "6", "enter")
        await pilot.pause()
        assert front(app) == "round"
    record = desk.folder.records()[-1]
    assert (record.kind, record.about, record.count()) == (Kind.COUNTED, "b06", 36)


async def test_space_on_a_look_asks_what_is_up_before_it_writes(desk: Desk) -> None:
    app = app_on(desk)
    before = number_of_records(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.LOOK, "b06")
        await pilot.press("space")
        await pilot.pause()
        assert front(app) == "task"
        assert number_of_records(desk) == before
        await pilot.press("3", "7", "enter")
        await pilot.pause()
    record = desk.folder.records()[-1]
    assert (record.kind, record.about, record.count()) == (Kind.COUNTED, "b06", 37)


@pytest.mark.parametrize(
    ("keys", "kind", "count", "note"),
    [
        pytest.param([], Kind.LOOKED, None, "", id="nothing up, not dug up"),
        pytest.param(["4"], Kind.FIRST_UP, 4, "", id="four up after all"),
        pytest.param(
            ["tab", *"soft"], Kind.LOOKED, None, "dug up a seed: soft, so sow again", id="soft"
        ),
    ],
)
async def test_space_on_a_late_look_asks_what_was_found(
    desk: Desk, keys: list[str], kind: Kind, count: int | None, note: str
) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.LOOK, "b14")
        await pilot.press("space")
        await pilot.pause()
        assert front(app) == "task"
        await pilot.press(*keys, "enter")
        await pilot.pause()
        assert front(app) == "round"
    record = desk.folder.records()[-1]
    assert (record.kind, record.about, record.count(), record.note) == (kind, "b14", count, note)


async def test_uncovering_in_the_propagator_asks_where_it_stands_then(desk: Desk) -> None:
    """The bench room is reckoned from the places: out of the propagator is out of its room."""
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        assert desk.season.batches["b06"].main.place == "propagator"
        stand_on(app, Family.UNCOVER, "b06")
        await pilot.press("space")
        await pilot.pause()
        assert front(app) == "task"
        await pilot.press("enter", "ctrl+k", "ctrl+k")
        await pilot.pause()
        assert front(app) == "round"
    record = next(r for r in desk.folder.records()[::-1] if r.about == "b06")
    assert record.kind is Kind.UNCOVERED
    assert desk.season.batches["b06"].main.place == record.text("place")
    place = desk.season.place(record.text("place"))
    assert place is not None
    assert place.kind in (PlaceKind.GREENHOUSE, PlaceKind.BENCH, PlaceKind.WINDOWSILL)
    assert not place.heated


async def test_a_look_among_marked_tasks_stays_to_be_answered(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        look = stand_on(app, Family.LOOK, "b06")
        await pilot.press("m")
        stand_on(app, Family.THIN, "b20")
        await pilot.press("m", "space")
        await pilot.pause()
        assert "b06: up now: say it." in said(app)
        assert tasks_of(app).marked == {look.key}


async def test_put_off_until_a_typed_day_with_a_reason(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        task = stand_on(app, Family.THIN, "b20")
        await pilot.press("p", *"mon", "tab", *"no room", "enter")
        await pilot.pause()
        assert front(app) == "round"
        assert "put off to Mon 1 Jun" in said(app)
    found = desk.round().find(task.key)
    assert found is not None
    assert found.standing is Standing.EARLY
    assert found.put_off == "put off to Mon 1 Jun: no room"


async def test_put_off_until_tomorrow_takes_two_keys_and_not_backwards(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        task = stand_on(app, Family.THIN, "b20")
        await pilot.press("p", *"yesterday", "enter")
        await pilot.pause()
        assert front(app) == "put off"
        assert "is not ahead of today" in form_of(app).field("until").error
        await pilot.press("escape", "p", "ctrl+n", "enter")
        await pilot.pause()
        assert front(app) == "round"
    found = desk.round().find(task.key)
    assert found is not None
    assert found.put_off == f"put off to {say_day(DAY_0 + timedelta(days=1))}"


@pytest.mark.parametrize(
    ("key", "by"), [("right", 1), ("full_stop", 1), ("left", -1), ("comma", -1)]
)
async def test_other_days_are_looked_at(desk: Desk, key: str, by: int) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press(key, key)
        await pilot.pause()
        day = DAY_0 + timedelta(days=2 * by)
        assert f"{day.day} May 2026 ({'in 2 days' if by > 0 else '2 days ago'})" in seen(app)
        rows = [row for row in tasks_of(app).rows if isinstance(row, Task)]
        assert len(rows) == len(desk.round(day).tasks)
        await pilot.press("home")
        await pilot.pause()
        assert seen(app).startswith("Wed 27 May 2026  ")


async def test_nothing_is_recorded_for_a_day_to_come(desk: Desk) -> None:
    app = app_on(desk)
    before = number_of_records(desk)
    async with app.run_test() as pilot:
        await pilot.press("right")
        for key in ("space", "enter", "r", "s", "p", "f", "space"):
            await pilot.press(key)
            await pilot.pause()
            assert front(app) == "round"
        assert said(app).startswith("Thu 28 May is still to come")
    assert number_of_records(desk) == before


async def test_a_tick_on_a_day_gone_by_is_dated_that_day(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("left")
        await pilot.pause()
        stand_on(app, Family.DEADHEAD, "b29")
        await pilot.press("space")
        await pilot.pause()
        assert said(app).startswith("Recorded: ")
    record = desk.folder.records()[-1]
    assert (record.about, record.day) == ("b29", DAY_0 - timedelta(days=1))


async def test_a_record_that_does_not_fit_is_refused_in_a_sentence(desk: Desk) -> None:
    app = app_on(desk)
    before = number_of_records(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.COUNT, "b02")
        await pilot.press("enter", *"41", "enter")
        await pilot.pause()
        assert front(app) == "task"
        assert form_of(app).field("count").error == "41 is not between 0 and 40."
    assert number_of_records(desk) == before


async def test_marked_tasks_are_ticked_together_and_taken_back_together(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        made = desk.round()
        stand_on(app, Family.HARDEN, "b01")
        hardening = [task for task in made.today if task.family is Family.HARDEN]
        before = number_of_records(desk)
        await pilot.press("f")
        await pilot.pause()
        assert tasks_of(app).marked == {task.key for task in hardening}
        assert said(app).startswith(f"{len(hardening)} marked")
        await pilot.press("space")
        await pilot.pause()
        assert number_of_records(desk) == before + len(hardening)
        assert said(app).startswith(f"Recorded: {len(hardening)} tasks done (harden off)")
        await pilot.press("u")
        await pilot.pause()
        assert desk.round() == made


async def test_of_marked_tasks_one_that_needs_a_figure_stays(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        needs = stand_on(app, Family.COUNT, "b02")
        await pilot.press("m")
        stand_on(app, Family.THIN, "b20")
        await pilot.press("m", "space")
        await pilot.pause()
        assert "1 task done (thin)" in said(app)
        assert "b02: seedlings up: a figure is needed here." in said(app)
        assert tasks_of(app).marked == {needs.key}
        await pilot.press("escape")
        await pilot.pause()
        assert tasks_of(app).marked == frozenset()


async def test_what_is_not_due_yet_folds_away(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        early = len(desk.round().early)
        shown = tasks_of(app).position[1]
        await pilot.press("e")
        await pilot.pause()
        assert tasks_of(app).position[1] == shown - early
        headings = [row for row in tasks_of(app).rows if isinstance(row, Heading)]
        assert (headings[-1].words, headings[-1].tasks) == ("Not due yet", early)


async def test_the_sample_steps_to_the_next_day(desk: Desk, clock: SampleClock) -> None:
    app = app_on(desk, clock)
    async with app.run_test() as pilot:
        await pilot.press("greater_than_sign")
        await pilot.pause()
        assert seen(app).startswith("Thu 28 May 2026  ")
        assert "day pinned to 28 May 2026" in seen(app)
    assert desk.today == DAY_0 + timedelta(days=1)


async def test_another_season_s_day_cannot_be_moved(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("greater_than_sign")
        await pilot.pause()
        assert said(app) == "Only the sample season's day can be moved on."
    assert desk.today == DAY_0


async def test_the_detail_follows_the_cursor(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.pause()
        task = stand_on(app, Family.THIN, "b20")
        await pilot.pause()
        text = " ".join(app.screen.query_one(TaskDetail).text.split())
    assert text.startswith("b20 Purple sprouting broccoli 'Spring Spear', Bench 2")
    assert f"why: {task.why}" in text
    assert "ticking writes: thinned" in text


async def test_what_was_said_is_not_said_again_after_another_screen(desk: Desk) -> None:
    """By then it may not be the last thing done, which is what the key it names takes back."""
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "n", *"12 apr cosmos", "enter", "escape")
        await pilot.pause()
        assert "1 line of the diary recorded" in said(app)
        await pilot.press("g", "d", "w", "escape")
        await pilot.pause()
        assert front(app) == "round"
        assert said(app) == ""
