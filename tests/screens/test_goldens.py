"""How the screens look at three sizes. Regression tests: they hold what was looked at and kept."""

from __future__ import annotations

from datetime import timedelta

import pytest

from benchround.core.batch.batch import Batch
from benchround.core.crop.crop import Crop
from benchround.core.planning.schedule import Expected, Step
from benchround.core.season import Season
from benchround.desk import Desk
from benchround.screens import sow
from benchround.screens.palettes import LIGHT
from tests.sample.story import DAY_0
from tests.screens.golden import same_as_kept
from tests.screens.stage import SIZES, app_on, seen

KEYS_TO: dict[str, tuple[str, ...]] = {
    "round": ("down", "down"),
    "round_folded": ("e", "end"),
    "sow_begun": ("s",),
    "sow": ("s", *"cosm", "tab"),
    "sheet": ("down", "down", "down", "enter"),
    "sheet_wrong": ("down", "down", "down", "down", "enter", *"99x", "enter"),
    "record": ("down", "down", "r", *"los", "tab", "2", "tab", *"sl"),
    "put_off": ("down", "down", "p", *"mon", "tab"),
    "why": ("down", "down", "w"),
    "help": ("question_mark",),
}


MADE_COURSE = tuple(
    Expected(step, DAY_0 + timedelta(days=days), DAY_0 + timedelta(days=days + wide), why)
    for step, days, wide, why in (
        (Step.SOW, 0, 0, "as if sown today"),
        (Step.LOOK, 5, 0, "one sowing in ten is up by then (Bench 1, from the outlook outside)"),
        (Step.UP, 8, 3, "70 degree-days above its base; after that it is late"),
        (Step.POT_ON, 29, 0, "9 cm pots, 21 days from first up"),
        (Step.PLANT_OUT, 58, 0, "18 days of hardening"),
        (Step.FLOWER, 93, 21, "35 to 56 days from planting out"),
    )
)


def made_course(season: Season, batch: Batch, crop: Crop, day: object) -> tuple[Expected, ...]:
    """Steps made by hand, so that what is drawn does not hang on how they are reckoned."""
    return MADE_COURSE


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
@pytest.mark.parametrize("name", KEYS_TO)
async def test_regression_of_a_screen(
    name: str, size: tuple[int, int], still_desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sow, "expected_course", made_course)
    app = app_on(still_desk)
    async with app.run_test(size=size) as pilot:
        await pilot.press(*KEYS_TO[name])
        await pilot.pause()
        same_as_kept(f"{name}_{size[0]}x{size[1]}", seen(app))


async def test_words_are_the_same_in_light_and_dark(still_desk: Desk) -> None:
    app = app_on(still_desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        dark = seen(app)
        await pilot.press("f2")
        await pilot.pause()
        assert app.theme == LIGHT
        assert seen(app) == dark
