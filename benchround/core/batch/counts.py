"""The five counts of a batch while its records are told."""

from __future__ import annotations

from benchround.core.batch.nouns import MAIN, Tally
from benchround.core.lifecycle import Stage
from benchround.core.record import Kind, Record

RISING = (Stage.EMERGING, Stage.SEED_LEAF, Stage.TRUE_LEAF, Stage.SOWN)
SEEN_UP = frozenset({Kind.FIRST_UP, Kind.COUNTED})
TALLIED = frozenset(
    {
        Kind.SOWN,
        Kind.FIRST_UP,
        Kind.COUNTED,
        Kind.PRICKED_OUT,
        Kind.PLANTED_OUT,
        Kind.PLANTED_BULBS,
        Kind.FIRST_FLOWER,
        Kind.LOST,
        Kind.COMPOSTED,
    }
)
"""Kinds that change a count."""


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
        gone = count if count is not None else (alive or 0)
        if kind in SEEN_UP:
            if count is not None and part == MAIN and stage in RISING:
                self.up = max(count, self.up or 0)
        elif kind is Kind.SOWN:
            self.sown = record.count("seeds")
        elif kind is Kind.PRICKED_OUT:
            if count is not None:
                self.pricked_out = (self.pricked_out or 0) + count
        elif kind is Kind.PLANTED_OUT or (kind is Kind.PLANTED_BULBS and count is not None):
            self.planted = (self.planted or 0) + gone
        elif kind is Kind.FIRST_FLOWER:
            self.flowered = count if count is not None else alive
        elif kind is Kind.LOST:
            cause = record.text("cause") or "unknown"
            self.losses[cause] = self.losses.get(cause, 0) + gone
        elif kind is Kind.COMPOSTED:
            self.surplus += gone
