"""Packets: put on the books, set right, warned of, withdrawn, and sown from."""

from __future__ import annotations

import pytest

from benchround.desk import Desk
from benchround.screens.packets import PacketsScreen
from benchround.screens.text import plain
from tests.screens.stage import app_on, form_of, front, said, seen

NEW = ("g", "p", "n")


async def fill(app: object, **typed: str) -> None:
    """Type into fields of the sheet in front."""
    form = form_of(app)  # type: ignore[arg-type]  # the program, typed as an object here
    for name, text in typed.items():
        form.field(name).put(text)


async def test_a_packet_is_put_on_the_books(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press(*NEW)
        await pilot.pause()
        await fill(
            app,
            crop="zinnia",
            variety="Giant Mix",
            year="2025",
            seeds="120",
            germination="85 %",
            tested="40",
            saved="yes",
            storage="sealed in the fridge",
            note="swapped",
        )
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert front(app) == "packets"
        assert "Zinnia 'Giant Mix'" in seen(app)
    packet = desk.season.packets["p06"]
    assert (packet.crop, packet.variety, packet.year) == ("zinnia", "Giant Mix", 2025)
    assert (packet.seeds, packet.germination, packet.tested) == (120, 0.85, 40)
    assert (packet.saved, packet.treated) == (True, False)
    assert packet.storage == "sealed in the fridge"


@pytest.mark.parametrize(
    ("field", "typed", "fault"),
    [
        ("crop", "", "type the first letters of the crop"),
        ("year", "20025", "not between 1990 and 2200"),
        ("seeds", "some", "not a whole number"),
        ("seeds", "-3", "not between 0 and"),
        ("grams", "1e99", "is not a number"),
        ("grams", "99999999", "not between 0 and"),
        ("germination", "850", "not between 0.1 and 100 %"),
        ("germination", "0", "not between 0.1 and 100 %"),
        ("name", "Tray [A]", "small letters, digits and hyphens"),
        ("name", "p01", "there is a packet of this name"),
        ("variety", "x" * 200, "are too many"),
    ],
)
async def test_what_cannot_be_is_said_beside_its_field(
    desk: Desk, field: str, typed: str, fault: str
) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press(*NEW)
        await pilot.pause()
        await fill(app, crop="zinnia")
        await fill(app, **{field: typed})
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert front(app) == "packet"
        assert fault in form_of(app).field(field).error
    assert len(desk.season.packets) == 5


async def test_a_change_keeps_what_was_said_before(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "p", "end", "up", "enter")
        await pilot.pause()
        assert "Packet p03" in seen(app)
        await fill(app, seeds="390")
        await pilot.press("ctrl+s")
        await pilot.pause()
        packet = desk.season.packets["p03"]
        assert (packet.crop, packet.variety, packet.seeds) == ("lettuce", "Butterleaf", 390)
        assert packet.left == 390 - 160
        await pilot.press("x", "x")
        await pilot.pause()
        assert desk.season.packets["p03"].seeds == 400
        await pilot.press("u")
        await pilot.pause()
    assert desk.season.packets["p03"].seeds == 390


@pytest.mark.parametrize(
    ("crop", "year", "keeps"),
    [
        # Knott's Handbook 1997, as given by Iowa State University Extension (read in a copy)
        ("onion", "2023", "keeps about 1 year"),
        ("leek", "2023", "keeps about 2 years"),
        ("carrot", "2020", "keeps about 3 years"),
        ("lettuce", "2015", "keeps about 6 years"),
    ],
)
async def test_age_is_warned_of_while_typing_and_in_the_list(
    desk: Desk, crop: str, year: str, keeps: str
) -> None:
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press(*NEW)
        await pilot.pause()
        await fill(app, crop=crop, year=year)
        await pilot.press("end", "backspace", *"x", "backspace")
        form_of(app).changed()
        await pilot.pause()
        assert keeps in " ".join(seen(app).replace("|", " ").split())
        await fill(app, crop=crop, year=year)
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert any("test!" in row and year in row for row in seen(app).splitlines())


async def test_a_small_test_tells_little(desk: Desk) -> None:
    # 8 of 10 up: 49 to 94 %, Wilson 1927, as worked in simple germination test leaflets' examples
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press(*NEW)
        await pilot.pause()
        await fill(app, crop="zinnia", germination="80", tested="10")
        form_of(app).changed()
        await pilot.pause()
        assert "anything from 49 to 94 %" in " ".join(seen(app).replace("|", " ").split())


async def test_treated_seed_is_cautioned_of(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press(*NEW)
        await pilot.pause()
        await fill(app, crop="zinnia", treated="yes")
        form_of(app).changed()
        await pilot.pause()
        assert "where a child, a pet or a bird finds it" in " ".join(seen(app).split())


async def test_a_sowing_from_a_packet_names_it(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "p", "end", "up", "s")
        await pilot.pause()
        values = form_of(app).values()
        assert (values["crop"], values["variety"]) == ("lettuce", "Butterleaf")
        assert values["packet"] == "p03"


async def test_a_packet_that_is_used_up_is_not_sown_from(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "p", "down", "s")
        await pilot.pause()
        assert front(app) == "packets"
        assert said(app) == "Packet p05 is used up: sow from another one."


async def test_the_back_tells_what_was_sown_from_it_and_learned(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "p")
        await pilot.pause()
        screen = app.screen
        assert isinstance(screen, PacketsScreen)
        back = plain(screen.page_lines(78))
    assert "20 of 100" in back
    assert "b01 'Paper Lantern'" in back
    assert "b02 'Paper Lantern'" in back


async def test_without_packets_it_says_what_to_do_first(empty_desk: Desk) -> None:
    app = app_on(empty_desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press("g", "p")
        await pilot.pause()
        assert "Press n to put the first one" in seen(app)
        for key in ("enter", "s", "x", "c"):
            await pilot.press(key)
            await pilot.pause()
            assert front(app) == "packets"
            assert "n puts one on the books" in said(app)


async def test_the_words_over_the_columns_stand_over_the_list_only(desk: Desk) -> None:
    """Turned over on a small screen, the card shows no list, so no columns either."""
    app = app_on(desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press("g", "p")
        await pilot.pause()
        heads = seen(app).splitlines()[1]
        assert heads.split()[0] == "packet"
        await pilot.press("tab", "enter", "escape")
        await pilot.pause()
        assert "packet  crop" not in seen(app)
        assert seen(app).splitlines()[1].startswith("---")
        await pilot.press("tab")
        await pilot.pause()
        assert seen(app).splitlines()[1] == heads


async def test_how_a_crop_is_named_is_said_only_while_none_is(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "p", "n")
        await pilot.pause()
        assert "type its first letters" in seen(app)
        await pilot.press(*"zin", "tab")
        await pilot.pause()
        assert "type its first letters" not in seen(app)
