"""`benchround reckon pot`: what a pot, cell or tray of one's own holds."""

from __future__ import annotations

import argparse

from benchround.core.containers import TAPER, prism_ml, round_cell_ml, tapered_ml
from benchround.core.numbers.ranges import within
from benchround.reckoning.answer import Answer, rounded
from benchround.reckoning.figures import count, number, pair, share

HELP = "what a pot, cell or tray of one's own holds, for a container in the settings"
EXAMPLE = "benchround reckon pot --round 90 --depth 85"
SOURCE = "plain geometry: a cut-off cone, or a tray that narrows evenly"


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    top = parser.add_mutually_exclusive_group(required=True)
    top.add_argument("--round", type=number, metavar="MM", help="diameter at the top")
    top.add_argument("--square", type=pair, metavar="MM,MM", help="width and length at the top")
    parser.add_argument("--depth", type=number, required=True, metavar="MM", help="filled so deep")
    parser.add_argument(
        "--taper",
        type=share,
        default=TAPER,
        metavar="T",
        help=f"width at the bottom over the top ({TAPER:g})",
    )
    parser.add_argument("--cells", type=count, default=1, metavar="N", help="cells (1)")


def reckon(given: argparse.Namespace) -> Answer:
    """The volume of a cell and of all of them."""
    for what, value in _sizes(given).items():
        within(what, value, 1.0, 2000.0, "mm")
    within("the taper", given.taper, 0.0, 1.0, "")
    within("cells", given.cells, 1, 1000)
    if given.round is not None:
        cell = round_cell_ml(given.round, given.depth, given.taper)
        upright = round_cell_ml(given.round, given.depth, 1.0)
    else:
        width, length = given.square
        cell = tapered_ml(width, length, given.depth, given.taper)
        upright = prism_ml(width, length, given.depth)
    return Answer(
        value={
            "cell_ml": rounded(cell, 2),
            "upright_ml": rounded(upright, 2),
            "litres": rounded(cell * given.cells / 1000.0, 4),
            "source": SOURCE,
        },
        lines=(
            f"{cell:.0f} ml a cell, {cell * given.cells / 1000.0:.2f} litres in all",
            f"  with upright sides it would hold {upright:.0f} ml",
            f"  formula: {SOURCE}",
        ),
    )


def _sizes(given: argparse.Namespace) -> dict[str, float]:
    if given.round is not None:
        return {"the diameter": given.round, "the depth": given.depth}
    return {
        "the width": given.square[0],
        "the length": given.square[1],
        "the depth": given.depth,
    }
