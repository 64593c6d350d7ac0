"""Bulbs as companions: leaves are left six weeks, then lift or leave."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.crop.crop import PlantClass
from benchround.core.dates import say_day
from benchround.core.lifecycle import Stage
from benchround.core.record import Kind
from benchround.core.task import Family, Harm, Why, Window
from benchround.rounds.proposal import Proposal, draft, window
from benchround.rounds.sowing import sowing_window
from benchround.rounds.view import BatchView

GRACE_DAYS = 14
SOURCE = "dictionary usage example for daffodils (at least six weeks after deadheading)"


def propose(view: BatchView) -> Iterator[Proposal]:
    """Plant bulbs in their window; after flowering, rest, then the decision."""
    if view.crop.plant_class is not PlantClass.BULB:
        return
    if view.stage is Stage.PLANNED:
        yield from _plant(view)
    if view.stage is not Stage.DORMANT:
        return
    since, figure = _resting(view)
    kept = view.season.done.get((str(Family.BULBS), view.batch.id, view.part.name))
    if kept is not None and kept >= since:
        return
    best = since + timedelta(days=view.crop.bulb_rest_days)
    yield Proposal(
        Family.BULBS,
        window(best, grace=GRACE_DAYS),
        Harm.GETS_LATE,
        f"Lift or leave: {view.alive or 'the'} bulbs have had their rest",
        Why(
            "bulb leaves stay six weeks after deadheading",
            (figure, f"{view.crop.bulb_rest_days} days"),
            SOURCE,
        ),
        (draft(view, Kind.DONE, family=str(Family.BULBS)),),
    )


def _resting(view: BatchView) -> tuple[date, str]:
    """Since when this year's leaves die back: the deadheading after this year's flower, if any."""
    flowered, deadheaded = view.since(Kind.FIRST_FLOWER), view.since(Kind.DEADHEADED)
    if deadheaded is not None and (flowered is None or deadheaded >= flowered):
        return deadheaded, f"deadheaded {say_day(deadheaded)}"
    since = view.part.since
    return since, f"dormant since {say_day(since)}"


def _plant(view: BatchView) -> Iterator[Proposal]:
    span = sowing_window(view)
    if span is None:
        return
    yield Proposal(
        Family.BULBS,
        Window(span.opens, span.opens, span.closes),
        Harm.GETS_LATE,
        f"Plant {view.batch.wanted or 'the'} bulbs",
        Why(
            "its planting window is open",
            (f"window {say_day(span.opens)} to {say_day(span.closes)}",),
            view.crop.source("windows"),
        ),
        (draft(view, Kind.PLANTED_BULBS, count=view.batch.wanted),),
    )
