"""The screens beyond the round: every key does something, and two keys lead anywhere."""

from __future__ import annotations

import subprocess
import sys
from importlib import import_module

import pytest
from textual.binding import Binding

from benchround.clock import SampleClock
from benchround.core.task import Family
from benchround.desk import Desk
from benchround.screens.app import SCREEN_CLASSES, BenchroundApp
from benchround.screens.base import BenchScreen
from benchround.screens.destinations import DESTINATIONS, SCREENS
from benchround.screens.keys import (
    BATCH,
    CROP,
    CROPS,
    FIGURE,
    FIND,
    GO_TO,
    PACKET,
    PACKETS,
    PLACE_PAGE,
    REVIEW,
    Key,
    bindings,
    keys_on,
)
from tests.screens.stage import app_on, form_of, front, seen, stand_on

CROP_CARD = ("g", "c", *"cosm", "enter")
TO_SCREEN: dict[str, tuple[str, ...]] = {
    BATCH: ("b",),
    CROPS: ("g", "c"),
    CROP: CROP_CARD,
    FIGURE: (*CROP_CARD, "enter"),
    PACKETS: ("g", "p"),
    PACKET: ("g", "p", "enter"),
    REVIEW: ("g", "v"),
    FIND: ("slash",),
    PLACE_PAGE: ("slash", *"frame", "space", "b", "enter"),
    GO_TO: ("g",),
}
BEFORE: dict[str, tuple[str, ...]] = {
    "undo-on-card": ("x", "x"),
    "row-up": ("down",),
    "rows-up": ("pagedown",),
    "found-up": ("down",),
    "found-pages-up": ("pagedown",),
    "first-row": ("end",),
    "line-up": ("pagedown",),
    "read-up": ("pagedown",),
    "empty-letters": ("a",),
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
SCREENS_TO_LEAVE = (*TO_SCREEN, "round", "sow", "why", "page")
WAYS_BY_NAME: dict[str, tuple[str, ...]] = {
    **TO_SCREEN,
    "round": (),
    "sow": ("s",),
    "why": ("w",),
    "page": ("question_mark",),
}


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
        stand_on(app, Family.UNCOVER, "b06")
        await pilot.press(*TO_SCREEN[screen])
        await pilot.pause()
        assert front(app) == screen
        await pilot.press(*BEFORE.get(key.id, ()))
        await pilot.pause()
        before = state(app)
        await pilot.press(name)
        await pilot.pause()
        after = state(app)
    assert app.return_code == 0 if key.id == "quit" else before != after


@pytest.mark.parametrize("leaving", SCREENS_TO_LEAVE)
async def test_two_keys_lead_anywhere(desk: Desk, leaving: str) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.UNCOVER, "b06")
        for found in DESTINATIONS:
            await pilot.press(*WAYS_BY_NAME[leaving])
            await pilot.pause()
            assert front(app) == leaving
            await pilot.press("ctrl+g", found.letter)
            await pilot.pause()
            assert front(app) == found.name
            assert len(app.screen_stack) == (2 if found.screen else 1)
            await pilot.press("escape")
            await pilot.pause()
            assert front(app) == "round"


async def test_what_is_half_typed_is_kept_when_going_elsewhere(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("s", *"cornfl", "tab", *"Blue")
        await pilot.press("ctrl+g", "c", "escape", "s")
        await pilot.pause()
        assert front(app) == "sow"
        assert form_of(app).field("variety").text == "Blue"


async def test_what_stays_beneath_a_search_is_as_it_was(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("s", *"cornfl", "tab", *"Blue", "ctrl+f", *"b07", "enter")
        await pilot.pause()
        assert front(app) == BATCH
        assert "Sweet pea 'Old Cream Stripe'" in seen(app)
        await pilot.press("escape")
        await pilot.pause()
        assert form_of(app).field("variety").text == "Blue"


def test_letters_and_names_of_destinations_are_used_once() -> None:
    letters = [found.letter for found in DESTINATIONS]
    names = [found.name for found in DESTINATIONS]
    assert len(set(letters)) == len(letters)
    assert len(set(names)) == len(names)
    assert "g" not in letters


@pytest.mark.parametrize("name", SCREEN_CLASSES)
def test_every_screen_of_the_list_is_there(name: str) -> None:
    module, _, class_name = SCREEN_CLASSES[name].partition(":")
    found = getattr(import_module(module), class_name)
    assert issubclass(found, BenchScreen)
    known = [binding.id for binding in bindings(found.KEYS_OF) if isinstance(binding, Binding)]
    own = [binding.id for binding in found.BINDINGS if isinstance(binding, Binding)]
    assert own == known  # they are not inherited


def test_no_screen_but_the_first_is_imported_before_it_is_opened() -> None:
    code = "import sys, benchround.screens.app; print('\\n'.join(sys.modules))"
    done = subprocess.run(
        (sys.executable, "-c", code), capture_output=True, text=True, check=True, timeout=60
    )
    imported = set(done.stdout.split())
    assert "benchround.screens.round" in imported
    late = {opens.partition(":")[0] for opens in SCREENS.values()}
    assert imported & late == set()
