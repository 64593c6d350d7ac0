"""The look is the computer's: kept in the user's settings folder, taken again at the next start."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchround.core.errors import SeasonError
from benchround.core.record import Draft, Kind
from benchround.desk import Desk
from benchround.screens.app import BenchroundApp
from benchround.screens.palettes import DARK, LIGHT, SIXTEEN, LookKept
from benchround.screens.sitting import Sitting
from benchround.shell.own_look import keep_look, own_look
from tests.screens.stage import front, said


def app_with(desk: Desk, path: Path) -> BenchroundApp:
    """The program as it starts on a computer whose look is kept there."""
    kept = LookKept(own_look(path), lambda look: keep_look(look, path))
    return BenchroundApp(desk, Sitting(look_kept=kept))


async def test_f2_is_remembered_and_writes_nothing_into_the_season(
    desk: Desk, tmp_path: Path
) -> None:
    path, before = tmp_path / "settings" / "look", desk.folder.records()
    app = app_with(desk, path)
    async with app.run_test() as pilot:
        assert app.theme == DARK
        await pilot.press("f2")
        assert app.theme == LIGHT
    again = app_with(desk, path)
    async with again.run_test() as pilot:
        assert again.theme == LIGHT
        await pilot.press("f2")
    assert own_look(path) == DARK
    assert desk.folder.records() == before


async def test_this_computer_goes_before_the_season(desk: Desk, tmp_path: Path) -> None:
    desk.record((Draft(Kind.SETTING, "look", {"value": LIGHT}),))
    path = tmp_path / "look"
    async with (first := app_with(desk, path)).run_test():
        assert first.theme == LIGHT
    keep_look(DARK, path)
    async with (second := app_with(desk, path)).run_test():
        assert second.theme == DARK


async def test_a_terminal_of_few_colours_keeps_the_choice_for_others(
    desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    path = tmp_path / "look"
    keep_look(LIGHT, path)
    async with (app := app_with(desk, path)).run_test() as pilot:
        await pilot.press("f2")
        assert app.theme == SIXTEEN
    assert own_look(path) == LIGHT


@pytest.mark.parametrize("raw", [b"", b"blue", b"\xff\xfe", b"light" * 100])
def test_whatever_else_stands_in_the_file_is_no_look(tmp_path: Path, raw: bytes) -> None:
    (tmp_path / "look").write_bytes(raw)
    assert own_look(tmp_path / "look") == ""
    assert own_look(tmp_path) == ""


async def test_where_it_cannot_be_written_it_holds_for_the_sitting(
    desk: Desk, tmp_path: Path
) -> None:
    (tmp_path / "settings").write_text("a file, no folder")
    path = tmp_path / "settings" / "look"
    with pytest.raises(SeasonError, match="could not be written"):
        keep_look(LIGHT, path)
    app = app_with(desk, path)
    async with app.run_test() as pilot:
        await pilot.press("f2")
        await pilot.pause()
        assert (app.theme, front(app)) == (LIGHT, "round")
        assert said(app).startswith("The look holds until you leave:")


@pytest.mark.parametrize(
    ("name", "value", "words"),
    [
        ("NO_COLOR", "1", "Colours are switched off by NO_COLOR: there is one look."),
        ("TERM", "linux", "This terminal has sixteen colours at most: there is one look."),
    ],
)
async def test_where_there_is_one_look_it_is_said_why(
    desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str, value: str, words: str
) -> None:
    monkeypatch.setenv(name, value)
    app = app_with(desk, tmp_path / "look")
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("f2")
        await pilot.pause()
        assert said(app) == words
