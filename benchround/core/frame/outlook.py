"""A frame's day ahead: the weather by the hour, what to do with the lid, the warmth inside."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, timedelta
from functools import cached_property, lru_cache

from benchround.core.crop.crop import Hardiness
from benchround.core.dates import number_of_days, say_day
from benchround.core.frame.build import FrameBuild, LidPosition
from benchround.core.frame.day import FrameDay, FrameFit, frame_day
from benchround.core.frame.fit import FitResult, FrameReading, fit_frame
from benchround.core.frame.lid_words import (
    HardeningPlan,
    LidAdvice,
    LidDay,
    LidLimits,
    Stock,
    limits_for,
)
from benchround.core.frame.lids import advise_lids
from benchround.core.frame.place import frame_build_of, lid_plan_of, standing_before
from benchround.core.frame.weather import lid_day, outside_hours, where_of
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import WAITING, Stage
from benchround.core.place_log import PlaceLog, place_log_of
from benchround.core.season import Season
from benchround.core.site import Place
from benchround.core.sky.known_day import known_day

FIT_DAYS_BACK = 30
FIT_READINGS = 7
"""The latest readings a frame is fitted to; our proposal (a frame changes with dirt and shade)."""

STOCK_OF = {
    Hardiness.VERY_TENDER: Stock.TENDER,
    Hardiness.TENDER: Stock.TENDER,
    Hardiness.HALF_HARDY: Stock.HALF_HARDY,
    Hardiness.HARDY: Stock.HARDY,
}
GERMINATING = WAITING | {Stage.EMERGING}
NOT_THERE_YET = frozenset({Stage.PLANNED, Stage.PRETREATED})

Living = tuple[Stage, Hardiness]
"""Stage and hardiness of one part that stands in a frame."""


@dataclass(frozen=True)
class FrameOutlook:
    """One frame's day.

    Attributes:
        build: the frame as reckoned with.
        day: the weather by the hour, and what else the advice was drawn from.
        advice: what to do with the lid.
        fit: what the grower's readings say of the frame.
        assumed: what was not known, and what was taken instead.
    """

    build: FrameBuild
    day: LidDay
    stock: Stock
    advice: LidAdvice
    fit: FrameFit
    assumed: tuple[str, ...]

    @cached_property
    def inside(self) -> FrameDay:
        """Warmth and heat by the hour when the advice is followed."""
        return frame_day(self.build, self.day.hours, self.advice.lid_plan, self.fit)

    @cached_property
    def shut(self) -> FrameDay:
        """The same with the lid left shut."""
        return frame_day(self.build, self.day.hours, (LidPosition.SHUT,) * 24, self.fit)


def stock_of(living: Iterable[Living], seedlings_too: bool = False) -> Stock | None:
    """The most delicate thing in a frame; None where nothing lives there.

    Args:
        living: what stands there.
        seedlings_too: count seed leaves as germinating, as a downpour asks.
    """
    delicate = GERMINATING | {Stage.SEED_LEAF} if seedlings_too else GERMINATING
    found = {
        Stock.GERMINATING if stage in delicate else STOCK_OF[hardiness]
        for stage, hardiness in living
        if stage not in NOT_THERE_YET
    }
    return next((stock for stock in Stock if stock in found), None)


def frost_tender(living: Iterable[Living]) -> bool:
    """Whether a cold night hurts anything there; hardy seed not yet up is not hurt."""
    return any(
        hardiness is not Hardiness.HARDY and stage not in NOT_THERE_YET
        for stage, hardiness in living
    )


def frame_outlook(
    season: Season,
    place: Place,
    day: date,
    stock: Stock,
    hardening: HardeningPlan | None = None,
    *,
    frost_hurts: bool = True,
) -> FrameOutlook:
    """What a day brings to a frame and what to do with its lid.

    Args:
        season: weather, site, and the frame's own readings and lid records.
        place: the frame.
        day: the day.
        stock: the most delicate thing in it.
        hardening: how far hardening off has come, where plants harden there.
        frost_hurts: whether anything in it is hurt by a cold night; if not, only a hard frost
            calls for a cover.
    """
    log = place_log_of(season, place.code)
    build, of_build = frame_build_of(place)
    asked, of_day = lid_day(season.weather, season.site, day, standing_before(log, day))
    fitted, of_fit = _fitted(season, place, build, log, day)
    advice = _advised(build, asked, stock, _limits(stock, frost_hurts), hardening, fitted)
    return FrameOutlook(
        build=build,
        day=asked,
        stock=stock,
        advice=advice,
        fit=fitted,
        assumed=(*of_day, *of_build, *of_fit, *advice.assumed),
    )


def _limits(stock: Stock, frost_hurts: bool) -> LidLimits:
    usual = limits_for(stock)
    if frost_hurts:
        return usual
    return LidLimits(
        crack_at_c=usual.crack_at_c,
        raise_at_c=usual.raise_at_c,
        aim_low_c=usual.aim_low_c,
        fleece_at_c=usual.mat_at_c,
    )


@lru_cache(maxsize=512)
def _advised(
    build: FrameBuild,
    asked: LidDay,
    stock: Stock,
    limits: LidLimits,
    hardening: HardeningPlan | None,
    fitted: FrameFit,
) -> LidAdvice:
    return advise_lids(build, asked, stock, limits=limits, hardening=hardening, fit=fitted)


def _fitted(
    season: Season, place: Place, build: FrameBuild, log: PlaceLog, day: date
) -> tuple[FrameFit, tuple[str, ...]]:
    """The frame refitted to its readings of days on which the lid was written down."""
    readings: list[FrameReading] = []
    without_lid = 0
    for back in range(1, FIT_DAYS_BACK + 1):
        on = day - timedelta(days=back)
        read = season.weather.at(place.code, on)
        if read is None or (read.min_c is None and read.max_c is None):
            continue
        plan = lid_plan_of(log, on)
        known = known_day(season.weather, season.site, on)
        if plan is None:
            without_lid += 1
        elif known.basis != "usual" and len(readings) < FIT_READINGS:
            hours = outside_hours(where_of(season.site), known, None)
            readings.append(FrameReading(say_day(on), hours, plan, read.max_c, read.min_c))
    result = _fit(build, tuple(readings))
    said = [f"{left.name} not used: {left.reason}" for left in result.rejected]
    if result.fit.sun_readings:
        said.append(
            f"fitted to {result.fit.sun_readings} readings of its own: it keeps "
            f"{result.fit.sun_factor:.2f} of the sun's heat its build says"
        )
    if without_lid:
        said.append(
            f"{number_of_days(without_lid)} of its own readings not used: "
            "no lid was written down then"
        )
    return result.fit, tuple(said)


@lru_cache(maxsize=64)
def _fit(build: FrameBuild, readings: tuple[FrameReading, ...]) -> FitResult:
    return fit_frame(build, readings)
