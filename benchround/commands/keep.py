"""`benchround keep`: make today's copy of the season, and list the copies there are."""

from __future__ import annotations

import argparse

from benchround.plain import JsonValue
from benchround.shell.opened import add_season, reading, writing
from benchround.shell.progress import watched
from benchround.shell.saying import add_json, answer
from benchround.store.keep import Kept

HELP = "keep today's copy of the season, and list the copies"
EXAMPLE = "benchround keep"
MORE_EXAMPLES = ("benchround keep --list --json",)
DETAILS = (
    "One copy a day and computer is kept in the season's own folder, the ten latest of each "
    "computer; while a file is damaged none is let go. They lie on the same disk as the season: "
    "copy the folder somewhere else now and then."
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("--list", action="store_true", help="make none, only list them")
    add_season(parser)
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """Make the day's copy unless there is one, and list all."""
    made = ""
    with (reading if given.list else writing)(given.season) as desk:
        if not given.list:
            with watched("keeping", "files", "no copy was made; the others are there.") as progress:
                path = desk.folder.keep_today(desk.today, progress)
            made = path.stem if path else ""
        copies = desk.folder.list_kept()
        value: list[JsonValue] = [copy_value(kept) for kept in copies]
        first = f"kept: {made}" if made else "today's copy is there already"
        lines = [] if given.list else [first]
        lines += [copy_line(kept) for kept in copies] or ["no copy was kept yet"]
        answer({"made": made or None, "copies": value}, lines, as_json=given.json)
    return 0


def copy_value(kept: Kept) -> dict[str, JsonValue]:
    """A kept copy as a JSON-ready value."""
    return {
        "name": kept.path.stem,
        "day": kept.day.isoformat(),
        "machine": kept.machine,
        "bytes": kept.path.stat().st_size,
    }


def copy_line(kept: Kept) -> str:
    """A kept copy to read."""
    return f"copy {kept.path.stem} ({kept.path.stat().st_size / 1024:.0f} KB)"
