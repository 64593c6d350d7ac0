"""Colours: every role can be read on its ground. Contrast after WCAG 2.2, measured here."""

from __future__ import annotations

import pytest

from benchround.desk import Desk
from benchround.screens.palettes import DARK, LIGHT, PALETTES, SIXTEEN, colours_of, fitting
from benchround.screens.text import Role
from benchround.screens.theme import THEMES, role_styles
from tests.screens.stage import app_on, seen

LEAST_CONTRAST = 4.5
"""WCAG 2.2, success criterion 1.4.3, level AA, text of ordinary size (from memory)."""

VGA = {
    "black": "#000000",
    "white": "#aaaaaa",
    "bright_red": "#ff5555",
    "bright_green": "#55ff55",
    "bright_yellow": "#ffff55",
    "bright_cyan": "#55ffff",
    "bright_white": "#ffffff",
}
"""The sixteen colours of the text console (IBM VGA palette, from memory)."""


def luminance(colour: str) -> float:
    """Relative luminance, WCAG 2.2 (definition from memory)."""
    digits = VGA[colour.removeprefix("ansi_")] if colour.startswith("ansi_") else colour
    parts = [int(digits[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_the_measure_gives_the_known_values() -> None:
    # black on white is 21 to 1; #767676 is the lightest grey that passes on white (from memory)
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.01)


@pytest.mark.parametrize("name", sorted(PALETTES))
@pytest.mark.parametrize("role", list(Role))
def test_every_role_can_be_read_on_its_ground(name: str, role: Role) -> None:
    assert contrast(*colours_of(name, role)) >= LEAST_CONTRAST


@pytest.mark.parametrize("name", sorted(PALETTES))
def test_every_look_has_the_same_roles_and_styles(name: str) -> None:
    assert PALETTES[name].keys() == PALETTES[DARK].keys()
    assert set(role_styles(name)) == set(Role)
    assert THEMES[name].dark == (name != LIGHT)


def test_without_colours_cursor_caret_and_worst_states_still_stand_out() -> None:
    styles = role_styles(SIXTEEN)
    assert styles[Role.CURSOR].reverse
    assert styles[Role.CARET].reverse
    assert styles[Role.FIELD].underline
    assert styles[Role.OVERDUE].bold
    assert styles[Role.LATE].bold


@pytest.mark.parametrize(
    ("env", "chosen", "look"),
    [
        ({"TERM": "xterm-256color"}, "", DARK),
        ({"TERM": "xterm-256color"}, "light", LIGHT),
        ({"TERM": "xterm", "COLORTERM": "truecolor"}, "", DARK),
        ({"TERM": "linux"}, "light", SIXTEEN),
        ({"TERM": "linux", "COLORTERM": "truecolor"}, "", SIXTEEN),
        ({"TERM": "vt100"}, "", SIXTEEN),
        ({"TERM": "xterm"}, "", SIXTEEN),
        ({"TERM": "xterm-256color", "NO_COLOR": "1"}, "", SIXTEEN),
        ({}, "", SIXTEEN),
        ({"TERM": "xterm-256color"}, "nonsense", DARK),
    ],
)
def test_the_look_fits_the_terminal(env: dict[str, str], chosen: str, look: str) -> None:
    assert fitting(chosen, env) == look


@pytest.mark.parametrize("name", sorted(PALETTES))
async def test_the_program_opens_in_every_look(
    still_desk: Desk, name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    if name == SIXTEEN:
        monkeypatch.setenv("TERM", "linux")
    app = app_on(still_desk)
    async with app.run_test() as pilot:
        if name == LIGHT:
            await pilot.press("f2")
        await pilot.pause()
        assert app.theme == name
        words = seen(app)
        await pilot.press("w", "escape", "enter", "escape")
        await pilot.pause()
        assert seen(app).splitlines()[0] == words.splitlines()[0]


async def test_no_color_sends_no_colour(still_desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    app = app_on(still_desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        strips = app.screen._compositor.render_strips()
        filters = app.get_line_filters()
        drawn = [strip.apply_filter(f, app.screen.background_colors[1]) for f in filters
                 for strip in strips]  # fmt: skip
        styles = [segment.style for strip in drawn for segment in strip if segment.style]
        assert styles
        assert all(style.color is None or style.color.is_default for style in styles)
        assert all(style.bgcolor is None or style.bgcolor.is_default for style in styles)
        assert any(style.reverse for style in styles)
