"""The nouns of a batch: its parts, how it was sown, its counts.

Parts of a batch can go separate ways: planting out 60 of 79 leaves 19 spares, a part of their own
with its own stage, place and count. The part that goes on is the main one, with an empty name.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from datetime import date

from benchround.core.errors import IllegalRecordError
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import ENDED, Stage
from benchround.core.record import Kind, Record

MAIN = ""
SPARES = "spares"

Moves = tuple[tuple[date, str], ...]
"""From which day on something stood where, oldest first."""


@dataclass(frozen=True, slots=True)
class Part:
    """Plants of one batch that stand together.

    Attributes:
        alive: plants (clumps, where sown in clumps) by the last count; None before any count.
        first, last: the first and last record of each kind, the shared past included.
        moves: where it was said to stand, the shared past included; the last is where it is now.
    """

    name: str
    stage: Stage
    since: date
    alive: int | None = None
    place: str = ""
    container: str = ""
    first: Mapping[Kind, Record] = field(default_factory=dict)
    last: Mapping[Kind, Record] = field(default_factory=dict)
    moves: Moves = ()

    @property
    def ended(self) -> bool:
        """Whether nothing more can happen to it."""
        return self.stage in ENDED

    def last_day(self, *kinds: Kind) -> date | None:
        """The latest day any of these kinds was recorded."""
        latest: date | None = None
        for kind in kinds:
            record = self.last.get(kind)
            if record is not None and (latest is None or record.day > latest):
                latest = record.day
        return latest

    def first_day(self, kind: Kind) -> date | None:
        """The first day a kind was recorded."""
        record = self.first.get(kind)
        return record.day if record else None


@dataclass(frozen=True, slots=True)
class Sowing:
    """How the seed was sown; None where it was not said."""

    day: date
    seeds: int | None = None
    cells: int | None = None
    per_cell: int | None = None
    raising: str = ""
    covering: str = ""
    depth_mm: float | None = None
    heat_c: float | None = None
    row_m: float | None = None
    packet: str = ""
    again_on: date | None = None  # the last time more seed was sown into the same batch
    again_seeds: int = 0


@dataclass(frozen=True, slots=True)
class Tally:
    """The five counts of a batch, and what became of the rest."""

    sown: int | None = None
    up: int | None = None
    pricked_out: int | None = None
    planted: int | None = None
    flowered: int | None = None
    losses: Mapping[str, int] = field(default_factory=dict)
    surplus: int = 0


@dataclass(frozen=True, slots=True)
class Batch:
    """One sowing of one variety on one day.

    Attributes:
        id: such as "b07"; also what is written on the label.
        crop: key of the crop's rules.
        wanted: plants wanted; None where it was not said.
    """

    id: str
    crop: str
    variety: str
    begun: date
    wanted: int | None
    parts: tuple[Part, ...]
    sowing: Sowing | None
    tally: Tally
    records: tuple[Record, ...]
    marked_for_seed: int = 0

    @property
    def main(self) -> Part:
        """The part that carries the batch's own story."""
        return self.parts[0]

    @property
    def ended(self) -> bool:
        """Whether every part of it has ended."""
        return all(part.ended for part in self.parts)

    def part(self, name: str) -> Part:
        """A part by name.

        Raises:
            IllegalRecordError: the batch has no such part.
        """
        for part in self.parts:
            if part.name == name:
                return part
        known = ", ".join(part.name or "main" for part in self.parts)
        raise IllegalRecordError(f"{self.id} has no part '{name}'; it has: {known}.")
