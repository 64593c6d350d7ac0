"""Names nobody would choose, on every screen: nothing breaks, nothing is lost, no markup is met."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest
from textual.events import Paste

from benchround.clock import SampleClock
from benchround.core.record import Kind, Record
from benchround.desk import Desk
from benchround.screens.text import clean
from tests.sample.story import DAY_0
from tests.screens.stage import (
    MACHINE,
    app_on,
    figures,
    first_with,
    form_of,
    front,
    seen,
    write_season,
)

NAMES = {
    "brackets": "tray [A]",
    "closing tag": "[/]",
    "opening tag": "[bold red]x",
    "link": "[@click=app.quit]x[/]",
    "right to left": "\u05e9\u05dc\u05d5\u05dd \u202egnp",
    "wide": "\u4e2d\u6587\U0001f331" * 20,
    "long": "x" * 10_000,
    "accents": "e" + "\u0301" * 200,
}
SIZES = ((60, 20), (120, 40))


def season_of(path: Path, name: str) -> Path:
    """A season in which place, variety, note and reason all bear a hostile name."""
    day = DAY_0 - timedelta(days=20)
    sown = figures(crop="lettuce", variety=name, wanted=20, seeds=40, place="bench", container=name)
    lines = (
        (Kind.PLACE, "bench", figures(name=name, kind="bench", order=1), ""),
        (Kind.SOWN, "b01", sown, name),
        (Kind.FIRST_UP, "b01", figures(), name),
        (Kind.PACKET, "p01", figures(crop="lettuce", variety=name, year=2025), ""),
    )
    return write_season(
        path,
        [
            Record(f"0HOSTILE{number:04d}", day, kind, about, said, note, machine=MACHINE)
            for number, (kind, about, said, note) in enumerate(lines)
        ],
    )


@pytest.fixture(params=list(NAMES), ids=list(NAMES))
def hostile(request: pytest.FixtureRequest, tmp_path: Path) -> tuple[Desk, str]:
    name = NAMES[request.param]
    path = season_of(tmp_path / "season", name)
    desk = Desk.open(path, today=SampleClock(), machine=MACHINE)
    request.addfinalizer(desk.close)
    return desk, name


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_every_screen_shows_it_as_letters(
    hostile: tuple[Desk, str], size: tuple[int, int]
) -> None:
    desk, name = hostile
    app = app_on(desk)
    start = clean(name)[:8].strip()
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        assert start in seen(app)
        first_with(app)
        for key in ("w", "question_mark", "enter", "r", "p"):
            await pilot.press(key)
            await pilot.pause()
            assert front(app) != "round"
            assert start in seen(app) or key == "question_mark"
            await pilot.press("escape")
            await pilot.pause()
        await pilot.press("s", *"lett", *["tab"] * 6)
        await pilot.pause()
        assert form_of(app).now.id == "place"
        form_of(app).go("packet")
        await pilot.press("down")
        await pilot.pause()
        assert form_of(app).field("variety").default == name
        await pilot.press("ctrl+s")
        await pilot.pause()
        if front(app) == "sow":
            faults = {field.id for field in form_of(app).fields if field.error}
            assert faults
            assert faults <= {"variety", "container"}
        else:
            assert desk.season.batches["b02"].variety == " ".join(name.split())


async def test_it_can_be_typed_and_is_kept_to_the_letter(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("s", *"cornfl", "tab")
        for sign in "tray [A] [/]":
            await pilot.press({"[": "left_square_bracket", "]": "right_square_bracket",
                               "/": "slash", " ": "space"}.get(sign, sign))  # fmt: skip
        await pilot.pause()
        assert form_of(app).field("variety").text == "tray [A] [/]"
        await pilot.press("ctrl+s")
        await pilot.pause()
    assert desk.season.batches["b34"].variety == "tray [A] [/]"


async def test_pasted_controls_and_line_ends_do_not_get_in(desk: Desk) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("s", *"cornfl", "tab")
        form_of(app).post_message(Paste("two\nlines\x1b[31m\x07" + "y" * 20_000))
        await pilot.pause()
        assert form_of(app).field("variety").text.startswith("two lines\x1b[31m")
        assert "\x1b" not in seen(app)
        assert "\x07" not in seen(app)
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert front(app) == "sow"
        assert "letters are too many" in form_of(app).field("variety").error
        form_of(app).field("variety").put("two\x1b[31m")
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert "control characters" in form_of(app).field("variety").error
    assert "b34" not in desk.season.batches
