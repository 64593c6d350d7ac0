"""A part of a batch while its records are told: where each moves it, and what it leaves behind."""

from __future__ import annotations

from datetime import date

from benchround.core.batch.nouns import MAIN, Moves, Part
from benchround.core.lifecycle import WAYS, Stage
from benchround.core.record import Kind, Record

LEAVES_REST = {
    Kind.PLANTED_OUT: "kept",
    Kind.HARDENING_BEGUN: "kept",
    Kind.PRICKED_OUT: "composted",
    Kind.POTTED_ON: "composted",
    Kind.LEFT_FOR_SEED: "composted",
}
"""Kinds that may take only some of the plants, and what becomes of the rest unless it is said."""

SETS_ALIVE = frozenset(
    {Kind.FIRST_UP, Kind.COUNTED, Kind.TRUE_LEAVES, Kind.THINNED, Kind.TAKEN, Kind.PLANTED_BULBS}
)
STARTS_AGAIN = frozenset({Kind.POTTED_ON, Kind.TRUE_LEAVES, Kind.RESOWN})
ENDING = frozenset({Kind.LOST, Kind.COMPOSTED})
TAKES_ALL = ENDING | {Kind.PLANTED_OUT, Kind.PRICKED_OUT}
"""Kinds that end a batch or move every plant of it where no count is given."""
COUNTS_ANEW = ENDING | {Kind.PLANTED_BULBS}
"""Kinds that change the plants alive even where they give no count."""


class PartTelling:
    """A part that takes records in; its fields are those of `Part`.

    `ways` are the stages that kinds lead to from its stage. `again` holds kinds that were told at
    this stage already and left it as it was: a bare record of one, such as the next watering, is
    only the latest of its kind.
    """

    __slots__ = (
        "again",
        "alive",
        "container",
        "first",
        "last",
        "moves",
        "name",
        "place",
        "since",
        "stage",
        "ways",
    )

    def __init__(self, name: str, stage: Stage, since: date, alive: int | None) -> None:
        self.name, self.stage, self.since, self.alive = name, stage, since, alive
        self.ways = WAYS[stage]
        self.place = self.container = ""
        self.moves: Moves = ()
        self.first: dict[Kind, Record] = {}
        self.last: dict[Kind, Record] = {}
        self.again: set[Kind] = set()

    @classmethod
    def begin(cls, record: Record, stage: Stage, alive: int | None) -> PartTelling:
        """The main part by the batch's first record."""
        part = cls(MAIN, stage, record.day, alive)
        part.container = record.text("container")
        part.stand(record)
        part.first[record.kind] = part.last[record.kind] = record
        return part

    @classmethod
    def of(cls, part: Part) -> PartTelling:
        """A part that stands still, to be told on."""
        told = cls(part.name, part.stage, part.since, part.alive)
        told.place, told.container, told.moves = part.place, part.container, part.moves
        told.first, told.last = dict(part.first), dict(part.last)
        return told

    def part(self) -> Part:
        """The part as it stands, handed over: it is told on from a copy."""
        return Part(
            name=self.name,
            stage=self.stage,
            since=self.since,
            alive=self.alive,
            place=self.place,
            container=self.container,
            first=self.first,
            last=self.last,
            moves=self.moves,
        )

    def stand(self, record: Record) -> None:
        """Stand where a record says, if it names a place."""
        place = record.text("place")
        if place:
            self.place = place
            self.moves = (*self.moves, (record.day, place))

    def pass_to(self, stage: Stage, record: Record) -> None:
        """Come to a stage, or stay in it, by a record that tells nothing else."""
        kind = record.kind
        if stage is not self.stage:
            self.stage, self.since, self.ways = stage, record.day, WAYS[stage]
            self.again.clear()
        elif kind in STARTS_AGAIN:
            self.since = record.day
        self.first.setdefault(kind, record)
        self.last[kind] = record

    def pass_bare(self, stage: Stage, record: Record) -> None:
        """The same by a record that gives no figures at all."""
        kind = record.kind
        if stage is not self.stage or kind in STARTS_AGAIN:
            self.pass_to(stage, record)
            return
        self.first.setdefault(kind, record)
        self.last[kind] = record
        self.again.add(kind)

    def move(self, record: Record, stage: Stage, count: int | None) -> PartTelling | None:
        """Move to a stage by a record; give what is left behind as a part of its own, nameless.

        Args:
            record: a record that fits.
            stage: the stage the lifecycle leads to.
            count: the count it gives.
        """
        kind, figures = record.kind, record.figures
        rest = None
        if count is not None or kind in COUNTS_ANEW:
            stage, left = self._recount(record, stage, count)
            if left and (record.text("rest") or LEAVES_REST.get(kind, "")) == "kept":
                rest = self._left_behind(record, left)
        self.pass_to(stage, record)
        if "place" in figures:
            self.stand(record)
        if "container" in figures:
            self.container = record.text("container") or self.container
        return rest

    def _left_behind(self, record: Record, alive: int) -> PartTelling:
        """What a record leaves behind: it stands as the whole did, and knows of that record."""
        rest = PartTelling("", self.stage, self.since, alive)
        rest.place, rest.container, rest.moves = self.place, self.container, self.moves
        rest.first, rest.last = dict(self.first), {**self.last, record.kind: record}
        return rest

    def _recount(self, record: Record, stage: Stage, count: int | None) -> tuple[Stage, int | None]:
        """Count anew; the stage it comes to, and the plants left behind, where any are known."""
        kind, left = record.kind, None
        if kind in ENDING:
            return self._lessen(count, stage), None
        if kind in SETS_ALIVE:
            if count is not None or kind is Kind.PLANTED_BULBS:
                self.alive = count
        elif count is None:
            return stage, None
        elif kind in LEAVES_REST:
            left = self.alive - count if self.alive is not None else None
            self.alive = count
        elif kind is Kind.GAPPED_UP:
            self.alive = (self.alive or 0) + count
        return stage, left

    def _lessen(self, count: int | None, stage: Stage) -> Stage:
        """Lose some or all; losing only some keeps the stage."""
        before = self.alive
        gone = before if count is None else count
        self.alive = None if before is None else max(0, before - (gone or 0))
        if count is not None and self.alive != 0:
            return self.stage
        if self.alive is not None:
            self.alive = 0
        return stage
