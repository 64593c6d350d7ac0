"""Sowings from a sheet on the screens: shown first, recorded when told, one key takes them back."""

from __future__ import annotations

import time
from pathlib import Path

import pytest
from textual.pilot import Pilot

from benchround.clock import SampleClock
from benchround.core.progress import Progress
from benchround.desk import Desk
from benchround.feeds.sowing_sheet import SheetRow
from benchround.screens import taking_in
from benchround.screens.app import BenchroundApp
from benchround.screens.key_screens import PROGRESS, SHEET_FILE, TAKE_IN
from benchround.screens.keys import Key, keys_on
from benchround.screens.taking_in import TakeInScreen
from tests.screens.golden import same_as_kept
from tests.screens.stage import SIZES, app_on, form_of, front, said, seen

SHEET = """crop,variety,sown,seeds,cells,place,container
cosmos,Night Sky,12 apr,40,40,Bench 1,40-cell tray
nosuchcrop,,,,,,
leek,Long,2026-08-01,60,,,
cosmos,Paper Lantern,2026-04-09,40,40,,
"""
HOSTILE = ("tray [A]", "[/]", "=1+1", "\u202egnp", "../../etc/passwd", "x" * 180)


@pytest.fixture
def sheet(tmp_path: Path) -> Path:
    """A sheet of four rows: a sowing, a fault, a plan, and one like a batch on the books."""
    path = tmp_path / "sowings.csv"
    path.write_text(SHEET, encoding="utf-8")
    return path


async def settled(app: BenchroundApp, pilot: Pilot[None]) -> None:
    """Wait until no work goes on."""
    for _ in range(3):
        await pilot.pause()  # a sheet closes, work begins, its screen is shown
    while True:
        await app.workers.wait_for_complete()
        await pilot.pause()
        if front(app) != PROGRESS:
            return


async def read(app: BenchroundApp, pilot: Pilot[None], path: Path) -> TakeInScreen:
    """Go to the screen and read a file."""
    await pilot.press("g", "i", "o")
    form_of(app).field("file").put(str(path))
    await pilot.press("enter")
    await pilot.pause()
    await settled(app, pilot)
    screen = app.screen
    assert isinstance(screen, TakeInScreen)
    return screen


async def test_every_row_is_shown_and_nothing_is_recorded(desk: Desk, sheet: Path) -> None:
    before = desk.folder.records()
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await read(app, pilot, sheet)
        shown = seen(app)
        await pilot.press("down")
        await pilot.pause()
        assert "Mend it in the sheet" in seen(app)
    assert "3 of 4 rows can be recorded, 1 with a fault" in shown
    assert "Cosmos 'Night Sky', sown Sun 12 Apr 2026, 40 seeds, 40 cells, place Bench 1" in shown
    assert "fault  'nosuchcrop' is no crop" in shown
    assert "plan   Leek 'Long', planned Sat 1 Aug 2026" in shown
    assert "sown ? Cosmos 'Paper Lantern'" in shown
    assert desk.folder.records() == before


async def test_good_rows_are_recorded_when_asked_twice_and_one_key_takes_them_back(
    desk: Desk, sheet: Path
) -> None:
    before = set(desk.season.batches)
    app = app_on(desk)
    async with app.run_test() as pilot:
        await read(app, pilot, sheet)
        await pilot.press("t")
        asked = "Record 3 sowings? 1 row of the sheet stays out. Press t again to do it."
        assert said(app) == asked
        assert set(desk.season.batches) == before
        await pilot.press("t")
        await pilot.pause()
        await settled(app, pilot)
        assert set(desk.season.batches) - before == {"b34", "b35", "b36"}
        assert "0 of 4 rows can be recorded, 3 on the books already" in seen(app)
        await pilot.press("t")
        assert said(app) == "There is no row to record."
        await pilot.press("u")
        await pilot.pause()
        await settled(app, pilot)
        assert set(desk.season.batches) == before
        assert "3 of 4 rows can be recorded" in seen(app)


async def test_only_faults_can_be_shown(desk: Desk, sheet: Path) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        screen = await read(app, pilot, sheet)
        await pilot.press("f")
        assert [row.key for row in screen.picks.rows] == ["3"]
        await pilot.press("f")
        assert len(screen.picks.rows) == 4


@pytest.mark.parametrize(
    ("raw", "words"),
    [
        (b"PK\x03\x04\x00\x00", "is no text file: save the table as CSV"),
        (b"crop|sown\ncosmos|today\n", "The columns are parted by '|'"),
        (b"variety\nx\n", "There is no column 'crop'"),
        (b"", "The table is empty"),
    ],
)
async def test_what_cannot_be_read_is_a_sentence(
    desk: Desk, tmp_path: Path, raw: bytes, words: str
) -> None:
    path = tmp_path / "sowings.csv"
    path.write_bytes(raw)
    app = app_on(desk)
    async with app.run_test(size=(120, 40)) as pilot:
        await read(app, pilot, path)
        assert words in said(app)
        await pilot.press("t")
        assert said(app) == "Press o to name a sheet first."


async def test_a_file_that_is_not_there_is_said_beside_the_field(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "i", "o", *"nowhere", "enter")
        await pilot.pause()
        assert front(app) == SHEET_FILE
        assert "there is no such file" in seen(app)


async def test_text_of_the_sheet_is_no_path_and_no_markup(desk: Desk, tmp_path: Path) -> None:
    path = tmp_path / "[bold] sowings.csv"
    rows = "".join(f'cosmos,"{name}","{name}"\n' for name in HOSTILE)
    path.write_text("crop,variety,container\n" + rows, encoding="utf-8")
    app = app_on(desk)
    async with app.run_test(size=(60, 20)) as pilot:
        screen = await read(app, pilot, path)
        assert "[bold] sowings.csv" in seen(app)
        for _ in HOSTILE:
            await pilot.press("down")
            await pilot.pause()
        assert len(screen.drafts) + sum(1 for row in screen._rows if row.fault) == len(HOSTILE)


async def shown(app: BenchroundApp, pilot: Pilot[None], screen: str) -> None:
    """Wait until a screen stands in front."""
    for _ in range(400):
        if front(app) == screen:
            return
        await pilot.pause(0.02)
    raise AssertionError(f"{screen} was not shown; {front(app)} was")


async def test_reading_is_stopped_by_escape_and_nothing_changes(
    desk: Desk, sheet: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def endless(
        text: str, season: object, names: object, today: object, free: int, progress: Progress
    ) -> tuple[SheetRow, ...]:
        for number in range(10_000):  # twenty seconds, unless it is stopped
            progress(number, 10_000)
            time.sleep(0.002)
        return ()

    monkeypatch.setattr(taking_in, "read_sheet", endless)
    before = desk.folder.records()
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "i", "o")
        form_of(app).field("file").put(str(sheet))
        await pilot.press("enter")
        await shown(app, pilot, PROGRESS)
        assert "Reading sowings.csv" in seen(app)
        assert "esc stops it. Nothing was recorded." in seen(app)
        await pilot.press("escape")
        await pilot.pause()
        await settled(app, pilot)
        assert front(app) == TAKE_IN
        assert "of 10000 rows. Nothing was recorded." in said(app)
    assert desk.folder.records() == before


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_regression_of_the_screen(desk: Desk, sheet: Path, size: tuple[int, int]) -> None:
    app = app_on(desk)
    async with app.run_test(size=size) as pilot:
        await pilot.press("g", "i")
        await pilot.pause()
        same_as_kept(f"sheet_in_empty_{size[0]}x{size[1]}", seen(app))
        await pilot.press("o")
        await pilot.pause()
        same_as_kept(f"sheet_file_{size[0]}x{size[1]}", seen(app))
        form_of(app).field("file").put(str(sheet))
        await pilot.press("enter")
        await pilot.pause()
        await settled(app, pilot)
        same_as_kept(f"sheet_in_{size[0]}x{size[1]}", seen(app))


BEFORE: dict[str, tuple[str, ...]] = {
    "row-up": ("down",),
    "rows-up": ("end",),
    "first-row": ("end",),
    "undo-rows": ("t",),
    "empty": ("a",),
}


@pytest.mark.parametrize(
    ("key", "name"),
    [
        pytest.param(key, name, id=f"{key.id} {name}")
        for key in keys_on(TAKE_IN)
        for name in key.keys
    ],
)
async def test_every_key_does_something(
    desk: Desk, clock: SampleClock, sheet: Path, key: Key, name: str
) -> None:
    app = app_on(desk, clock)
    async with app.run_test(size=(60, 20)) as pilot:
        await read(app, pilot, sheet)
        await pilot.press(*BEFORE.get(key.id, ()))
        await pilot.pause()
        before = seen(app), app.theme
        await pilot.press(name)
        await pilot.pause()
        after = seen(app), app.theme
    assert app.return_code == 0 if key.id == "quit" else before != after
