"""The pot a tick of the round writes down is one that water knows."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from benchround.core.crop.crop import Growing
from benchround.core.record import Kind
from benchround.core.season import Season
from benchround.core.task import Family
from benchround.core.water.tray_holder import Holder
from benchround.core.water.tray_outlook import tray_outlook
from benchround.rounds.build import build_round
from tests.folding import fold_season
from tests.rounds.small_season import CROPS, DAY, Story, begin, place, sown


def potted(size_cm: float) -> tuple[Story, Season]:
    plant = replace(CROPS["hardling"], growing=Growing(feed=False, pot_on=True, pot_cm=size_cm))
    crops = {**CROPS, "hardling": plant}
    story = begin()
    place(story, "bench-1", name="Bench", kind="bench")
    sown(story, "b1", "hardling", DAY - timedelta(days=40), "bench-1", container="40-cell tray")
    story.tell(DAY - timedelta(days=30), Kind.FIRST_UP, "b1", count=30)
    tasks = build_round(fold_season(story.records, crops), DAY).tasks
    (task,) = [task for task in tasks if task.family is Family.POT_ON]
    story.tick(task, DAY)
    return story, fold_season(story.records, crops)


def holder(season: Season, day: date = DAY) -> Holder:
    batch = season.batches["b1"]
    found = tray_outlook(season, batch, batch.main, day)
    assert found is not None
    return found.holder


@pytest.mark.parametrize(
    ("size_cm", "name", "assumed"),
    [
        (9.0, "9 cm pot", ()),
        (7.0, "7 cm pot", ()),
        (7.5, "7 cm pot", ("'7.5 cm pot' is not among the containers: 7 cm pot taken",)),
    ],
)
def test_a_pot_the_round_itself_asked_for_is_known(
    size_cm: float, name: str, assumed: tuple[str, ...]
) -> None:
    _, season = potted(size_cm)
    assert (holder(season).name, holder(season).assumed) == (name, assumed)


def test_pots_told_as_several_are_pots() -> None:
    """Records of earlier versions, and growers, say "9 cm pots"."""
    story, _ = potted(9.0)
    story.tell(DAY, Kind.POTTED_ON, "b1", container="9 cm pots")
    season = story.season()
    assert (holder(season).name, holder(season).assumed) == ("9 cm pot", ())
