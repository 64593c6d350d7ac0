"""Names nobody would choose on the year, weather, lids, water and settings screens."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest

from benchround.clock import SampleClock
from benchround.core.record import Kind, Record
from benchround.desk import Desk
from benchround.screens.text import clean
from tests.sample.story import DAY_0
from tests.screens.stage import MACHINE, app_on, figures, form_of, front, seen, write_season
from tests.screens.test_hostile import NAMES

SIZES = ((60, 20), (120, 40))


def season_of(path: Path, name: str) -> Path:
    """A season in which a frame, a container, a variety and a time zone bear a hostile name."""
    begun, lately = DAY_0 - timedelta(days=40), DAY_0 - timedelta(days=1)
    sown = figures(crop="cosmos", variety=name, wanted=20, seeds=40, place="frame", container=name)
    frame = figures(name=name, kind="frame", order=1, glazing=name, trays=1)
    tin = figures(cells=6, cell_ml=150, length_m=0.3, width_m=0.2)
    lines = (
        (begun, Kind.PLACE, "frame", frame, ""),
        (begun, Kind.CONTAINER, name[:200], tin, ""),
        (begun, Kind.SITE, "", figures(lat_deg=52.5, timezone=name, last_frost=name), ""),
        (begun, Kind.SETTING, "units", figures(value=name), ""),
        (begun, Kind.SOWN, "b01", sown, name),
        (begun + timedelta(days=8), Kind.FIRST_UP, "b01", figures(), name),
        (lately, Kind.READING, "frame", figures(min_c=4, max_c=30), name),
        (DAY_0, Kind.OUTLOOK, "", figures(min_c=5, max_c=25, rain_mm=1), name),
    )
    return write_season(
        path,
        [
            Record(f"0HOSTILE{number:04d}", day, kind, about, said, note, machine=MACHINE)
            for number, (day, kind, about, said, note) in enumerate(lines)
        ],
    )


@pytest.fixture(params=list(NAMES), ids=list(NAMES))
def hostile(request: pytest.FixtureRequest, tmp_path: Path) -> tuple[Desk, str]:
    name = NAMES[request.param]
    desk = Desk.open(season_of(tmp_path / "season", name), today=SampleClock(), machine=MACHINE)
    request.addfinalizer(desk.close)
    return desk, name


WAYS = {
    "year": ("y",),
    "year flowers": ("y", "f"),
    "year room": ("y", "b"),
    "weather": ("w", "end"),
    "lids": ("l",),
    "water": ("d",),
    "water away": ("d", "a", *["right"] * 6),
    "settings": ("t", "end"),
}


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_every_screen_shows_it_as_letters(
    hostile: tuple[Desk, str], size: tuple[int, int]
) -> None:
    desk, name = hostile
    app = app_on(desk)
    start = clean(name)[:5].strip()
    async with app.run_test(size=size) as pilot:
        for where, keys in WAYS.items():
            await pilot.press("g", *keys)
            await pilot.pause()
            assert front(app) == where.partition(" ")[0]
            front_side = seen(app)
            await pilot.press("tab")
            await pilot.pause()
            assert start in front_side + seen(app), where
            assert len(front_side.splitlines()) == len(seen(app).splitlines()) == size[1]


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_every_sheet_shows_it_as_letters(
    hostile: tuple[Desk, str], size: tuple[int, int]
) -> None:
    desk, name = hostile
    app = app_on(desk)
    start = clean(name)[:5].strip()
    ways = {
        "reading sheet": ("w", "end", "enter"),
        "site sheet": ("t", "enter"),
        "place sheet": ("t", "end", "up", "enter"),
        "container sheet": ("t", "end", "enter"),
    }
    async with app.run_test(size=size) as pilot:
        for where, keys in ways.items():
            await pilot.press("g", *keys)
            await pilot.pause()
            assert front(app) == where
            assert start in seen(app), where
            await pilot.press("escape", "escape")


async def test_a_hostile_name_is_kept_to_the_letter(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t", "n")
        await pilot.pause()
        form_of(app).field("name").put("tray [A] [/]")
        form_of(app).field("kind").put("bed")
        form_of(app).changed()
        await pilot.press("ctrl+k", "ctrl+s")
        await pilot.pause()
        assert "tray [A] [/]" in seen(app)
        await pilot.press("c")
        await pilot.pause()
        form_of(app).field("name").put("two\x1b[31m")
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert "control characters" in form_of(app).field("name").error
    assert desk.season.place("tray-a") is not None
