"""A frame's day and the water left: choosing, days ahead, looks, weighings, an absence."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from benchround.core.record import Draft, Figure, Kind
from benchround.core.water.fit import Moisture
from benchround.core.water.tray_outlook import water_away
from benchround.desk import Desk
from benchround.drawing.water import water_left
from benchround.screens.lids import LidsScreen
from benchround.screens.page import Sheaf
from benchround.screens.water import WaterScreen
from tests.sample.story import DAY_0
from tests.screens.stage import app_on, form_of, front, said, seen


def words_of(text: str) -> str:
    return " ".join(text.split())


async def test_the_picture_follows_the_frame_under_the_cursor(desk: Desk) -> None:
    app = app_on(desk)
    lidded = [place.name for place in desk.season.places if place.lidded]
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "l")
        for number, name in enumerate(lidded, start=1):
            await pilot.pause()
            text = seen(app)
            assert f"{number} of {len(lidded)}" in text
            assert f"> {name}" in text
            assert f"{name}, Wed 27 May 2026." in app.screen.query_one(Sheaf).text
            assert "o outside, s lid left shut" in text
            await pilot.press("down")


async def test_the_headline_and_the_rounds_first_opening_agree(desk: Desk) -> None:
    """The round says by when frame A is opened; the picture's steps begin at the same time."""
    app = app_on(desk)
    lids = next(task for task in desk.round().tasks if task.key.startswith("lids:frame-a"))
    assert lids.at is not None
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "l")
        await pilot.pause()
        assert f"{lids.at:%H:%M} open" in app.screen.query_one(Sheaf).text


async def test_the_days_ahead_can_be_looked_at_and_no_others(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "l", "right")
        await pilot.pause()
        assert "Lids, Thu 28 May, tomorrow" in seen(app)
        await pilot.press("left", "left")
        await pilot.pause()
        assert said(app).startswith("Lids are reckoned for today and the 9 days after it")
        await pilot.press(*["right"] * 12)
        await pilot.pause()
        assert "Fri 5 Jun, in 9 days" in seen(app)


async def test_a_frames_own_reading_is_typed_from_its_picture(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "l", "down", "m", "tab", *"31", "enter")
        await pilot.pause()
        assert front(app) == "lids"
        assert said(app).startswith("Recorded: measured Frame B, ? to 31 C")
        assert isinstance(app.screen, LidsScreen)
        assert app.screen.picks.picked == "frame-b"
        await pilot.press("u")
        await pilot.pause()
        assert said(app).startswith("Taken back: measured Frame B")
    assert desk.season.weather.at("frame-b", DAY_0) is None


async def test_a_frame_nothing_stands_in_says_so(desk: Desk) -> None:
    empty: dict[str, Figure] = {"name": "Frame Z", "kind": "frame", "order": 50}
    desk.record([Draft(Kind.PLACE, "frame-z", empty)])
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "l", "end")
        await pilot.pause()
        assert "> Frame Z         nothing stands in it" in seen(app)


async def test_the_picture_is_in_the_growers_degrees_too(desk: Desk) -> None:
    desk.record([Draft(Kind.SETTING, "units", {"value": "F"})])
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "l")
        await pilot.pause()
        assert "passes 81 F" in seen(app)
        picture = app.screen.query_one(Sheaf).text
        assert "81 F act" in picture  # 27 C, by definition 80.6 F
        assert " C act" not in picture


async def test_trays_stand_driest_first_and_enter_opens_one(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "d")
        await pilot.pause()
        screen = app.screen
        assert isinstance(screen, WaterScreen)
        rows = [row.key for row in screen.picks.rows if row.key]
        assert rows == [tray.about for tray in water_left(desk.season, DAY_0)]
        page = words_of(screen.query_one(Sheaf).text)
        assert "All trays, the driest first" in page
        assert page.count("Batch ") == len(rows) + 1
        await pilot.press("down", "enter")
        await pilot.pause()
        assert front(app) == "batch"
        assert seen(app).startswith(rows[1].partition(" ")[0])


@pytest.mark.parametrize(
    ("key", "about", "said_of_it"),
    [("w", "b33", Moisture.STILL_WET), ("d", "b02", Moisture.ALREADY_DRY)],
)
async def test_a_look_moves_the_water_and_is_taken_back(
    desk: Desk, key: str, about: str, said_of_it: Moisture
) -> None:
    """Still wet leaves more to spare than before, already dry none; the model says neither."""
    app = app_on(desk)

    def spare() -> float:
        return next(t.spare_ml for t in water_left(desk.season, DAY_0) if t.about == about)

    before = spare()
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "d")
        await pilot.pause()
        screen = app.screen
        assert isinstance(screen, WaterScreen)
        screen.picks.show(screen.rows(), about)
        await pilot.press(key)
        await pilot.pause()
        assert screen.picks.picked == about
        record = desk.folder.records()[-1]
        assert (record.kind, record.about, record.text("said")) == (
            Kind.MOISTURE,
            about,
            str(said_of_it),
        )
        assert spare() > before if said_of_it is Moisture.STILL_WET else spare() == 0.0
        assert f"called {said_of_it} today" in screen.query_one(Sheaf).text
        await pilot.press("u")
        await pilot.pause()
        assert said(app).startswith(f"Taken back: {about} moisture")
    assert spare() == before


async def test_spares_are_recorded_as_a_part(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "d")
        await pilot.pause()
        screen = app.screen
        assert isinstance(screen, WaterScreen)
        screen.picks.show(screen.rows(), "b03 spares")
        await pilot.press("w")
        await pilot.pause()
    record = desk.folder.records()[-1]
    assert (record.about, record.text("part")) == ("b03", "spares")


async def test_two_weighings_teach_how_fast_a_tray_dries(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "d", "m", *"9x", "enter")
        await pilot.pause()
        assert form_of(app).field("grams").error == "'9x' is not a number."
        await pilot.press("ctrl+u", "enter")
        await pilot.pause()
        assert form_of(app).field("grams").error == "needed here"
        await pilot.press(*"910", "enter", "m")
        await pilot.pause()
        assert "Wed 27 May 2026, today: 910 g" in seen(app)
    record = desk.folder.records()[-1]
    assert (record.kind, record.number("grams")) == (Kind.WEIGHED, 910.0)


async def test_an_absence_lists_what_does_not_last_soonest_first(desk: Desk) -> None:
    app = app_on(desk)
    leaving = DAY_0 + timedelta(days=1)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "d", "a")
        await pilot.pause()
        for days in (3, 4, 5):
            lost = water_away(desk.season, leaving, days)
            screen = app.screen
            assert isinstance(screen, WaterScreen)
            rows = [row.key.partition(" ")[0] for row in screen.picks.rows if row.key]
            assert sorted(rows) == sorted(one.batch for one in lost)
            dry_on = {one.batch: one.dry_on for one in lost}
            assert [dry_on[name] for name in rows] == sorted(one.dry_on for one in lost)
            assert f"Away {days} days, leaving Thu 28 May, tomorrow" in seen(app)
            assert f"{len(lost)} of 20 trays do not last" in seen(app)
            await pilot.press("right")
            await pilot.pause()
        await pilot.press("plus")
        await pilot.pause()
        assert "leaving Fri 29 May, in 2 days" in seen(app)
        await pilot.press("escape")
        await pilot.pause()
        assert "Water left, Wed 27 May" in seen(app)
        await pilot.press("right")
        await pilot.pause()
        assert said(app).startswith("Press a first")


async def test_a_day_away_is_the_least_and_three_weeks_the_most(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "d", "a", *["left"] * 5)
        await pilot.pause()
        assert said(app) == "An absence of 1 to 21 days is reckoned."
        assert "Away 1 day, leaving" in seen(app)
        await pilot.press("minus", "minus")
        await pilot.pause()
        assert said(app) == "Leaving is reckoned from today to in 14 days."


async def test_where_all_last_it_is_said(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    def none(season: object, day: date, days: int) -> tuple[()]:
        return ()

    monkeypatch.setattr("benchround.screens.water.water_away", none)
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "d", "a")
        await pilot.pause()
        assert "Every tray lasts, if it is filled on the morning of leaving." in seen(app)
        await pilot.press("enter")
        await pilot.pause()
        assert said(app) == "There is no tray under the cursor."


async def test_a_tray_emptied_since_it_was_filled_yesterday_is_said_to_be(desk: Desk) -> None:
    """Watered yesterday and dry by night: dry since then would be a day too long."""
    app = app_on(desk)
    async with app.run_test(size=(80, 40)) as pilot:
        await pilot.press("g", "d", "home")
        await pilot.pause()
        text = words_of(seen(app))
        assert "dry since" not in text
        assert "watered Tue 26 May, its spare water gone within the day; none is left to go" in text
        assert "filled this morning, it wants water again today: look once more" in text


async def test_a_pot_is_weighed_as_a_pot_and_said_in_grams(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "d", "home")
        await pilot.pause()
        screen = app.screen
        assert isinstance(screen, WaterScreen)
        screen.picks.show(screen.rows(), "b04")
        await pilot.press("m")
        await pilot.pause()
        assert "g, one pot" in seen(app)
        assert "Weigh one pot after watering" in seen(app)
        await pilot.press(*"612", "enter")
        await pilot.pause()
        assert said(app) == "Recorded: b04 weighed: 612 g (u takes it back)."
        screen.picks.show(screen.rows(), "b02")
        await pilot.press("m")
        await pilot.pause()
        assert "g, one tray" in seen(app)


async def test_a_look_is_said_in_the_words_it_was_given_in(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "d", "w")
        await pilot.pause()
        assert "moisture: still wet" in said(app)


async def test_a_tunnel_has_ends_and_no_lid(empty_desk: Desk) -> None:
    empty_desk.record([Draft(Kind.PLACE, "tunnel", {"name": "Tunnel", "kind": "tunnel"})])
    app = app_on(empty_desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "l")
        await pilot.pause()
        assert "nothing stands in it: its ends may stay as they are" in seen(app)
        assert "the lid may stay" not in seen(app)
