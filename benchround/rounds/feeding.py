"""Feed: by the product's label, which is the grower's to read; no dose is ever given here."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.crop.crop import Raising
from benchround.core.dates import say_day
from benchround.core.lifecycle import Stage
from benchround.core.record import Kind
from benchround.core.site import BEFORE_REST_DAYS
from benchround.core.task import Family, Harm, Slot, Why, Window
from benchround.core.typed.figures import whole_in
from benchround.rounds.proposal import Proposal, draft, in_sight, window
from benchround.rounds.view import BatchView

FIRST_AFTER_DAYS, FIRST_EARLY_DAYS = 35, 7
"""Compost feeds a plant for four to six weeks; the middle is taken."""
EVERY_DAYS = 7
STAGES = (Stage.TRUE_LEAF, Stage.PRICKED_OUT, Stage.GROWING_ON, Stage.POTTED_ON)
SOURCE = "West Dean Gardens, peat-free compost trial results (4-6 weeks); interval by the label"


def propose(view: BatchView) -> Iterator[Proposal]:
    """The first feed when the compost runs out, then by the interval of the grower's label."""
    if view.stage not in STAGES or not view.crop.growing.feed or view.is_spare:
        return
    if view.place is not None and view.place.outdoors:
        return
    if view.season.site.rest_around(view.day, BEFORE_REST_DAYS):
        return  # soft growth before winter is lost to it
    potted = view.since(Kind.PRICKED_OUT, Kind.POTTED_ON)
    to_be_pricked = view.raising == Raising.TRAY and view.crop.growing.prick_out
    if view.stage is Stage.TRUE_LEAF and to_be_pricked:
        return  # fresh compost is days away
    fed = view.since(Kind.FED)
    if fed is not None and (potted is None or fed > potted):
        every = view.part.last[Kind.FED].count("every_days") or _every(view)
        when = window(_after_rest(view, fed + timedelta(days=every)))
        if in_sight(view, Family.FEED, when.earliest):
            yield _feed(view, when, f"last fed {say_day(fed)}, every {every} days")
        return
    begun = potted or (view.batch.sowing.day if view.batch.sowing else None)
    if begun is None:
        return
    first = _after_rest(view, begun + timedelta(days=FIRST_AFTER_DAYS))
    when, weeks = window(first, early=FIRST_EARLY_DAYS), (view.day - begun).days / 7
    if in_sight(view, Family.FEED, when.earliest):
        yield _feed(view, when, f"in this compost since {say_day(begun)}, {weeks:.0f} weeks")


def _after_rest(view: BatchView, day: date) -> date:
    """Hardy stock that stood the winter is fed when it grows again, not counted as late."""
    return view.season.site.after_rest(day)


def _every(view: BatchView) -> int:
    text = view.season.settings.get("feed_every_days", "")
    days = whole_in(text)
    return days if days is not None and days > 0 else EVERY_DAYS


def _feed(view: BatchView, when: Window, figure: str) -> Proposal:
    return Proposal(
        Family.FEED,
        when,
        Harm.GETS_LATE,
        "Feed as the label says; not if dry or wilting",
        Why("seed and potting composts feed for four to six weeks", (figure,), SOURCE),
        (draft(view, Kind.FED),),
        slot=Slot.MIDDAY,
    )
