"""What is drawn before Textual is read is what its screen shows, letter by letter, in its colours.

The screen itself is the referee here, and rich for the escape sequences.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from pathlib import Path

import pytest
from rich.color import ColorSystem
from rich.segment import Segment
from rich.style import Style

from benchround.clock import SampleClock
from benchround.core.record import Draft, Kind
from benchround.desk import Desk
from benchround.screens.app import BenchroundApp
from benchround.screens.first_picture import first_picture
from benchround.screens.palettes import DARK, LIGHT
from benchround.screens.sitting import AS_USUAL, Sitting
from benchround.screens.steered import Drawn, steered
from benchround.screens.text import Role
from benchround.screens.theme import role_styles, rule_style
from tests.screens.stage import app_on
from tests.terminal.sheet_of_cells import SheetOfCells

SIZES = ((44, 16), (60, 20), (80, 24), (100, 33), (109, 34), (110, 40), (155, 45), (200, 60))
ON_DARK = {"TERM": "xterm-256color", "COLORTERM": "truecolor"}

Cell = tuple[str, str]
"""A letter and how it is drawn."""


def cells_of(segments: Iterable[Segment]) -> list[Cell]:
    return [(letter, str(style)) for text, style, _ in segments for letter in text]


def drawn_by(app: BenchroundApp) -> list[list[Cell]]:
    return [cells_of(strip) for strip in app.screen._compositor.render_strips()]


def drawn_first(picture: Iterable[Drawn], look: str) -> list[list[Cell]]:
    styles: dict[Role | None, Style] = {
        role: rule_style(look) if role is None else role_styles(look)[role]
        for role in (*Role, None)
    }
    return [
        cells_of(Segment(words, styles[role]) for words, role in line if words) for line in picture
    ]


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
@pytest.mark.parametrize("sample", [True, False], ids=["sample", "own season"])
async def test_it_is_what_the_screen_shows(
    still_desk: Desk, size: tuple[int, int], sample: bool
) -> None:
    clock = SampleClock(still_desk.today) if sample else None
    picture = first_picture(still_desk, Sitting(sample=sample, clock=clock), *size)
    app = app_on(still_desk, clock)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert drawn_first(picture, app.theme) == drawn_by(app)


@pytest.mark.parametrize("size", [(60, 20), (120, 40)], ids=lambda size: f"{size[0]}x{size[1]}")
async def test_an_empty_season_is_as_its_screen_shows_it(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    desk = Desk.create(tmp_path / "season", "Mine", today=lambda: date(2027, 4, 3))
    picture = first_picture(desk, AS_USUAL, *size)
    app = app_on(desk)
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert drawn_first(picture, app.theme) == drawn_by(app)
    assert any("Press s to sow your first one" in words for line in picture for words, _ in line)
    desk.close()


async def test_letters_of_any_script_and_units_are_as_the_screen_shows_them(
    still_desk: Desk,
) -> None:
    still_desk.record([Draft(Kind.SETTING, "units", {"value": "F"})])
    still_desk.record([Draft(Kind.NOTED, "b02", {"variety": "早生 [b]x[/b] \u00e9"})])
    picture = first_picture(still_desk, AS_USUAL, 100, 30)
    app = app_on(still_desk)
    async with app.run_test(size=(100, 30)) as pilot:
        await pilot.pause()
        assert drawn_first(picture, app.theme) == drawn_by(app)
    assert any(" F" in words for line in picture for words, _ in line)


@pytest.mark.parametrize(
    "size", [(1, 1), (40, 5), (120, 2)], ids=lambda size: f"{size[0]}x{size[1]}"
)
def test_where_there_is_no_room_for_a_list_nothing_is_drawn(
    still_desk: Desk, size: tuple[int, int]
) -> None:
    assert first_picture(still_desk, AS_USUAL, *size) == []


def test_a_terminal_shows_every_line_at_its_place(still_desk: Desk) -> None:
    picture = first_picture(still_desk, AS_USUAL, 100, 30)
    sheet = SheetOfCells(100, 30)
    sheet.feed(steered(picture, "", ON_DARK).encode())
    wanted = ["".join(words for words, _ in line).rstrip() for line in picture]
    assert sheet.text.splitlines() == wanted


@pytest.mark.parametrize("look", [DARK, LIGHT])
@pytest.mark.parametrize("role", Role)
def test_colours_are_those_of_the_screen(role: Role, look: str) -> None:
    sent = steered([[("x", role)]], look, ON_DARK)
    style = role_styles(look)[role]
    referee = style.render("x", color_system=ColorSystem.TRUECOLOR)  # source: rich
    assert figures(sent) == figures(referee)


@pytest.mark.parametrize("role", Role)
def test_a_console_of_sixteen_colours_gets_those(role: Role) -> None:
    sent = steered([[("x", role)]], DARK, {"TERM": "linux"})
    referee = role_styles("sixteen")[role].render("x", color_system=ColorSystem.STANDARD)
    assert figures(sent) == figures(referee)


@pytest.mark.parametrize("role", Role)
def test_without_colour_states_are_still_set_apart(role: Role) -> None:
    sent = steered([[("x", role)]], DARK, {"TERM": "xterm-256color", "NO_COLOR": "1"})
    assert figures(sent) <= {"1", "4", "7"}


def test_where_256_colours_are_had_they_are_near_the_palette() -> None:
    """Regression test: white letters on the dark ground, by the cube of xterm."""
    sent = steered([[("x", Role.INK)]], DARK, {"TERM": "xterm-256color"})
    assert figures(sent) == {"38;5;188", "48;5;16"}


def figures(sent: str) -> set[str]:
    """What the first escape sequence before the letter asks for, colours whole."""
    before = sent.partition("x")[0].rpartition("\x1b[")[2].removesuffix("m")
    found, words = set(), before.split(";")
    while words:
        word = words.pop(0)
        if word in ("38", "48"):
            more = 4 if words[0] == "2" else 2
            word = ";".join((word, *words[:more]))
            del words[:more]
        found.add(word)
    return found - {"0", ""}
