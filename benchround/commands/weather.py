"""`benchround weather`: the outlook and the readings, typed, shown, imported or fetched."""

from __future__ import annotations

import argparse
from collections.abc import Callable

from benchround.commands.weather_fetch import fetch, fetch_arguments
from benchround.commands.weather_import import bring_in, import_arguments
from benchround.commands.weather_note import (
    note,
    note_arguments,
    read,
    read_arguments,
    show,
    show_arguments,
)
from benchround.feeds.outlook_day import OutlookLineError
from benchround.reckoning.answer import Answer, give
from benchround.reckoning.figures import FigureParser

HELP = "note an outlook, record readings, show, import or fetch the weather"
EXAMPLE = "benchround weather note '5 23 sun; 8/27 r22 g68 from 17'"

MORE_EXAMPLES = (
    "benchround weather read --min 4 --max 19 --rain 0",
    "benchround weather show",
    "benchround weather import station.csv --map day=DATE,min=TMIN,max=TMAX --units F --preview",
    "benchround weather fetch --turn off",
)
DETAILS = (
    "What is coming is the outlook, typed in one line or fetched where that was turned on; what "
    "was measured are readings, of the site or of one place. A reading counts before an outlook. "
    "docs/commands.md tells how a line is typed and which columns a table may have."
)

Arguments = Callable[[argparse.ArgumentParser], None]
Run = Callable[[argparse.Namespace], Answer]

ACTIONS: dict[str, tuple[str, Arguments, Run]] = {
    "note": ("record the outlook from one typed line", note_arguments, note),
    "read": ("record what thermometer and gauge say", read_arguments, read),
    "show": ("print what is known of the weather", show_arguments, show),
    "import": ("record readings from a table of days", import_arguments, bring_in),
    "fetch": ("record the outlook of a forecast service", fetch_arguments, fetch),
}
"""What can be done: words of help, arguments, and the doing."""


def arguments(parser: argparse.ArgumentParser) -> None:
    """One action with its own arguments."""
    actions = parser.add_subparsers(
        dest="action", metavar="ACTION", required=True, parser_class=FigureParser
    )
    examples = dict(zip(ACTIONS, (EXAMPLE, *MORE_EXAMPLES), strict=True))
    for name, (words, its_arguments, _) in ACTIONS.items():
        epilog = f"example: {examples[name]}"
        action = actions.add_parser(name, help=words, description=words, epilog=epilog)
        its_arguments(action)
        action.add_argument("--json", action="store_true", help="print JSON")


def run(given: argparse.Namespace) -> int:
    """Do it and say what was done; a line that was not understood is given back whole."""
    try:
        answer = ACTIONS[given.action][2](given)
    except OutlookLineError as error:
        raise OutlookLineError(_marked(error), error.line, error.word) from None
    give(answer, as_json=given.json)
    return 0


def _marked(error: OutlookLineError) -> str:
    mark = f"\n  {' ' * error.at}{'^' * len(error.word)}" if error.at is not None else ""
    line = error.line.replace("\x1b", "")
    return f"{error}\n  {line}{mark}"
