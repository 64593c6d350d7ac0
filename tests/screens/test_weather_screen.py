"""Weather on the screen: an outlook in one line, readings, the same in words, in C or F."""

from __future__ import annotations

from datetime import date

import pytest

from benchround.core.record import Draft, Kind
from benchround.desk import Desk
from benchround.screens.page import Sheaf
from benchround.screens.sheet_base import Notes
from tests.sample.story import DAY_0
from tests.screens.stage import app_on, form_of, front, said, seen

KEYS = {" ": "space", ";": "semicolon", "/": "slash", "+": "plus", ".": "full_stop", "-": "minus"}


def typed(text: str) -> list[str]:
    return [KEYS.get(sign, sign) for sign in text]


def words_of(text: str) -> str:
    return " ".join(text.split())


async def test_an_outlook_is_echoed_and_saved_in_one_line(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "w", "o", *typed("5 23 sun; 8/27 r22 g68 from 17"))
        await pilot.pause()
        notes = words_of(app.screen.query_one(Notes).text)
        assert "Understood: Wed 27 May 2026, today: 5 to 23 C, sunny" in notes
        assert "Thu 28 May 2026, tomorrow: 8 to 27 C, rain 22 mm, gusts of 68 km/h" in notes
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert front(app) == "weather"
        assert said(app) == "Recorded: outlook for 2 days (u takes it back)."
        assert "downpour 22 mm, strap lids 68" in seen(app)
    known = desk.season.weather.on(date(2026, 5, 28))
    assert known is not None
    assert (known.min_c, known.max_c, known.rain_mm, known.gust_kmh) == (8, 27, 22, 68)
    assert known.storm_from is not None
    assert known.storm_from.hour == 17
    assert [record.kind for record in desk.folder.records()[-2:]] == [Kind.OUTLOOK] * 2


async def test_a_word_not_known_is_named_beside_the_line_and_nothing_is_lost(desk: Desk) -> None:
    app = app_on(desk)
    before = len(desk.folder.records())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "w", "o", *typed("5 23 zzz"))
        await pilot.pause()
        assert "Not yet: 'zzz' was not understood" in words_of(seen(app))
        await pilot.press("ctrl+s")
        await pilot.pause()
        form = form_of(app)
        assert "'zzz' was not understood" in form.field("line").error
        assert form.field("line").text == "5 23 zzz"
        await pilot.press("escape", "o")
        await pilot.pause()
        assert form_of(app).field("line").text == "5 23 zzz"
    assert len(desk.folder.records()) == before


async def test_typing_for_a_day_begins_with_that_day(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "w", "home", "down", "down", "enter")
        await pilot.pause()
        assert form_of(app).field("line").text == "+2 "
        await pilot.press(*typed("3 9 r1"), "enter")
        await pilot.pause()
        assert front(app) == "weather"
        await pilot.press("home", "down", "down", "enter", "escape", "o")
        await pilot.pause()
        assert form_of(app).field("line").text == ""
    known = desk.season.weather.on(date(2026, 5, 29))
    assert known is not None
    assert (known.min_c, known.max_c) == (3, 9)


async def test_a_reading_outside_and_one_in_a_place(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "w", "m", *typed("4.5"), "tab", *"21", "tab", "3", "enter")
        await pilot.pause()
        assert said(app) == "Recorded: measured outside, 4.5 to 21 C, rain 3 mm (u takes it back)."
        assert "lowest, highest, rain measured;" in seen(app)
        await pilot.press("m", "tab", *"38", "tab", "tab", *typed("frame a"), "enter")
        await pilot.pause()
        assert said(app) == "Recorded: measured Frame A, ? to 38 C (u takes it back)."
    weather = desk.season.weather
    outside, inside = weather.on(DAY_0), weather.at("frame-a", DAY_0)
    assert outside is not None
    assert inside is not None
    assert (outside.min_c, outside.max_c, outside.rain_mm, outside.basis) == (4.5, 21, 3, "reading")
    assert (inside.min_c, inside.max_c) == (None, 38)


async def test_a_day_gone_by_is_opened_with_its_place_and_day(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "w", "home", *["down"] * 10, "enter")
        await pilot.pause()
        form = form_of(app)
        assert (form.field("place").text, form.field("day").text) == ("Frame A", "2026-05-24")
        await pilot.press(*"12", "enter")
        await pilot.pause()
        assert front(app) == "weather"
    known = desk.season.weather.at("frame-a", date(2026, 5, 24))
    assert known is not None
    assert (known.min_c, known.max_c) == (12, 38)


@pytest.mark.parametrize(
    ("keys", "field", "says"),
    [
        (("9", "tab", "4"), "min_c", "the lowest, 9 C, is above the highest, 4 C"),
        (tuple("80"), "min_c", "80 C is not between -45 C and 70 C."),
        ((), "min_c", "type the lowest, the highest or the rain"),
        (("5", "tab", "tab", *"dew"), "rain_mm", "'dew' is no amount of rain."),
        (("5", "tab", "tab", "tab", *"attic"), "place", "no place goes by these letters"),
        (("5", *["tab"] * 4, "plus", "1"), "day", "Thu 28 May is still to come"),
    ],
)
async def test_what_is_wrong_stands_beside_its_field(
    desk: Desk, keys: tuple[str, ...], field: str, says: str
) -> None:
    app = app_on(desk)
    before = len(desk.folder.records())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "w", "m", *keys, "ctrl+s")
        await pilot.pause()
        assert form_of(app).field(field).error.startswith(says)
        assert front(app) == "reading sheet"
    assert len(desk.folder.records()) == before


async def test_undo_takes_a_reading_and_an_outlook_back(desk: Desk) -> None:
    app = app_on(desk)
    before = desk.season.weather
    async with app.run_test() as pilot:
        await pilot.press("g", "w", "m", *"12", "enter", "o", *typed("0 9"), "enter")
        await pilot.pause()
        assert desk.season.weather != before
        await pilot.press("u")
        await pilot.pause()
        assert said(app) == "Taken back: outlook for 1 day."
        await pilot.press("u", "u")
        await pilot.pause()
        assert said(app) == "There is nothing to take back."
    assert desk.season.weather == before


async def test_the_page_tells_every_day_in_sentences(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "w", "home", "down", "down", "tab")
        await pilot.pause()
        text = words_of(app.screen.query_one(Sheaf).text)
    friday = "Fri 29 May 2026, in 2 days: 12 to 29 C, 9 h of sun, hot, downpour 22 mm"
    assert text.startswith(friday)
    assert text.count(friday) == 2
    assert "Sun 31 May 2026, in 4 days: 2 to 16 C, 10 h of sun, ground frost" in text


async def test_degrees_f_and_inches_are_shown_and_typed(desk: Desk) -> None:
    """41 F is 5 C, 73.4 F 23 C and 0.87 in 22 mm, by the definitions of both."""
    desk.record(
        [
            Draft(Kind.SETTING, "units", {"value": "F"}),
            Draft(Kind.SETTING, "rain_units", {"value": "inch"}),
        ]
    )
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("g", "w")
        await pilot.pause()
        text = seen(app)
        assert "Wed 27 May 41 to 73 F" in text
        assert "downpour 0.87 in" in text
        assert "Tonight 41 F" in text
        await pilot.press("o", *typed("28 64"))
        await pilot.pause()
        understood = words_of(app.screen.query_one(Notes).text)
        assert "today: 28 to 64 F" in understood
        await pilot.press("enter", "m", *"41", "tab", "tab", "1", "enter")
        await pilot.pause()
        assert said(app).startswith("Recorded: measured outside, 41 to ? F, rain 1.00 in")
    reading = desk.folder.records()[-1]
    assert (reading.number("min_c"), reading.number("rain_mm")) == (5.0, 25.4)


async def test_an_empty_season_says_how_to_begin(empty_desk: Desk) -> None:
    app = app_on(empty_desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press("g", "w")
        await pilot.pause()
        text = words_of(seen(app))
        assert "Tonight's lowest is not known." in text
        assert "No weather is known from today on: o types it" in text
        await pilot.press("enter")
        await pilot.pause()
        assert said(app).startswith("No day is known yet")
        await pilot.press("l")
        await pilot.pause()
        assert "No frame or tunnel is set up" in seen(app)
        await pilot.press("escape", "d")
        await pilot.pause()
        assert "Nothing stands in a tray yet" in seen(app)


async def test_a_day_gone_by_that_was_only_forecast_is_not_called_measured(desk: Desk) -> None:
    past = date(2026, 5, 19)
    desk.record([Draft(Kind.OUTLOOK, "", {"min_c": 6.0, "max_c": 14.0}, day=past)])
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "w", "end")
        await pilot.pause()
        assert "Tue 19 May 6 to 14 C    forecast only" in seen(app)
        assert "by the outlook." in app.screen.query_one(Sheaf).text.partition("All days")[0]


async def test_only_what_was_measured_is_called_measured(desk: Desk) -> None:
    """The sample's outlook for the day stands behind what the thermometer did not say."""
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "w", "m", *typed("5"), "enter")
        await pilot.pause()
        assert "lowest measured; " in seen(app)
        assert "highest measured" not in seen(app)
        words = words_of(app.screen.query_one(Sheaf).text)
        assert "lowest measured, the rest by the outlook." in words


async def test_contradicting_figures_are_named_on_the_page(desk: Desk) -> None:
    desk.record([Draft(Kind.OUTLOOK, "", {"min_c": 80.0}, day=date(2026, 6, 1))])
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "w", "tab")
        await pilot.pause()
        assert "Left out: outside, 2026-06-01: lowest 80 C cannot be" in words_of(seen(app))
