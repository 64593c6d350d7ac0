"""Words have the room they need: labels of fields, names in lists, and a blank between columns."""

from __future__ import annotations

import re

import pytest

from benchround.core.record import Draft, Kind
from benchround.core.season import Season
from benchround.desk import Desk
from benchround.screens.text import width_of
from benchround.screens.widgets.form import LABEL_WIDE
from benchround.screens.words import figure_words
from tests.screens.stage import app_on, form_of, said, seen

LONG = "Frame with a name that is far too long for it"
SHEETS: dict[str, tuple[str, ...]] = {
    "sow": ("g", "s", *"cosm", "tab"),
    "record": ("g", "b", "r", *"lost", "tab"),
    "packet": ("g", "p", "n"),
    "site": ("g", "t", "enter"),
    "choices": ("g", "t", *["down"] * 9, "enter"),
    "place": ("g", "t", "end", "enter"),
    "container": ("g", "t", "c"),
    "keys": ("g", "t", "k"),
    "outlook": ("g", "w", "o"),
    "reading": ("g", "w", "m"),
    "weighing": ("g", "d", "m"),
    "diary": ("g", "n"),
    "sheet file": ("g", "i", "o"),
    "figure": ("g", "c", *"tom", "enter", "down", "enter"),
}


@pytest.mark.parametrize("name", SHEETS)
async def test_the_label_of_every_field_has_room(name: str, desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press(*SHEETS[name])
        await pilot.pause()
        labels = [field.label for field in form_of(app).fields]
    assert labels
    assert [label for label in labels if width_of(label) >= LABEL_WIDE] == []


async def test_a_frame_with_a_long_name_keeps_a_blank_before_what_is_said(desk: Desk) -> None:
    desk.record([Draft(Kind.PLACE, "frame-a", {"name": LONG, "kind": "frame", "order": 4})])
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "l")
        await pilot.pause()
        assert re.search(r"Frame with a.*\.\. \S", seen(app))


@pytest.mark.parametrize("keys", [("g", "f"), ("g", "f", *"frame", "space", "b", "enter")])
async def test_names_are_whole_where_a_wide_list_has_room(
    keys: tuple[str, ...], desk: Desk
) -> None:
    app = app_on(desk)
    async with app.run_test(size=(200, 50)) as pilot:
        await pilot.press(*keys)
        await pilot.pause()
        assert "b05 French marigold 'Brass Button' " in seen(app)


async def test_what_is_said_is_said_once_where_no_weather_is_known(empty_desk: Desk) -> None:
    app = app_on(empty_desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "w")
        await pilot.pause()
        assert seen(app).count("No weather is known from today on") == 2  # the list, and its row


async def test_a_task_of_no_batch_says_how_to_find_one(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        for key in ("r", "b"):
            await pilot.press("home", key)
            await pilot.pause()
            assert said(app).endswith("or find the batch with /.")


async def test_the_cursor_goes_to_the_packet_that_was_put_on_the_books(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "p", "n", *"leek", "ctrl+s")
        await pilot.pause()
        assert "> p06     Leek" in seen(app)
        await pilot.press("up", "enter", "ctrl+s")
        await pilot.pause()
        assert "> p06" not in seen(app)


async def test_a_figure_without_a_unit_has_no_blank_before_the_comma(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        app.open("figure", "cosmos", "hardiness")
        await pilot.pause()
        assert "now: half-hardy, the library's" in seen(app)


@pytest.mark.parametrize(
    ("figures", "words"),
    [
        ({"count": 32, "pot_cm": 9, "container": "9 cm pot"}, "32, 9 cm pot"),
        ({"count": 32, "pot_cm": 9, "container": "square pots"}, "32, pot 9 cm, square pots"),
        ({"seeds": 1, "cells": 40, "per_cell": 1}, "1 seed, 40 cells, 1 seed a cell"),
        ({"raising": "cells", "covering": "compost"}, "sown in cells, covered with compost"),
        ({"position": "crack"}, "crack"),
    ],
)
def test_figures_are_said_as_a_grower_says_them(figures: dict[str, str | int], words: str) -> None:
    assert figure_words(figures, Season({})) == words
