"""The review on the screen: figures of the story, and nothing to look back on."""

from __future__ import annotations

from itertools import chain

import pytest

from benchround.desk import Desk
from benchround.screens.review import review_pieces
from benchround.screens.text import plain, width_of
from tests.feeds.seasons import empty_season, hostile_season, many_season, sample_season
from tests.sample.story import DAY_0
from tests.screens.stage import app_on, front, seen


def page(width: int = 80) -> str:
    return plain(list(chain.from_iterable(review_pieces(sample_season(), DAY_0, width))))


@pytest.mark.parametrize(
    ("heading", "row"),
    [
        # counted in the story: of 40 cosmos 35 came up; of b02 only leaves were noted so far
        ("What came up, by crop", "Cosmos 1 40 35 88%"),
        ("What came up, by packet", "p05 1 60 22 37%"),
        ("What came up, by crop", "Zinnia 1 40 35 88%"),
        # the mouse had 5 of the runner beans before they were up: their seed is not to blame
        ("What came up, by place", "Without a final count: b02, b03, b04, b11, b13, b14, b15,"),
        ("What was lost, by crop", "Runner bean 5 mouse"),
        ("What was lost, by place", "Door pots 2 slug"),
        ("What was lost, by cause", "mouse 2 7"),
        ("What was lost, by cause", "damping off 1 all"),
        ("Wanted, and had", "b31 Lobelia Thin Blue 24 0 so far 24 missing"),
        ("Wanted, and had", "b03 Snapdragon Dusk Tall 60 60 planted enough"),
        ("What to do differently", "Mouse: 7 lost in b07 Sweet pea, b21 Runner bean"),
    ],
)
def test_the_page_tells_what_the_story_says(heading: str, row: str) -> None:
    after = page().partition(f"{heading}\n")[2]
    section = after.partition("\n\n")[0]
    assert any(row in " ".join(line.split()) for line in section.splitlines()), section


@pytest.mark.parametrize("width", [60, 80, 120])
def test_no_line_of_it_is_wider_than_the_screen(width: int) -> None:
    for season in (sample_season(), hostile_season(), many_season()):
        lines = list(chain.from_iterable(review_pieces(season, DAY_0, width)))
        assert all(sum(width_of(text) for text, _ in line) <= width for line in lines[:4000])


def test_an_empty_season_says_what_to_do_first() -> None:
    words = plain(list(chain.from_iterable(review_pieces(empty_season(), DAY_0, 60))))
    assert "Press g then s to sow the first batch" in " ".join(words.split())


async def test_it_is_read_page_by_page(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "v")
        await pilot.pause()
        assert front(app) == "review"
        first = seen(app)
        assert "33 batches" in first
        await pilot.press("space")
        await pilot.pause()
        assert seen(app) != first
