"""A batch while its records are told one after another, before it stands still.

A record is checked whole before anything is changed, so one that does not fit leaves no trace.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from benchround.core.batch.counts import TALLIED, Counts
from benchround.core.batch.nouns import SPARES, Batch, Sowing, Tally
from benchround.core.batch.part_telling import LEAVES_REST, PartTelling
from benchround.core.errors import IllegalRecordError
from benchround.core.lifecycle import Stage, next_stage, nothing_up
from benchround.core.record import Cause, Figure, Kind, Record

__all__ = ["LEAVES_REST", "Telling"]

NOT_ABOVE_SOWN = frozenset({Kind.FIRST_UP, Kind.COUNTED, Kind.THINNED, Kind.PRICKED_OUT})
CAUSES = frozenset({"", *map(str, Cause)})
TAKES_PLANTS = frozenset({*LEAVES_REST, Kind.LOST, Kind.COMPOSTED, Kind.SPARES_SETTLED})
SOWS = frozenset({Kind.SOWN, Kind.RESOWN})
BEGIN_GROWN = frozenset({Kind.PLANTED_BULBS, Kind.FOUND})
"""Kinds that begin a batch with so many plants or bulbs."""
NEW_GROWTH = frozenset({Kind.CUT_BACK, Kind.DORMANT})
"""Kinds after which it grows anew; what was marked for seed went with the old growth."""
NEVER_PLAIN = TALLIED | SOWS | NEW_GROWTH | {Kind.MARKED_FOR_SEED}
"""Kinds that change more than the stage, even where they give no figures."""
RENAMES = frozenset({"crop", "variety", "wanted"})
OTHER_COUNTS = ("cells", "seeds", "wanted")
SELDOM_SAID = RENAMES.union(OTHER_COUNTS) | {"cause"}
"""Figures that few records give and that are looked at one by one."""
MOST = 1_000_000
NOTHING_COUNTED = Tally()


class Telling:
    """A batch that takes records in."""

    def __init__(
        self, name: str, crop: str, variety: str, wanted: int | None, parts: list[PartTelling]
    ) -> None:
        self.name, self.crop, self.variety, self.wanted = name, crop, variety, wanted
        self.parts = parts
        self.sowing: Sowing | None = None
        self.tally = Counts(NOTHING_COUNTED)
        self.records: list[Record] = []
        self.marked_for_seed = 0

    @classmethod
    def begin(cls, record: Record, name: str) -> Telling:
        """A batch by its first record.

        Raises:
            IllegalRecordError: no batch begins with this kind.
        """
        kind = record.kind
        stage = next_stage(None, kind, name)
        count = record.count() if kind in BEGIN_GROWN else None
        telling = cls(
            name,
            record.text("crop") or "unknown",
            record.text("variety"),
            record.count("wanted"),
            [PartTelling.begin(record, stage, count)],
        )
        if kind in SOWS:
            telling.sowing = _sowing(None, record)
            telling.tally.sown = record.count("seeds")
        elif kind is Kind.PLANTED_BULBS:
            telling.tally.planted = count
        telling.records.append(record)
        return telling

    @classmethod
    def of(cls, batch: Batch) -> Telling:
        """A batch that stands still, to be told on."""
        parts = [PartTelling.of(part) for part in batch.parts]
        telling = cls(batch.id, batch.crop, batch.variety, batch.wanted, parts)
        telling.sowing, telling.tally = batch.sowing, Counts(batch.tally)
        telling.records, telling.marked_for_seed = list(batch.records), batch.marked_for_seed
        return telling

    def batch(self) -> Batch:
        """The batch as it stands; the telling ends with it, its parts are handed over."""
        return Batch(
            id=self.name,
            crop=self.crop,
            variety=self.variety,
            begun=self.records[0].day,
            wanted=self.wanted,
            parts=tuple(part.part() for part in self.parts),
            sowing=self.sowing,
            tally=self.tally.tally(),
            records=tuple(self.records),
            marked_for_seed=self.marked_for_seed,
        )

    def take(self, record: Record) -> None:
        """Take one more record in.

        Raises:
            IllegalRecordError: the record does not fit the stage, the part or the counts.
        """
        figures, kind = record.figures, record.kind
        part = self.parts[0]
        if not figures:
            if kind in part.again:
                part.last[kind] = record
                self.records.append(record)
                return
        elif "part" in figures:
            part = self._part(record)
        stage = part.ways.get(kind) or next_stage(part.stage, kind, self.name)
        if figures or kind in NEVER_PLAIN:
            self._take_figures(part, record, stage)
        else:
            part.pass_bare(stage, record)
        self.records.append(record)

    def _take_figures(self, part: PartTelling, record: Record, stage: Stage) -> None:
        """Take in what a record changes besides the stage of its part."""
        figures, kind = record.figures, record.kind
        count = self._count(part, record) if "count" in figures else None
        if not SELDOM_SAID.isdisjoint(figures):
            self._check_other(record)
            self._rename(figures, record)
        seen = record
        if count == 0 and stage is Stage.EMERGING is not part.stage and nothing_up(kind, count):
            seen, stage = replace(record, kind=Kind.LOOKED), part.stage
        alive_before = part.alive
        rest = part.move(seen, stage, count)
        if rest is not None:
            rest.name = self._free_name()
            self.parts.append(rest)
        if kind not in NEVER_PLAIN:
            return
        if kind in SOWS:
            self.sowing = _sowing(self.sowing, record)
        if kind in TALLIED:
            self.tally.take(part.name, alive_before, record, stage, count)
        elif kind is Kind.MARKED_FOR_SEED:
            self.marked_for_seed += count or 1
        elif kind in NEW_GROWTH and part is self.parts[0]:
            self.marked_for_seed = 0

    def _rename(self, figures: Mapping[str, Figure], record: Record) -> None:
        """Take in what the batch is now said to be."""
        if "wanted" in figures:
            self.wanted = record.count("wanted")
        if "variety" in figures:
            self.variety = record.text("variety") or self.variety
        if "crop" in figures:
            self.crop = record.text("crop") or self.crop

    def _part(self, record: Record) -> PartTelling:
        name = record.text("part")
        for part in self.parts:
            if part.name == name:
                return part
        known = ", ".join(part.name or "main" for part in self.parts)
        raise IllegalRecordError(f"{self.name} has no part '{name}'; it has: {known}.")

    def _free_name(self) -> str:
        taken = {part.name for part in self.parts}
        if SPARES not in taken:
            return SPARES
        number = 2
        while f"{SPARES} {number}" in taken:
            number += 1
        return f"{SPARES} {number}"

    def _count(self, part: PartTelling, record: Record) -> int | None:
        """The count a record gives, where there can be so many."""
        given = record.figures["count"]
        if type(given) is int and 0 <= given <= MOST:  # as nearly all
            count = given
        else:
            self._check_whole("count", record.number("count"))
            if record.number("count") is None:
                return None
            count = int(given)
        kind = record.kind
        if kind in NOT_ABOVE_SOWN:
            sown = self.tally.sown
            if sown and count > sown:
                self._check_sown(count, sown + (self.sowing.again_seeds if self.sowing else 0))
        if kind in TAKES_PLANTS and part.alive is not None and count > part.alive:
            raise IllegalRecordError(
                f"{count} is more than the {part.alive} plants alive in {self.name}: "
                "give a number up to that, or record a new count first."
            )
        return count

    def _check_other(self, record: Record) -> None:
        """Refuse other counts that cannot be, and a cause of loss that is none."""
        for figure in OTHER_COUNTS:
            value = record.figures.get(figure, 0)
            if type(value) is not int or not 0 <= value <= MOST:
                self._check_whole(figure, record.number(figure))
        if record.kind is Kind.LOST and record.text("cause") not in CAUSES:
            raise IllegalRecordError(
                f"'{record.text('cause')[:30]}' is no cause of loss: give one of "
                f"{', '.join(Cause)}."
            )

    def _check_sown(self, count: int, sown: int) -> None:
        if count > sown:
            raise IllegalRecordError(
                f"{count} is more than the {sown} seeds sown in {self.name}: "
                "give a count up to that, or put the number sown right first."
            )

    def _check_whole(self, figure: str, value: float | None) -> None:
        if value is not None and not (0 <= value <= MOST and value == int(value)):
            raise IllegalRecordError(
                f"{figure} {value:g} for {self.name} cannot be: give a whole number from 0 up."
            )


def _sowing(sowing: Sowing | None, record: Record) -> Sowing | None:
    """How it was sown, by a record of one of the kinds `SOWS`."""
    if record.kind is Kind.RESOWN:
        if sowing is None:
            return None
        more = sowing.again_seeds + (record.count("seeds") or 0)
        return replace(sowing, again_on=record.day, again_seeds=more)
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
