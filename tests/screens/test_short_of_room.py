"""What must not be missed stands first where a terminal is small."""

from __future__ import annotations

from benchround.core.task import Family
from benchround.desk import Desk
from benchround.screens.head_lines import days_told
from benchround.screens.text import width_of
from tests.screens.stage import app_on, seen, stand_on


async def test_a_caution_and_the_cold_night_are_seen_at_60_by_20(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.pause()
        stand_on(app, Family.LIDS, "frame-a")
        await pilot.pause()
        shown = seen(app)
    assert "Read first (w): Glass lid" in shown
    assert "Sun down to 2 C" in shown.splitlines()[1]


def test_the_line_on_the_weather_keeps_its_order_and_its_width() -> None:
    pieces = ("5 to 23 C, dry", "Fri 29 C, gusts 68", "Sun down to 2 C", "Mon 30 C")
    lines = {width: "".join(text for text, _ in days_told(pieces, width)) for width in (80, 50, 34)}
    assert lines[80] == "; ".join(pieces)
    assert lines[50] == "5 to 23 C, dry; Sun down to 2 C"
    assert lines[34] == lines[50]
    assert all(width_of(words) <= width for width, words in lines.items())


async def test_what_to_do_is_seen_beneath_its_cautions_at_60_by_20(desk: Desk) -> None:
    """Two cautions, one of which counts the other, and the work itself below them."""
    app = app_on(desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.pause()
        task = stand_on(app, Family.UNCOVER, "b06")
        await pilot.pause()
        lines = seen(app).splitlines()
    assert len(task.cautions) == 2
    at = next(n for n, row in enumerate(lines) if row.startswith("Read first (w), 1 more: Mains"))
    assert lines[at + 1].startswith("Off heat and cover, into full light")
    assert lines[at + 2] == "w tells the rest"
