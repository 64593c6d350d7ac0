"""What a count so far promises for the plants wanted, in words and numbers."""

from __future__ import annotations

import math

from benchround.core.crop.crop import Raising
from benchround.core.dates import say_day
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import SEEDLING
from benchround.core.seed.expected_count import ExpectedCount
from benchround.core.seed.needed import needed_for
from benchround.core.seed.quantity import shares_kept
from benchround.rounds.seed_packet import packet_for
from benchround.rounds.view import BatchView

OLDEST_COUNT_DAYS = 14
"""A count older than this no longer speaks of the seed still to come (our proposal)."""


@dataclass(frozen=True, slots=True)
class Short:
    """Plants to expect where they are fewer than wanted.

    Attributes:
        plants: plants to expect at planting.
        wanted: plants wanted.
        more: seeds to sow so that the lack is made up nine times in ten; None if that is too many.
    """

    plants: int
    wanted: int
    more: int | None


def promised(view: BatchView) -> ExpectedCount | None:
    """What the count so far promises; None where there is none, or it is too old."""
    if view.stage not in SEEDLING or view.is_spare or view.in_row:
        return None
    found = view.expected
    if found is None or (view.day - found.counted_on).days > OLDEST_COUNT_DAYS:
        return None
    return found


def end_words(view: BatchView) -> str:
    """The expected end as the tail of an instruction; empty where nothing tells."""
    found = promised(view)
    return f", about {found.final:.0f} in the end" if found is not None else ""


def figures(view: BatchView) -> tuple[str, ...]:
    """The count so far and what it promises, for a why."""
    found = promised(view)
    if found is None:
        return ()
    said = [
        f"{found.up} of {found.sown} up on {say_day(found.counted_on)}, when {found.due:.0%} of "
        f"the good seed should be: about {found.final:.0f} in the end "
        f"(reckoned with {found.germination:.0%})"
    ]
    short = short_of(view)
    if short is not None:
        said.append(f"about {short.plants} plants, {short.wanted} are wanted")
    return tuple(said)


def short_of(view: BatchView) -> Short | None:
    """By how much the batch will fall short; None where it will not, or nothing tells."""
    found, wanted = promised(view), view.batch.wanted
    if found is None or not wanted:
        return None
    plants = math.floor(_filled(view, found) * math.prod(shares_kept(view.raising)) + 0.5)
    if plants >= wanted:
        return None
    lack, packet = wanted - plants, packet_for(view)
    more = needed_for(view.season, view.crop, lack, packet, view.raising).amount
    return Short(plants, wanted, more.seeds if more is not None else None)


def _filled(view: BatchView, found: ExpectedCount) -> float:
    """Plants that can be had of the seedlings: one of each filled cell where they are thinned."""
    sowing = view.batch.sowing
    per_cell = (sowing.per_cell if sowing else None) or 1
    cells = sowing.cells if sowing else None
    if cells is None or per_cell < 2 or view.raising == Raising.TRAY:
        return found.final
    blank = (1.0 - found.final / found.sown) ** per_cell
    return min(found.final, cells * (1.0 - blank) * view.crop.growing.keep_per_cell)
