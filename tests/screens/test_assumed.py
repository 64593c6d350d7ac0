"""What is taken for granted is said at the head of the round until it is told."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from benchround.core.record import Draft, Figure, Kind
from benchround.desk import Desk
from tests.screens.stage import app_on, seen

DAY = date(2026, 4, 2)


@pytest.mark.parametrize(
    ("told", "said"),
    [
        ({}, True),
        ({"lat_deg": 52.5}, True),
        ({"lat_deg": 52.5, "last_frost": "05-02"}, False),
    ],
)
async def test_the_head_tells_a_last_frost_that_nobody_told(
    tmp_path: Path, told: dict[str, Figure], said: bool
) -> None:
    desk = Desk.create(tmp_path / "season", "Mine", today=lambda: DAY)
    if told:
        desk.record([Draft(Kind.SITE, "", told)])
    app = app_on(desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.pause()
        assert ("Last frost assumed" in seen(app)) is said
        assert ("Last frost assumed 10 May: g t sets it" in seen(app)) is said
    desk.close()
