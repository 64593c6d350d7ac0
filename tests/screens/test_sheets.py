"""Sheets of tasks and records: figures, choices, faults beside the field, nothing typed is lost."""

from __future__ import annotations

import pytest

from benchround.core.lifecycle import NEXT, Stage
from benchround.core.record import Kind
from benchround.core.task import Family
from benchround.desk import Desk
from benchround.screens.page import Sheaf
from benchround.screens.record_fields import ASKED, NEEDS, NOT_BY_HAND, WANTED, kinds_for
from tests.screens.stage import app_on, form_of, front, said, seen, stand_on


async def test_a_task_sheet_begins_with_the_defaults(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        task = stand_on(app, Family.PRICK_OUT, "b25")
        await pilot.press("enter")
        await pilot.pause()
        values = form_of(app).values()
        assert values["count"] == task.asks[0].default
        assert values["place"] == "Bench 2"
        assert values["day"] == "today"
        await pilot.press("2", "0", "tab", "tab", *"frame a", "tab", *"gave two away", "enter")
        await pilot.pause()
        assert said(app).startswith("Recorded: b25 pricked out: 20, 40 cells")
    pricked, noted = desk.folder.records()[-2:]
    assert (pricked.kind, pricked.count(), pricked.text("place")) == (
        Kind.PRICKED_OUT,
        20,
        "frame-a",
    )
    assert (noted.kind, noted.note) == (Kind.NOTED, "gave two away")


async def test_figure_and_note_are_taken_back_as_one(desk: Desk) -> None:
    app = app_on(desk)
    made = desk.round()
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.THIN, "b20")
        await pilot.press("enter", "tab", *"weak ones", "enter", "u")
        await pilot.pause()
    assert desk.round() == made
    assert desk.season.batches["b20"].records[-1].kind is not Kind.NOTED


@pytest.mark.parametrize(
    ("typed", "field", "says"),
    [
        (("4", "5", "x"), "count", "'45x' is not a whole number."),
        (("4", "1"), "count", "41 is not between 0 and 40."),
        ((), "count", "a figure is needed here."),
        (("3", "5", "tab", "tab", *"0415"), "day", "'0415' could be read in more than one way"),
        (("3", "5", "tab", "tab", *"+1"), "day", "Thu 28 May is still to come"),
    ],
)
async def test_what_is_wrong_stands_beside_the_field(
    desk: Desk, typed: tuple[str, ...], field: str, says: str
) -> None:
    app = app_on(desk)
    before = len(desk.folder.records())
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.COUNT, "b02")
        await pilot.press("enter", *typed, "enter")
        await pilot.pause()
        form = form_of(app)
        assert form.field(field).error.startswith(says)
        assert form.now.id == field
        assert form.field("count").text == "".join(key for key in typed[:3] if key != "tab")
    assert len(desk.folder.records()) == before


async def test_the_reading_of_the_thermometer_is_checked(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.THERMOMETER, "")
        await pilot.press("enter", *"80", "enter")
        await pilot.pause()
        assert "80 C is not between -45 C and 70 C" in form_of(app).field("min_c").error
        await pilot.press("ctrl+u", *"9", "tab", *"4", "enter")
        await pilot.pause()
        assert front(app) == "task"
        assert said(app).startswith("lowest 9 C is above highest 4 C")
        form_of(app).go("max_c")
        await pilot.press("ctrl+u", *"19", "enter")
        await pilot.pause()
        assert front(app) == "round"
    assert [desk.folder.records()[-1].number(name) for name in ("min_c", "max_c")] == [9, 19]


async def test_an_earlier_day_may_be_given(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.COUNT, "b02")
        await pilot.press("enter", *"36", "tab", "tab", *"26/5", "enter")
        await pilot.pause()
        assert front(app) == "round"
    assert desk.folder.records()[-1].day.isoformat() == "2026-05-26"


async def test_a_loss_is_recorded_by_first_letters(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.THIN, "b20")
        await pilot.press("r", *"los", "tab", *"4", "tab", *"slu", "enter")
        await pilot.pause()
        assert said(app) == "Recorded: b20 lost: 4, slug (u takes it back)."
    batch = desk.season.batches["b20"]
    assert batch.tally.losses == {"slug": 4}
    assert batch.main.alive == 38


async def test_more_than_are_alive_cannot_be_lost(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.THIN, "b20")
        await pilot.press("r", *"los", "tab", *"99", "enter")
        await pilot.pause()
        assert "99 is more than the 42 plants alive in b20" in form_of(app).field("count").error
        assert form_of(app).values()["kind"] == "lost"


async def test_a_kind_asks_for_its_own_figures_only(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.THIN, "b20")
        await pilot.press("r", *"moved")
        await pilot.pause()
        assert set(form_of(app).values()) == {"kind", "place", "note", "day"}
        await pilot.press("enter")
        await pilot.pause()
        assert form_of(app).now.id == "place"
        await pilot.press("enter")
        await pilot.pause()
        assert form_of(app).field("place").error == "needed here"
        await pilot.press("ctrl+u", *"frame", "enter")
        await pilot.pause()
        assert front(app) == "round"
    assert desk.season.batches["b20"].main.place == "frame-a"


@pytest.mark.parametrize(("letters", "kind"), [("los", "lost"), ("compo", "composted")])
async def test_what_takes_every_plant_is_asked_about_first(
    desk: Desk, letters: str, kind: str
) -> None:
    app = app_on(desk)
    before = len(desk.folder.records())
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.THIN, "b20")
        await pilot.press("r", *letters, "enter")
        await pilot.pause()
        assert form_of(app).now.id == "count", "enter on what happened goes on to the figures"
        await pilot.press("enter")
        await pilot.pause()
        assert "all 42?" in form_of(app).field("count").error
        assert len(desk.folder.records()) == before
        await pilot.press("enter")
        await pilot.pause()
        assert front(app) == "round"
    assert desk.folder.records()[-1].kind == kind
    assert desk.season.batches["b20"].main.alive == 0


async def test_what_was_changed_after_the_question_is_asked_about_anew(desk: Desk) -> None:
    app = app_on(desk)
    before = len(desk.folder.records())
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.THIN, "b20")
        await pilot.press("r", *"lost", "ctrl+s")
        await pilot.press("shift+tab", "ctrl+u", *"compo", "ctrl+s")
        await pilot.pause()
        assert "all 42?" in form_of(app).field("count").error
    assert len(desk.folder.records()) == before


async def test_what_has_no_figures_is_saved_by_the_first_enter(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.THIN, "b20")
        await pilot.press("r", *"weeded", "enter")
        await pilot.pause()
        assert front(app) == "round"
    assert desk.folder.records()[-1].kind == "weeded"


async def test_without_a_kind_nothing_is_recorded(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.THIN, "b20")
        await pilot.press("r", "tab", *"a note only", "enter")
        await pilot.pause()
        assert form_of(app).field("kind").error == "type the first letters of what happened"
        assert form_of(app).field("note").text == "a note only"


async def test_a_record_sheet_left_half_filled_is_kept_for_its_batch(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.pause()
        stand_on(app, Family.THIN, "b20")
        await pilot.press("r", *"los", "tab", *"3", "escape")
        stand_on(app, Family.PRICK_OUT, "b25")
        await pilot.press("r")
        await pilot.pause()
        assert form_of(app).values()["kind"] == ""
        await pilot.press("escape")
        stand_on(app, Family.THIN, "b20")
        await pilot.press("r")
        await pilot.pause()
        assert form_of(app).values()["kind"] == "lost"
        assert form_of(app).values()["count"] == "3"


@pytest.mark.parametrize("stage", list(Stage))
def test_every_kind_offered_is_legal_and_every_figure_known(stage: Stage) -> None:
    kinds = kinds_for(stage)
    assert len(set(kinds)) == len(kinds)
    assert set(kinds) == {kind for at, kind in NEXT if at is stage} - NOT_BY_HAND
    for kind in kinds:
        assert set(ASKED.get(kind, ())) <= set(WANTED)
        assert set(NEEDS.get(kind, ())) <= {*ASKED.get(kind, ()), "note"}


def test_what_moves_a_batch_on_is_offered_first() -> None:
    kinds = kinds_for(Stage.SOWN)
    moving = [NEXT[(Stage.SOWN, kind)] is not Stage.SOWN for kind in kinds]
    assert moving == sorted(moving, reverse=True)
    assert Kind.FIRST_UP in kinds
    assert Kind.PLANTED_OUT not in kinds


NUMBERS = {
    "weighs": (("g", "d", "m"), {"grams", "day"}),
    "reading": (("g", "w", "m"), {"min_c", "max_c", "rain_mm", "day"}),
    "sowing": (("s",), {"wanted", "seeds", "cells", "per_cell", "depth_mm", "day"}),
    "packet": (("g", "p", "n"), {"year", "seeds", "grams", "germination", "tested"}),
    "place": (("g", "t", "n"), {"length_m", "width_m", "trays", "shade_share", "set_c"}),
    "container": (("g", "t", "c"), {"cells", "cell_ml", "length_m", "width_m"}),
}
"""Sheets: how they are opened, and their fields for a number or a day."""


@pytest.mark.parametrize("keys, numbers", NUMBERS.values(), ids=NUMBERS)
async def test_a_question_mark_in_a_number_asks_for_help_and_elsewhere_is_typed(
    desk: Desk, keys: tuple[str, ...], numbers: set[str]
) -> None:
    app = app_on(desk)
    async with app.run_test(size=(100, 40)) as pilot:
        await pilot.press(*keys)
        await pilot.pause()
        form, sheet = form_of(app), front(app)
        for field in form.fields:
            form.go(field.id)
            before = field.text
            await pilot.press("question_mark")
            await pilot.pause()
            if field.id in numbers:
                assert (front(app), field.text) == ("page", before), field.id
                await pilot.press("escape")
                await pilot.pause()
            else:
                assert (front(app), field.text) == (sheet, "?"), field.id


async def test_a_note_of_a_treatment_brings_the_caution_that_defers_to_the_label(
    desk: Desk,
) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "b", "r", *"noted", "tab")
        await pilot.pause()
        assert "Caution:" not in seen(app)
        await pilot.press(*"sprayed greenfly")
        await pilot.pause()
        shown = " ".join(seen(app).split())
        assert "stands on the product's label" in shown
        assert "Caution: Garden chemicals: own bottle" in shown


async def test_a_loss_to_slugs_brings_the_caution_on_bait(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "b", "r", *"lost", "tab", "tab", *"slug", "tab")
        await pilot.pause()
        assert "Caution: Slug bait: lawful kinds only" in seen(app)


async def test_a_note_at_a_tick_brings_its_caution_too(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 40)) as pilot:
        await pilot.pause()
        stand_on(app, Family.PRICK_OUT, "b25")
        await pilot.press("enter", *["tab"] * 3, *"new bag of compost")
        await pilot.pause()
        assert "Caution: Keep compost bags shut and in the cool" in seen(app)


async def test_the_choice_of_compost_tells_what_to_mind_with_it(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "t", *["down"] * 13, "enter")
        await pilot.pause()
        assert form_of(app).now.id == "compost"
        shown = seen(app)
        for words in ("Compost dust", "Perlite: wet it", "Do not bake soil", "Keep compost bags"):
            assert f"Caution: {words}" in shown


async def test_help_tells_the_cautions_for_all_work_and_what_goes_before_them(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("question_mark", *["pagedown"] * 9)
        await pilot.pause()
        text = " ".join(app.screen.query_one(Sheaf).text.split())
        for words in ("Wash your hands before food", "is your tetanus jab current?"):
            assert words in text
        assert "Product labels, your local rules" in " ".join(seen(app).split())
