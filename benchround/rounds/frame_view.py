"""A frame seen for the round: the most delicate thing in it, its hardening, its day ahead."""

from __future__ import annotations

from datetime import timedelta

from benchround.core.dates import say_day
from benchround.core.frame.lid_words import HardeningPlan, LidLimits, Stock
from benchround.core.frame.outlook import (
    NOT_THERE_YET,
    FrameOutlook,
    frame_outlook,
    frost_tender,
    stock_of,
)
from benchround.core.lifecycle import Stage
from benchround.core.sky.known_day import known_day
from benchround.rounds.hardening import STAGES, stage_today
from benchround.rounds.view import BatchView, PlaceView

OWN_READING_DAYS, OWN_READING_C = 7, 27.0
"""How far back a frame's own hot reading is held up as a warning; our proposal."""
DOWNPOUR = LidLimits()


def outlook(view: PlaceView) -> FrameOutlook | None:
    """The frame's day; None for a place without lids, or one nothing lives in."""
    if not view.place.lidded:
        return None
    living = [(standing.stage, standing.crop.hardiness) for standing in view.standing]
    stock = stock_of(living, seedlings_too=_downpour(view))
    if stock is None:
        return None
    return frame_outlook(
        view.season,
        view.place,
        view.day,
        stock,
        hardening_plan(view, stock),
        frost_hurts=frost_tender(living),
    )


def _downpour(view: PlaceView) -> bool:
    today = known_day(view.season.weather, view.season.site, view.day)
    return (today.rain_mm or 0.0) >= DOWNPOUR.rain_day_mm or (
        today.rain_hour_mm or 0.0
    ) >= DOWNPOUR.rain_hour_mm


def hardening_plan(view: PlaceView, stock: Stock) -> HardeningPlan | None:
    """How far open the hardening stock wants the lid: the batch furthest back decides.

    A night open goes back to a lid shut at night where delicate stock that is not hardening
    stands beside.
    """
    plans = [plan for plan in map(_plan_of, view.standing) if plan is not None]
    if not plans:
        return None
    furthest_back = min(plans, key=STAGES.index)
    if furthest_back is HardeningPlan.NIGHT_OPEN and (
        stock is Stock.GERMINATING or any(map(_stays_in, view.standing))
    ):
        return HardeningPlan.FULLY_OPEN
    return furthest_back


def _stays_in(view: BatchView) -> bool:
    outward = view.stage in (Stage.HARDENING, Stage.READY)
    gone = view.stage in NOT_THERE_YET
    return not outward and not gone and frost_tender([(view.stage, view.crop.hardiness)])


def _plan_of(view: BatchView) -> HardeningPlan | None:
    if view.stage is Stage.READY:
        return HardeningPlan.NIGHT_OPEN
    return stage_today(view)


def own_reading(view: PlaceView) -> tuple[str, ...]:
    """The hottest reading of the frame's own thermometer lately, where it was too hot."""
    days = (view.day - timedelta(days=back) for back in range(1, OWN_READING_DAYS + 1))
    read = (view.season.weather.at(view.place.code, day) for day in days)
    hot = [
        (weather.max_c, weather.day)
        for weather in read
        if weather is not None and weather.max_c is not None and weather.max_c > OWN_READING_C
    ]
    if not hot:
        return ()
    top_c, day = max(hot)
    return (f"its own thermometer read {top_c:g} C on {say_day(day)}",)


def tender_names(view: PlaceView, most: int = 4) -> str:
    """The ids of what a cold night would hurt."""
    names = [
        standing.batch.id
        for standing in view.standing
        if frost_tender([(standing.stage, standing.crop.hardiness)])
    ]
    kept = sorted(set(names))
    more = f" and {len(kept) - most} more" if len(kept) > most else ""
    return ", ".join(kept[:most]) + more


def sky_figures(view: PlaceView) -> tuple[str, ...]:
    """The day's weather in figures."""
    known = known_day(view.season.weather, view.season.site, view.day)
    sun = "" if known.sun_h is None else f", {known.sun_h:g} h of sun"
    return (f"{known.basis}: {known.min_c:g} to {known.max_c:g} C{sun}",)
