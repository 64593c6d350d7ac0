"""The five counts of a batch while its records are told."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from benchround.core.batch.nouns import MAIN, Tally
from benchround.core.lifecycle import Stage
from benchround.core.record import Kind, Record

SEEN_UP = frozenset({Kind.FIRST_UP, Kind.COUNTED})
RISING = frozenset({Stage.EMERGING, Stage.SEED_LEAF, Stage.TRUE_LEAF, Stage.SOWN})


class Counts:
    """Counts that take records in; the fields are those of `Tally`."""

    __slots__ = ("flowered", "losses", "planted", "pricked_out", "sown", "surplus", "up")

    def __init__(self, tally: Tally) -> None:
        self.sown, self.up, self.pricked_out = tally.sown, tally.up, tally.pricked_out
        self.planted, self.flowered = tally.planted, tally.flowered
        self.losses, self.surplus = dict(tally.losses), tally.surplus

    def tally(self) -> Tally:
        """The counts as they stand, handed over."""
        return Tally(
            sown=self.sown,
            up=self.up,
            pricked_out=self.pricked_out,
            planted=self.planted,
            flowered=self.flowered,
            losses=self.losses,
            surplus=self.surplus,
        )

    def take(
        self, part: str, alive: int | None, record: Record, stage: Stage, count: int | None
    ) -> None:
        """Take a record of one of the kinds `TALLIED`.

        Args:
            part: name of the part it is about.
            alive: the part's plants before it.
            record: the record.
            stage: the stage it leads to.
            count: the count it gives.
        """
        kind = record.kind
        if kind not in SEEN_UP:
            TAKES[kind](self, record, count, alive)
        elif count is not None and part == MAIN and stage in RISING:
            self.up = max(count, self.up or 0)

    def _sow(self, record: Record, count: int | None, alive: int | None) -> None:
        self.sown = record.count("seeds")

    def _prick_out(self, record: Record, count: int | None, alive: int | None) -> None:
        if count is not None:
            self.pricked_out = (self.pricked_out or 0) + count

    def _plant(self, record: Record, count: int | None, alive: int | None) -> None:
        self.planted = (self.planted or 0) + _gone(count, alive)

    def _plant_bulbs(self, record: Record, count: int | None, alive: int | None) -> None:
        if count is not None:
            self._plant(record, count, alive)

    def _flower(self, record: Record, count: int | None, alive: int | None) -> None:
        self.flowered = count if count is not None else alive

    def _lose(self, record: Record, count: int | None, alive: int | None) -> None:
        cause = record.text("cause") or "unknown"
        self.losses[cause] = self.losses.get(cause, 0) + _gone(count, alive)

    def _compost(self, record: Record, count: int | None, alive: int | None) -> None:
        self.surplus += _gone(count, alive)


def _gone(count: int | None, alive: int | None) -> int:
    """The plants a record takes away: those it counts, else all that were alive."""
    return count if count is not None else (alive or 0)


TAKES: Mapping[Kind, Callable[[Counts, Record, int | None, int | None], None]] = {
    Kind.SOWN: Counts._sow,
    Kind.PRICKED_OUT: Counts._prick_out,
    Kind.PLANTED_OUT: Counts._plant,
    Kind.PLANTED_BULBS: Counts._plant_bulbs,
    Kind.FIRST_FLOWER: Counts._flower,
    Kind.LOST: Counts._lose,
    Kind.COMPOSTED: Counts._compost,
}
"""What each of the other kinds does to the counts."""
TALLIED = SEEN_UP | TAKES.keys()
"""Kinds that change a count."""
