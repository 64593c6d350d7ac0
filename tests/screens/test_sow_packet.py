"""The sowing sheet and the packet chosen: its share is reckoned with, and what is wrong is said."""

from __future__ import annotations

from benchround.core.record import Draft, Figure, Kind
from benchround.desk import Desk
from tests.screens.stage import app_on, form_of, seen

LOW: dict[str, Figure] = {
    "crop": "cosmos",
    "variety": "Dusk",
    "year": 2026,
    "seeds": 30,
    "germination": 0.45,
    "tested": 20,
}


async def test_a_poor_short_packet_needs_more_seed_and_says_so(desk: Desk) -> None:
    desk.record([Draft(Kind.PACKET, "p77", LOW)], desk.today)
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("s", *"cosm", "tab", "tab", *"24")
        await pilot.pause()
        form = form_of(app)
        before = int(form.field("seeds").value)
        form.go("packet")
        await pilot.press(*"p77")
        await pilot.pause()
        after = int(form.field("seeds").value)
        text = " ".join(seen(app).split())
    assert after > before
    assert "24 ready nine times in ten, at 45% x 90%" in form.field("seeds").hint
    assert f"Packet p77 holds 30, {after} are needed" in text
    assert "Packet p77 comes up below 50 %: better buy new" in text


async def test_a_packet_with_too_few_seeds_is_told_on_a_small_screen_too(desk: Desk) -> None:
    """Above the label and the days to come, which may have no room, whatever is to be read."""
    few: dict[str, Figure] = {"crop": "zinnia", "variety": "Giant", "year": 2025, "seeds": 30}
    desk.record([Draft(Kind.PACKET, "p78", few)], desk.today)
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "p", "end", "s")
        await pilot.pause()
        form = form_of(app)
        assert form.field("packet").value == "p78"
        assert form.field("packet").hint == "30 seeds left"
        text = " ".join(seen(app).split())
        assert "READ FIRST" in text
        assert f"Packet p78 holds 30, {form.field('seeds').value} are needed" in text
