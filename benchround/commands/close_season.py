"""`benchround close-season`: begin the next season with what lives on and what was learned."""

from __future__ import annotations

import argparse
from collections.abc import Iterable
from pathlib import Path

from benchround.core.record import Draft, Kind, Record
from benchround.core.season_close import Closing, Fate, close_season
from benchround.core.site_words import SEASON_NAME
from benchround.desk import Desk
from benchround.plain import JsonValue
from benchround.rounds.typed_words import batch_named, read_text
from benchround.shell import opened
from benchround.shell.actions import CARRIED
from benchround.shell.begun import begin, require_free
from benchround.shell.opened import add_season, reading, warn_of_unread
from benchround.shell.saying import add_json, answer
from benchround.whereabouts import remember

HELP = "begin the next season with what lives on and what was learned"
EXAMPLE = "benchround close-season ../season-2027 --preview"
MORE_EXAMPLES = (
    'benchround close-season ../season-2027 --name "Garden 2027" --leave b29 --also b07',
)
DETAILS = (
    "Carried over are living biennials, perennials and bulbs, hardy vegetables and herbs, what "
    "is still under way to its place, and everything that was planned; annuals that are out stay "
    "behind. --also and --leave say otherwise for a batch. With them come places, containers, "
    "packets, settings and changed figures of crops. Of the batches that stay behind the sowing, "
    "looks, counts, moves and losses come along, with the weather, so that everything the old "
    "season taught is known in the new one; their daily care does not. Records keep their ids. "
    "The old folder is left as it is; the new one is used from then on."
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("folder", metavar="NEW_FOLDER", help="folder of the next season")
    parser.add_argument("--name", default="", help="its name; else the folder's")
    for option, what in (("--also", "carry this batch over"), ("--leave", "leave this batch")):
        parser.add_argument(
            option, metavar="BATCH", action="append", default=[], help=f"{what}; may be repeated"
        )
    parser.add_argument("--preview", action="store_true", help="only say what would come along")
    add_season(parser)
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """Begin the next season, or say with what it would begin."""
    path = Path(given.folder).expanduser()
    require_free(path)
    name = read_text(SEASON_NAME, given.name.strip()) or path.absolute().name
    with reading(given.season) as old:
        warn_of_unread(old)
        closing = close_season(
            old.folder.records(),
            old.season,
            old.today,
            also=_named(given.also, old),
            leave=_named(given.leave, old),
        )
        from_name = old.folder.name
    if not given.preview:
        begin(path, name, lambda desk: _fill(desk, closing, from_name))
        remember(path)
    _say(given, path, name, closing)
    return 0


def _named(texts: Iterable[str], desk: Desk) -> frozenset[str]:
    return frozenset(batch_named(text, desk.season) for text in texts)


def _fill(desk: Desk, closing: Closing, from_name: str) -> tuple[Record, ...]:
    """Write what comes along; then, by a desk that knows it, what ends what does not."""
    desk.folder.append(closing.records)
    knowing = Desk(desk.folder, opened.today)
    carried = Draft(Kind.SETTING, CARRIED, {"value": from_name})
    return knowing.record((*closing.ends, carried))


def _say(given: argparse.Namespace, path: Path, name: str, closing: Closing) -> None:
    value: dict[str, JsonValue] = {
        "preview": given.preview,
        "folder": str(path),
        "name": name,
        "carried": [_fate_value(fate) for fate in closing.fates if fate.carried],
        "left_behind": [_fate_value(fate) for fate in closing.fates if not fate.carried],
        "records": len(closing.records),
        "records_left": closing.left,
    }
    would = "would begin" if given.preview else "begun"
    lines = [
        f"{would}: {name} in {path} with {len(closing.records)} records; {closing.left} stay behind"
    ]
    for title, carried in (("carried over", True), ("left behind", False)):
        fates = [fate for fate in closing.fates if fate.carried is carried]
        lines.append(f"{title}: {len(fates)} living batches")
        lines += [f"  {_fate_words(fate)}" for fate in fates]
    answer(value, lines, as_json=given.json)


def _fate_value(fate: Fate) -> dict[str, JsonValue]:
    return {
        "batch": fate.batch,
        "crop": fate.crop,
        "variety": fate.variety,
        "stage": fate.stage,
        "because": fate.because,
    }


def _fate_words(fate: Fate) -> str:
    variety = f" '{fate.variety}'" if fate.variety else ""
    return f"{fate.batch} {fate.crop}{variety}, {fate.stage}: {fate.because}"
