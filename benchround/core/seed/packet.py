"""Packets: bought or saved seed, and what is left in them after the sowings they gave."""

from __future__ import annotations

from collections.abc import Iterable

from benchround.core.batch.batch import Batch
from benchround.core.frozen import dataclass
from benchround.core.record import Record
from benchround.core.seed.weight import grams_of_seeds, seeds_in_grams


@dataclass(frozen=True, slots=True)
class Packet:
    """Bought or saved seed; None where the packet does not say.

    Attributes:
        year: the year it was packed or saved for.
        seeds, grams: what it held when it was put on the books.
        germination: the share it says or a test gave, above 0 and up to 1.
        tested: seeds in that test; None where it is a printed figure.
        storage: where and how it is kept, in the grower's words.
        used: seeds sown from it; `unsaid` counts the sowings from it that named no number.
        fault: a figure of its record that cannot be and is not used; empty where there is none.
    """

    id: str
    crop: str
    variety: str
    year: int | None = None
    seeds: int | None = None
    grams: float | None = None
    germination: float | None = None
    saved: bool = False
    treated: bool = False
    storage: str = ""
    used: int = 0
    tested: int | None = None
    unsaid: int = 0
    fault: str = ""

    @property
    def left(self) -> int | None:
        """Seeds left; None where the number was never said."""
        return None if self.seeds is None else max(0, self.seeds - self.used)

    @property
    def by_weight(self) -> bool:
        """Whether it is kept by weight: grams are known and a number of seeds is not."""
        return self.seeds is None and self.grams is not None

    def holds(self, seeds_per_g: float | None) -> int | None:
        """Seeds left, reckoned from its weight where it is kept by weight; None if not known."""
        if self.by_weight and self.grams is not None and seeds_per_g:
            return max(0, seeds_in_grams(self.grams, seeds_per_g) - self.used)
        return self.left

    def grams_left(self, seeds_per_g: float | None) -> float | None:
        """Grams left of a packet kept by weight; None where that cannot be reckoned."""
        if not self.by_weight or self.grams is None or not seeds_per_g:
            return None
        return max(0.0, self.grams - grams_of_seeds(self.used, seeds_per_g))


def packets_of(records: Iterable[Record], batches: Iterable[Batch]) -> dict[str, Packet]:
    """Packets by id, what was sown from each taken off.

    Args:
        records: the packets' own records; of each packet the last one counts.
        batches: every batch, for what was sown and from which packet.
    """
    used: dict[str, int] = {}
    unsaid: dict[str, int] = {}
    for batch in batches:
        sowing = batch.sowing
        if sowing is not None and sowing.packet:
            sown = (sowing.seeds or 0) + sowing.again_seeds
            used[sowing.packet] = used.get(sowing.packet, 0) + sown
            if sowing.seeds is None:
                unsaid[sowing.packet] = unsaid.get(sowing.packet, 0) + 1
    return {
        record.about: _packet(record, used.get(record.about, 0), unsaid.get(record.about, 0))
        for record in records
    }


def _packet(record: Record, used: int, unsaid: int) -> Packet:
    germination, fault = record.number("germination"), ""
    if germination is not None and not 0.0 < germination <= 1.0:
        fault = f"germination {germination:g} cannot be: give a share above 0 and up to 1"
        germination = None
    grams, tested = record.number("grams"), record.count("tested")
    seeds = record.count("seeds")
    return Packet(
        id=record.about,
        crop=record.text("crop"),
        variety=record.text("variety"),
        year=record.count("year"),
        seeds=None if seeds is None or seeds < 0 else seeds,
        grams=None if grams is None or grams < 0.0 else grams,
        germination=germination,
        saved=record.flag("saved"),
        treated=record.flag("treated"),
        storage=record.text("storage"),
        used=used,
        tested=None if tested is None or tested < 1 else tested,
        unsaid=unsaid,
        fault=fault,
    )
