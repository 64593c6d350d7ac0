"""`benchround reckon SUBJECT`: one sum, with the source of its formula; needs no season."""

from __future__ import annotations

import argparse
from importlib import import_module

from benchround.reckoning.answer import give
from benchround.reckoning.figures import FigureParser

HELP = "reckon one thing: emergence, quantity, storage, plan, frost, tonight, sun, water, ..."
EXAMPLE = "benchround reckon emergence tomato --temp 18 --json"

SUBJECTS = (
    "emergence",
    "late",
    "base",
    "quantity",
    "weight",
    "germination",
    "trial",
    "lots",
    "storage",
    "plan",
    "succession",
    "frost",
    "tonight",
    "sun",
    "frame",
    "water",
    "pot",
    "evaporation",
    "air",
    "wind",
    "degreedays",
)
"""Names of the subjects; each is a module of `benchround.reckoning`."""


def arguments(parser: argparse.ArgumentParser) -> None:
    """One subject with its own arguments."""
    subjects = parser.add_subparsers(
        dest="subject", metavar="SUBJECT", required=True, parser_class=FigureParser
    )
    for name in SUBJECTS:
        module = import_module(f"benchround.reckoning.{name}")
        subject = subjects.add_parser(
            name,
            help=module.HELP,
            description=module.HELP,
            epilog=f"example: {module.EXAMPLE}",
        )
        module.arguments(subject)
        subject.add_argument("--json", action="store_true", help="print JSON")


def run(given: argparse.Namespace) -> int:
    """Print the answer; what was left out or assumed goes to standard error."""
    module = import_module(f"benchround.reckoning.{given.subject}")
    give(module.reckon(given), as_json=given.json)
    return 0
