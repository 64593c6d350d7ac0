"""`benchround sow`: put a sowing, or a plan for one, on the books."""

from __future__ import annotations

import argparse
from datetime import date

from benchround.core.batch_names import letter_words
from benchround.core.caution.due import Work, cautions_for, mixed_with_edible
from benchround.core.crop.crop import Crop
from benchround.core.dates import say_day
from benchround.core.errors import InputError
from benchround.core.record import Draft, Figure, Kind
from benchround.core.seed.sowing_plan import out_of_window, too_many_words
from benchround.core.task import Family
from benchround.desk import Desk
from benchround.plain import JsonValue
from benchround.reckoning.crop_named import crop_named
from benchround.rounds.record_line import Word
from benchround.shell.cautions import add_have_read, cautions_said, read_drafts
from benchround.shell.opened import add_season, day_typed, figure_word, reader, writing
from benchround.shell.saying import add_json, answer, recorded_lines, written
from benchround.shell.sowing import Ahead, Label, ahead_of, begins_with, filled_in, label_of

HELP = "put a sowing on the books, or plan one"
EXAMPLE = (
    'benchround sow cosmos --variety "Paper Lantern" --seeds 40 --cells 40 --place "Bench 1" '
    "--wanted 24 --container '40-cell tray'"
)
MORE_EXAMPLES = (
    "benchround sow foxglove --plan --wanted 40 --place frame-c --on +10",
    'benchround sow tulip --wanted 30 --place "Bed 3" depth_mm=150',
)
DETAILS = (
    "What is not said is taken from the crop's rules: how it is raised, depth, covering, seeds "
    "to a cell. Further figures are given as name=value, such as depth_mm=4 or heat_c=18; "
    "'benchround help note' tells which there are. Printed are the batch's id, the two sides of "
    "its label, and the day to look for the first seedlings. A bulb is planted, not sown: "
    "--wanted or --seeds is then the number planted."
)
OPTIONS = ("variety", "seeds", "cells", "place", "wanted", "container", "packet")


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("crop", metavar="CROP", help="key, name or synonym of the crop")
    parser.add_argument(
        "words",
        metavar="figure=value",
        nargs="*",
        default=[],
        type=figure_word,
        help="further figures",
    )
    parser.add_argument("--variety", default="", help="the variety, as on the packet")
    parser.add_argument("--seeds", default="", metavar="N", help="seeds sown")
    parser.add_argument("--cells", default="", metavar="N", help="cells or pots sown")
    parser.add_argument("--place", default="", help="code or name of the place")
    parser.add_argument("--wanted", default="", metavar="N", help="plants wanted")
    parser.add_argument("--container", default="", help="such as '40-cell tray'")
    parser.add_argument("--packet", default="", help="the packet it came from")
    parser.add_argument("--on", default="", metavar="DATE", help="day it was or will be sown")
    parser.add_argument("--plan", action="store_true", help="plan it, do not sow it yet")
    parser.add_argument("--text", default="", help="a note")
    add_have_read(parser)
    add_season(parser)
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """Record it and say what follows."""
    with writing(given.season) as desk:
        crop = desk.season.crop(crop_named(given.crop, desk.library).key)
        kind = begins_with(crop, planned=given.plan)
        day = day_typed(given.on, desk, ahead=given.plan)
        draft = _draft(given, desk, crop, kind, day)
        ids = _caution_ids(desk, crop, draft)
        read = read_drafts(
            ids, desk.season, desk.today, crop, have_read=given.have_read, waits=True
        )
        said = cautions_said(ids, desk.season, desk.today, crop)
        minds = _minds(desk, crop, draft, day)
        lettered = letter_words(draft.about, desk.season.batches)
        records = desk.record((draft, *read), desk.today)
        batch = desk.season.batches[draft.about]
        label, ahead = label_of(batch, crop), ahead_of(desk.season, batch, crop, desk.today)
        value: dict[str, JsonValue] = {
            "batch": batch.id,
            "crop": crop.key,
            "label": {"front": label.front, "back": label.back},
            "look_from": _iso(ahead.look_from),
            "half_by": _iso(ahead.half_by),
            "late_from": _iso(ahead.late_from),
            "sow_from": _iso(ahead.sow_from),
            "seeds_reckoned": ahead.seeds,
            "remarks": list(minds),
            "cautions": list(said),
            "written": written(records),
        }
        lines = _lines(batch.id, label, ahead, desk.today)
        lines[1:1] = [f"  {lettered}"] if lettered else []
        lines += [*(f"mind: {words}" for words in minds), *said, *recorded_lines(records)]
        answer(value, lines, as_json=given.json)
    return 0


def _draft(given: argparse.Namespace, desk: Desk, crop: Crop, kind: Kind, day: date) -> Draft:
    words: list[Word] = [(name, text) for name in OPTIONS if (text := getattr(given, name))]
    if kind is Kind.PLANTED_BULBS:
        words = _as_count(words)
    words += given.words
    if any(name == "crop" for name, _ in words):
        raise InputError("The crop is named already: leave crop=... out.")
    planned = kind is Kind.PLANNED
    typed = reader(desk).draft(
        "new",
        kind,
        [("crop", crop.key), *words],
        note=given.text,
        day=None if planned else day,
    )
    figures: dict[str, Figure] = filled_in(crop, kind, typed.figures)
    if planned and given.on:
        figures["sow_on"] = day.isoformat()
    return Draft(kind, typed.about, figures, typed.note, day=typed.day)


def _as_count(words: list[Word]) -> list[Word]:
    """Bulbs are counted, not sown: seeds means how many."""
    return [("count" if name == "seeds" else name, text) for name, text in words]


def _caution_ids(desk: Desk, crop: Crop, draft: Draft) -> tuple[str, ...]:
    if draft.kind is Kind.PLANNED:
        return ()
    family = Family.BULBS if draft.kind is Kind.PLANTED_BULBS else Family.SOW
    season = desk.season
    packet = season.packets.get(str(draft.figures.get("packet", "")))
    place = str(draft.figures.get("place", ""))
    work = Work(
        family,
        crop,
        season.place(place),
        season.weather.on(desk.today),
        season.site,
        covering=str(draft.figures.get("covering", "")),
        mixed_with_edible=mixed_with_edible(season.crops_beside(place, crop)),
        treated=packet is not None and packet.treated,
    )
    return cautions_for(work)


def _minds(desk: Desk, crop: Crop, draft: Draft, day: date) -> tuple[str, ...]:
    """What the grower should look at again: the day, and the number of seeds."""
    dated = draft.kind is not Kind.PLANNED or "sow_on" in draft.figures
    seeds = draft.figures.get("seeds", draft.figures.get("count"))
    said = (
        out_of_window(desk.season, crop, day) if dated else "",
        too_many_words(crop, int(seeds) if isinstance(seeds, int) else None),
    )
    undo = "'benchround undo --last' takes it back"
    return tuple(f"{words}; {undo}" for words in said if words)


def _lines(batch: str, label: Label, ahead: Ahead, today: date) -> list[str]:
    lines = [f"batch {batch}", f"label front: {label.front}", f"label back:  {label.back}"]
    if ahead.sow_from is not None:
        lines.append(f"sow from {say_day(ahead.sow_from)} {ahead.sow_from.year}")
    if ahead.look_from is not None:
        half = f", half up by {_said(ahead.half_by, today)}" if ahead.half_by else ""
        late = f", late from {_said(ahead.late_from, today)}" if ahead.late_from else ""
        lines.append(f"look from {_said(ahead.look_from, today)}{half}{late}")
    if ahead.seeds is not None:
        lines.append(f"reckoned: {ahead.seeds_how}")
    return lines


def _said(day: date, today: date) -> str:
    """A day, with its year where that is another one."""
    return say_day(day) if day.year == today.year else f"{say_day(day)} {day.year}"


def _iso(day: date | None) -> str | None:
    return day.isoformat() if day else None
