"""How many seeds to sow for the plants wanted, by what is known and learned of the seed.

The one rule behind the sowing sheet, the round, what is sown again, the report and the advice for
next year, and `reckon plan`. A clump counts as one plant. Of a cell or pot as many plants are had
as are left in it after thinning.
"""

from __future__ import annotations

import math
from dataclasses import replace
from functools import lru_cache

from benchround.core.batch.batch import Batch
from benchround.core.crop.crop import Crop, Raising
from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.learning.learned import LearnedShare
from benchround.core.season import Packet, Season
from benchround.core.seed.quantity import (
    SURVIVAL,
    WANTED_CHANCE,
    Quantity,
    how_many,
    shares_kept,
)

CELLED = (Raising.CELLS, Raising.CLUMPS, Raising.POTS)
"""Ways of sowing that fill cells or pots."""
NOTHING_WANTED = "no number of plants wanted was given"
NOT_KNOWN = "how much of this seed comes up is not known"


@dataclass(frozen=True, slots=True)
class Needed:
    """What the plants wanted take.

    Attributes:
        amount: cells and seeds; None where they cannot be told, see `fault`.
        known: the germination reckoned with, and what stands behind it.
        kept: shares kept at pricking out, where it is, and on to planting.
        fault: what stands against an amount; empty where there is one.
    """

    amount: Quantity | None
    known: LearnedShare | None = None
    kept: tuple[float, ...] = SURVIVAL
    fault: str = ""

    @property
    def shares(self) -> str:
        """The shares multiplied, as 60% x 90% x 90%."""
        first = (self.known.share,) if self.known is not None else ()
        return " x ".join(f"{share:.0%}" for share in (*first, *self.kept))

    @property
    def told(self) -> str:
        """What own counts or the packet say of the seed; empty where only the library does."""
        known = self.known
        return str(known) if known is not None and (known.batches or known.of == "packet") else ""


def needed_for(
    season: Season,
    crop: Crop,
    wanted: int | None,
    packet: Packet | None = None,
    raising: str = "",
    per_cell: int = 1,
) -> Needed:
    """What so many plants of a crop take, nine times in ten.

    Args:
        season: what was learned so far.
        crop: the crop's rules.
        wanted: plants wanted at planting; None or 0: none were named.
        packet: the packet sown from, where one is chosen.
        raising: how it is sown; empty: as the crop usually is.
        per_cell: seeds in a cell or pot.
    """
    if not wanted:
        return Needed(None, fault=NOTHING_WANTED)
    way = raising or str(crop.raising)
    known, kept = known_share(season, crop.key, packet), shares_kept(way)
    if known is None:
        return Needed(None, fault=NOT_KNOWN)
    each, left = sharing(crop, way, per_cell)
    behind = seeds_behind(known, packet)
    amount, fault = seeds_needed(wanted, known.share, behind, each, kept, left=left)
    return Needed(amount, known, kept, fault)


def needed_again(season: Season, batch: Batch) -> Needed:
    """What the plants wanted of a batch take when it is sown again in the same way."""
    crop, sowing = season.crop(batch.crop), batch.sowing
    if sowing is None:
        return needed_for(season, crop, batch.wanted, None, "", crop.growing.per_cell)
    packet, each = season.packets.get(sowing.packet), sowing.per_cell or crop.growing.per_cell
    return needed_for(season, crop, batch.wanted, packet, sowing.raising, each)


def sharing(crop: Crop, raising: str, per_cell: int) -> tuple[int, int]:
    """Seeds that share a cell or pot, and plants had of it when all of them come up."""
    if raising not in CELLED:
        return 1, 1
    left = 1 if raising == Raising.CLUMPS else crop.growing.keep_per_cell
    return per_cell, min(per_cell, left)


def known_share(season: Season, crop_key: str, packet: Packet | None = None) -> LearnedShare | None:
    """The germination to reckon with: the packet's where it says or taught one, else the crop's.

    None where the library says nothing of the crop's germination.
    """
    if packet is not None:
        own = season.learned_of_packet(packet.id).share
        if own is not None and (own.batches or packet.germination is not None):
            return own
    return season.learned(crop_key).share


def seeds_behind(share: LearnedShare, packet: Packet | None) -> float | None:
    """Seeds a share rests on: own counts, else the packet's test.

    None takes the share as it stands: it is the library's, or printed on the packet.
    """
    if share.tested is not None:
        return share.tested
    if packet is not None and share.of == "packet" and packet.tested is not None:
        return float(packet.tested)
    return None


@lru_cache(maxsize=8192)
def seeds_needed(
    wanted: int,
    share: float,
    tested: float | None,
    per_cell: int = 1,
    kept: tuple[float, ...] = SURVIVAL,
    chance: float = WANTED_CHANCE,
    left: int = 1,
) -> tuple[Quantity | None, str]:
    """Seeds and cells for so many plants ready nine times in ten.

    Args:
        wanted: plants wanted at planting.
        share: germination share.
        tested: seeds that share rests on; None takes it as it stands.
        per_cell: seeds in a cell.
        kept: shares kept at pricking out, where it is, and on to planting.
        chance: chance wanted.
        left: plants left in a cell after thinning. Each has the seeds that fall to it; cells are
            filled whole, so that the chance is at least the one told.

    Returns:
        The amount and nothing, or None and what stands against it.
    """
    try:
        found = how_many(wanted, share, tested, kept, chance, math.ceil(per_cell / left))
    except OutOfRangeError as error:
        return None, str(error)
    if left == 1:
        return found, ""
    cells = math.ceil(found.cells / left)
    had = cells * left * found.p
    return replace(found, cells=cells, seeds=cells * per_cell, expected_plants=had), ""
