"""An own key is given on a sheet of the settings, holds at once, and is written down."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchround.desk import Desk
from benchround.screens.keys import KEYS_SHEET, SETTINGS
from benchround.screens.widgets.key_bar import KeyBar
from benchround.shell.own_keys import own_ring
from tests.screens.stage import app_on, form_of, front, said, seen

TO_SHEET = ("g", "t", "k")


@pytest.fixture(autouse=True)
def file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A file of keys of the test's own."""
    path = tmp_path / "config" / "keys.toml"
    monkeypatch.setattr("benchround.screens.keys_sheet.keys_file", lambda: path)
    return path


async def test_a_key_given_holds_at_once_and_is_kept(desk: Desk, file: Path) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press(*TO_SHEET, *"tick", "tab", "x", "enter")
        await pilot.pause()
        assert front(app) == SETTINGS
        assert said(app) == "'tick' is x from now on."
        await pilot.press("escape")
        await pilot.pause()
        assert app.screen.query_one(KeyBar).text.startswith("x done")
        before = len(desk.folder.records())
        await pilot.press("down", "down", "down", "space")
        await pilot.pause()
        assert len(desk.folder.records()) == before
    assert own_ring(file).named("tick") == "x"
    assert own_ring(file).faults == ()


async def test_an_empty_key_gives_the_usual_one_back(desk: Desk, file: Path) -> None:
    file.parent.mkdir()
    file.write_text('# mine\ntick = "x"\nundo = "z"\n', "utf-8")
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press(*TO_SHEET, *"tick", "enter")
        await pilot.pause()
        assert front(app) == SETTINGS
    assert file.read_text("utf-8") == '# mine\nundo = "z"\n'


@pytest.mark.parametrize(
    ("keys", "words"),
    [
        ("m", "m is 'mark' already (The round)"),
        ("foo", "There is no key 'foo'"),
        ("f1", "f1 is always 'help'"),
        ("a,b,c,d,e", "or up to 4"),
    ],
)
async def test_what_may_not_be_is_said_beside_the_field(
    desk: Desk, file: Path, keys: str, words: str
) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press(*TO_SHEET, *"tick", "tab")
        form_of(app).now.put(keys)
        await pilot.press("enter")
        await pilot.pause()
        assert front(app) == KEYS_SHEET
        assert words in form_of(app).field("keys").error
    assert not file.exists()


async def test_an_action_is_found_by_what_it_does(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press(*TO_SHEET, *"later day")
        await pilot.pause()
        assert form_of(app).field("action").value == "put-off"
        assert "now: p" in seen(app)
        assert "on: The round" in seen(app)


async def test_a_file_that_cannot_be_written_is_said_and_nothing_changes(
    desk: Desk, file: Path
) -> None:
    file.parent.write_text("a file where a folder is wanted", "utf-8")
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press(*TO_SHEET, *"tick", "tab", "x", "enter")
        await pilot.pause()
        assert front(app) == KEYS_SHEET
        assert "could not be written" in said(app)
        assert app.ring.named("tick") == "space"
