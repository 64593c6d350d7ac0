"""Names nobody would choose, on the screens beyond the round."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchround.clock import SampleClock
from benchround.core.record import Draft, Kind
from benchround.desk import Desk
from benchround.screens.text import clean
from tests.screens.stage import MACHINE, app_on, front, seen
from tests.screens.test_hostile import NAMES, season_of

SIZES = ((60, 20), (120, 40))
WAYS = {
    "batch": ("g", "b"),
    "batch back": ("g", "b", "tab"),
    "find": ("slash",),
    "packets": ("g", "p"),
    "packets back": ("g", "p", "tab"),
    "packet sheet": ("g", "p", "enter"),
    "place": ("slash", *"bench", "enter"),
    "crop back": ("slash", *"b01", "enter", "c", "tab"),
    "review": ("g", "v"),
    "sow again": ("g", "b", "s"),
}
FURTHER_DOWN = frozenset({"crop back", "review"})
"""Ways on which the name may lie below what is seen."""


@pytest.fixture(params=list(NAMES), ids=list(NAMES))
def hostile(request: pytest.FixtureRequest, tmp_path: Path) -> tuple[Desk, str]:
    name = NAMES[request.param]
    desk = Desk.open(season_of(tmp_path / "season", name), today=SampleClock(), machine=MACHINE)
    request.addfinalizer(desk.close)
    return desk, name


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_every_card_shows_it_as_letters(
    hostile: tuple[Desk, str], size: tuple[int, int]
) -> None:
    desk, name = hostile
    desk.record((Draft(Kind.NOTED, "b01", {}, clean(name)[:80]),))
    app = app_on(desk)
    start = clean(name)[:3].strip()
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        for way, keys in WAYS.items():
            await pilot.press(*keys)
            await pilot.pause()
            text = seen(app)
            assert front(app) != "round", way
            assert start in text or way in FURTHER_DOWN, way
            assert "\x1b" not in text
            assert "\u202e" not in text
            rows = text.splitlines()
            assert len(rows) == size[1], way
            for _ in range(5):  # no card lies deeper
                if front(app) == "round":
                    break
                await pilot.press("escape")
                await pilot.pause()
            assert front(app) == "round", way


async def test_a_withdrawal_says_a_hostile_note_as_letters(hostile: tuple[Desk, str]) -> None:
    desk, name = hostile
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "b", "x")
        await pilot.pause()
        assert "Withdraw 'b01 first up" in seen(app)
        await pilot.press("x")
        await pilot.pause()
    assert len(desk.season.batches["b01"].records) == 1
    assert desk.season.batches["b01"].variety == name
