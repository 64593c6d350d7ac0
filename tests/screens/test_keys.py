"""The one list of keys: every key does something, the foot fits, the page in docs is up to date."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchround.clock import SampleClock
from benchround.core.task import Family
from benchround.desk import Desk
from benchround.screens.app import BenchroundApp
from benchround.screens.foot_line import foot_line
from benchround.screens.keys import (
    COMMANDS,
    GROUPS,
    KEYS,
    MOST_IN_FOOTER,
    PAGE,
    PUT_OFF,
    RECORD,
    ROUND,
    SCREEN_WORDS,
    SOW,
    TASK,
    WHY,
    Key,
    footer_words,
    keys_on,
)
from benchround.screens.keys_page import keys_page
from benchround.screens.rows import Heading
from benchround.screens.text import plain
from tests.screens.stage import app_on, seen, stand_on, tasks_of

DOCS = Path(__file__).parents[2] / "docs" / "keys.md"

TO_SCREEN: dict[str, tuple[str, ...]] = {
    ROUND: (),
    SOW: ("s",),
    TASK: ("enter",),
    RECORD: ("r",),
    PUT_OFF: ("p",),
    WHY: ("w",),
    PAGE: ("question_mark",),
    COMMANDS: ("ctrl+p",),
}
"""Keys from the round to the first screens, with the cursor on a task of a batch."""

BEFORE: dict[str, tuple[str, ...]] = {
    "undo": ("space",),
    "unmark": ("m",),
    "up": ("down",),
    "page-up": ("end",),
    "place-before": ("tab",),
    "today": ("right",),
    "line-up": ("pagedown",),
    "read-up": ("pagedown",),
    "field-before": ("tab",),
    "choice-up": ("down", "down"),
    "empty": ("a",),
}
"""Keys pressed first, so that there is something for the key to do."""

CASES = [
    pytest.param(screen, key, name, id=f"{screen}: {key.id} by {name}")
    for screen in TO_SCREEN
    for key in keys_on(screen)
    for name in key.keys
]


def state(app: BenchroundApp) -> tuple[object, ...]:
    """All that a key can change: what is seen, what is recorded, the look, whether it runs."""
    return seen(app), len(app.desk.folder.records()), app.theme, app.return_code


@pytest.mark.parametrize(("screen", "key", "name"), CASES)
async def test_every_key_does_something(
    desk: Desk, clock: SampleClock, screen: str, key: Key, name: str
) -> None:
    app = app_on(desk, clock)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.pause()
        if key.id == "undo":  # what asks nothing is ticked at once, and can be taken back
            stand_on(app, Family.THIN, "b20")
        else:
            stand_on(app, Family.UNCOVER, "b06")
        await pilot.press(*TO_SCREEN[screen], *BEFORE.get(key.id, ()))
        await pilot.pause()
        before = state(app)
        await pilot.press(name)
        await pilot.pause()
        after = state(app)
    assert app.return_code == 0 if key.id == "quit" else before != after


@pytest.mark.parametrize("screen", list(SCREEN_WORDS))
def test_at_most_seven_keys_at_the_foot_and_they_fit_80_columns(screen: str) -> None:
    words = footer_words(screen)
    assert 1 <= len(words) <= MOST_IN_FOOTER
    drawn = plain([foot_line(words, 80)])
    assert len(drawn) <= 80
    assert all(f"{key} {label}" in drawn for key, label in words)


@pytest.mark.parametrize("screen", list(SCREEN_WORDS))
def test_in_a_narrow_foot_the_last_key_stays(screen: str) -> None:
    words = footer_words(screen)
    drawn = plain([foot_line(words, 30)])
    assert len(drawn) <= 30
    assert drawn.endswith(f"{words[-1][0]} {words[-1][1]}")


@pytest.mark.parametrize("screen", list(SCREEN_WORDS))
def test_a_key_means_one_thing_on_a_screen(screen: str) -> None:
    names = [name for key in keys_on(screen) for name in key.keys]
    assert len(set(names)) == len(names)


def test_every_key_is_described_and_has_its_own_id() -> None:
    assert len({key.id for key in KEYS}) == len(KEYS)
    for key in KEYS:
        assert key.label
        assert key.tooltip.endswith(".")
        assert key.group in GROUPS
        assert key.where
        assert set(key.where) <= set(SCREEN_WORDS)


def test_only_leaving_goes_before_sheets_and_fields() -> None:
    assert [key.id for key in KEYS if key.priority] == ["quit"]


def test_the_page_of_keys_is_up_to_date() -> None:
    assert DOCS.read_text("utf-8") == keys_page()


async def test_a_command_is_found_by_its_words_and_done(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("ctrl+p", *"fold")
        await pilot.pause()
        assert seen(app).splitlines()[-1].startswith("enter do it  esc back")  # nothing is saved
        await pilot.press("enter")
        await pilot.pause()
        headings = [row for row in tasks_of(app).rows if isinstance(row, Heading)]
        assert headings[-1].hint == "e shows them"
