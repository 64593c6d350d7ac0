"""Reading a batch's looks record by record, as far as nothing was taken out.

Counts are cumulative. Thinning, pricking out, potting and the like end the reading, and so does a
count called final. Seedlings lost between two counts had come up and are added to the later one; a
count that falls with no loss recorded adds none. A count taken at the first true leaves is a count
like any other.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import date

from benchround.core.batch.batch import LEAVES_REST, MAIN, Batch, Sowing
from benchround.core.crop.crop import Raising
from benchround.core.dates import say_day
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import SEEDLINGS_SEEN
from benchround.core.record import Kind, Record
from benchround.core.seed.looks import Look, Looks

SETTLED_AFTER_DAYS = 8
"""Days after first up from which a count is taken as final (common practice, no source)."""

NOTHING_SEEN = (Kind.LOOKED, Kind.STALLED)
TAKEN_OUT = frozenset(
    {
        *LEAVES_REST,
        Kind.THINNED,
        Kind.COMPOSTED,
        Kind.TAKEN,
        Kind.GAPPED_UP,
        Kind.GROWING_ON,
        Kind.HARDENED,
        Kind.READY,
        Kind.OVERWINTERING,
        Kind.FIRST_FLOWER,
        Kind.CROPPED,
        Kind.SAME_AS,
    }
)
"""Kinds after which a count no longer tells how many came up."""

NOT_SOWN = "it was not sown yet"
SEEDS_NOT_SAID = "how many seeds were sown was not said"
NOT_LOOKED_AT = "nothing was looked at or counted yet"
NEVER_COUNTED = "it came up and was not counted"
DAILY = "no look before the first seedling is on record: daily looks are taken"


@dataclass(frozen=True, slots=True)
class LooksOf:
    """A batch's looks, or why there are none to reckon with.

    Attributes:
        looks: None where nothing can be said; `because` says why.
        counted_on: the day of the last count read; None where nothing was counted.
        settled: whether the last count can be taken as final.
        notes: what was taken for granted.
    """

    looks: Looks | None
    because: str = ""
    counted_on: date | None = None
    settled: bool = False
    notes: tuple[str, ...] = ()


def story_since_sowing(batch: Batch) -> tuple[Record, ...]:
    """What the records of the main part tell of its germination, in story order.

    It is what comes after the sowing, until plants leave the part, without the kinds that tell
    nothing of it, as waterings.
    """
    story: list[Record] = []
    sown, sowing = False, Kind.SOWN
    for record in batch.records:
        kind = record.kind
        if kind not in TELLS:
            continue
        if kind is sowing:
            sown = True
        elif sown and record.figures.get("part", MAIN) == MAIN:
            story.append(record)
            if kind in TAKEN_OUT:
                break
    return tuple(story)


class Reading:
    """Looks gathered record by record."""

    def __init__(self, sowing: Sowing) -> None:
        self.begun = sowing.day
        self.clumps = sowing.raising == Raising.CLUMPS
        self.totals: dict[int, int] = {}
        self.up = 0
        self.up_by_count = 0
        self.lost = 0
        self.first: int | None = None
        self.counted_on: date | None = None
        self.over = False
        self.final = False
        self.because = ""
        self.two_sowings = ""
        self.notes: list[str] = []

    def read(self, story: Iterable[Record]) -> Reading:
        """Take records in until the reading ends."""
        for record in story:
            take = READ.get(record.kind)
            if take is not None:
                take(self, record)
                if self.over or self.because:
                    break
        return self

    def _see_none(self, record: Record) -> None:
        if self.up == 0:
            self._look(record, 0)

    def _see(self, record: Record) -> None:
        count = record.count()
        if count and self.clumps:
            count = _in_clumps(record, count)
            if count is None:
                self.because = "clumps were counted, and not how many seedlings stand in one"
                return
        if count is None:
            total = max(self.up, 1)
        else:
            total, self.counted_on = count + self.lost, record.day
            if total < self.up:
                total = self.up
                self.notes.append(
                    f"fewer on {say_day(record.day)} than before, with no loss recorded: "
                    "none is taken as new"
                )
        self._look(record, total)
        if record.figures.get("final") is True:
            self.over = self.final = True

    def _count(self, record: Record) -> None:
        self._see(record)
        self.up_by_count = self.up

    def _see_leaves(self, record: Record) -> None:
        if record.count() is not None:
            self._see(record)

    def _lose(self, record: Record) -> None:
        count = record.count()
        if count is None:
            self.over = True
        elif self.up == 0:
            cause = record.text("cause") or "unknown"
            self.because = f"seed was lost before it came up ({cause})"
        else:
            self.lost += count

    def _sow_again(self, record: Record) -> None:
        self.two_sowings = (
            f"it was sown again on {say_day(record.day)}: the counts belong to two sowings"
        )

    def _wash_out(self, record: Record) -> None:
        self.because = f"seed was washed out on {say_day(record.day)}"

    def _take_out(self, record: Record) -> None:
        self.over = True

    def _look(self, record: Record, total: int) -> None:
        days = (record.day - self.begun).days
        if days == 0:
            if total > 0:
                self.because = "it came up on the day it was sown: one of the two days is wrong"
            return
        if total > 0 and self.first is None:
            self.first = days
            if record.kind is Kind.FIRST_UP and not self.totals:
                self.totals[days - 1] = 0
                self.notes.append(DAILY)
        self.up = total
        self.totals[days] = total

    def fault(self, sown: int) -> str:
        """Why the looks cannot be reckoned with; empty where they can."""
        return self.because or self.two_sowings or self.count_fault(sown)

    def count_fault(self, sown: int) -> str:
        """Why nobody can say how many came up of all that was sown; empty where one can."""
        if self.because:
            return self.because
        if not self.totals:
            return NOT_LOOKED_AT
        if self.up and self.counted_on is None:
            return NEVER_COUNTED
        if self.up > sown:
            return f"{self.up} came up of {sown} sown: one of the two is wrong, or seed clusters"
        return ""

    @property
    def settled(self) -> bool:
        """Whether the last count can be taken as final: of two sowings only one called so."""
        waited = not self.two_sowings and self._waited() >= SETTLED_AFTER_DAYS
        return self.final or waited

    def result(self, sown: int) -> LooksOf:
        """The looks as they stand."""
        fault = self.fault(sown)
        if fault:
            return LooksOf(None, fault)
        return LooksOf(
            Looks(tuple(self._steps()), sown),
            counted_on=self.counted_on,
            settled=self.settled,
            notes=tuple(self.notes),
        )

    def _steps(self) -> Iterator[Look]:
        before, total_before = 0, 0
        for days, total in sorted(self.totals.items()):
            if days > before:
                yield Look(float(before), float(days), total - total_before)
            before, total_before = days, total

    def _waited(self) -> int:
        """Days from the first seedling to the last count."""
        if self.counted_on is None or self.first is None:
            return 0
        return (self.counted_on - self.begun).days - self.first


READ: Mapping[Kind, Callable[[Reading, Record], None]] = {
    **dict.fromkeys(TAKEN_OUT, Reading._take_out),
    **dict.fromkeys(NOTHING_SEEN, Reading._see_none),
    **dict.fromkeys(SEEDLINGS_SEEN, Reading._see),
    Kind.COUNTED: Reading._count,
    Kind.TRUE_LEAVES: Reading._see_leaves,
    Kind.LOST: Reading._lose,
    Kind.RESOWN: Reading._sow_again,
    Kind.WASHED_OUT: Reading._wash_out,
}
"""Kinds a reading takes in, and how."""
TELLS = READ.keys() | {Kind.SOWN, Kind.SEED_LEAVES}
"""Kinds that tell anything of a germination."""


def _in_clumps(record: Record, clumps: int) -> int | None:
    """The seedlings in counted clumps, by the mean number that stands in one."""
    mean = record.number("mean_per_clump")
    return None if mean is None else round(clumps * mean)
