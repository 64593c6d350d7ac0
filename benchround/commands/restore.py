"""`benchround restore`: bring back what a kept copy has and the season has not."""

from __future__ import annotations

import argparse
from collections.abc import Sequence

from benchround.core.errors import InputError, UnknownNameError
from benchround.core.near_names import near_words, shown
from benchround.core.typed.date import read_day
from benchround.desk import Desk
from benchround.shell.opened import add_season, clearing_up, reading
from benchround.shell.progress import watched
from benchround.shell.saying import add_json, answer, record_words, written
from benchround.store.keep import Kept

HELP = "bring back what a kept copy has and the season has not"
EXAMPLE = "benchround restore latest --preview"
DETAILS = (
    "COPY is 'latest', a name 'benchround keep --list' gives, or a day of which there is one "
    "copy. Nothing is overwritten and no record is taken away: records missing in the season are "
    "added in files of their own, and the season's own file is replaced only where it is "
    "damaged."
)
LATEST = "latest"
STOPPED = "what came back so far stays, whole files only, and the same command adds the rest."


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("copy", metavar="COPY", help="'latest', a copy's name, or its day")
    parser.add_argument("--preview", action="store_true", help="only say what would come back")
    add_season(parser)
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """Bring it back, or say what would come."""
    with (reading if given.preview else clearing_up)(given.season) as desk:
        kept = _chosen(desk, desk.folder.list_kept(), given.copy)
        with watched("looking through", "files", STOPPED) as progress:
            found = desk.folder.restore(kept, given.preview, progress)
        number = len(found.records) + found.unread
        would = "would come back" if given.preview else "came back"
        words = "1 record" if number == 1 else f"{number} records"
        answer(
            {
                "copy": kept.path.stem,
                "preview": given.preview,
                "files": list(found.files),
                "records": written(found.records),
                "unread": found.unread,
            },
            [
                f"from {kept.path.stem} {words} {would}",
                *(f"file: {name}" for name in found.files),
                *(record_words(record) for record in found.records),
            ],
            as_json=given.json,
        )
    return 0


def _chosen(desk: Desk, copies: Sequence[Kept], text: str) -> Kept:
    if not copies:
        raise InputError("No copy of this season was kept yet: 'benchround keep' makes one.")
    wanted = text.strip().lower().removesuffix(".zip")
    if wanted == LATEST:
        return copies[0]
    named = [kept for kept in copies if kept.path.stem.lower() == wanted]
    if not named:
        try:
            day = read_day(wanted, desk.today)
        except InputError:
            day = None
        named = [kept for kept in copies if kept.day == day]
    if len(named) == 1:
        return named[0]
    names = [kept.path.stem for kept in (named or copies)]
    if named:
        raise InputError(f"Of {shown(text)} there is more than one: {', '.join(names)}.")
    near = near_words(text, names, f"there are {', '.join(names[:10])}")
    raise UnknownNameError(f"No copy is called {shown(text)}: {near}.")
