"""The sowing sheet: a batch in seconds, saved at any time."""

from __future__ import annotations

import pytest

from benchround.core.caution.due import CAUTIONS, blocks
from benchround.core.lifecycle import Stage
from benchround.core.record import Kind
from benchround.desk import Desk
from benchround.screens.keys_page import QUICKEST_SOWING
from tests.sample.story import DAY_0
from tests.screens.stage import app_on, form_of, front, said, seen

MOST_KEYS = 10


async def test_a_batch_with_every_default_takes_at_most_ten_keys(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press(*QUICKEST_SOWING)
        await pilot.pause()
        assert front(app) == "round"
        assert said(app) == "Recorded: Cosmos b34 sown (u takes it back)."
    assert len(QUICKEST_SOWING) <= MOST_KEYS
    batch = desk.season.batches["b34"]
    assert (batch.crop, batch.main.stage, batch.begun) == ("cosmos", Stage.SOWN, DAY_0)
    assert batch.sowing is not None
    assert batch.sowing.seeds is not None
    assert batch.sowing.depth_mm == 3
    assert batch.main.place == "bench-1"


async def test_one_letter_and_save_is_enough(empty_desk: Desk) -> None:
    app = app_on(empty_desk)
    async with app.run_test() as pilot:
        await pilot.press("s", *"zin", "ctrl+s")
        await pilot.pause()
        assert front(app) == "round"
    assert [batch.crop for batch in empty_desk.season.batches.values()] == ["zinnia"]


async def test_without_a_crop_nothing_is_saved_and_nothing_is_lost(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("s", "tab", *"Paper", "ctrl+s")
        await pilot.pause()
        assert front(app) == "sow"
        assert form_of(app).field("crop").error == "type the first letters of the crop"
        assert form_of(app).field("variety").text == "Paper"
    assert "b34" not in desk.season.batches


async def test_letters_no_crop_begins_with_are_said_to_fit_nothing(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("s", *"qqq")
        await pilot.pause()
        assert "nothing goes by these letters" in seen(app)
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert front(app) == "sow"


async def test_wanted_plants_give_seeds_and_cells(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("s", *"cosm", "tab", "tab", *"100")
        await pilot.pause()
        form = form_of(app)
        seeds = int(form.field("seeds").value)
        assert seeds == int(form.field("cells").value)
        # 100 wanted of cells at 85 % x 90 %: on average 131 seeds give them, so more are sown
        assert seeds > 100 / (0.85 * 0.9)
        assert "100 ready nine times in ten" in form.field("seeds").hint
        await pilot.press("tab", *"7")
        await pilot.press("shift+tab", "1")
        await pilot.pause()
        assert form.field("seeds").value == "7"


async def test_the_days_ahead_and_the_label_are_shown_before_saving(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("s", *"cosm")
        await pilot.pause()
        text = seen(app)
    for words in ("look from", "first up about", "start hardening", "plant out", "in flower"):
        assert words in text
    assert "Label front: Cosmos; back: 27 May 2026, b34, 35 seeds" in text
    assert "Caution: " in text


async def test_a_day_to_come_plans_and_a_day_gone_by_sows(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("s", *"cosm", *["tab"] * 7, *"+9")
        await pilot.pause()
        assert form_of(app).now.id == "day"
        assert form_of(app).field("what").text == "planned"
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert "planned for Fri 5 Jun" in said(app)
        await pilot.press("s", *"cornfl", *["tab"] * 7, *"-2", "ctrl+s")
        await pilot.pause()
    planned, sown = desk.season.batches["b34"], desk.season.batches["b35"]
    assert planned.main.stage is Stage.PLANNED
    assert planned.records[0].text("sow_on") == "2026-06-05"
    assert sown.sowing is not None
    assert sown.sowing.day.isoformat() == "2026-05-25"


async def test_sown_on_a_day_to_come_is_refused_beside_the_day(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("s", *"cosm", *["tab"] * 7, *"+9", "tab", *"sown", "ctrl+s")
        await pilot.pause()
        assert form_of(app).field("day").error.startswith("still to come")
        assert form_of(app).now.id == "day"
    assert "b34" not in desk.season.batches


async def test_a_half_filled_sheet_is_there_again(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("s", *"cosm", "tab", *"Dusk", "escape")
        await pilot.pause()
        assert front(app) == "round"
        await pilot.press("s")
        await pilot.pause()
        values = form_of(app).values()
        assert (values["crop"], values["variety"]) == ("cosmos", "Dusk")
        assert "What you typed before is here again" in said(app)
        await pilot.press("ctrl+n")
        await pilot.pause()
        assert form_of(app).values()["crop"] == ""
        await pilot.press("escape", "s")
        await pilot.pause()
        assert said(app) == ""


async def test_what_is_there_again_gives_way_to_letters_and_is_edited_by_other_keys(
    desk: Desk,
) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("s", *"cosm", "tab", *"Dusk", "escape", "s")
        await pilot.press(*"zinn", "tab", "backspace", *"t", "tab")
        await pilot.pause()
        values = form_of(app).values()
        assert (values["crop"], values["variety"]) == ("zinnia", "Dust")


@pytest.mark.parametrize(
    ("letters", "crop", "caution"),
    [("castor", "castor-bean", "C17"), ("monk", "monkshood", "C15")],
)
async def test_what_can_kill_is_read_before_it_is_sown(
    desk: Desk, letters: str, crop: str, caution: str
) -> None:
    app = app_on(desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press("s", *letters, "ctrl+s")
        await pilot.pause()
        assert front(app) == "sow"
        assert said(app) == "Nothing was recorded: read the caution, then press ctrl+k."
        while "READ FIRST: " in seen(app):
            shown = " ".join(seen(app).split())
            full = [c.full for c in CAUTIONS.values() if c.full in shown]
            assert len(full) == 1
            await pilot.press("ctrl+k")
            await pilot.pause()
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert front(app) == "round"
    *before, last = desk.folder.records()
    read = {record.about for record in before if record.kind is Kind.CAUTION_READ}
    assert last.kind is Kind.SOWN
    assert desk.season.batches["b34"].crop == crop
    assert desk.season.cautions_read == dict.fromkeys(read, DAY_0)
    assert caution in read
    assert all(blocks(name.partition(":")[0], desk.season.crop(crop)) for name in read)


async def test_several_wrong_fields_are_all_shown_and_nothing_is_lost(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        keys = ["tab", "tab", *"many", "tab", *"12.5", *["tab"] * 3, *"qq"]
        await pilot.press("s", *"cosm", *keys, "ctrl+s")
        await pilot.pause()
        form = form_of(app)
        assert {field.id for field in form.fields if field.error} == {"wanted", "seeds", "place"}
        assert form.field("wanted").text == "many"
        assert said(app) == "Nothing was recorded: 3 fields want a look."
    assert "b34" not in desk.season.batches


async def test_the_packet_gives_its_variety_and_is_recorded(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("s", *"cosm", *["tab"] * 13, "down")
        await pilot.pause()
        assert form_of(app).now.id == "packet"
        assert form_of(app).field("variety").value == "Paper Lantern"
        await pilot.press("ctrl+s")
        await pilot.pause()
    batch = desk.season.batches["b34"]
    assert batch.variety == "Paper Lantern"
    assert batch.sowing is not None
    assert batch.sowing.packet == "p01"
