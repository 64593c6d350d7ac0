"""Crops: found by any of their names, shown with their sources, changed for the season."""

from __future__ import annotations

import pytest

from benchround.core.crop.crop import Crop
from benchround.core.crop.page import crop_figures
from benchround.core.planning.schedule import Step, expected_course
from benchround.core.record import Draft, Kind
from benchround.desk import Desk
from benchround.screens.card import CardScreen
from benchround.screens.crops import CropsScreen, sort_words
from benchround.screens.text import plain
from tests.screens.stage import app_on, form_of, front, said, seen

CARD = ("g", "c", *"cosm", "enter")
SEARCHES = (
    ("common name", "cosmos", "cosmos"),
    ("Latin name", "bipinnatus", "cosmos"),
    ("synonym", "mexican as", "cosmos"),
    ("synonym of two words", "common fox", "foxglove"),
    ("capitals", "FOXGL", "foxglove"),
)


def picked(app: object) -> str:
    """What stands under the cursor of the list in front."""
    screen = getattr(app, "screen", None)
    assert isinstance(screen, CropsScreen | CardScreen)
    return screen.picks.picked


async def stand_on_figure(app: object, name: str) -> None:
    """Put the cursor of the card on a figure."""
    picks = getattr(app, "screen").picks  # noqa: B009 - the screen in front has one
    picks.go(next(n for n, row in enumerate(picks.rows) if row.key == name))


@pytest.mark.parametrize(("letters", "crop"), [(s[1], s[2]) for s in SEARCHES],
                         ids=[s[0] for s in SEARCHES])  # fmt: skip
async def test_a_crop_is_found_by_any_of_its_names(desk: Desk, letters: str, crop: str) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        keys = ["space" if sign == " " else sign for sign in letters]
        await pilot.press("g", "c", *keys)
        await pilot.pause()
        assert picked(app) == crop
        await pilot.press("enter")
        await pilot.pause()
        assert front(app) == "crop"
        assert seen(app).startswith(desk.season.crop(crop).name)


async def test_letters_nothing_goes_by_are_said_and_escape_takes_them_away(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "c", *"qqq", "enter")
        await pilot.pause()
        assert said(app) == "Nothing goes by these letters: take some away."
        await pilot.press("escape")
        await pilot.pause()
        assert front(app) == "crops"
        assert "1 of " in seen(app)
        await pilot.press("escape")
        await pilot.pause()
        assert front(app) == "round"


async def test_every_figure_has_its_source(desk: Desk) -> None:
    # the planting time of cosmos: Iowa State University Extension, weeks of 4 to 6 (read)
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press(*CARD)
        await pilot.pause()
        await stand_on_figure(app, "planting.from_sowing_days")
        await pilot.pause()
        assert "source: Iowa State University Extension, weeks of 4 to 6 (read)" in seen(app)
        assert "from sowing days       28 to 42 days" in seen(app)


async def test_hazards_stand_at_the_head_and_cautions_in_full_on_the_back(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "c", *"foxgl", "enter")
        await pilot.pause()
        assert "Hazards: poison, skin, pets" in seen(app)
        screen = app.screen
        assert isinstance(screen, CardScreen)
        back = plain(screen.page_lines(78))
    assert "Every part of a foxglove acts on the heart." in back
    assert "What was learned" in back


async def test_an_own_figure_counts_at_once_and_is_marked(desk: Desk) -> None:
    app = app_on(desk)
    batch, day = desk.season.batches["b01"], desk.today
    before = {s.step: s.day for s in expected_course(desk.season, batch, crop_of(desk), day)}
    async with app.run_test() as pilot:
        await pilot.press(*CARD)
        await pilot.pause()
        await stand_on_figure(app, "hardening.days")
        await pilot.press("enter", *"25", "enter")
        await pilot.pause()
        assert front(app) == "crop"
        assert crop_of(desk).hardening is not None
        assert "OWN 25 days" in seen(app)
        assert "your own figure for this season" in seen(app)
        assert "library 18 days" in seen(app)
        after = {s.step: s.day for s in expected_course(desk.season, batch, crop_of(desk), day)}
        assert (after[Step.PLANT_OUT] - before[Step.PLANT_OUT]).days == 7
        await pilot.press("x")
        await pilot.pause()
        assert said(app).startswith("Take hardening.days back to the library's 18 days?")
        await pilot.press("x")
        await pilot.pause()
        assert "OWN" not in seen(app)
        await pilot.press("u")
        await pilot.pause()
        assert "OWN 25 days" in seen(app)


def crop_of(desk: Desk) -> Crop:
    """Cosmos as it counts now."""
    return desk.season.crop("cosmos")


@pytest.mark.parametrize(
    ("name", "typed", "fault"),
    [
        ("germination.days_first", "900", "allowed: a number from 0.5 to 200 days"),
        ("germination.days_first", "soon", "allowed: a number from 0.5 to 200 days"),
        ("germination.days_first", "50", "not below germination.days_first, which is 50"),
        ("windows.1.opens", "in May", "a day of the site's year"),
        ("planting.support", "maybe", "allowed: true or false"),
    ],
)
async def test_what_may_not_stand_there_is_said_beside_the_field(
    desk: Desk, name: str, typed: str, fault: str
) -> None:
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press(*CARD)
        await pilot.pause()
        await stand_on_figure(app, name)
        await pilot.press("enter")
        await pilot.pause()
        form_of(app).field("value").put(typed)
        await pilot.press("enter")
        await pilot.pause()
        assert front(app) == "figure"
        error = form_of(app).field("value").error
    assert fault.split(",")[0] in error or "allowed: an anchor" in error
    assert not [r for r in desk.folder.records() if r.kind is Kind.CROP_RULE]


async def test_a_figure_the_crop_has_not_got_is_set_by_its_name(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press(*CARD, "n", *"pinch_he", "tab", *"20", "enter")
        await pilot.pause()
        assert front(app) == "crop"
    assert desk.season.crop("cosmos").growing.pinch_height_cm == 20


async def test_taking_one_figure_back_leaves_the_others_of_its_record(desk: Desk) -> None:
    own = {"hardening.days": 25, "germination.share": 0.5}
    desk.record((Draft(Kind.CROP_RULE, "cosmos", own),))
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press(*CARD)
        await pilot.pause()
        await stand_on_figure(app, "hardening.days")
        await pilot.press("x", "x")
        await pilot.pause()
        crop = desk.season.crop("cosmos")
        assert crop.hardening is not None and crop.germination is not None
        assert (crop.hardening.days, crop.germination.share) == (18, 0.5)
        await pilot.press("u")
        await pilot.pause()
    crop = desk.season.crop("cosmos")
    assert crop.hardening is not None
    assert crop.hardening.days == 25


async def test_an_own_figure_that_does_not_fit_is_named(desk: Desk) -> None:
    desk.record((Draft(Kind.CROP_RULE, "cosmos", {"germination.days_first": 900}),))
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press(*CARD)
        await pilot.pause()
        assert "Not used, because it cannot stand there: " in seen(app)
        assert "germination.days_first is 900" in seen(app)


async def test_a_crop_the_library_does_not_know_refuses_in_a_sentence(desk: Desk) -> None:
    desk.record((Draft(Kind.SOWN, "b90", {"crop": "moonflower-from-elsewhere"}),))
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("slash", *"b90", "enter", "c")
        await pilot.pause()
        assert "The library has no such crop." in seen(app)
        for key in ("x", "enter", "n"):
            await pilot.press(key)
            await pilot.pause()
            assert front(app) == "crop"
            assert said(app) == "The library has no crop 'moonflower-from-elsewhere'."


async def test_sowing_from_the_card_names_the_crop(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "c", *"nigella", "enter", "s")
        await pilot.pause()
        assert form_of(app).values()["crop"] == "nigella"


async def test_the_list_of_crops_uses_a_wide_screen_for_all_its_columns(desk: Desk) -> None:
    """What is over goes to the names and to what is told beside them, not to the Latin name."""
    app = app_on(desk)
    async with app.run_test(size=(200, 50)) as pilot:
        await pilot.press("g", "c")
        await pilot.pause()
        assert isinstance(app.screen, CropsScreen)
        rows = seen(app).splitlines()[1:-2]
        listed = [row.split("|")[0] for row in rows]
        assert not [row for row in listed if ".." in row]
        longest = max(len(name.latin) for name in desk.library.names())
        latin, sort = listed[0].index("Tagetes"), listed[0].index("half-hardy")
        assert sort - latin <= longest + 3
        assert app.screen.query_one("#aside").size.width > 46


def test_what_sort_a_crop_is_is_not_said_twice(desk: Desk) -> None:
    said = {name: sort_words(desk.season.crop(name)) for name in ("cosmos", "lettuce")}
    assert said == {"cosmos": "half-hardy annual", "lettuce": "vegetable, hardy"}


@pytest.mark.parametrize("screen", ["c", "f"])
async def test_letters_nothing_goes_by_are_said_to_be(desk: Desk, screen: str) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", screen, *"qqzz")
        await pilot.pause()
        assert "Nothing goes by these letters: take some away." in seen(app)
        await pilot.press("enter", "ctrl+u")
        await pilot.pause()
        assert "Nothing goes by" not in seen(app)


def test_only_a_bulb_has_a_figure_for_its_leaves_to_die_back(desk: Desk) -> None:
    shown = {
        name: {one.name for one in crop_figures(crop, crop, {})}
        for name in ("tomato", "tulip")
        for crop in (desk.season.crop(name),)
    }
    assert "bulb_rest_days" not in shown["tomato"]
    assert "bulb_rest_days" in shown["tulip"]
