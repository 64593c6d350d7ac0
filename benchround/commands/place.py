"""`benchround place`: list the places, set one up, change it, or take it away."""

from __future__ import annotations

import argparse

from benchround.core.caution.due import CAUTIONS, Page, setup_cautions
from benchround.core.errors import InputError, UnknownNameError
from benchround.core.near_names import near_words, shown
from benchround.core.place_words import PLACE_FIGURES, checked_code
from benchround.core.record import Draft, Figure, Kind
from benchround.core.record_figures import Form
from benchround.core.site import Place
from benchround.desk import Desk
from benchround.plain import JsonValue
from benchround.rounds.typed_words import (
    place_named,
    read_choice,
    read_number,
    read_text,
    read_yes_no,
)
from benchround.shell.opened import add_season, figure_word, latest, reading, writing
from benchround.shell.saying import add_json, answer, recorded_lines, written

HELP = "list places, set one up or change it"
EXAMPLE = "benchround place set frame-d name='Frame D' kind=frame glazing=glass order=7"
MORE_EXAMPLES = ("benchround place", "benchround place set bench-1 trays=8")
DETAILS = (
    "Places are walked in the order of their numbers. 'set' changes what is said and leaves the "
    "rest; a code nobody has yet sets up a new place. name= with nothing behind it takes a "
    "figure away. 'remove' takes a place off the walk once nothing living stands there; its "
    "records stay."
)
SET, REMOVE = "set", "remove"


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("what", nargs="?", choices=(SET, REMOVE), help="what to do; else list")
    parser.add_argument("code", metavar="CODE", nargs="?", default="", help="code of the place")
    parser.add_argument(
        "words",
        metavar="name=value",
        nargs="*",
        default=[],
        type=figure_word,
        help="what it is like",
    )
    add_season(parser)
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """List, set or remove."""
    if given.what is None:
        with reading(given.season) as desk:
            places: list[JsonValue] = [place_value(place) for place in desk.season.places]
            lines = [place_line(place) for place in desk.season.places]
            answer({"places": places}, lines or ["no place is set up yet"], as_json=given.json)
        return 0
    if not given.code:
        raise InputError("Which place? Name its code, such as bench-1.")
    with writing(given.season) as desk:
        draft = _set(given, desk) if given.what == SET else _removed(given.code, desk)
        records = desk.record((draft,))
        place = desk.season.place(draft.about)
        cautions = [CAUTIONS[name].short for name in setup_cautions(Page.PLACE, place)]
        said = [f"caution: {text}" for text in cautions] if place else []
        answer(
            {
                "place": place_value(place) if place else None,
                "cautions": list(said),
                "written": written(records),
            },
            [*([place_line(place)] if place else []), *said, *recorded_lines(records)],
            as_json=given.json,
        )
    return 0


def place_value(place: Place) -> dict[str, JsonValue]:
    """A place as a JSON-ready value."""
    return {
        "code": place.code,
        "name": place.name,
        "kind": str(place.kind),
        "order": place.order,
        "trays": place.trays,
        "glazing": place.glazing,
        "set_c": place.set_c,
        "one_sided": place.one_sided,
        "heated": place.heated,
        "fuel_heater": place.fuel_heater,
        "length_m": place.size_m[0] if place.size_m else None,
        "width_m": place.size_m[1] if place.size_m else None,
        "shade_share": place.shade_share,
    }


def place_line(place: Place) -> str:
    """A place to read."""
    return f"{place.order:3} {place.code}: {place.name}, {place.kind}"


def _set(given: argparse.Namespace, desk: Desk) -> Draft:
    code = _code(given.code, desk)
    if not given.words:
        raise InputError(f"Say what {code} is like: name=..., kind=..., order=...")
    before = latest(desk, Kind.PLACE, code)
    figures: dict[str, Figure] = dict(before.figures) if before else {}
    figures.pop("removed", None)
    names: set[str] = set()
    for name, text in given.words:
        if name in names:
            raise InputError(f"'{name}' is given twice: say it once.")
        names.add(name)
        _change(figures, name, text.strip())
    if before is None and "kind" not in figures:
        kinds = ", ".join(PLACE_FIGURES["kind"].choices)
        near = near_words(given.code, [p.code for p in desk.season.places], "")
        raise InputError(
            f"{shown(code)} is a new place{f' ({near})' if near else ''}: say its kind=..., "
            f"one of {kinds}."
        )
    if before is None and "order" not in figures:
        figures["order"] = max((place.order for place in desk.season.places), default=0) + 1
    return Draft(Kind.PLACE, code, figures)


def _code(text: str, desk: Desk) -> str:
    """The code of a place there is, by code or name; else a new one."""
    for place in desk.season.places:
        if text.strip().lower() in (place.code.lower(), place.name.lower()):
            return place.code
    return checked_code(text.strip())


def _change(figures: dict[str, Figure], name: str, text: str) -> None:
    rule = PLACE_FIGURES.get(name)
    if rule is None:
        near = near_words(name, PLACE_FIGURES, f"it has {', '.join(PLACE_FIGURES)}")
        raise UnknownNameError(f"A place has no {shown(name)}: {near}.")
    if not text:
        figures.pop(name, None)
    elif rule.form is Form.CHOICE:
        figures[name] = read_choice(name, text, rule.choices)
    elif rule.form is Form.YES_NO:
        figures[name] = read_yes_no(name, text)
    elif rule.form is Form.TEXT:
        figures[name] = read_text(rule, text)
    else:
        figures[name] = read_number(rule, text)


def _removed(text: str, desk: Desk) -> Draft:
    code = place_named(text, desk.season)
    standing = sorted(
        batch.id
        for batch in desk.season.batches.values()
        for part in batch.parts
        if part.place == code and not part.ended
    )
    if standing:
        raise InputError(
            f"{code} is not empty: {', '.join(standing)} stand there. Move them first."
        )
    before = latest(desk, Kind.PLACE, code)
    figures: dict[str, Figure] = dict(before.figures) if before else {}
    return Draft(Kind.PLACE, code, {**figures, "removed": True})
