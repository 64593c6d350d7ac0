"""Settings on the screen: site, places on the walk, own containers, choices; all as records."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from benchround.core.record import Draft, Figure, Kind, Record
from benchround.core.settings_words import SETTINGS
from benchround.core.site import PlaceKind, place_from
from benchround.desk import Desk
from benchround.screens.app import BenchroundApp
from benchround.screens.palettes import LIGHT
from benchround.screens.place_form import ASKED
from benchround.screens.settings import SettingsScreen
from benchround.screens.sheet_base import Notes
from benchround.screens.sheet_fields import month_first
from tests.sample.story import DAY_0
from tests.screens.stage import app_on, form_of, front, said, seen

MINIMA = Path(__file__).parents[1] / "data" / "weather" / "ghcnd_USC00010655_minima_2003-2024.csv"
TO_PLACE_13 = ("g", "t", "end")


def stand_on(screen: object, key: str) -> None:
    assert isinstance(screen, SettingsScreen)
    screen.picks.show(screen.rows(), key)


def notes(app: BenchroundApp) -> str:
    return " ".join(app.screen.query_one(Notes).text.split())


def codes(desk: Desk) -> list[str]:
    return [place.code for place in desk.season.places]


async def test_every_figure_and_choice_has_a_row(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("g", "t")
        await pilot.pause()
        assert isinstance(app.screen, SettingsScreen)
        keys = {row.key for row in app.screen.picks.rows if row.key}
        assert {f"choice\n{name}" for name in SETTINGS} <= keys
        assert {f"place\n{code}" for code in codes(desk)} <= keys
        text = seen(app)
        for words in ("52.5 N", "1 W", "60 m", "Europe/London", "11 May", "30 May", "12 Oct"):
            assert words in text


async def test_the_site_is_changed_and_taken_back(desk: Desk) -> None:
    app = app_on(desk)
    before = desk.season.site
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t", "enter", "ctrl+u", *"41.2", "space", "s")
        await pilot.pause()
        assert form_of(app).field("lat_deg").hint == "41.2 S"
        form_of(app).field("last_frost").put("1.10.")
        form_of(app).field("last_frost_safe").put("20 oct")
        form_of(app).field("pets").put("no")
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert said(app) == "Recorded: the site (u takes it back)."
        assert "41.2 S" in seen(app)
    site = desk.season.site
    assert (site.lat_deg, site.last_frost, site.last_frost_safe) == (-41.2, (10, 1), (10, 20))
    assert (site.lon_deg, site.first_frost, site.children, site.pets) == (
        before.lon_deg,
        before.first_frost,
        True,
        False,
    )
    desk.undo()
    assert desk.season.site == before


async def test_what_is_emptied_is_assumed_again(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t", "down", "down", "down", "down", "enter")
        await pilot.pause()
        assert form_of(app).now.id == "last_frost"
        await pilot.press("ctrl+u", "ctrl+s")
        await pilot.pause()
        assert "not said" in seen(app)
    assert any("last frost not given" in words for words in desk.season.site.assumed)


@pytest.mark.parametrize(
    ("field", "typed", "says"),
    [
        ("lat_deg", "91", "'91' is no latitude: at most 90 degrees."),
        ("lon_deg", "far", "'far' is no longitude"),
        ("altitude_m", "9000", "9000 is not between -430 and 5000 m."),
        ("timezone", "Nowhere", "no time zone goes by these letters"),
        ("last_frost", "29 feb", "29 February is not in every year"),
        ("last_frost", "20 jun", ""),
        ("last_frost_safe", "1 may", "this is before the last frost"),
        ("frost_file", "/no/such/file", "there is no such file"),
    ],
)
async def test_what_is_wrong_stands_beside_its_field_and_stays_typed(
    desk: Desk, field: str, typed: str, says: str
) -> None:
    app = app_on(desk)
    before = len(desk.folder.records())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t", "enter")
        await pilot.pause()
        form_of(app).field(field).put(typed)
        form_of(app).changed()
        await pilot.press("ctrl+s")
        await pilot.pause()
        form = form_of(app)
        assert form.field(field).text == typed
        at = field if says else "last_frost_safe"
        assert form.field(at).error.startswith(says or "this is before the last frost")
        assert said(app).startswith("Nothing was recorded:")
        await pilot.press("escape", "enter")
        await pilot.pause()
        assert form_of(app).field(field).text == typed
    assert len(desk.folder.records()) == before


async def test_a_weather_file_gives_the_frost_days(desk: Desk) -> None:
    """NOAA GHCN-Daily USC00010655 by the Utah Climate Center's rule (derived)."""
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t", "enter")
        await pilot.pause()
        form_of(app).field("frost_file").put(str(MINIMA))
        form_of(app).changed()
        await pilot.pause()
        assert "usable years" in form_of(app).field("frost_file").hint
        assert form_of(app).field("last_frost").text == "31 Mar"
        await pilot.press("ctrl+s")
        await pilot.pause()
    site = desk.season.site
    assert (site.last_frost, site.last_frost_safe, site.first_frost) == ((3, 31), (4, 17), (10, 31))


async def test_files_are_found_by_their_first_letters(desk: Desk, tmp_path: Path) -> None:
    (tmp_path / "minima.csv").write_text("x", "utf-8")
    (tmp_path / "other.csv").write_text("x", "utf-8")
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("g", "t", "enter", *["tab"] * 7)
        await pilot.pause()
        assert form_of(app).now.id == "frost_file"
        form_of(app).field("frost_file").put(f"{tmp_path}/min")
        await pilot.press("down")
        await pilot.pause()
        assert form_of(app).field("frost_file").text == f"{tmp_path}/minima.csv"


async def test_saving_what_is_the_same_records_nothing(desk: Desk) -> None:
    app = app_on(desk)
    before = len(desk.folder.records())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t", "enter", "ctrl+s")
        await pilot.pause()
        assert said(app) == "Nothing is different: nothing was recorded."
        stand_on(app.screen, "choice\nlook")
        await pilot.press("enter", "ctrl+s")
        await pilot.pause()
        assert said(app) == "Nothing is different: nothing was recorded."
    assert len(desk.folder.records()) == before


async def test_a_place_is_set_up_behind_the_one_under_the_cursor(desk: Desk) -> None:
    app = app_on(desk)
    before = codes(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t")
        await pilot.pause()
        stand_on(app.screen, "place\nframe-a")
        await pilot.press("n", *"Frame", "space", "D", "tab", *"fra", "tab", *"1.5", "tab", *"0.8")
        await pilot.press("tab", *"gla", "ctrl+s")
        await pilot.pause()
        assert said(app) == "Nothing was recorded: read the caution, then press ctrl+k."
        assert "READ FIRST: Five centimetres of water" in " ".join(seen(app).split())
        await pilot.press("ctrl+k", "ctrl+s")
        await pilot.pause()
        assert said(app) == "Recorded: place 'Frame D' (u takes it back)."
    at = before.index("frame-a") + 1
    assert codes(desk) == [*before[:at], "frame-d", *before[at:]]
    place = desk.season.place("frame-d")
    assert place is not None
    assert (place.kind, place.size_m, place.glazing) == (PlaceKind.FRAME, (1.5, 0.8), "glass")
    assert [one.order for one in desk.season.places] == list(range(1, len(before) + 2))
    assert "C50" in desk.season.cautions_read
    desk.undo()
    assert codes(desk) == before


async def test_mains_heat_is_read_about_before_it_is_set_up(desk: Desk) -> None:
    desk.record([Draft(Kind.CAUTION_READ, "C50")])
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t", "n", *"Heat", "tab", *"prop", "ctrl+s")
        await pilot.pause()
        assert front(app) == "settings"
        await pilot.press("n", *"Warm", "tab", *"prop")
        await pilot.pause()
        form_of(app).field("heated").put("yes")
        form_of(app).changed()
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert front(app) == "place sheet"
        assert said(app) == "Nothing was recorded: read the caution, then press ctrl+k."


async def test_a_place_is_renamed_and_keeps_its_code_and_figures(desk: Desk) -> None:
    app = app_on(desk)
    desk.record([Draft(Kind.CAUTION_READ, name) for name in ("C50", "C44", "C38", "C39")])
    before = desk.season.place("bench-2")
    assert before is not None
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t")
        await pilot.pause()
        stand_on(app.screen, "place\nbench-2")
        await pilot.press("enter", *"North wall", "ctrl+s")
        await pilot.pause()
        assert "North wall" in seen(app)
    after = desk.season.place("bench-2")
    assert after is not None
    assert after.name == "North wall"
    assert (after.kind, after.order, after.trays, after.shade_share) == (
        before.kind,
        before.order,
        before.trays,
        before.shade_share,
    )


@pytest.mark.parametrize(
    ("field", "typed", "says"),
    [
        ("name", " ", "a place needs a name"),
        ("name", "bench 1", "another place has this name"),
        ("kind", "castle", "choose one of propagator"),
        ("trays", "many", "'many' is not a number."),
        ("set_c", "99", "99 C is not between -30 C and 50 C."),
        ("shade_share", "140", "140 is not between 0 and 100 %."),
    ],
)
async def test_what_is_wrong_with_a_place_stands_beside_its_field(
    desk: Desk, field: str, typed: str, says: str
) -> None:
    desk.record([Draft(Kind.CAUTION_READ, name) for name in ("C50", "C44")])
    app = app_on(desk)
    before = len(desk.folder.records())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t", "n")
        await pilot.pause()
        form_of(app).field("name").put("Hot house")
        form_of(app).field("kind").put("greenhouse bench")
        form_of(app).field(field).put(typed)
        form_of(app).changed()
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert form_of(app).field(field).error.startswith(says)
        assert form_of(app).field(field).text == typed
    assert len(desk.folder.records()) == before


@pytest.mark.parametrize("kind", list(PlaceKind))
async def test_a_place_is_asked_for_what_its_kind_has(desk: Desk, kind: PlaceKind) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t", "n")
        await pilot.pause()
        form_of(app).field("kind").put(str(kind))
        form_of(app).changed()
        await pilot.pause()
        asked = set(form_of(app).values())
    assert asked == {"name", "kind", *ASKED[kind]}


async def test_places_are_walked_in_another_order_with_two_keys(desk: Desk) -> None:
    app = app_on(desk)
    before = codes(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press(*TO_PLACE_13, "minus")
        await pilot.pause()
        assert said(app) == "Recorded: Door pots is number 12 on the walk (u takes it back)."
        await pilot.press("minus", "plus", "plus", "plus")
        await pilot.pause()
        assert said(app) == "Door pots is the last place on the walk already."
        assert codes(desk) == before
        await pilot.press("minus", "u")
        await pilot.pause()
        assert said(app) == "Taken back: Door pots is number 12 on the walk."
        assert codes(desk) == before
        await pilot.press("home", "plus")
        await pilot.pause()
        assert said(app).startswith("Only a place can be moved")


async def test_an_empty_place_is_removed_when_asked_twice_and_comes_back(desk: Desk) -> None:
    extra: dict[str, Figure] = {"name": "Old shelf", "kind": "bench", "order": 20}
    desk.record([Draft(Kind.PLACE, "old-shelf", extra)])
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t")
        await pilot.pause()
        stand_on(app.screen, "place\nold-shelf")
        await pilot.press("x")
        await pilot.pause()
        assert said(app).startswith("Remove 'Old shelf'?")
        await pilot.press("up", "down", "x")
        await pilot.pause()
        assert "old-shelf" in codes(desk)
        await pilot.press("x")
        await pilot.pause()
        assert "old-shelf" not in codes(desk)
        record = desk.folder.records()[-1]
        assert record.flag("removed")
        assert record.text("name") == "Old shelf"
        await pilot.press("u")
        await pilot.pause()
    assert "old-shelf" in codes(desk)


async def test_a_place_where_something_lives_is_not_removed(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t")
        await pilot.pause()
        stand_on(app.screen, "place\nframe-a")
        await pilot.press("x")
        await pilot.pause()
        assert said(app).startswith("Frame A is not empty: move b14 first.")
        await pilot.press("home", "x")
        await pilot.pause()
        assert said(app) == "Only a place or a container of your own can be removed."


async def test_a_container_is_described_changed_and_removed(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t", "c", *"Tin", "tab", *"6", "tab", *"150", "tab", *"30", "tab")
        await pilot.press(*"20")
        await pilot.pause()
        assert "0.9 l of compost in all, 600 cm2" in seen(app)
        await pilot.press("ctrl+s")
        await pilot.pause()
        stand_on(app.screen, "container\nTin")
        await pilot.pause()
        assert "> Tin" in seen(app)
        assert "6 x 150 ml" in seen(app)
        await pilot.press("enter", "tab", *"8", "ctrl+s")
        await pilot.pause()
        record = desk.season.containers["Tin"]
        assert (record.count("cells"), record.number("length_m")) == (8, 0.3)
        stand_on(app.screen, "container\nTin")
        await pilot.press("x", "x")
        await pilot.pause()
        assert "Tin" not in desk.season.containers
        await pilot.press("u")
        await pilot.pause()
        assert desk.season.containers["Tin"].count("cells") == 8


@pytest.mark.parametrize(
    ("field", "typed", "says"),
    [
        ("name", "", "a container needs a name"),
        ("cells", "0", "0 is not between 1 and 1000."),
        ("cell_ml", "", "needed here"),
        ("length_m", "3000", "3000 is not between 2 and 200 cm."),
    ],
)
async def test_what_is_wrong_with_a_container_stands_beside_its_field(
    desk: Desk, field: str, typed: str, says: str
) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t", "c")
        await pilot.pause()
        told = {"name": "Tin", "cells": "6", "cell_ml": "150", "length_m": "30", "width_m": "20"}
        for name, text in {**told, field: typed}.items():
            form_of(app).field(name).put(text)
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert form_of(app).field(field).error == says
    assert "Tin" not in desk.season.containers


async def test_choices_are_settings_and_the_look_follows_at_once(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t")
        await pilot.pause()
        stand_on(app.screen, "choice\nlook")
        await pilot.press("enter")
        await pilot.pause()
        assert form_of(app).now.id == "look"
        await pilot.press(*"lig")
        form_of(app).field("date_order").put("month first")
        form_of(app).field("feed_every_days").put("10")
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert said(app).startswith("Recorded: date order month first, feed every 10, look light")
        assert app.theme == LIGHT
        assert "look" not in desk.season.settings
        assert month_first(desk.season)
        assert desk.season.settings["feed_every_days"] == "10"
        await pilot.press("u")
        await pilot.pause()
        assert app.theme == LIGHT  # a look is the computer's, no record to take back
        assert not month_first(desk.season)


async def test_fetching_is_off_and_what_it_sends_is_shown_before_it_is_on(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("g", "t")
        await pilot.pause()
        stand_on(app.screen, "choice\nweather_fetch")
        await pilot.press("enter")
        await pilot.pause()
        assert "nothing goes out to the network" in notes(app)
        await pilot.press("down")
        form_of(app).field("weather_fetch").put("on")
        form_of(app).changed()
        await pilot.pause()
        assert "latitude=52.50&longitude=-1.00" in notes(app).replace(" ", "")
        await pilot.press("ctrl+s")
        await pilot.pause()
    assert desk.season.settings["weather_fetch"] == "on"
    assert "{lat}" in desk.season.settings["weather_url"]


async def test_what_cannot_be_chosen_is_refused_beside_the_field(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t", *["down"] * 9, "enter")
        await pilot.pause()
        form_of(app).field("feed_every_days").put("0")
        form_of(app).field("units").put("kelvin")
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert form_of(app).field("feed_every_days").error == "0 is not between 1 and 60."
        assert form_of(app).field("units").error.startswith("choose one of C, F")
    assert "units" not in desk.season.settings


async def test_an_empty_season_tells_what_is_assumed(empty_desk: Desk) -> None:
    app = app_on(empty_desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t")
        await pilot.pause()
        text = seen(app)
        assert "not said" in text
        assert "Assumed: no site set up" in text
        await pilot.press("n", *"Bed", "tab", *"bed", "ctrl+k", "ctrl+s")
        await pilot.pause()
    assert codes(empty_desk) == ["bed"]


async def test_a_windowsill_has_light_from_one_side_unless_that_is_denied(desk: Desk) -> None:
    """Seedlings on a windowsill lean to the pane and are turned: common practice, no source."""
    desk.record([Draft(Kind.CAUTION_READ, "C50")])
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t", "n", *"Kitchen", "tab", *"wind", "tab")
        await pilot.pause()
        lines = seen(app).splitlines()
        assert any(row.split()[:4] == ["light", "one", "side", "yes"] for row in lines)
        assert "degrees C, empty: 18 C taken" in seen(app)
        await pilot.press(
            "ctrl+s", "n", *"Bay", "tab", *"wind", "tab", "tab", "tab", *"no", "ctrl+s"
        )
        await pilot.pause()
    kitchen, bay = desk.season.place("kitchen"), desk.season.place("bay")
    assert kitchen is not None and bay is not None
    assert (kitchen.one_sided, bay.one_sided) == (True, False)


def test_a_windowsill_of_which_nothing_more_was_said_has_its_trays_turned() -> None:
    record = Record("01", DAY_0, Kind.PLACE, "sill", {"kind": "windowsill"})
    assert place_from(record).one_sided
    assert not place_from(replace(record, figures={"kind": "bench"})).one_sided


async def test_the_key_for_the_caution_of_a_place_stands_at_the_foot(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t", "n")
        await pilot.pause()
        assert seen(app).splitlines()[-1].startswith("ctrl+k have read  ctrl+s save")
        await pilot.press("ctrl+k")
        await pilot.pause()
        assert seen(app).splitlines()[-1].startswith("ctrl+s save")
