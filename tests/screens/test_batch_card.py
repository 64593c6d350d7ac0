"""A batch's card: what it shows, withdrawing, sowing again, its parts and its neighbours."""

from __future__ import annotations

from datetime import date, timedelta
from itertools import accumulate
from pathlib import Path

from benchround.clock import SampleClock
from benchround.core.lifecycle import Stage
from benchround.core.record import Draft, Figure, Kind
from benchround.core.task import Family
from benchround.desk import Desk
from benchround.screens.card import CardScreen
from benchround.screens.text import plain
from tests.sample.story import DAY_0
from tests.screens.stage import MACHINE, app_on, form_of, front, said, seen, stand_on


def card(app: object) -> CardScreen:
    """The card in front."""
    screen = getattr(app, "screen", None)
    assert isinstance(screen, CardScreen)
    return screen


async def test_the_card_of_the_task_s_batch_tells_where_it_is(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(80, 40)) as pilot:
        await pilot.pause()
        stand_on(app, Family.UNCOVER, "b06")
        await pilot.press("b")
        await pilot.pause()
        text = seen(app) + plain(card(app).page_lines(80))
    for words in (
        "b06 Zinnia 'Market Row'",
        "35 alive, Propagator P, 18 wanted",
        "[emerging]",
        "sown 40, up 35, pricked out -",
        "Coming",
        "What happened, newest first",
        "35 of 40 seeds, 88%",
        "Label",
    ):
        assert words in text


async def test_germination_is_told_with_wilson_s_range(desk: Desk) -> None:
    # 35 of 40: 73.9 to 94.5 %, Wilson 1927 (from memory), worked by hand:
    # (35 + 1.9208 -+ 1.96 sqrt(35 * 5 / 40 + 0.9604)) / (40 + 3.8416)
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("slash", *"b06", "enter")
        await pilot.pause()
        page = " ".join(plain(card(app).page_lines(100)).split())
    assert "of such seed 74 to 95 in a hundred come up (95% range)" in page


async def test_published_germination_figures_stand_on_the_card(desk: Desk) -> None:
    """Reference sample of germinationmetrics 0.1.10.9000 (read): newly up, days 1 to 14, of 50."""
    newly_up = (0, 0, 0, 0, 4, 17, 10, 7, 1, 0, 1, 0, 0, 0)
    sown = DAY_0 - timedelta(days=14)
    figures: dict[str, Figure] = {"crop": "cosmos", "seeds": 50, "place": "bench-1"}
    drafts = [Draft(Kind.SOWN, "b99", figures, day=sown)]
    for number, total in enumerate(accumulate(newly_up), start=1):
        day = sown + timedelta(days=number)
        drafts.append(Draft(Kind.COUNTED, "b99", {"count": total}, day=day))
    desk.record(drafts)
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("slash", *"b99", "enter")
        await pilot.pause()
        page = " ".join(plain(card(app).page_lines(110)).split())
    for words in (
        "40 of 50 seeds, 80%, final",
        "half up (T50) after 5.94 days by Farooq, 5.97 by Coolbear",
        "mean time 6.70 days by the day of the look, 6.20 by the middle between two looks",
        "speed 6.14 seedlings a day",
        "uniformity 0.71",
        "synchrony 0.27",
    ):
        assert words in page


async def test_the_fit_from_look_to_look_stands_on_the_card(desk: Desk) -> None:
    """Counts of Lobelia erinus at 25 C: Onofri, Piepho & Kozak, agriCensData example 2 (read).

    The median of the 96 that came up and its error are an own worked example: the likelihood
    searched in steps of 0.0005, with the normal distribution of the standard library.
    """
    sown = DAY_0 - timedelta(days=40)
    drafts = [Draft(Kind.SOWN, "b99", {"crop": "lobelia", "seeds": 100}, day=sown)]
    newly_up = (10, 26, 13, 9, 10, 3, 6, 4, 1, 2, 2, 3, 0, 1, 2, 2, 0, 0, 1, 1)
    for number, total in enumerate(accumulate(newly_up)):
        day = sown + timedelta(days=1 + 2 * number)
        drafts.append(Draft(Kind.COUNTED, "b99", {"count": total}, day=day))
    desk.record(drafts)
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("slash", *"b99", "enter")
        await pilot.pause()
        page = " ".join(plain(card(app).page_lines(110)).split())
    assert "interval fit half up after 4.53 days, give or take 0.55 (standard error)" in page


async def test_why_there_is_no_final_count_stands_on_the_card(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.press("slash", *"b02", "enter")
        await pilot.pause()
        page = plain(card(app).page_lines(110))
    assert "no final count  its last count came too early to be final" in page


async def test_history_is_newest_first(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("slash", *"b01", "enter")
        await pilot.pause()
        keys = [row.key for row in card(app).picks.rows if row.key]
    records = desk.season.batches["b01"].records
    assert keys == [record.id for record in reversed(records)]


async def test_withdrawing_is_asked_once_and_the_schedule_follows(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("slash", *"b06", "enter", "x")
        await pilot.pause()
        assert "Withdraw 'b06 counted: 35" in said(app)
        assert desk.season.batches["b06"].main.alive == 35
        await pilot.press("x")
        await pilot.pause()
        assert said(app).startswith("Withdrawn: b06 counted: 35")
        assert desk.season.batches["b06"].main.alive == 22
        assert "22 alive" in seen(app)
        await pilot.press("escape")
        await pilot.pause()
        assert "22 up of 40" in stand_on(app, Family.LOOK, "b06").instruction
        await pilot.press("u")
        await pilot.pause()
    assert desk.season.batches["b06"].main.alive == 35


async def test_another_record_is_asked_about_anew(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("slash", *"b06", "enter", "x", "down", "up", "x")
        await pilot.pause()
        assert said(app).startswith("Withdraw 'b06")
    assert desk.season.batches["b06"].main.alive == 35


async def test_what_a_withdrawal_spoils_is_said_before(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("slash", *"b06", "enter", "end", "x")
        await pilot.pause()
        assert "3 later records" in said(app) or "off the books" in said(app)


async def test_a_batch_of_one_record_goes_off_the_books(desk: Desk) -> None:
    app = app_on(desk)
    desk.record((Draft(Kind.SOWN, "b90", {"crop": "cosmos", "seeds": 10}),))
    async with app.run_test() as pilot:
        await pilot.press("slash", *"b90", "enter", "x")
        await pilot.pause()
        assert "The whole batch goes off the books with it." in said(app)
        await pilot.press("x")
        await pilot.pause()
        assert "b90" not in desk.season.batches
        assert front(app) == "batch"
        await pilot.press("u")
        await pilot.pause()
    assert "b90" in desk.season.batches


async def test_sowing_again_takes_crop_variety_and_packet(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("slash", *"b01", "enter", "s")
        await pilot.pause()
        values = form_of(app).values()
        assert values["crop"] == "cosmos"
        assert values["variety"] == "Paper Lantern"
        assert values["packet"] == "p01"
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert front(app) == "batch"
    batch = desk.season.batches["b34"]
    assert (batch.crop, batch.variety) == ("cosmos", "Paper Lantern")
    assert batch.main.stage is Stage.SOWN


async def test_recording_is_for_the_part_chosen(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("slash", *"b03", "enter", "o")
        await pilot.pause()
        assert said(app) == "Recording is for spares now."
        assert "* spares: hardening" in seen(app)
        await pilot.press("r", *"lost", "tab", "2", "tab", *"slug", "enter")
        await pilot.pause()
        assert front(app) == "batch"
    parts = {part.name: part.alive for part in desk.season.batches["b03"].parts}
    assert parts == {"": 60, "spares": 17}


async def test_neighbours_go_round_at_the_ends(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("slash", *"b33", "enter")
        await pilot.pause()
        ways = (("right", "b01"), ("left", "b33"), ("comma", "b32"), ("full_stop", "b33"))
        for key, name in ways:
            await pilot.press(key)
            await pilot.pause()
            assert seen(app).startswith(name)


async def test_the_batch_looked_at_last_is_gone_back_to(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("slash", *"b25", "enter", "g", "b")
        await pilot.pause()
        assert seen(app).startswith("b25")


async def test_an_empty_season_says_what_to_do_first(empty_desk: Desk) -> None:
    app = app_on(empty_desk)
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.press("g", "b")
        await pilot.pause()
        assert "No batch yet. Press s" in seen(app)
        for key in ("r", "x", "c", "o", "right", "enter"):
            await pilot.press(key)
            await pilot.pause()
            assert front(app) == "batch"
            assert "s opens a sowing sheet" in said(app)
        await pilot.press("s", *"cosm", "ctrl+s")
        await pilot.pause()
        assert "b01 Cosmos" in seen(app)


async def test_on_a_day_to_come_nothing_is_recorded(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("right", "slash", *"b06", "enter", "r")
        await pilot.pause()
        assert front(app) == "batch"
        assert "still to come" in said(app)


async def test_records_of_another_year_say_their_year(desk: Desk) -> None:
    app = app_on(desk)
    sown = desk.season.batches["b07"].begun
    assert sown < date(DAY_0.year, 1, 1) <= DAY_0 - timedelta(days=1)
    async with app.run_test() as pilot:
        await pilot.press("slash", *"b07", "enter")
        await pilot.pause()
        rows = plain(card(app).picks.lines(80))
    assert f"{sown:%a} {sown.day} {sown:%b} {sown.year}" in rows


async def test_a_season_open_for_reading_only_refuses_on_every_card(
    folder: Path, desk: Desk, clock: SampleClock
) -> None:
    second = Desk.open(folder, today=clock, machine=MACHINE)
    app = app_on(second)
    cards = {
        ("slash", *"b06", "enter"): ("r", "s", "x"),
        ("g", "c", *"cosm", "enter"): ("enter", "n", "s", "x"),
        ("g", "p"): ("enter", "n", "s", "x"),
    }
    async with app.run_test() as pilot:
        for way, keys in cards.items():
            await pilot.press(*way)
            await pilot.pause()
            name = front(app)
            for key in keys:
                await pilot.press(key)
                await pilot.pause()
                assert front(app) == name
                assert said(app).startswith("Nothing can be recorded: ")
            await pilot.press("g", "r")
    second.close()
