"""Every picture is told in words too, in letters that any screen reader says.

The figures are those of the sample's story (tests/sample), which was written by hand.
"""

from __future__ import annotations

import pytest

from benchround.desk import Desk
from benchround.screens.page import Sheaf
from tests.screens.stage import SIZES, app_on

PICTURES: dict[str, tuple[tuple[str, ...], str, tuple[str, ...]]] = {
    "year strip": (("g", "y"), "Batch b31", ("sown 28 Mar", "up 7 Apr", "ended 17 Apr")),
    "what flowers together": (("g", "y", "f"), "days: b11", ("Honesty", "'White Purse'")),
    "bench room": (("g", "y", "b"), "Propagator P:", ("of 2 trays in use today",)),
    "frame day": (
        ("g", "l"),
        "Frame A, Wed 27 May 2026.",
        ("Outside: lowest", "Inside with the lid left shut: lowest", "Limits: act above 27 C"),
    ),
    "water left": (
        ("g", "d"),
        "Batch b13",
        ("Canterbury bell 'Cup Mix', Frame C", "0 ml left to spare a tray"),
    ),
    "germination curve": (
        ("slash", *"b06", "enter"),
        "35 up of 40",
        ("seeds sown, 88%, day 8", "half of them by day 5.8", "today is day 9"),
    ),
}


def sentences(text: str, begins: str) -> str:
    """What is told from some words on, up to the next blank line, without its line ends."""
    told = text[text.index(begins) :].partition("\n\n")[0]
    return " ".join(told.split())


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
@pytest.mark.parametrize("picture", PICTURES)
async def test_a_picture_is_told_in_words_one_key_away(
    picture: str, size: tuple[int, int], desk: Desk
) -> None:
    keys, begins, told = PICTURES[picture]
    app = app_on(desk)
    async with app.run_test(size=size) as pilot:
        await pilot.press(*keys)
        await pilot.pause()
        await pilot.press("tab")  # the page beside or beneath the list
        await pilot.pause()
        words = sentences(app.screen.query_one(Sheaf).text, begins)
        place = 0
        for part in told:
            place = words.index(part, place)
            assert part.isascii()
