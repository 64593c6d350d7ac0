"""Support: netting, sticks or ties before the gale that would lay it flat."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.dates import say_day
from benchround.core.lifecycle import Stage
from benchround.core.record import Kind
from benchround.core.task import Family, Harm, Why, Window
from benchround.rounds.proposal import Proposal, draft
from benchround.rounds.view import BatchView

GALE_KMH = 60.0
LOOK_AHEAD_DAYS = 4
BUDS_GRACE_DAYS = 7
SMALL_DAYS = 21
"""Newly planted stock is too small to be laid flat (common practice, no source)."""
STAGES = (Stage.ESTABLISHING, Stage.GROWING_ON, Stage.TRUE_LEAF)


def propose(view: BatchView) -> Iterator[Proposal]:
    """Support of tall crops that stand outdoors: by buds, and before a gale on the outlook."""
    if not view.crop.planting.support or view.stage not in STAGES:
        return
    if view.done_to_this_growth(Kind.SUPPORTED):
        return
    if not (view.since(Kind.PLANTED_OUT) or (view.in_row and view.since(Kind.THINNED))):
        return
    if view.stage is Stage.ESTABLISHING and (view.day - view.part.since).days < SMALL_DAYS:
        return
    buds = _buds(view)
    gales = [
        weather
        for weather in view.season.weather.ahead(view.day, LOOK_AHEAD_DAYS)
        if weather.gust_kmh is not None and weather.gust_kmh >= GALE_KMH
    ]
    if buds is None and not gales:
        return
    best = buds or view.day
    latest = best + timedelta(days=BUDS_GRACE_DAYS)
    figures = [f"buds since {say_day(buds)}"] if buds else []
    words = "Support with netting or sticks"
    if gales:
        gale = gales[0]
        latest = max(view.day, gale.day - timedelta(days=1))
        words += f" before {say_day(gale.day)}"
        figures.append(f"gust of {gale.gust_kmh:g} km/h on {say_day(gale.day)}")
    yield Proposal(
        Family.SUPPORT,
        Window(best, best, latest),
        Harm.SPOILS_THIS_WEEK if gales else Harm.GETS_LATE,
        words,
        Why("tall stems are held before wind lays them", tuple(figures)),
        (draft(view, Kind.SUPPORTED),),
    )


def _buds(view: BatchView) -> date | None:
    """The first buds of the present growth, as far as the records of it tell."""
    first, last = view.first(Kind.BUDS), view.since(Kind.BUDS)
    since = first if first is not None and first >= view.regrown_from else last
    return since if since is not None and since >= view.regrown_from else None
