"""`benchround reckon quantity`: how many cells and seeds for the plants wanted."""

from __future__ import annotations

import argparse

from benchround.core.seed.cells_needed import blank_share, least_germination, seeds_per_cell
from benchround.core.seed.quantity import how_many
from benchround.core.seed.weight import grams_of_seeds
from benchround.reckoning.answer import Answer, rounded
from benchround.reckoning.figures import count, number, share
from benchround.reckoning.tray_room import tray_arguments, tray_room

HELP = "fewest cells that give the plants wanted, with the chance wanted"
EXAMPLE = "benchround reckon quantity --want 24 --germination 0.8 --survival 0.95 --survival 0.9"
KNOWN = (
    "fewest cells with the chance wanted, exact binomial sum (textbook formula), one plant a cell; "
    "germination taken as known"
)
UNCERTAIN = (
    "fewest cells with the chance wanted, germination unsure by the seeds tested: negative "
    "binomial terms averaged over a beta distribution (textbook formula)"
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument(
        "--want", type=count, required=True, metavar="N", help="plants wanted in the end"
    )
    parser.add_argument(
        "--germination",
        type=share,
        required=True,
        metavar="G",
        help="share that germinates, as 0.8 or 80%%",
    )
    parser.add_argument(
        "--tested", type=number, metavar="N", help="seeds that share rests on; left out: exact"
    )
    parser.add_argument(
        "--survival",
        type=share,
        action="append",
        default=[],
        metavar="S",
        help="share kept at a later step; may be given again",
    )
    parser.add_argument(
        "--chance", type=share, default=0.9, metavar="P", help="chance of enough plants (0.9)"
    )
    parser.add_argument(
        "--per-cell", type=count, default=1, metavar="K", help="seeds a cell, thinned to one (1)"
    )
    parser.add_argument(
        "--seeds-per-g", type=number, metavar="X", help="seeds in a gram, for the weight"
    )
    parser.add_argument(
        "--fill", type=share, metavar="F", help="share of the cells to fill with a seedling"
    )
    tray_arguments(parser)


def reckon(given: argparse.Namespace) -> Answer:
    """The fewest cells, and what they take."""
    answer = how_many(
        given.want, given.germination, given.tested, given.survival, given.chance, given.per_cell
    )
    grams = None if given.seeds_per_g is None else grams_of_seeds(answer.seeds, given.seeds_per_g)
    room = tray_room(given, answer.cells)
    blank = blank_share(given.germination, given.per_cell)
    fill = None if given.fill is None else seeds_per_cell(given.fill, given.germination)
    least = None if given.fill is None else least_germination(given.fill, given.per_cell)
    formula = KNOWN if given.tested is None else UNCERTAIN
    weight = f" ({grams:.2f} g)" if grams is not None else ""
    taken = room.words()
    return Answer(
        value={
            "want": given.want,
            "cells": answer.cells,
            "seeds": answer.seeds,
            "expected_plants": rounded(answer.expected_plants, 2),
            "chance": rounded(answer.chance, 6),
            "p": rounded(answer.p, 6),
            "grams": rounded(grams, 3),
            "blank_share": rounded(blank, 6),
            "seeds_to_fill": fill,
            "least_germination": rounded(least, 6),
            **room.value(),
            "source": formula,
        },
        lines=(
            f"{answer.cells} cells, {answer.seeds} seeds{weight}",
            f"  {given.want} plants or more with a chance of {answer.chance:.1%}; "
            f"{answer.expected_plants:.1f} to expect, as {answer.p:.1%} of the cells yield a plant",
            f"  {blank:.1%} of the cells stay blank",
            *(
                (
                    f"  to fill {given.fill:.0%} of them sow {fill} a cell, or with "
                    f"{given.per_cell} a cell seed of {least:.0%} germination",
                )
                if least is not None
                else ()
            ),
            *((f"  {taken}",) if taken else ()),
            f"  formula: {formula}",
        ),
    )
