"""`benchround crops`: look crops up, and change single figures of one for the season."""

from __future__ import annotations

import argparse
from collections.abc import Sequence

from benchround.core.crop.page import CropFigure, crop_figures, typed_figure, value_words
from benchround.core.crop.search import find_crops, folded
from benchround.core.errors import InputError, UnknownNameError
from benchround.core.near_names import near_words, shown
from benchround.core.record import Draft, Figure, Kind
from benchround.crops.library import CropLibrary, CropNames, load_library
from benchround.desk import Desk
from benchround.plain import JsonValue
from benchround.reckoning.crop_named import crop_named
from benchround.shell.crop_rules import CropRules, rules_of
from benchround.shell.opened import add_season, figure_word, reading, writing
from benchround.shell.saying import add_json, answer, recorded_lines, written
from benchround.whereabouts import find_season, sample_folder

HELP = "look crops up, and change figures of one for the season"
EXAMPLE = "benchround crops cosmos"
MORE_EXAMPLES = (
    "benchround crops bell",
    "benchround crops cosmos set germination.days_first=6 growing.pinch_pairs=3",
    "benchround crops",
)
DETAILS = (
    "A crop's name or key gives all its figures with their sources; other letters list the crops "
    "whose names hold them. 'set' changes figures for this season, each checked like a crop "
    "file; two numbers are written '28 to 35', a list 'white, pink', and 'none' takes away a "
    "figure that may be missing. 'unset' gives the library's figure back. Changed figures are "
    "marked OWN, with the library's beside them. docs/crops.md lists what each key means."
)
SET, UNSET = "set", "unset"


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("crop", metavar="CROP", nargs="?", default="", help="a crop, or letters")
    parser.add_argument(
        "words",
        metavar="set figure=value | unset figure",
        nargs="*",
        default=[],
        help="figures to change, or to give back",
    )
    add_season(parser)
    parser.add_argument("--sample", action="store_true", help="as the sample season has it")
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """List, show or change."""
    library = load_library()
    if given.sample:
        if given.words:
            raise InputError("The sample season is not written to: leave --sample out.")
        given.season = str(sample_folder())
    if given.words:
        return _change(given)
    found = _exact(library, given.crop) if given.crop else None
    if found is None:
        return _list(given, library)
    if find_season(given.season) is None:
        return _page(given, CropRules(library[found], library[found], ()))
    with reading(given.season) as desk:
        return _page(given, rules_of(desk, found))


def _exact(library: CropLibrary, text: str) -> str | None:
    """The key of the crop that has exactly this name; None where letters are meant."""
    if text in library:
        return text
    wanted = folded(text)
    names = [
        line.key
        for line in library.names()
        if wanted in {folded(name) for name in (line.key, line.name, line.latin, *line.synonyms)}
    ]
    return names[0] if len(names) == 1 else None


def _list(given: argparse.Namespace, library: CropLibrary) -> int:
    found: Sequence[CropNames] = find_crops(given.crop, library.names())
    if not found:
        crop_named(given.crop, library)  # names the nearest
    value: list[JsonValue] = [
        {"key": line.key, "name": line.name, "latin": line.latin, "class": str(line.plant_class)}
        for line in found
    ]
    wide = max(len(line.key) for line in found)
    lines = [f"{line.key:{wide}}  {line.name} ({line.latin}), {line.plant_class}" for line in found]
    answer({"crops": value}, lines, as_json=given.json)
    return 0


def _page(given: argparse.Namespace, rules: CropRules) -> int:
    crop = rules.crop
    figures = crop_figures(crop, rules.library, rules.changed)
    answer(
        {
            "key": crop.key,
            "name": crop.name,
            "latin": crop.latin,
            "figures": [_value(figure) for figure in figures],
        },
        [f"{crop.name} ({crop.latin}), key {crop.key}", *map(_line, figures)],
        as_json=given.json,
    )
    return 0


def _value(figure: CropFigure) -> JsonValue:
    return {
        "name": figure.name,
        "value": _plain(figure.value),
        "unit": figure.unit,
        "meaning": figure.meaning,
        "source": figure.source,
        "own": figure.own,
        "library": _plain(figure.library) if figure.own else None,
    }


def _plain(value: object) -> JsonValue:
    if isinstance(value, list):
        return [_plain(one) for one in value]
    return value if value is None or isinstance(value, bool | int | float) else str(value)


def _line(figure: CropFigure) -> str:
    unit = f" {figure.unit}" if figure.unit else ""
    own = f"  OWN, library {value_words(figure.library)}{unit}" if figure.own else ""
    return f"{figure.name} = {figure.written}{unit}{own}  ({figure.meaning}) [{figure.source}]"


def _change(given: argparse.Namespace) -> int:
    what, *words = given.words
    if what not in (SET, UNSET) or not words:
        raise InputError(
            f"{shown(what)} is nothing to do with a crop: write 'set figure=value' or "
            "'unset figure'."
        )
    with writing(given.season) as desk:
        key = crop_named(given.crop, desk.library).key
        change = _set if what == SET else _unset
        return change(given, desk, rules_of(desk, key), words)


def _set(given: argparse.Namespace, desk: Desk, rules: CropRules, words: list[str]) -> int:
    figures: dict[str, Figure] = {}
    for word in words:
        try:
            name, text = figure_word(word)
        except argparse.ArgumentTypeError as error:
            raise InputError(f"{error}.") from None
        if name in figures:
            raise InputError(f"'{name}' is given twice: say it once.")
        figures[name] = typed_figure(name, text)
    rules.with_more(figures)
    drafts = [
        Draft(Kind.CROP_RULE, rules.library.key, {name: value}) for name, value in figures.items()
    ]
    records = desk.record(drafts)
    answer(
        {"crop": rules.library.key, "written": written(records)},
        recorded_lines(records),
        as_json=given.json,
    )
    return 0


def _unset(given: argparse.Namespace, desk: Desk, rules: CropRules, names: list[str]) -> int:
    changed = rules.changed
    for name in names:
        if name not in changed:
            near = near_words(name, changed, "nothing of this crop is changed")
            raise UnknownNameError(f"{shown(name)} is not changed: {near}.")
    rules.without(names)
    records = rules.holding(names)
    keep = [
        Draft(Kind.CROP_RULE, rule.about, {name: value}, day=rule.day)
        for rule in records
        for name, value in rule.figures.items()
        if name not in names
    ]
    withdrawn = desk.withdraw([rule.id for rule in records])
    again = desk.record(keep) if keep else ()
    answer(
        {"crop": rules.library.key, "written": written((*withdrawn, *again))},
        [f"given back to the library: {', '.join(names)}", *recorded_lines(again)],
        as_json=given.json,
    )
    return 0
