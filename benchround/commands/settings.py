"""`benchround settings`: show and change how the program works for this season, and the site."""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from zoneinfo import ZoneInfo, available_timezones

from benchround.core.errors import InputError, UnknownNameError
from benchround.core.near_names import near_words, shown
from benchround.core.record import Draft, Figure, Kind
from benchround.core.record_figures import FigureRule, Form
from benchround.core.settings_words import SETTINGS
from benchround.core.site_words import FROSTS, SITE_FIGURES, read_month_day
from benchround.desk import Desk
from benchround.plain import JsonValue
from benchround.rounds.record_line import Word
from benchround.rounds.typed_words import read_choice, read_number, read_yes_no
from benchround.shell.opened import add_season, figure_word, latest, reading, writing
from benchround.shell.saying import add_json, answer, recorded_lines, written

HELP = "show or change the season's settings: units, site, household, weather"
EXAMPLE = "benchround settings feed_every_days=10 pets=no"
MORE_EXAMPLES = ("benchround settings", "benchround settings compost=")
DETAILS = (
    "Without a word all are listed, with what holds now. name=value changes one, several at once "
    "are one action, and name= with nothing behind it goes back to the usual. children and pets "
    "say who lives there, for the cautions. Typed temperatures are always degrees C, or end in "
    "F."
)
TIMEZONE = "timezone"
OF_SITE = (*SITE_FIGURES, *FROSTS, TIMEZONE)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument(
        "words",
        metavar="name=value",
        nargs="*",
        default=[],
        type=figure_word,
        help="settings to change",
    )
    add_season(parser)
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """List them, or change some."""
    if not given.words:
        with reading(given.season) as desk:
            _list(given, desk)
        return 0
    with writing(given.season) as desk:
        records = desk.record(_drafts(given.words, desk))
        answer(
            {"settings": _values(desk), "written": written(records)},
            recorded_lines(records),
            as_json=given.json,
        )
    return 0


def _drafts(words: list[Word], desk: Desk) -> list[Draft]:
    names = [name for name, _ in words]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise InputError(f"'{twice}' is given twice: say it once.")
    site: dict[str, str] = {}
    drafts: list[Draft] = []
    for name, text in words:
        if name in SETTINGS:
            value = _setting(SETTINGS[name].rule, text.strip()) if text.strip() else ""
            drafts.append(Draft(Kind.SETTING, SETTINGS[name].key, {"value": value}))
        elif name in OF_SITE:
            site[name] = text.strip()
        else:
            near = near_words(name, (*SETTINGS, *OF_SITE), "'benchround settings' lists them")
            raise UnknownNameError(f"There is no setting {shown(name)}: {near}.")
    return [*drafts, Draft(Kind.SITE, "", _site(site, desk))] if site else drafts


def _setting(rule: FigureRule, text: str) -> str:
    if rule.form is Form.CHOICE:
        return read_choice(rule.name, text, rule.choices)
    return str(read_number(rule, text))


def _site(words: Mapping[str, str], desk: Desk) -> dict[str, Figure]:
    before = latest(desk, Kind.SITE, "")
    figures: dict[str, Figure] = dict(before.figures) if before else {}
    for name, text in words.items():
        if not text:
            figures.pop(name, None)
        else:
            figures[name] = _site_figure(name, text)
    return figures


def _site_figure(name: str, text: str) -> Figure:
    if name in FROSTS:
        return read_month_day(name, text)
    if name == TIMEZONE:
        return _timezone(text)
    rule = SITE_FIGURES[name]
    return read_yes_no(name, text) if rule.form is Form.YES_NO else read_number(rule, text)


def _timezone(text: str) -> str:
    try:
        return ZoneInfo(text).key
    except (ValueError, OSError, KeyError):
        near = near_words(text, available_timezones(), "write it as Europe/London")
        raise UnknownNameError(f"There is no time zone {shown(text)}: {near}.") from None


def _values(desk: Desk) -> dict[str, JsonValue]:
    site = latest(desk, Kind.SITE, "")
    said = desk.season.settings
    found: dict[str, JsonValue] = {
        name: said.get(one.key, "") or None for name, one in SETTINGS.items()
    }
    found.update({name: site.figures.get(name) if site else None for name in OF_SITE})
    return found


def _list(given: argparse.Namespace, desk: Desk) -> None:
    values = _values(desk)
    lines = []
    for name, value in values.items():
        one = SETTINGS.get(name)
        usual = f"not set ({one.usual})" if one else "not set"
        text = usual if value is None else _words(value)
        lines.append(f"{name} = {text}{f'  ({one.meaning})' if one else ''}")
    answer({"settings": values}, lines, as_json=given.json)


def _words(value: JsonValue) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return f"{value:g}" if isinstance(value, float) else str(value)
