"""How the screens beyond the round look at three sizes.

Regression tests: they hold what was looked at and kept. `BENCHROUND_GOLDEN=write` draws them anew.
"""

from __future__ import annotations

import pytest

from benchround.desk import Desk
from tests.screens.golden import same_as_kept
from tests.screens.stage import SIZES, app_on, seen

KEYS_TO: dict[str, tuple[str, ...]] = {
    "batch": ("slash", *"b06", "enter"),
    "batch_back": ("slash", *"b06", "enter", "tab"),
    "batch_parts": ("slash", *"b03", "enter", "o", "x"),
    "crops": ("g", "c", *"cos"),
    "crop": ("g", "c", *"foxgl", "enter", "down", "down"),
    "crop_back": ("g", "c", *"foxgl", "enter", "tab"),
    "figure_wrong": ("g", "c", *"cosm", "enter", *["down"] * 12, "enter", *"900", "enter"),
    "packets": ("g", "p", "down"),
    "packet": ("g", "p", "enter"),
    "review": ("g", "v"),
    "find": ("slash", *"lett"),
    "place": ("slash", *"frame", "space", "b", "enter"),
    "go_to": ("g",),
}


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
@pytest.mark.parametrize("name", KEYS_TO)
async def test_regression_of_a_card(name: str, size: tuple[int, int], desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=size) as pilot:
        await pilot.press(*KEYS_TO[name])
        await pilot.pause()
        same_as_kept(f"{name}_{size[0]}x{size[1]}", seen(app))


@pytest.mark.parametrize("name", ["batch_back", "packets", "go_to"])
async def test_with_plain_letters_only_nothing_else_is_drawn(
    name: str, desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    from benchround.screens.text import plain_letters_only

    monkeypatch.setenv("LANG", "C")
    plain_letters_only.cache_clear()
    app = app_on(desk)
    try:
        async with app.run_test(size=(80, 24)) as pilot:
            await pilot.press(*KEYS_TO[name])
            await pilot.pause()
            assert seen(app).isascii()
    finally:
        plain_letters_only.cache_clear()
