"""`benchround restore`: bring back what a kept copy has, and clear damaged files away."""

from __future__ import annotations

import argparse
from collections.abc import Mapping, Sequence

from benchround.core.errors import InputError, SeasonBusyError, SeasonError, UnknownNameError
from benchround.core.near_names import near_words, shown
from benchround.core.record import Record
from benchround.core.typed.date import read_day
from benchround.desk import Desk
from benchround.plain import JsonValue
from benchround.shell.opened import add_season, clearing_up, reading
from benchround.shell.progress import watched
from benchround.shell.saying import add_json, answer, record_words, remark, written
from benchround.store.keep import Kept
from benchround.store.restoring import Restoration

HELP = "bring back what a kept copy has and the season has not"
EXAMPLE = "benchround restore latest --preview"
MORE_EXAMPLES = ("benchround restore --damaged --preview",)
DETAILS = (
    "COPY is 'latest', a name 'benchround keep --list' gives, or a day of which there is one "
    "copy. Nothing is overwritten and no record is taken away: records missing in the season are "
    "added in files of their own, and the season's own file is replaced only where it is "
    "damaged. --damaged looks up the latest sound copy of every damaged file, brings back what it "
    "has, puts what can be read of the file in a sound one, and moves the file to the folder "
    "'aside'. A file of another computer may only be half here: let the service that brings it "
    "finish first."
)
LATEST = "latest"
STOPPED = "what came back so far stays, whole files only, and the same command adds the rest."


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument(
        "copy", metavar="COPY", nargs="?", help="'latest', a copy's name, or its day"
    )
    parser.add_argument(
        "--damaged", action="store_true", help="mend what is damaged, instead of naming a copy"
    )
    parser.add_argument("--preview", action="store_true", help="only say what would come back")
    add_season(parser)
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """Bring it back, or say what would come."""
    if given.damaged == (given.copy is not None):
        raise InputError("Name a copy, such as 'latest', or say --damaged: one of the two.")
    with (reading if given.preview else clearing_up)(given.season) as desk:
        if given.damaged:
            return mend(given, desk)
        kept = _chosen(desk, desk.folder.list_kept(), given.copy)
        found = _restored(given, desk, kept)
        value: dict[str, JsonValue] = {"copy": kept.path.stem, **_value(given, [found])}
        answer(value, [_line(given, found), *_lines([found])], as_json=given.json)
    return 0


def mend(given: argparse.Namespace, desk: Desk) -> int:
    """Bring back what the damaged files held, and move them aside."""
    damaged = desk.folder.damaged
    good = {name: desk.folder.newest_good(name) for name in damaged}
    copies = dict.fromkeys(copy.kept for copy in good.values() if copy is not None)
    found = [_restored(given, desk, kept) for kept in copies]
    moved = {} if given.preview else _move_aside(desk, damaged)
    told: list[JsonValue] = []
    lines = [] if damaged else ["no file is damaged"]
    for name, copy in good.items():
        from_copy = copy.kept.path.stem if copy else None
        told.append({"file": name, "copy": from_copy, "aside": moved.get(name)})
        lines.append(f"{name}: {f'sound in {from_copy}' if from_copy else 'sound in no copy'}")
        lines += [f"  moved to {moved[name]}"] if name in moved else []
    lines += [_line(given, one) for one in found]
    answer({"damaged": told, **_value(given, found)}, [*lines, *_lines(found)], as_json=given.json)
    return 0 if given.preview or len(moved) == len(damaged) else 1


def _restored(given: argparse.Namespace, desk: Desk, kept: Kept) -> Restoration:
    with watched("looking through", "files", STOPPED) as progress:
        return desk.folder.restore(kept, given.preview, progress)


def _move_aside(desk: Desk, damaged: Sequence[str]) -> dict[str, str]:
    """Where each file lies now; one that cannot be moved is said and left."""
    moved = {}
    for name in damaged:
        try:
            moved[name] = str(desk.folder.set_aside(name))
        except SeasonBusyError:
            raise
        except SeasonError as error:
            remark([str(error)])
    return moved


def _value(given: argparse.Namespace, found: Sequence[Restoration]) -> Mapping[str, JsonValue]:
    return {
        "preview": given.preview,
        "files": [name for one in found for name in one.files],
        "records": written(_records(found)),
        "unread": sum(one.unread for one in found),
    }


def _records(found: Sequence[Restoration]) -> list[Record]:
    """What came back, a record that two copies have only once."""
    return list({record.id: record for one in found for record in one.records}.values())


def _line(given: argparse.Namespace, found: Restoration) -> str:
    number = len(found.records) + found.unread
    would = "would come back" if given.preview else "came back"
    return (
        f"from {found.kept.path.stem} {'1 record' if number == 1 else f'{number} records'} {would}"
    )


def _lines(found: Sequence[Restoration]) -> list[str]:
    files = [f"file: {name}" for one in found for name in one.files]
    return files + [record_words(record) for record in _records(found)]


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
