"""With F and inches chosen no figure in C, mm or km/h is left on any screen, nor read from typing.

That 4 C is 39 F, 20 C 68 F and 25.4 mm 1 in follows from the definitions (from memory).
"""

from __future__ import annotations

import re

import pytest

from benchround.core.record import Draft, Kind
from benchround.core.task import Family
from benchround.desk import Desk
from tests.screens.stage import app_on, form_of, seen, stand_on

LEFT = re.compile(
    r"(?<![\w.])-?\d+(?:\.\d+)? ?(?:C|mm|K|km/h|m/s)(?![\w'-])|, (?:C|mm|cm)\b|degrees C\b|\d mm\b"
    r"|(?<!winds too: )\bkm/h"
    r"|(?<!pot )(?<![\w.])\d+(?:\.\d+)? cm(?! (?:square |round )?pots?\b)(?!\s*$)(?![\w'-])"
)
"""A figure, or the label of a field, in C, K, mm, km/h; a length in cm, not the name of a pot."""
WALK: dict[str, tuple[str, ...]] = {
    "round": (),
    "why": ("w",),
    "task": ("enter",),
    "record": ("r", *"meas", "tab"),
    "batch": ("g", "b"),
    "batch back": ("g", "b", "tab"),
    "sow": ("g", "s", *"cosm", "tab"),
    "sow indoors": ("g", "s", *"tomato", "tab"),
    "crops": ("g", "c", *"tom"),
    "crop": ("g", "c", *"tom", "enter"),
    "figure": ("g", "c", *"tom", "enter", "down", "down", "down", "enter"),
    "packets": ("g", "p"),
    "packet": ("g", "p", "enter"),
    "review": ("g", "v"),
    "year": ("g", "y"),
    "room": ("g", "y", "b"),
    "flowers": ("g", "y", "f"),
    "weather": ("g", "w"),
    "outlook": ("g", "w", "o", *"41", "space", *"73"),
    "reading": ("g", "w", "m"),
    "lids": ("g", "l"),
    "water": ("g", "d"),
    "away": ("g", "d", "a"),
    "weighing": ("g", "d", "m"),
    "site": ("g", "t", "enter"),
    "choices": ("g", "t", *["down"] * 9, "enter"),
    "place": ("g", "t", "end", "enter"),
    "container": ("g", "t", "c"),
    "find": ("g", "f", *"ben"),
    "place page": ("g", "f", *"bench", "enter"),
    "diary": ("g", "n", *"leek"),
}
STILL = {"task", "record", "sow", "sow indoors", "figure", "packet", "outlook", "reading", "find"}
STILL |= {"weighing", "site", "choices", "place", "container", "diary"}
"""Screens that are filled in: nothing more comes into sight by going down."""
ROWS = 60


@pytest.fixture
def american(desk: Desk) -> Desk:
    """The sample with F and inches."""
    units = (("units", "F"), ("rain_units", "inch"))
    desk.record([Draft(Kind.SETTING, name, {"value": value}) for name, value in units])
    return desk


@pytest.mark.parametrize("name", WALK)
async def test_no_figure_in_c_or_mm_is_left(name: str, american: Desk) -> None:
    app = app_on(american)
    found: set[str] = set()
    shown: set[str] = set()
    async with app.run_test(size=(120, 50)) as pilot:
        await pilot.press(*WALK[name])
        await pilot.pause()
        for _ in range(1 if name in STILL else ROWS):
            now = seen(app)
            found |= {line.strip() for line in now.splitlines() if LEFT.search(line)}
            if name not in STILL:
                await pilot.press("pagedown" if name in ("why", "review") else "down")
                await pilot.pause()
            if now in shown:
                break
            shown.add(now)
    assert found == set()


async def test_the_walk_would_find_one(desk: Desk) -> None:
    async with app_on(desk).run_test(size=(120, 50)) as pilot:
        await pilot.press("g", "c", *"tom", "enter")
        await pilot.pause()
        assert LEFT.search(seen(pilot.app))  # type: ignore[arg-type]  # it is the program's own


async def test_a_thermometer_is_ticked_in_f_and_kept_in_c(american: Desk) -> None:
    app = app_on(american)
    async with app.run_test() as pilot:
        stand_on(app, Family.THERMOMETER, "")
        await pilot.press("enter")
        await pilot.pause()
        assert "lowest, F" in seen(app)
        form_of(app).field("min_c").put("39.2")
        form_of(app).field("max_c").put("20C")
        form_of(app).field("rain_mm").put("1")
        await pilot.press("enter")
        await pilot.pause()
    figures = american.folder.records()[-1].figures
    assert (figures["min_c"], figures["max_c"], figures["rain_mm"]) == (4.0, 20.0, 25.4)


async def test_an_outlook_is_typed_in_f_and_inches_as_its_sheet_says(american: Desk) -> None:
    app = app_on(american)
    async with app.run_test() as pilot:
        await pilot.press("g", "w", "o")
        await pilot.pause()
        assert "such as 41 73 sun; 46/81 r0.9 g42" in seen(app)
        form_of(app).field("line").put("41 73 r0.9")
        await pilot.press("ctrl+s")
        await pilot.pause()
    figures = american.folder.records()[-1].figures
    assert (figures["min_c"], figures["rain_mm"]) == (5.0, 22.9)


async def test_a_depth_is_typed_in_inches_and_an_untouched_one_stays_exact(american: Desk) -> None:
    app = app_on(american)
    async with app.run_test() as pilot:
        await pilot.press("g", "s", *"cosm", "ctrl+s")
        await pilot.pause()
        await pilot.press("g", "s", *"cosm", "tab")
        form_of(app).field("depth_mm").put("0.5")
        await pilot.press("ctrl+s")
        await pilot.pause()
    germination = american.season.crop("cosmos").germination
    assert germination is not None
    first, second = american.folder.records()[-2:]
    assert first.figures["depth_mm"] == germination.depth_mm
    assert second.figures["depth_mm"] == 12.7


async def test_a_crops_figure_is_typed_in_f(american: Desk) -> None:
    app = app_on(american)
    async with app.run_test() as pilot:
        app.open("figure", "tomato", "germination.at_c")
        await pilot.pause()
        assert form_of(app).field("value").text == "68"
        form_of(app).field("value").put("77")
        await pilot.press("enter")
        await pilot.pause()
    assert american.folder.records()[-1].figures == {"germination.at_c": 25}


async def test_a_crops_spacing_is_read_and_typed_in_inches(american: Desk) -> None:
    app = app_on(american)
    async with app.run_test() as pilot:
        app.open("figure", "tomato", "planting.spacing_cm")
        await pilot.pause()
        spacing = american.season.crop("tomato").planting.spacing_cm
        assert spacing is not None
        assert form_of(app).field("value").text == f"{round(spacing / 2.54, 1):g}"
        form_of(app).field("value").put("10")
        await pilot.press("enter")
        await pilot.pause()
    assert american.folder.records()[-1].figures == {"planting.spacing_cm": 25}  # of 25.4


async def test_a_height_is_typed_in_inches_and_kept_in_cm(american: Desk) -> None:
    app = app_on(american)
    async with app.run_test(size=(120, 50)) as pilot:
        await pilot.press("g", "b", "r", *"meas", "tab")
        form_of(app).field("height_cm").put("10")
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert "height 10 in" in seen(app)
    assert american.folder.records()[-1].figures["height_cm"] == 25.4


async def test_names_of_the_growers_own_keep_their_figures(american: Desk) -> None:
    american.record([Draft(Kind.PLACE, "cellar", {"name": "Cellar 5 C", "kind": "bench"})])
    app = app_on(american)
    async with app.run_test(size=(120, 50)) as pilot:
        await pilot.press("g", "t", "end")
        await pilot.pause()
        assert "Cellar 5 C" in seen(app)


async def test_gusts_are_read_and_typed_in_mph(american: Desk) -> None:
    """41 mph are 66.0 km/h: a mile is 1.609344 km by definition (from memory)."""
    app = app_on(american)
    async with app.run_test(size=(120, 50)) as pilot:
        assert "gusts 14 mph" in seen(app)  # 22 km/h
        await pilot.press("g", "w")
        await pilot.pause()
        assert "gusts in mph" in seen(app)
        await pilot.press("o")
        await pilot.pause()
        assert "g42 gusts of 42 mph" in seen(app)
        await pilot.press(*"41", "space", *"73", "space", *"g41")
        await pilot.pause()
        assert "gusts of 41 mph" in seen(app)
        await pilot.press("ctrl+s")
        await pilot.pause()
    assert american.folder.records()[-1].figures["gust_kmh"] == 66.0


async def test_a_gust_with_its_own_unit_is_taken_in_that(american: Desk) -> None:
    app = app_on(american)
    async with app.run_test() as pilot:
        await pilot.press("g", "w", "o")
        await pilot.pause()
        form_of(app).field("line").put("41 73 g68km/h")
        await pilot.press("ctrl+s")
        await pilot.pause()
    assert american.folder.records()[-1].figures["gust_kmh"] == 68.0


async def test_a_gust_nobody_has_seen_is_refused_in_mph(american: Desk) -> None:
    app = app_on(american)
    async with app.run_test() as pilot:
        await pilot.press("g", "w", "o")
        await pilot.pause()
        form_of(app).field("line").put("41 73 g400")
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert "400 mph cannot be (0 to 186 mph)" in " ".join(seen(app).split())


async def test_a_container_is_typed_in_inches_and_kept_in_m(american: Desk) -> None:
    """The usual 1020 tray: 10 by 20 inches are 0.254 by 0.508 m."""
    app = app_on(american)
    async with app.run_test(size=(120, 50)) as pilot:
        await pilot.press("g", "t", "c")
        await pilot.pause()
        assert "in, inside" in seen(app)
        await pilot.press(*"Flat", "tab", "tab", *"7000", "tab", *"20", "tab", *"10")
        await pilot.pause()
        assert "200 in2" in seen(app)
        await pilot.press("ctrl+s")
        await pilot.pause()
    figures = american.folder.records()[-1].figures
    assert figures["length_m"] == pytest.approx(0.508)
    assert figures["width_m"] == pytest.approx(0.254)


async def test_an_untouched_side_of_a_container_stays_exact(american: Desk) -> None:
    sizes = {"cells": 1, "cell_ml": 900.0, "length_m": 0.23, "width_m": 0.17}
    american.record([Draft(Kind.CONTAINER, "Seed pan", dict(sizes))])
    app = app_on(american)
    async with app.run_test(size=(120, 50)) as pilot:
        app.open("container sheet", "Seed pan")
        await pilot.pause()
        assert form_of(app).field("length_m").text == "9.06"
        form_of(app).field("cell_ml").put("1000")
        await pilot.press("ctrl+s")
        await pilot.pause()
    assert american.folder.records()[-1].figures == sizes | {"cell_ml": 1000.0}


async def test_a_side_too_long_for_a_tray_is_refused_in_inches(american: Desk) -> None:
    app = app_on(american)
    async with app.run_test(size=(120, 50)) as pilot:
        await pilot.press("g", "t", "c")
        await pilot.pause()
        form_of(app).field("length_m").put("120")
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert "120 is not between 0.8 and 78 in" in seen(app)
