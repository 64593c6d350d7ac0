"""A batch: one sowing of one variety on one day, as the fold of its records.

Parts of a batch can go separate ways: planting out 60 of 79 leaves 19 spares, a part of their own
with its own stage, place and count. The part that goes on is the main one, with an empty name.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date

from benchround.core.errors import IllegalRecordError
from benchround.core.lifecycle import ENDED, Stage, next_stage
from benchround.core.record import Kind, Record

MAIN = ""
SPARES = "spares"

LEAVES_REST = {
    Kind.PLANTED_OUT: "kept",
    Kind.HARDENING_BEGUN: "kept",
    Kind.PRICKED_OUT: "composted",
    Kind.POTTED_ON: "composted",
    Kind.LEFT_FOR_SEED: "composted",
}
"""Kinds that may take only some of the plants, and what becomes of the rest unless it is said."""

SETS_ALIVE = (Kind.FIRST_UP, Kind.COUNTED, Kind.TRUE_LEAVES, Kind.THINNED, Kind.TAKEN)
NOT_ABOVE_SOWN = (Kind.FIRST_UP, Kind.COUNTED, Kind.THINNED, Kind.PRICKED_OUT)
MOST = 1_000_000


@dataclass(frozen=True, slots=True)
class Part:
    """Plants of one batch that stand together.

    Attributes:
        alive: plants (clumps, where sown in clumps) by the last count; None before any count.
        first, last: the first and last record of each kind, the shared past included.
    """

    name: str
    stage: Stage
    since: date
    alive: int | None = None
    place: str = ""
    container: str = ""
    first: Mapping[Kind, Record] = field(default_factory=dict)
    last: Mapping[Kind, Record] = field(default_factory=dict)

    @property
    def ended(self) -> bool:
        """Whether nothing more can happen to it."""
        return self.stage in ENDED

    def last_day(self, *kinds: Kind) -> date | None:
        """The latest day any of these kinds was recorded."""
        days = [self.last[kind].day for kind in kinds if kind in self.last]
        return max(days) if days else None

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


def fold_batch(name: str, records: Iterable[Record]) -> tuple[Batch | None, tuple[str, ...]]:
    """The batch its records amount to, and a sentence for each record that does not fit.

    Records must be live and in story order. A record that does not fit (two machines may have told
    different stories) is passed over, never lost: it stays in the folder.
    """
    batch: Batch | None = None
    doubts: list[str] = []
    for record in records:
        try:
            batch = apply(batch, record, name)
        except IllegalRecordError as error:
            doubts.append(f"{name}, {record.day.isoformat()}: {error}")
    return batch, tuple(doubts)


def apply(batch: Batch | None, record: Record, name: str) -> Batch:
    """The batch after one more record.

    Raises:
        IllegalRecordError: the record does not fit the stage, the part or the counts.
    """
    if batch is None:
        return _begin(record, name)
    part = batch.part(record.text("part"))
    stage = next_stage(part.stage, record.kind, name)
    _check_counts(batch, part, record)
    moved, rest = _move(part, record, stage)
    parts = tuple(moved if p is part else p for p in batch.parts)
    if rest is not None:
        parts = (*parts, replace(rest, name=_free_name(parts)))
    return replace(
        batch,
        wanted=record.count("wanted") if "wanted" in record.figures else batch.wanted,
        variety=record.text("variety") or batch.variety,
        crop=record.text("crop") or batch.crop,
        parts=parts,
        sowing=_sowing(batch.sowing, record),
        tally=_tally(batch.tally, part, record, stage),
        records=(*batch.records, record),
        marked_for_seed=batch.marked_for_seed
        + ((record.count() or 1) if record.kind is Kind.MARKED_FOR_SEED else 0),
    )


def _begin(record: Record, name: str) -> Batch:
    stage = next_stage(None, record.kind, name)
    count = record.count() if record.kind in (Kind.PLANTED_BULBS, Kind.FOUND) else None
    part = Part(
        name=MAIN,
        stage=stage,
        since=record.day,
        alive=count,
        place=record.text("place"),
        container=record.text("container"),
        first={record.kind: record},
        last={record.kind: record},
    )
    return Batch(
        id=name,
        crop=record.text("crop") or "unknown",
        variety=record.text("variety"),
        begun=record.day,
        wanted=record.count("wanted"),
        parts=(part,),
        sowing=_sowing(None, record),
        tally=Tally(
            sown=record.count("seeds") if record.kind is Kind.SOWN else None,
            planted=count if record.kind is Kind.PLANTED_BULBS else None,
        ),
        records=(record,),
    )


def _check_counts(batch: Batch, part: Part, record: Record) -> None:
    for figure in ("count", "seeds", "cells", "wanted"):
        value = record.number(figure)
        if value is not None and not (0 <= value <= MOST and value == int(value)):
            raise IllegalRecordError(
                f"{figure} {value:g} for {batch.id} cannot be: give a whole number from 0 up."
            )
    count = record.count()
    if count is None:
        return
    sown = (batch.tally.sown or 0) + (batch.sowing.again_seeds if batch.sowing else 0)
    if record.kind in NOT_ABOVE_SOWN and batch.tally.sown and count > sown:
        raise IllegalRecordError(
            f"{count} is more than the {sown} seeds sown in {batch.id}: "
            "give a count up to that, or put the number sown right first."
        )
    takes = record.kind in (*LEAVES_REST, Kind.LOST, Kind.COMPOSTED, Kind.SPARES_SETTLED)
    if takes and part.alive is not None and count > part.alive:
        raise IllegalRecordError(
            f"{count} is more than the {part.alive} plants alive in {batch.id}: "
            "give a number up to that, or record a new count first."
        )


def _move(part: Part, record: Record, stage: Stage) -> tuple[Part, Part | None]:
    count = record.count()
    alive, rest_alive = part.alive, None
    if record.kind in SETS_ALIVE and count is not None:
        alive = count
    elif record.kind in LEAVES_REST and count is not None:
        rest_alive = part.alive - count if part.alive is not None else None
        alive = count
    elif record.kind is Kind.GAPPED_UP and count is not None:
        alive = (part.alive or 0) + count
    elif record.kind is Kind.PLANTED_BULBS:
        alive = count
    elif record.kind in (Kind.LOST, Kind.COMPOSTED):
        gone = part.alive if count is None else count
        alive = None if part.alive is None else max(0, part.alive - (gone or 0))
        if count is not None and alive != 0:
            stage = part.stage
        elif alive is not None:
            alive = 0
    moved = replace(
        part,
        stage=stage,
        since=record.day if stage is not part.stage or _starts_again(record.kind) else part.since,
        alive=alive,
        place=record.text("place") or part.place,
        container=record.text("container") or part.container,
        first={record.kind: record, **part.first},
        last={**part.last, record.kind: record},
    )
    kept = (record.text("rest") or LEAVES_REST.get(record.kind, "")) == "kept"
    if kept and rest_alive:
        return moved, replace(part, alive=rest_alive, last={**part.last, record.kind: record})
    return moved, None


def _starts_again(kind: Kind) -> bool:
    return kind in (Kind.POTTED_ON, Kind.TRUE_LEAVES, Kind.RESOWN)


def _free_name(parts: tuple[Part, ...]) -> str:
    taken = {part.name for part in parts}
    if SPARES not in taken:
        return SPARES
    number = 2
    while f"{SPARES} {number}" in taken:
        number += 1
    return f"{SPARES} {number}"


def _sowing(sowing: Sowing | None, record: Record) -> Sowing | None:
    if record.kind is Kind.RESOWN and sowing is not None:
        more = sowing.again_seeds + (record.count("seeds") or 0)
        return replace(sowing, again_on=record.day, again_seeds=more)
    if record.kind is not Kind.SOWN:
        return sowing
    return Sowing(
        day=record.day,
        seeds=record.count("seeds"),
        cells=record.count("cells"),
        per_cell=record.count("per_cell"),
        raising=record.text("raising"),
        covering=record.text("covering"),
        depth_mm=record.number("depth_mm"),
        heat_c=record.number("heat_c"),
        row_m=record.number("row_m"),
        packet=record.text("packet"),
    )


def _tally(tally: Tally, part: Part, record: Record, stage: Stage) -> Tally:
    count = record.count()
    match record.kind:
        case Kind.SOWN:
            return replace(tally, sown=record.count("seeds"))
        case Kind.FIRST_UP | Kind.COUNTED if count is not None and part.name == MAIN:
            if stage in (Stage.EMERGING, Stage.SEED_LEAF, Stage.TRUE_LEAF, Stage.SOWN):
                return replace(tally, up=max(count, tally.up or 0))
            return tally
        case Kind.PRICKED_OUT if count is not None:
            return replace(tally, pricked_out=(tally.pricked_out or 0) + count)
        case Kind.PLANTED_OUT | Kind.PLANTED_BULBS if count is not None:
            return replace(tally, planted=(tally.planted or 0) + count)
        case Kind.PLANTED_OUT:
            return replace(tally, planted=(tally.planted or 0) + (part.alive or 0))
        case Kind.FIRST_FLOWER:
            return replace(tally, flowered=count if count is not None else part.alive)
        case Kind.LOST:
            cause = record.text("cause") or "unknown"
            gone = count if count is not None else (part.alive or 0)
            return replace(
                tally, losses={**tally.losses, cause: tally.losses.get(cause, 0) + gone}
            )
        case Kind.COMPOSTED:
            gone = count if count is not None else (part.alive or 0)
            return replace(tally, surplus=tally.surplus + gone)
    return tally
