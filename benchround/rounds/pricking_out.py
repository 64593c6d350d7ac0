"""Prick out tray-sown seedlings at the first true leaves, held by a leaf, never by the stem."""

from __future__ import annotations

import math
from collections.abc import Iterator
from datetime import timedelta

from benchround.core.containers import CELL_TRAYS, COMMON_CELLS
from benchround.core.crop.crop import PlantClass, Raising
from benchround.core.dates import say_day
from benchround.core.lifecycle import SEEDLING
from benchround.core.record import Draft, Kind
from benchround.core.task import Ask, Family, Harm, Why, Window
from benchround.rounds.proposal import Proposal, draft, in_sight
from benchround.rounds.view import BatchView

EARLY_DAYS, GRACE_DAYS = 3, 14
SURPLUS = 1.15
"""Prick out the wanted number and 15 % more (from memory, common practice)."""
SOURCE = "BBC Gardening glossary; a seed merchant's page on pricking out"


def propose(view: BatchView) -> Iterator[Proposal]:
    """Pricking out a tray sown broadcast."""
    if view.stage not in SEEDLING or view.raising != Raising.TRAY:
        return
    if not view.crop.growing.prick_out or view.true_leaves is None:
        return
    day, seen = view.true_leaves
    earliest = day if seen else day - timedelta(days=EARLY_DAYS)
    if not in_sight(view, Family.PRICK_OUT, earliest):
        return
    number, cells = number_and_cells(view)
    into = _into(view, cells)
    source = view.part.alive if view.part.alive is not None else view.batch.tally.up
    of = f" of {source}" if source is not None and number != source else ""
    yield Proposal(
        Family.PRICK_OUT,
        Window(earliest, day, day + timedelta(days=GRACE_DAYS)),
        Harm.SPOILS_THIS_WEEK,
        f"Prick out {number if number is not None else 'the best'}{of} into {into}, "
        "to the seed leaves, held by a leaf",
        Why(
            "seedlings sown together are pricked out at the first true leaves",
            (
                f"true leaves {'seen' if seen else 'expected'} {say_day(day)}",
                *((f"{view.batch.wanted} wanted",) if view.batch.wanted else ()),
            ),
            SOURCE,
        ),
        (_record(view, number, cells),),
        asks=(
            Ask("count", "pricked out", str(number or ""), needed=number is None, most=source),
            *(() if straight_into_pots(view) else (Ask("cells", "cells", str(cells)),)),
            Ask("place", "place", view.part.place, whole=False),
        ),
    )


def straight_into_pots(view: BatchView) -> bool:
    """Whether it goes from the seed tray straight into its pot.

    Vegetables that are potted on before planting (tomato, pepper, aubergine) do: common practice,
    no source.
    """
    return view.crop.growing.pot_on and view.crop.plant_class is PlantClass.VEGETABLE


def _into(view: BatchView, cells: int) -> str:
    if straight_into_pots(view):
        return f"{_pot(view)}s, one to each"
    if cells % COMMON_CELLS:
        return f"{cells} cell{'s' if cells > 1 else ''} of a {CELL_TRAYS[COMMON_CELLS]}"
    return f"{cells} cells"


def _pot(view: BatchView) -> str:
    return f"{view.crop.growing.pot_cm:g} cm pot"


def _record(view: BatchView, number: int | None, cells: int) -> Draft:
    if straight_into_pots(view):
        return draft(view, Kind.PRICKED_OUT, count=number, container=_pot(view))
    tray = CELL_TRAYS[COMMON_CELLS]
    return draft(view, Kind.PRICKED_OUT, count=number, cells=cells, container=tray)


def number_and_cells(view: BatchView) -> tuple[int | None, int]:
    """How many to prick out and into how many cells.

    As many trays as the wanted number and its surplus fill; every good seedling that fits goes in.
    Where the plants fill less than half of them, only the cells they take are counted.
    """
    alive, wanted = view.part.alive, view.batch.wanted
    enough = math.ceil(wanted * SURPLUS) if wanted else (alive or COMMON_CELLS)
    cells = COMMON_CELLS * math.ceil(max(1, enough) / COMMON_CELLS)
    if alive is None:
        return (enough if wanted else None), cells
    number = min(alive, enough if straight_into_pots(view) else cells)
    full = COMMON_CELLS * math.ceil(max(1, number) / COMMON_CELLS)
    return number, full if 2 * number >= full else max(1, number)
