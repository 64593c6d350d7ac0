"""How many to sow, and what that takes in cells, seed, trays, compost and bench.

The cells are reckoned in `cells_needed`; `needed` asks for what a grower knows of the seed.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from benchround.core.crop.crop import Raising
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import chance as check_chance
from benchround.core.numbers.ranges import share, whole, within
from benchround.core.seed.cells_needed import (
    blank_share_uncertain,
    cells_needed,
    cells_needed_uncertain,
    chance_enough,
    chance_enough_uncertain,
    share_with_plant,
)

WANTED_CHANCE = 0.9
"""Chance that enough plants stand ready, where none is asked for; our proposal."""

SURVIVAL = (0.9, 0.9)
"""Shares that take after pricking out and that come through to planting (common practice)."""

LEAST_BETA = 0.5
"""Floor under either beta parameter: all up, or none, of a small test proves neither."""


@dataclass(frozen=True, slots=True)
class Quantity:
    """How many to sow.

    Attributes:
        cells: Cells to fill.
        seeds: Seeds to sow, all cells together.
        expected_plants: Plants to expect on average.
        chance: Chance that at least the wanted number stands ready.
        p: Chance that one cell yields a plant.
    """

    cells: int
    seeds: int
    expected_plants: float
    chance: float
    p: float


def how_many(
    want: int,
    germination: float,
    tested: float | None = None,
    survival: Sequence[float] = (),
    chance: float = WANTED_CHANCE,
    per_cell: int = 1,
) -> Quantity:
    """Return the fewest cells, and their seeds, for the plants wanted.

    Args:
        want: Plants wanted, at least 1.
        germination: Germination share, above 0 and up to 1.
        tested: Seeds the germination share rests on (a test, or the weight given to a packet);
            None takes it as known exactly.
        survival: Shares kept at pricking out, planting out and so on, each above 0 and up to 1.
        chance: Chance wanted, between 0 and 1.
        per_cell: Seeds in a cell, thinned to one plant.

    Raises:
        OutOfRangeError: A figure is outside its range.
    """
    whole("plants wanted", want, 1)
    check_chance("chance wanted", chance)
    kept = math.prod(share("survival", s) for s in survival)
    if tested is None:
        p = share_with_plant(germination, per_cell) * kept
        cells = cells_needed(want, chance, p)
        got = chance_enough(cells, want, p)
    else:
        a, b = germination_belief(germination, tested)
        p = (1.0 - blank_share_uncertain(a, b, per_cell)) * kept
        cells = cells_needed_uncertain(want, chance, a, b, per_cell, survival)
        got = chance_enough_uncertain(cells, want, a, b, per_cell, survival)
    return Quantity(cells, cells * per_cell, cells * p, got, p)


def shares_kept(raising: str) -> tuple[float, ...]:
    """Return the shares reckoned with where none are given.

    Only what is sown broadcast in a tray is pricked out: a drilled row, a cell, a clump or a pot
    loses nothing there.
    """
    return SURVIVAL if raising == Raising.TRAY else SURVIVAL[1:]


def germination_belief(germination: float, tested: float) -> tuple[float, float]:
    """Return the Beta(a, b) of a germination share that rests on so many seeds."""
    share("germination share", germination)
    within("seeds tested", tested, 1.0)
    up = germination * tested
    return max(LEAST_BETA, up), max(LEAST_BETA, tested - up)
