"""Pot on: when cells are filled with roots."""

from __future__ import annotations

import math
from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.containers import pots_a_tray
from benchround.core.crop.crop import Raising
from benchround.core.dates import say_day
from benchround.core.lifecycle import SEEDLING, Stage
from benchround.core.record import Kind
from benchround.core.task import Ask, Family, Harm, Why, Window
from benchround.core.water.tray_holder import in_its_pot
from benchround.rounds.proposal import Proposal, draft, in_sight
from benchround.rounds.view import BatchView

EARLY_DAYS, GRACE_DAYS = 7, 7
STAGES = SEEDLING | {Stage.PRICKED_OUT, Stage.GROWING_ON}


def propose(view: BatchView) -> Iterator[Proposal]:
    """Potting on what is still in cells."""
    growing = view.crop.growing
    if not growing.pot_on or view.stage not in STAGES or view.is_spare:
        return
    if view.since(Kind.POTTED_ON, Kind.PLANTED_OUT):
        return
    found = fit_to_pot_on(view)
    if found is None or in_its_pot(view.part, view.crop, view.season.containers):
        return
    best, figure = found
    earliest = best - timedelta(days=EARLY_DAYS)
    if not in_sight(view, Family.POT_ON, earliest):
        return
    yield Proposal(
        Family.POT_ON,
        Window(earliest, best, best + timedelta(days=GRACE_DAYS)),
        Harm.SPOILS_THIS_WEEK,
        f"Pot on {view.alive or 'the plants'} into {growing.pot_cm:g} cm pots when the plug holds",
        Why(
            "roots at the sides and base: one size up",
            (figure, f"due {say_day(best)}"),
            view.crop.source("growing.pot_on_days"),
        ),
        (
            draft(
                view,
                Kind.POTTED_ON,
                count=view.alive,
                pot_cm=growing.pot_cm,
                container=f"{growing.pot_cm:g} cm pot",
            ),
        ),
        asks=(
            Ask("count", "potted on", str(view.alive or ""), most=view.alive),
            Ask("place", "place", view.part.place, whole=False),
        ),
        trays=math.ceil(view.alive / pots_a_tray(growing.pot_cm)) if view.alive else None,
    )


def fit_to_pot_on(view: BatchView) -> tuple[date, str] | None:
    """The day it is fit to be potted on by the crop's usual days, and the figure behind it."""
    growing = view.crop.growing
    pricked = view.since(Kind.PRICKED_OUT)
    if pricked is not None:
        days = growing.pot_on_days
        return pricked + timedelta(days=days), f"{days} days from pricking out {say_day(pricked)}"
    if view.first_up is None or view.raising == Raising.TRAY:
        return None
    days = growing.pot_on_days_from_up
    since = view.first_up
    return since + timedelta(days=days), f"{days} days from first up {say_day(since)}"
