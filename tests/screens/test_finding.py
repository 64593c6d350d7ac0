"""Finding anything by its letters: its own names first, then where it stands, then inside words."""

from __future__ import annotations

import pytest

from benchround.crops.library import load_library
from benchround.desk import Desk
from benchround.screens.finding import Found, Sort, everything, find
from tests.feeds.seasons import empty_season, hostile_season, sample_season
from tests.screens.stage import app_on, front, seen

NAMES = load_library().names()


def found(letters: str) -> list[str]:
    return [one.key for one in find(letters, everything(sample_season()), NAMES)]


@pytest.mark.parametrize(
    ("letters", "first"),
    [
        ("b07", "batch:b07"),
        ("B07", "batch:b07"),
        ("old cream", "batch:b07"),
        ("frame a", "place:frame-a"),
        ("propagator", "place:propagator"),
        ("p03", "packet:p03"),
        ("borage", "crop:borage"),
        ("borago officinalis", "crop:borage"),
        ("mexican aster", "batch:b01"),
        ("zinnia", "batch:b06"),
    ],
)
def test_the_likeliest_is_first(letters: str, first: str) -> None:
    assert found(letters)[0] == first


def test_a_crop_s_letters_find_its_batches_packets_and_itself() -> None:
    assert found("cosm") == ["batch:b01", "batch:b02", "packet:p01", "crop:cosmos"]


def test_every_word_must_be_there() -> None:
    keys = found("lettuce frame b")
    assert keys[0] == "batch:b15"
    assert "batch:b14" not in keys


def test_a_place_is_found_before_what_stands_there() -> None:
    keys = found("bed 3")
    assert keys[0] == "place:bed-3"
    assert set(keys[1:]) == {"batch:b12", "batch:b30"}


def test_without_letters_it_is_all_that_is_on_the_books() -> None:
    season = sample_season()
    number = len(season.batches) + len(season.places) + len(season.packets)
    assert len(found("")) == number
    assert all(not key.startswith("crop:") for key in found(""))


def test_nothing_goes_by_letters_nobody_uses() -> None:
    assert found("qqq") == []
    assert find("", everything(empty_season()), NAMES) == ()


def test_a_name_of_its_own_stands_above_a_synonym() -> None:
    """Larkspur is called delphinium too."""
    batches = Found(Sort.BATCH, "b90", "b90 Larkspur", "", ("b90", "larkspur"), ("delphinium",))
    keys = [one.key for one in find("delph", (batches,), NAMES)]
    assert keys.index("crop:delphinium") < keys.index("batch:b90") < keys.index("crop:larkspur")


def test_hostile_names_are_found_by_their_own_letters() -> None:
    season = hostile_season()
    things = everything(season)
    for name, batch in season.batches.items():
        if len(batch.variety.split()) == 1 and len(batch.variety) < 100:
            keys = [one.key for one in find(batch.variety, things, ())]
            assert f"batch:{name}" in keys, batch.variety


def test_a_found_thing_s_key_names_sort_and_name() -> None:
    assert Found(Sort.PLACE, "frame-a", "Frame A", "frame").key == "place:frame-a"


@pytest.mark.parametrize(
    ("letters", "screen", "begins"),
    [
        ("b07", "batch", "b07 Sweet pea"),
        ("borag", "crop", "Borage"),
        ("bench", "place page", "Bench 1"),
        ("p03", "packets", "5 packets"),
    ],
)
async def test_enter_opens_what_was_found(
    desk: Desk, letters: str, screen: str, begins: str
) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("slash", *letters, "enter")
        await pilot.pause()
        assert front(app) == screen
        assert seen(app).startswith(begins)
        await pilot.press("escape")
        await pilot.pause()
        assert front(app) == "round"


async def test_a_packet_found_is_stood_on(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("slash", *"p03", "enter", "enter")
        await pilot.pause()
        assert "Packet p03" in seen(app)


async def test_a_place_tells_what_stands_there_and_opens_it(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("slash", *"frame", "space", "a", "enter")
        await pilot.pause()
        assert "b14 Lettuce 'Butterleaf'" in seen(app)
        await pilot.press("tab")
        await pilot.pause()
        assert "To do here today" in seen(app)
        assert "highest 38 C" in seen(app)
        await pilot.press("enter")
        await pilot.pause()
        assert seen(app).startswith("b14 Lettuce")


async def test_an_empty_season_says_what_to_do_first(empty_desk: Desk) -> None:
    app = app_on(empty_desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press("slash")
        await pilot.pause()
        assert "Nothing is on the books yet" in seen(app)
        await pilot.press(*"borag", "enter")
        await pilot.pause()
        assert front(app) == "crop"
