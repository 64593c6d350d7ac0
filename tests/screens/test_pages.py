"""Why and help: everything there is to say, moved with the arrow keys."""

from __future__ import annotations

from benchround.core.caution.due import CAUTIONS
from benchround.core.record import Kind
from benchround.core.task import Family
from benchround.desk import Desk
from benchround.screens.app import BenchroundApp
from benchround.screens.key_screens import SHEETS
from benchround.screens.keys import GROUPS, ROUND, keys_on
from benchround.screens.page import Sheaf
from tests.screens.stage import app_on, front, said, seen, stand_on


def page_of(app: BenchroundApp) -> str:
    """The whole page in front, with single spaces."""
    return " ".join(app.screen.query_one(Sheaf).text.split())


async def test_why_tells_rule_figures_source_and_cautions_in_full(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        task = stand_on(app, Family.UNCOVER, "b06")
        await pilot.press("w")
        await pilot.pause()
        text = page_of(app)
    assert task.instruction in text
    assert task.why.rule in text
    assert all(figure in text for figure in task.why.figures)
    assert task.why.source in text
    assert task.cautions
    for name in task.cautions:
        assert CAUTIONS[name].full in text
        assert CAUTIONS[name].source in text


async def test_what_holds_a_task_is_told(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        task = stand_on(app, Family.PLANT_OUT, "b05")
        await pilot.press("w")
        await pilot.pause()
        assert task.hold is not None
        assert f"held because {task.hold.because}; look again Mon 1 Jun" in page_of(app)


async def test_cautions_read_are_recorded_and_then_said_in_short(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        task = stand_on(app, Family.UNCOVER, "b06")
        await pilot.pause()
        assert "Read first (w): " in seen(app)
        await pilot.press("w", "a")
        await pilot.pause()
        assert said(app).startswith("Recorded: read ")
        await pilot.press("escape")
        await pilot.pause()
        assert "Read first (w): " not in seen(app)
    read = [r.about for r in desk.folder.records() if r.kind is Kind.CAUTION_READ]
    assert {name.partition(":")[0] for name in read} == set(task.cautions)


async def test_a_page_is_moved_and_never_beyond_its_end(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press("question_mark")
        await pilot.pause()
        assert "more lines: page down" in seen(app)
        sheaf = app.screen.query_one(Sheaf)
        await pilot.press(*["pagedown"] * 30)
        await pilot.pause()
        end = sheaf.top
        assert "more lines" not in seen(app)
        await pilot.press("down", "up")
        await pilot.pause()
        assert sheaf.top == end - 1
        await pilot.press(*["pageup"] * 30)
        await pilot.pause()
        assert sheaf.top == 0
        await pilot.press("escape")
        await pilot.pause()
        assert front(app) == "round"


async def test_help_names_every_key_of_its_screen(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("question_mark")
        await pilot.pause()
        text = page_of(app)
        assert all(f"{key.shown} {key.tooltip}" in text for key in keys_on(ROUND))
        await pilot.press("escape", "s", "f1")
        await pilot.pause()
        text = page_of(app)
        assert all(f"{key.shown} {key.tooltip}" in text for key in keys_on("sow"))
    assert {key.group for screen in (ROUND, *SHEETS) for key in keys_on(screen)} <= set(GROUPS)


async def test_the_foot_of_a_page_offers_more_only_while_there_is_more(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("question_mark")
        await pilot.pause()
        assert "page down more" in seen(app).splitlines()[-1]
        await pilot.press(*["pagedown"] * 9)
        await pilot.pause()
        assert "more" not in seen(app).splitlines()[-1]
        await pilot.press("pageup")
        await pilot.pause()
        assert "page down more" in seen(app).splitlines()[-1]


async def test_a_page_without_cautions_to_read_does_not_offer_to_have_read_them(
    desk: Desk,
) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 40)) as pilot:
        await pilot.pause()
        stand_on(app, Family.THERMOMETER, "")
        await pilot.press("w")
        await pilot.pause()
        assert "have read" not in seen(app)
        await pilot.press("escape")
        stand_on(app, Family.LIDS, "frame-a")
        await pilot.press("w")
        await pilot.pause()
        assert seen(app).splitlines()[-1].startswith("a have read")
        await pilot.press("a")
        await pilot.pause()
        assert "have read" not in seen(app).splitlines()[-1]
