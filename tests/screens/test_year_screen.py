"""The year: strips with a moving cursor, what flowers together, bench room, opening a batch."""

from __future__ import annotations

from datetime import date

import pytest

from benchround.core.record import Draft, Figure, Kind
from benchround.core.task import Family
from benchround.desk import Desk
from benchround.drawing.year_strips import Order, YearStrip
from benchround.screens.page import Sheaf
from benchround.screens.widgets.pick_list import PickList
from benchround.screens.year import YearScreen
from benchround.screens.year_rows import PartOf, Strips
from tests.screens.stage import app_on, front, said, seen, stand_on

TULIP, HONESTY = "b30", "b11"


def picks_of(screen: object) -> PickList:
    assert isinstance(screen, YearScreen)
    return screen.picks


async def test_it_stands_on_the_batch_of_the_rounds_task(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        stand_on(app, Family.UNCOVER, "b06")
        await pilot.press("g", "y")
        await pilot.pause()
        picks = picks_of(app.screen)
        assert picks.picked.partition("\n")[0] == "b06"
        text = seen(app)
        assert "> Propag" in text
        assert "Batch b06 Zinnia 'Market Row', Propagator P: emerging." in text
        assert "in flower 26 Jul to 13 Oct" in " ".join(text.split())


async def test_every_part_has_its_strip_and_enter_opens_the_batch(desk: Desk) -> None:
    app = app_on(desk)
    parts = sum(len(batch.parts) for batch in desk.season.batches.values())
    async with app.run_test() as pilot:
        await pilot.press("g", "y", "home")
        await pilot.pause()
        assert picks_of(app.screen).position == (1, parts)
        await pilot.press("down", "down")
        about = picks_of(app.screen).picked.partition("\n")[0]
        await pilot.press("enter")
        await pilot.pause()
        assert front(app) == "batch"
        assert about in seen(app).splitlines()[0]
        await pilot.press("escape")
        await pilot.pause()
        assert front(app) == "year"
        assert picks_of(app.screen).picked.partition("\n")[0] == about


def test_strips_are_made_only_when_they_are_asked_for(desk: Desk) -> None:
    made: list[str] = []

    class Counting(Strips):
        def of(self, one: PartOf) -> YearStrip:
            made.append(one.batch.id)
            return super().of(one)

    strips = Counting(desk.season, desk.today)
    for order in (Order.PLACE, Order.SOWING):
        assert len(strips.parts(order)) >= len(desk.season.batches)
    assert made == []
    strips.parts(Order.FLOWERING)
    assert set(made) == set(desk.season.batches)


async def test_flowering_holds_all_others_against_the_one_under_the_cursor(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("g", "y", "f", "home", "down", "down", "down")
        await pilot.pause()
        screen = app.screen
        assert isinstance(screen, YearScreen)
        assert screen.about == TULIP
        text = screen.query_one(Sheaf).text
        assert "b30 Tulip 'Tall Cherry': 23 Apr to 9 May" in text
        assert "In flower with it:" in text
        assert "17 days: b11 Honesty 'White Purse', 13 Apr to 14 May" in text
        assert "Not with it: b08 Foxglove" in text
        await pilot.press("up")
        await pilot.pause()
        assert screen.about == HONESTY
        assert "held against b11" in seen(app)
        text = screen.query_one(Sheaf).text
        assert "17 days: b30 Tulip" in text


def overlap(one: tuple[date, date], other: tuple[date, date]) -> int:
    return max(0, (min(one[1], other[1]) - max(one[0], other[0])).days + 1)


async def test_days_together_are_those_both_spans_hold(desk: Desk) -> None:
    """Counted here from the first and last days alone, apart from the drawing's own sums."""
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("g", "y", "f", "home", "down", "down", "down")
        await pilot.pause()
        screen = app.screen
        assert isinstance(screen, YearScreen)
        found = list(screen._flowerings.values())
        mine = next(one for one in found if one.batch == TULIP)
        for one in found:
            together = overlap(
                (one.days.opens, one.days.closes), (mine.days.opens, mine.days.closes)
            )
            assert one.together == together


async def test_bench_room_opens_the_place(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "y", "b", "home", "down")
        await pilot.pause()
        text = seen(app)
        assert "Bench room: trays in use, by the week" in text
        assert "> Bench 1         0.5 over" in text
        assert "There now: b02" in text
        await pilot.press("enter")
        await pilot.pause()
        assert seen(app).startswith("Bench 1")
        await pilot.press("escape", "escape")
        await pilot.pause()
        assert "The year 2026" in seen(app)


async def test_sorting_and_other_years(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("g", "y", "o")
        await pilot.pause()
        assert said(app) == "Sorted by sowing."
        keys = [row.key.partition("\n")[0] for row in picks_of(app.screen).rows]
        begun = [desk.season.batches[name].begun for name in keys]
        assert begun == sorted(begun)
        await pilot.press("o")
        await pilot.pause()
        assert said(app) == "Sorted by flowering."
        await pilot.press("right")
        await pilot.pause()
        assert "The year 2027" in seen(app)
        await pilot.press("left", "left")
        await pilot.pause()
        assert "The year 2025" in seen(app)
        await pilot.press(*["left"] * 12)
        await pilot.pause()
        assert said(app) == "No strip lies more than 10 years off."


async def test_what_a_view_cannot_do_is_said(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "y", "b", "o")
        await pilot.pause()
        assert said(app) == "Only the strips can be sorted: press f or b to go back to them."
        await pilot.press("right")
        await pilot.pause()
        assert said(app).startswith("The bench room is known")


@pytest.mark.parametrize(
    ("key", "says"),
    [("", "No batch yet."), ("f", "No batch yet."), ("b", "No place that holds trays")],
)
async def test_an_empty_season_says_what_to_do(empty_desk: Desk, key: str, says: str) -> None:
    app = app_on(empty_desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press("g", "y", *([key] if key else []))
        await pilot.pause()
        assert says in seen(app)
        await pilot.press("down", "pagedown", "tab", "enter")
        await pilot.pause()
        assert said(app) == "There is nothing here to open."
        assert front(app) == "year"


async def test_two_places_of_one_name_both_stand_in_the_bench_room(desk: Desk) -> None:
    bench = next(place for place in desk.season.places if place.code == "bench-1")
    figures: dict[str, Figure] = {"name": bench.name, "kind": str(bench.kind), "trays": 3.0}
    desk.record((Draft(Kind.PLACE, "bench-1-b", figures),))
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("g", "y", "b")
        await pilot.pause()
        assert "Bench 1 (bench-1) " in seen(app)
        assert "Bench 1 (bench-1-b) " in seen(app)


async def test_sorting_is_offered_only_where_there_is_something_to_sort(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(120, 24)) as pilot:
        for keys, offered in ((("g", "y"), True), (("f",), False), (("f",), True), (("b",), False)):
            await pilot.press(*keys)
            await pilot.pause()
            assert ("o order" in seen(app).splitlines()[-1]) is offered
