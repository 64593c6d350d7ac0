"""What a task family is given to look at: one part of one batch, or one place, on one day."""

from __future__ import annotations

from datetime import date, timedelta
from functools import cached_property

from benchround.core.batch.batch import NEW_GROWTH, SPARES, Batch, Part
from benchround.core.crop.crop import Crop, Raising
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import SEEDLING, WAITING, Stage
from benchround.core.record import Kind
from benchround.core.season import Season
from benchround.core.seed.expected_count import ExpectedCount, expected_count
from benchround.core.seed.waiting import Waiting, forecast
from benchround.core.site import Place


class BatchView:
    """One part of a batch on a day; never changed once it is made.

    Attributes:
        stage: the stage the part is in.
        place: the place it stands at, where that is known.
    """

    def __init__(self, season: Season, batch: Batch, part: Part, crop: Crop, day: date) -> None:
        self.season, self.batch, self.part, self.crop, self.day = season, batch, part, crop, day
        self.stage: Stage = part.stage
        self.place: Place | None = season.place(part.place)

    @property
    def is_spare(self) -> bool:
        """Whether these are plants left over from planting out."""
        return self.part.name.startswith(SPARES)

    @property
    def raising(self) -> str:
        """How it was or will be sown."""
        sowing = self.batch.sowing
        return (sowing.raising if sowing else "") or str(self.crop.raising)

    @property
    def in_row(self) -> bool:
        """Whether it was drilled where it grows."""
        return self.raising == Raising.DRILL

    @property
    def alive(self) -> int | None:
        """Plants alive by the last count."""
        return self.part.alive

    @cached_property
    def waiting(self) -> Waiting | None:
        """The emergence forecast, while nothing is up."""
        if self.stage not in WAITING and self.stage is not Stage.STRATIFYING:
            return None
        return forecast(self.season, self.batch, self.part, self.crop, self.day)

    @cached_property
    def expected(self) -> ExpectedCount | None:
        """What the last count promises, while seedlings still come up."""
        return expected_count(self.season, self.batch, self.crop)

    def since(self, kind: Kind, *or_one_of: Kind) -> date | None:
        """The last day any of these kinds was recorded for this part."""
        if or_one_of:
            return self.part.last_day(kind, *or_one_of)
        record = self.part.last.get(kind)
        return None if record is None else record.day

    @cached_property
    def regrown_from(self) -> date:
        """The day its present growth began: it was cut back or went dormant then, else begun."""
        return self.since(*NEW_GROWTH) or self.batch.begun

    def done_to_this_growth(self, kind: Kind) -> bool:
        """Whether a kind was recorded since the present growth began; a perennial has several."""
        return self.done_since(kind, self.regrown_from)

    def done_since(self, kind: Kind, day: date) -> bool:
        """Whether a kind was recorded for this part on a day or after it."""
        last = self.since(kind)
        return last is not None and last >= day

    def first(self, kind: Kind) -> date | None:
        """The first day a kind was recorded for this part."""
        return self.part.first_day(kind)

    def did_today(self, *kinds: Kind) -> bool:
        """Whether one of these was already recorded today."""
        return self.since(*kinds) == self.day

    @cached_property
    def first_up(self) -> date | None:
        """The day the first seedling was seen, as far as any record tells."""
        kinds = (Kind.FIRST_UP, Kind.SEED_LEAVES, Kind.TRUE_LEAVES, Kind.COUNTED)
        days = [day for kind in kinds if (day := self.first(kind)) is not None]
        return min(days) if days else None

    @cached_property
    def true_leaves(self) -> tuple[date, bool] | None:
        """The day of first true leaves, and whether it was seen (else reckoned from first up)."""
        seen = self.first(Kind.TRUE_LEAVES)
        if seen is not None:
            return seen, True
        if self.first_up is None or self.stage not in SEEDLING:
            return None
        return self.first_up + timedelta(days=self.crop.growing.true_leaf_days), False

    @property
    def name(self) -> str:
        """Crop and variety in words."""
        variety = f" '{self.batch.variety}'" if self.batch.variety else ""
        return f"{self.crop.name}{variety}"


@dataclass(frozen=True)
class PlaceView:
    """One place on a day, with the parts that stand in it."""

    season: Season
    place: Place
    standing: tuple[BatchView, ...]
    day: date


@dataclass(frozen=True)
class SiteView:
    """The site as a whole on a day."""

    season: Season
    day: date
