"""What somebody stumbles over who has never seen the program: leaving, putting off, refusals."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from benchround.core.caution.due import CAUTIONS, blocks, read_key
from benchround.core.record import Kind
from benchround.core.task import Family, Harm, Standing, Task
from benchround.desk import Desk
from benchround.screens.app import BenchroundApp
from benchround.screens.keys import PUT_OFF, ROUND, TASK
from benchround.screens.read_first import unread
from tests.screens.stage import MADE_ROUND, app_on, front, said, seen, stand_on, task, tasks_of

WAY_OUT = "ctrl+q leaves, everything is saved; ? shows all keys"


@pytest.mark.parametrize(
    "key", ["q", "Q", "ctrl+c", "colon", "ctrl+d", "ctrl+z", "escape", "z", "f12"]
)
async def test_a_key_that_does_nothing_tells_how_to_leave(desk: Desk, key: str) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press(key)
        await pilot.pause()
        assert said(app) == WAY_OUT
        assert app.return_code is None


async def test_in_a_field_letters_are_typed_and_ctrl_c_tells_how_to_leave(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("s", "q")
        await pilot.pause()
        assert said(app) == ""
        await pilot.press("ctrl+c")
        await pilot.pause()
        assert said(app) == "ctrl+q leaves, everything is saved; f1 shows all keys"


def neighbours(app: BenchroundApp) -> list[str]:
    tasks = tasks_of(app)
    assert tasks.cursor is not None
    rows = [*tasks.rows[tasks.cursor + 1 :], *reversed(tasks.rows[: tasks.cursor])]
    return [row.key for row in rows if isinstance(row, Task) and row.standing is not Standing.EARLY]


@pytest.mark.parametrize("by", [0, 3, 12])
async def test_after_putting_off_the_cursor_stands_at_the_next_task(desk: Desk, by: int) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        await pilot.press(*["down"] * by)
        while (found := tasks_of(app).current) is None or found.harm is Harm.DIES_TODAY:
            await pilot.press("down")
        near = neighbours(app)
        gone = found.key
        await pilot.press("p", "enter")
        await pilot.pause()
        assert front(app) == ROUND
        now = tasks_of(app).current
        assert now is not None
        assert now.key == near[0] != gone
        await pilot.press("u")
        await pilot.pause()
        assert (back := tasks_of(app).current) is not None
        assert back.key == gone


async def test_putting_off_what_dies_today_tells_its_cost_and_asks_again(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        rows = tasks_of(app).rows
        at = next(
            n for n, r in enumerate(rows) if isinstance(r, Task) and r.harm is Harm.DIES_TODAY
        )
        tasks_of(app).go(at)
        before = len(desk.folder.records())
        await pilot.press("p")
        await pilot.pause()
        assert "Plants die today if this is left" in seen(app)
        await pilot.press("enter")
        await pilot.pause()
        assert front(app) == PUT_OFF
        assert "Not put off yet" in said(app)
        assert len(desk.folder.records()) == before
        await pilot.press("enter")
        await pilot.pause()
        assert front(app) == ROUND
        assert len(desk.folder.records()) == before + 1


async def test_a_refusal_goes_once_something_else_is_done(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        await pilot.press("right", "space")
        await pilot.pause()
        assert "still to come" in said(app)
        await pilot.press("down")
        await pilot.pause()
        assert said(app) == ""
        await pilot.press("home", "s", "ctrl+s")
        await pilot.pause()
        assert "Nothing was recorded" in said(app)
        await pilot.press("c")
        await pilot.pause()
        assert said(app) == ""


BLOCKED = task(
    "b06", Family.UNCOVER, crop="Zinnia", variety="Market Row", place="propagator",
    cautions=("C44",), instruction="Off heat and cover, into full light",
)  # fmt: skip


class HeldUp(Desk):
    """A desk with one task that a caution on mains heat holds up, until it is read."""

    def round(self, day: object = None) -> object:  # type: ignore[override]  # as made by hand
        return type(MADE_ROUND)(self.today, (BLOCKED, *MADE_ROUND.tasks[:1]))


@pytest.fixture
def held_desk(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> Desk:
    """The sample, with the one task; nothing was read this year."""
    monkeypatch.setattr(desk, "round", HeldUp.round.__get__(desk))
    read = dict(desk.season.cautions_read)
    assert blocks("C44") and "C44" not in read
    return desk


@pytest.mark.parametrize("size", [(60, 20), (80, 24)])
async def test_a_caution_holds_the_tick_up_until_it_is_read(
    held_desk: Desk, size: tuple[int, int]
) -> None:
    app = app_on(held_desk)
    desk = held_desk
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert unread(BLOCKED, desk.season, desk.today) == ("C44",)
        before = len(desk.folder.records())
        await pilot.press("space")
        await pilot.pause()
        assert front(app) == TASK
        shown = " ".join(seen(app).split())
        assert f"READ FIRST: {CAUTIONS['C44'].full}" in shown
        assert "ctrl+k says that you have read it" in shown
        await pilot.press("enter")
        await pilot.pause()
        assert "read the caution, then press ctrl+k" in said(app)
        assert len(desk.folder.records()) == before
        await pilot.press("ctrl+k")
        await pilot.pause()
        assert front(app) == ROUND
        written = desk.folder.records()[before:]
        assert {record.kind for record in written} == {Kind.DONE, Kind.CAUTION_READ}
        assert desk.season.cautions_read[read_key("C44")] == desk.today
        assert unread(BLOCKED, desk.season, desk.today) == ()
        assert unread(BLOCKED, desk.season, desk.today + timedelta(days=400)) == ("C44",)
        await pilot.press("u")
        await pilot.pause()
        assert unread(BLOCKED, desk.season, desk.today) == ("C44",)


async def test_marked_tasks_leave_out_the_one_with_an_unread_caution(held_desk: Desk) -> None:
    app = app_on(held_desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        await pilot.press("m", "down", "m")
        before = len(held_desk.folder.records())
        await pilot.press("space")
        await pilot.pause()
        assert "b06: read the caution first" in said(app)
        assert len(held_desk.folder.records()) == before + 1


def test_several_tasks_are_one_act_or_none(desk: Desk) -> None:
    alike = [found for found in desk.round().today if found.family is Family.HARDEN]
    assert len(alike) > 1
    before = len(desk.folder.records())
    written = desk.tick_all(alike)
    assert len(written) == len(alike)
    assert {record.id for record in desk.undo()} == {record.id for record in written}
    assert desk.undo() == ()
    count = next(found for found in desk.round().today if any(a.needed for a in found.asks))
    number = len(desk.folder.records())
    with pytest.raises(Exception, match=f"{count.about}: .*a figure is needed"):
        desk.tick_all([*alike, count])
    assert len(desk.folder.records()) == number > before


@pytest.mark.parametrize("second", ["C46", "C38"])
async def test_every_caution_told_to_be_read_first_is_shown_and_agreed_to(
    desk: Desk, monkeypatch: pytest.MonkeyPatch, second: str
) -> None:
    two = replace(BLOCKED, cautions=("C44", second))
    monkeypatch.setattr(desk, "round", lambda day=None: type(MADE_ROUND)(desk.today, (two,)))
    app = app_on(desk)
    async with app.run_test(size=(100, 40)) as pilot:
        await pilot.pause()
        await pilot.press("space")
        await pilot.pause()
        shown = " ".join(seen(app).split())
        for name in two.cautions:
            assert f"READ FIRST: {CAUTIONS[name].full}" in shown
        assert seen(app).splitlines()[-1].startswith("ctrl+k have read  enter save")
        await pilot.press("ctrl+k")
        await pilot.pause()
        assert front(app) == TASK
        shown = " ".join(seen(app).split())
        assert f"READ FIRST: {CAUTIONS[second].full}" in shown
        assert CAUTIONS["C44"].full not in shown
        await pilot.press("ctrl+k")
        await pilot.pause()
        assert front(app) == ROUND
    assert {read_key("C44"), read_key(second)} <= set(desk.season.cautions_read)


async def test_putting_off_what_is_for_today_alone_says_that_tomorrow_is_asked_for(
    desk: Desk,
) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        stand_on(app, Family.THERMOMETER, "")
        await pilot.press("p")
        await pilot.pause()
        assert "tomorrow is asked for by itself" in seen(app)
        await pilot.press("escape")
        stand_on(app, Family.PRICK_OUT, "b25")
        await pilot.press("p")
        await pilot.pause()
        assert "It comes back by itself on that day." in seen(app)
