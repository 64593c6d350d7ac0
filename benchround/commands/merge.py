"""`benchround merge`: bring together what two season folders tell."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from contextlib import ExitStack
from pathlib import Path

from benchround.core.errors import InputError, SeasonError
from benchround.core.progress import Progress
from benchround.core.record import Record
from benchround.core.season_union import Clash, clashes, missing_in
from benchround.desk import Desk
from benchround.plain import JsonValue
from benchround.season_given import require_writable
from benchround.shell import opened
from benchround.shell.begun import begin, require_free
from benchround.shell.opened import warn_of_unread
from benchround.shell.progress import watched
from benchround.shell.saying import add_json, answer, record_words, remark, written
from benchround.store import merge
from benchround.whereabouts import find_season

HELP = "bring together what two folders of one season tell"
EXAMPLE = "benchround merge . ../laptop-season --preview"
MORE_EXAMPLES = ("benchround merge . ../laptop-season --into ../both",)
DETAILS = (
    "For two copies of one season that went separate ways, on a laptop and a stick, say. Without "
    "--into the records only B has are added to A; with it both are left as they are and C "
    "becomes a season that holds all of both. Every record is there once and keeps its id, so "
    "merging again adds nothing. A record told in two ways stays in A as it is; in C the longer "
    "telling stands. Where both have given one batch id to two different sowings nothing is "
    "merged unless --anyway is said: the younger story is then not counted, and the round names "
    "it."
)
NOTHING = "nothing was merged; both folders are as they were."
STEPS = 4
"""Reading A, reading B, comparing them, writing."""


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("first", metavar="A", help="a season folder")
    parser.add_argument("second", metavar="B", help="another one")
    parser.add_argument("--into", metavar="C", default="", help="a folder for a season of both")
    parser.add_argument("--preview", action="store_true", help="only say what would come")
    parser.add_argument("--anyway", action="store_true", help="also where batch ids clash")
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """Merge, or say what merging would do."""
    first, second = _folder(given.first), _folder(given.second)
    if first.resolve() == second.resolve():
        raise InputError(f"{first} and {second} are one and the same folder: name two.")
    into = Path(given.into).expanduser() if given.into else None
    if into is not None:
        require_free(into)
    writes_first = into is None and not given.preview
    with watched("merging", "steps", NOTHING) as progress, ExitStack() as open_now:
        desks: list[Desk] = []
        for number, (folder, reads) in enumerate(((first, not writes_first), (second, True))):
            progress(number, STEPS)
            desks.append(Desk.open(folder, today=opened.today, read_only=reads))
            open_now.callback(desks[-1].close)
        a, b = desks
        if writes_first:
            require_writable(a)
        remark([*a.problems, *b.problems])
        warn_of_unread(*((b,) if into is None else (a, b)))
        progress(2, STEPS)
        _merge(given, a, b, into, progress)
    return 0


def _folder(named: str) -> Path:
    found = find_season(named)
    if found is None:
        raise SeasonError("Name two season folders.")
    return found


def _merge(
    given: argparse.Namespace, a: Desk, b: Desk, into: Path | None, progress: Progress
) -> None:
    both = merge(a.folder.records(), b.folder.records())
    from_b = missing_in(a.folder.records(), b.folder.records())
    from_a = missing_in(b.folder.records(), a.folder.records())
    odd = clashes(a.season.batches, b.season.batches)
    if odd and not (given.anyway or given.preview):
        names = "; ".join(str(clash) for clash in odd[:5])
        more = f" and {len(odd) - 5} more" if len(odd) > 5 else ""
        raise InputError(
            f"Nothing was merged. {names}{more}: are these two different seasons? "
            "With --anyway they are merged all the same."
        )
    progress(3, STEPS)
    if not given.preview:
        _write(a, from_b, both.records, into)
    progress(STEPS, STEPS)
    _say(given, from_a, from_b, both.disagreements, odd, into)


def _write(
    a: Desk, from_b: tuple[Record, ...], both: tuple[Record, ...], into: Path | None
) -> None:
    if into is None:
        a.folder.append(from_b)
    else:
        begin(into, a.folder.name, lambda desk: desk.folder.append(both))


def _say(
    given: argparse.Namespace,
    from_a: Sequence[Record],
    from_b: Sequence[Record],
    disagreements: Sequence[str],
    odd: Sequence[Clash],
    into: Path | None,
) -> None:
    told: list[JsonValue] = list(disagreements)
    clashing: list[JsonValue] = [clash.batch for clash in odd]
    value: dict[str, JsonValue] = {
        "preview": given.preview,
        "into": str(into) if into else given.first,
        "only_in_a": len(from_a),
        "only_in_b": len(from_b),
        "told_two_ways": told,
        "clashing_batches": clashing,
        "records": written(from_b),
    }
    would = "would come" if given.preview else "came"
    lines = [
        f"{would} from {given.second}: {_number(from_b)}; only in {given.first}: {_number(from_a)}",
        *(f"told in two ways: {name}" for name in disagreements),
        *(f"clash: {clash}" for clash in odd),
        *(record_words(record) for record in from_b),
    ]
    answer(value, lines, as_json=given.json)


def _number(records: Sequence[Record]) -> str:
    return "1 record" if len(records) == 1 else f"{len(records)} records"
