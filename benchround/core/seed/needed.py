"""How many seeds to sow for the plants wanted, by what is known of the seed."""

from __future__ import annotations

from functools import lru_cache

from benchround.core.errors import OutOfRangeError
from benchround.core.learning.learned import LearnedShare
from benchround.core.season import Packet, Season
from benchround.core.seed.quantity import Quantity, how_many

WANTED_CHANCE = 0.9
SURVIVAL = (0.9, 0.9)
"""Shares that take after pricking out and that come through to planting (common practice)."""


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


@lru_cache(maxsize=4096)
def seeds_needed(
    wanted: int, share: float, tested: float | None, per_cell: int = 1
) -> tuple[Quantity | None, str]:
    """Seeds and cells for so many plants ready nine times in ten.

    Args:
        wanted: plants wanted at planting.
        share: germination share.
        tested: seeds that share rests on; None takes it as it stands.
        per_cell: seeds in a cell.

    Returns:
        The amount and nothing, or None and what stands against it.
    """
    try:
        return how_many(wanted, share, tested, SURVIVAL, WANTED_CHANCE, per_cell), ""
    except OutOfRangeError as error:
        return None, str(error)
