"""What the grower wrote keeps its figures on the screens when F and inches are chosen."""

from __future__ import annotations

import pytest

from benchround.core.record import Draft, Kind
from benchround.core.unit_words import OWN_MARKS
from benchround.desk import Desk
from tests.screens.stage import app_on, seen

NOTE = "compost at 20 C, sown 5 mm deep"
PLACES: dict[str, tuple[str, ...]] = {
    "batch": ("g", "b"),
    "told in full": ("g", "b", "tab", "tab", "enter"),
    "record": ("g", "b", "r", *"meas", "tab"),
}


@pytest.fixture
def noted(desk: Desk) -> Desk:
    """The sample in F and inches, with a note that holds figures on its first batch."""
    units = (("units", "F"), ("rain_units", "inch"))
    desk.record([Draft(Kind.SETTING, name, {"value": value}) for name, value in units])
    desk.record([Draft(Kind.NOTED, name, {}, note=NOTE) for name in desk.season.batches])
    return desk


@pytest.mark.parametrize("name", PLACES)
async def test_a_note_is_drawn_as_it_was_written(name: str, noted: Desk) -> None:
    app = app_on(noted)
    async with app.run_test(size=(120, 50)) as pilot:
        await pilot.press(*PLACES[name])
        await pilot.pause()
        now = seen(app)
    assert NOTE in " ".join(now.split())
    assert not set(OWN_MARKS) & set(now)


async def test_the_reason_of_a_delay_is_drawn_as_it_was_written(noted: Desk) -> None:
    task = noted.round().today[0]
    noted.put_off(task, noted.today.replace(day=noted.today.day + 1), "below 4 C in there")
    later = next(one for one in noted.round().tasks if one.key == task.key)
    assert "below 4 C in there" in later.put_off
    app = app_on(noted)
    async with app.run_test(size=(120, 50)) as pilot:
        app.open("why", later, noted.today)
        await pilot.pause()
        now = seen(app)
    assert "below 4 C in there" in now
