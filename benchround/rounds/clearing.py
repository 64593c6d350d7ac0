"""Clear, shear or leave: the decision about what is going over."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from benchround.core.crop.crop import PlantClass
from benchround.core.dates import say_day
from benchround.core.lifecycle import Stage
from benchround.core.record import Kind
from benchround.core.task import Family, Harm, Why, Window
from benchround.rounds.proposal import Proposal, draft
from benchround.rounds.view import BatchView

DECIDE_FROM_DAYS, DECIDE_BY_DAYS = 5, 14


def propose(view: BatchView) -> Iterator[Proposal]:
    """What goes over is sheared, left for seed or cleared within two weeks."""
    if view.stage not in (Stage.GOING_OVER, Stage.SEED_SAVED):
        return
    since = view.part.since
    saved = view.stage is Stage.SEED_SAVED
    best = since if saved else since + timedelta(days=DECIDE_FROM_DAYS)
    lasting = view.crop.plant_class in (PlantClass.HARDY_PERENNIAL, PlantClass.BULB)
    flowering = view.crop.flowering
    if view.crop.plant_class is PlantClass.BULB:
        words, kind = "Deadhead and leave the leaves to die back", Kind.DORMANT
    elif lasting or (flowering is not None and flowering.shear and not saved):
        words, kind = "Cut back for a second flush, or leave for seed", Kind.CUT_BACK
    else:
        words, kind = "Clear it, or leave it for seed", Kind.COMPOSTED
    if view.done_to_this_growth(Kind.SEED_RIPE) and not saved:
        words = f"When the seed is in: {words[0].lower()}{words[1:]}"
    elif saved and kind is Kind.COMPOSTED:
        words = "Clear it: the seed is saved"
    elif saved and kind is Kind.CUT_BACK:
        words = "Cut it back: the seed is saved, and it comes again"
    yield Proposal(
        Family.CLEAR,
        Window(best, best, since + timedelta(days=DECIDE_BY_DAYS)),
        Harm.GETS_LATE,
        words,
        Why(
            "within two weeks of going over it is decided what becomes of it",
            (f"{view.stage} since {say_day(since)}",),
        ),
        (draft(view, kind),),
    )
