"""Draws the pictures in the guide and the README from the sample season, on its day.

`python -m tests.screens.guide` draws all of them anew, `python -m tests.screens.guide sow.md` those
of one page; look at the difference before you keep it. A picture stands between
`<!-- picture: NAME -->` and `<!-- end of picture -->`; NAME is one of `guide_pictures.PICTURES`.
Tables of keys stand between `<!-- keys: SCREEN: ID ID; SCREEN: ID -->` and `<!-- end of keys -->`.
"""

from __future__ import annotations

import asyncio
import contextlib
import io
import os
import re
import shlex
import sys
import tempfile
import textwrap
from collections.abc import Iterator
from pathlib import Path

from benchround.cli import main
from benchround.clock import SampleClock
from benchround.core.visible import visible
from benchround.desk import Desk
from benchround.screens.first_run_app import FirstRunApp
from benchround.screens.keys import keys_on
from tests.sample.story import DAY_0, records
from tests.screens.guide_pictures import (
    PICTURES,
    SHEET,
    FirstScreen,
    Picture,
    Printed,
    Screen,
)
from tests.screens.stage import MACHINE, app_on, seen, stand_on, write_season

DOCS = Path(__file__).resolve().parents[2] / "docs"
SIZE = (80, 24)
BLOCK = re.compile(r"(<!-- picture: (.+?) -->\n)```\n.*?```\n(<!-- end of picture -->)", re.DOTALL)
KEY_BLOCK = re.compile(r"(<!-- keys: (.+?) -->\n).*?(<!-- end of keys -->)", re.DOTALL)
SIGNS = {" ": "space", ".": "full_stop", "+": "plus", "-": "minus", ";": "semicolon"}
TERMINAL = {"TERM": "xterm-256color", "LANG": "en_GB.UTF-8"}
UNSET = ("NO_COLOR", "COLORTERM", "LC_ALL", "LC_CTYPE")


def pages() -> tuple[str, ...]:
    """The pages with pictures, named from docs/."""
    return tuple(dict.fromkeys(picture.page for picture in PICTURES.values()))


def key_names(keys: str) -> list[str]:
    """The keys to press, such as `g d down*2 'cosm'`."""
    found: list[str] = []
    for typed, word in re.findall(r"'([^']*)'|(\S+)", keys):
        name, _, times = word.partition("*")
        found += [SIGNS.get(sign, sign) for sign in typed] if typed else [name] * int(times or 1)
    return found


@contextlib.contextmanager
def a_terminal_with_colours() -> Iterator[None]:
    """The same terminal, whatever the generator is started in."""
    before = {name: os.environ.get(name) for name in (*TERMINAL, *UNSET)}
    for name in UNSET:
        os.environ.pop(name, None)
    os.environ.update(TERMINAL)
    try:
        yield
    finally:
        for name, value in before.items():
            os.environ.pop(name, None)
            if value is not None:
                os.environ[name] = value


def drawn(picture: Picture) -> str:
    """The picture as lines of text."""
    with (
        a_terminal_with_colours(),
        tempfile.TemporaryDirectory() as home,
        contextlib.chdir(home),
    ):
        if isinstance(picture, Printed):
            return _printed(picture, Path(home))
        if isinstance(picture, FirstScreen):
            return asyncio.run(_first_screen(picture))
        return asyncio.run(_screen(picture, Path(home)))


async def _screen(picture: Screen, home: Path) -> str:
    if picture.sheet:
        (home / "sowings.csv").write_text(SHEET, encoding="utf-8")
    clock = SampleClock()
    desk = Desk.open(write_season(home / "season", records()), today=clock, machine=MACHINE)
    app = app_on(desk, clock)
    async with app.run_test(size=SIZE) as pilot:
        if picture.stand is not None:
            stand_on(app, *picture.stand)
        await pilot.press(*key_names(picture.keys))
        for _ in range(4):
            await pilot.pause()
            await app.workers.wait_for_complete()
        await pilot.pause()
        text = seen(app)
    desk.close()
    return text


async def _first_screen(picture: FirstScreen) -> str:
    app = FirstRunApp(lambda season: None, Path("/home/ada/season-2026"), DAY_0)
    async with app.run_test(size=SIZE) as pilot:
        await pilot.press(*key_names(picture.keys))
        await pilot.pause()
        strips = app.screen._compositor.render_strips()
        return "\n".join(strip.text.rstrip() for strip in strips) + "\n"


def _printed(picture: Printed, home: Path) -> str:
    known = records()
    season = write_season(home / "season", known[: len(known) - picture.lacks])
    if "laptop-season" in picture.command:
        write_season(home / "laptop-season", known)
    said = io.StringIO()
    with (
        contextlib.chdir(season),
        contextlib.redirect_stdout(said),
        contextlib.redirect_stderr(io.StringIO()),
    ):
        code = main(shlex.split(picture.command)[1:])
    if code:
        raise RuntimeError(f"'{picture.command}' ended with {code}: {visible(said.getvalue())}")
    lines = [part for line in said.getvalue().splitlines() for part in _broken(line)]
    more = ["..."] if len(lines) > picture.lines else []
    return "\n".join([f"$ {picture.command}", *lines[: picture.lines], *more]) + "\n"


def _broken(line: str) -> list[str]:
    """A line no wider than a screen; what does not fit goes on below, further in."""
    return textwrap.wrap(line, SIZE[0], subsequent_indent="      ") or [""]


def redrawn(text: str) -> str:
    """A page with its pictures and its tables of keys drawn anew."""
    text = KEY_BLOCK.sub(lambda block: f"{block[1]}{key_table(block[2])}{block[3]}", text)
    return BLOCK.sub(
        lambda block: f"{block[1]}```\n{drawn(PICTURES[block[2]])}```\n{block[3]}", text
    )


def key_table(wanted: str) -> str:
    """Rows of the list of keys, wanted as `screen: id id; screen: id`."""
    lines = ["| key | what it does |", "|---|---|"]
    for part in wanted.split("; "):
        screen, _, ids = part.partition(": ")
        keys = {key.id: key for key in keys_on(screen)}
        lines += [f"| `{keys[name].shown}` | {keys[name].tooltip} |" for name in ids.split()]
    return "\n" + "\n".join(dict.fromkeys(lines)) + "\n\n"


def draw_all(only: tuple[str, ...]) -> None:
    """Write the pages anew; all of them where none is named."""
    for page in pages():
        path = DOCS / page
        if not only or path.name in only:
            text = path.read_text(encoding="utf-8")
            path.write_text(redrawn(text), encoding="utf-8")


if __name__ == "__main__":
    draw_all(tuple(sys.argv[1:]))
