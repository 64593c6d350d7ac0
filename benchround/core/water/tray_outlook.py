"""A tray's water today: what is left, when it runs out, when it is next due, and why so."""

from __future__ import annotations

from datetime import date, timedelta
from functools import cached_property

from benchround.core.batch.batch import Batch, Part
from benchround.core.frozen import dataclass
from benchround.core.place_log import place_log_of
from benchround.core.season import Season
from benchround.core.sky.known_day import KnownDay
from benchround.core.water.balance import ALLOWED_SHARE, RootStage, ml_from_mm
from benchround.core.water.canopy import Canopy, canopy_of
from benchround.core.water.fit import Moisture, PlaceFactor
from benchround.core.water.run import (
    Absence,
    DayPart,
    WaterDay,
    lasts_absence,
    next_watering,
)
from benchround.core.water.tray_filled import BELIEVED_DRY_DAYS, Filled, domed_until, root_stage
from benchround.core.water.tray_fit import day_at, learnt_factor
from benchround.core.water.tray_holder import Holder, compost_of, holder_of, in_container
from benchround.core.water.tray_kept import Alike
from benchround.core.water.tray_level import Books, level_on, look_on

FEW_DAYS, DAYS_AHEAD = 3, 10


@dataclass(frozen=True)
class TrayOutlook:
    """One tray's water on the morning of a day.

    Attributes:
        holder: what the part stands in.
        roots: how far its roots reach.
        full: when it was last full.
        left_ml: easily available water this morning, in one container.
        dry_since: the day the allowed water was gone, where that is past.
        by: the part of today it is gone by, where today takes it.
        today: what today does to it; `known` the weather behind.
        factor: how fast the place dries against the model.
        leaves: the leaves over it as they grow.
        look_today: what the grower said of it today, if anything.
        alike: what was reckoned of trays like it.
    """

    season: Season
    part: Part
    day: date
    holder: Holder
    roots: RootStage
    full: Filled
    left_ml: float
    dry_since: date | None
    by: DayPart | None
    today: WaterDay
    known: KnownDay
    factor: PlaceFactor
    leaves: Canopy
    look_today: Moisture | None
    alike: Alike

    @property
    def to_feel(self) -> bool:
        """Whether it is dry by the books alone, with no watering written down for long."""
        if self.dry_since is None or self.full.written or self.look_today is not None:
            return False
        return not self.full.known or (self.day - self.dry_since).days > BELIEVED_DRY_DAYS

    @property
    def share(self) -> float:
        """What may go of the easily available water, as a share."""
        return ALLOWED_SHARE[self.roots]

    @property
    def allowed_ml(self) -> float:
        """What of a full container may go before watering."""
        return self.holder.water.allowed_ml(self.share)

    @property
    def lost_ml(self) -> float:
        """What the day is going to take."""
        return min(self.left_ml, ml_from_mm(self.today.loss_mm, self.holder.water.area_m2))

    @cached_property
    def runs_out(self) -> date | None:
        """The day its allowed water is gone, past or ahead; None if not within ten days."""
        if self.dry_since is not None:
            return self.dry_since
        return self._dry_day(self.left_ml)

    @property
    def again(self) -> date | None:
        """The day it is next due when filled this morning; None if not within ten days."""
        return self._dry_day(self.holder.water.capacity_ml)

    def _dry_day(self, level_ml: float) -> date | None:
        """The day a level's allowed water is gone; None if not within ten days."""
        stands = ((self.day, self.part.place, self.factor.factor),)
        kept = self.alike.dry_days
        key = ((stands, domed_until(self.part)), self.day, level_ml)
        if key not in kept:
            kept[key] = self._dry_day_afresh(level_ml)
        return kept[key]

    def _dry_day_afresh(self, level_ml: float) -> date | None:
        """Most trays tell within the first few days."""
        for span in (FEW_DAYS, DAYS_AHEAD):
            factor = self.factor.factor
            ahead = days_ahead(self.season, self.part, self.leaves, self.day, factor, span)
            found = next_watering(self.holder.water, ahead, self.share, level_ml)
            if found is not None:
                return self.day + timedelta(days=found.day_index)
        return None

    @property
    def allowed_left_ml(self) -> float:
        """What may still go before watering, ml; never below zero."""
        return max(0.0, self.allowed_ml - (self.holder.water.capacity_ml - self.left_ml))


@dataclass(frozen=True, slots=True)
class Away:
    """A tray that does not last a planned absence."""

    batch: str
    part: str
    place: str
    dry_on: date
    absence: Absence


def tray_outlook(season: Season, batch: Batch, part: Part, day: date) -> TrayOutlook | None:
    """The water of one tray on the morning of a day; None for what stands in no container."""
    if not in_container(season, batch, part):
        return None
    crop, compost = season.crop(batch.crop), compost_of(season)
    log = place_log_of(season, part.place)
    holder = holder_of(batch, part, crop, season.containers, compost)
    roots = root_stage(batch, part, crop, day)
    factor = learnt_factor(season, batch, part, compost)
    leaves = canopy_of(batch, part, crop, holder.pot)
    today, known = day_at(season, part, leaves, day, factor.factor, rain_counts=False)
    share = ALLOWED_SHARE[roots]
    books = Books(season, batch, part, holder.water, share, factor.factor, leaves)
    full, level = level_on(books, day)
    return TrayOutlook(
        season=season,
        part=part,
        day=day,
        holder=holder,
        roots=roots,
        full=full,
        left_ml=level.left_ml,
        dry_since=level.dry_since,
        by=level.by,
        today=today,
        known=known,
        factor=factor,
        leaves=leaves,
        look_today=look_on(part, log, day),
        alike=books.alike,
    )


def days_ahead(
    season: Season,
    part: Part,
    leaves: Canopy,
    day: date,
    factor: float,
    days: int = DAYS_AHEAD,
) -> tuple[WaterDay, ...]:
    """A day and those after it, as they will dry a part's tray; forecast rain not counted."""
    ahead = (day + timedelta(days=n) for n in range(days))
    return tuple(day_at(season, part, leaves, on, factor, rain_counts=False)[0] for on in ahead)


def water_away(season: Season, day: date, days: int) -> tuple[Away, ...]:
    """Which trays, filled on the morning of leaving, do not last a planned absence.

    Args:
        season: the season.
        day: the morning of leaving.
        days: how many days nobody waters, from that morning on.

    Returns:
        The trays that run out, soonest first; empty when nothing does.
    """
    found: list[Away] = []
    for batch in season.batches.values():
        for part in batch.parts:
            if days > 0 and in_container(season, batch, part):
                away = _away(season, batch, part, day, days)
                if away is not None:
                    found.append(away)
    return tuple(sorted(found, key=lambda away: (away.dry_on, away.batch, away.part)))


def _away(season: Season, batch: Batch, part: Part, day: date, days: int) -> Away | None:
    crop, compost = season.crop(batch.crop), compost_of(season)
    holder = holder_of(batch, part, crop, season.containers, compost)
    tray, leaves = holder.water, canopy_of(batch, part, crop, holder.pot)
    share = ALLOWED_SHARE[root_stage(batch, part, crop, day)]
    factor = learnt_factor(season, batch, part, compost).factor
    absence = lasts_absence(tray, days_ahead(season, part, leaves, day, factor, days), share)
    if absence.dry is None:
        return None
    dry_on = day + timedelta(days=absence.dry.day_index)
    return Away(batch.id, part.name, part.place, dry_on, absence)
