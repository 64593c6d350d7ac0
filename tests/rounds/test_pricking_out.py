"""Into what seedlings are pricked out, and what then is potted on.

Tomatoes, peppers and aubergines go from the seed tray straight into 9 cm pots, others into cells;
one plant a cell or pot: common practice, no source.
"""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from benchround.core.record import Figure, Kind
from benchround.core.task import Family, Task
from benchround.core.water.tray_holder import in_its_pot
from tests.rounds.small_season import sown
from tests.rounds.spring import Spring

SOWN, UP, LEAVES = date(2026, 3, 8), date(2026, 3, 20), date(2026, 4, 3)


def raised(crop: str, up: int, **figures: Figure) -> Spring:
    story = Spring()
    sown(story, "b01", crop, SOWN, "sill", **{"raising": "tray", "seeds": 60, **figures})
    story.tell(UP, Kind.FIRST_UP, "b01", count=up)
    story.tell(UP, Kind.COUNTED, "b01", count=up, final=True)
    story.tell(LEAVES, Kind.TRUE_LEAVES, "b01")
    return story


def prick_out(story: Spring) -> Task:
    [task] = story.tasks(LEAVES, Family.PRICK_OUT)
    return task


@pytest.mark.parametrize("crop", ["tomato", "pepper", "aubergine"])
def test_a_few_fruiting_vegetables_are_pricked_out_into_as_many_pots(crop: str) -> None:
    task = prick_out(raised(crop, 8))
    assert task.instruction.startswith("Prick out 8 into 9 cm pots, one to each")
    assert dict(task.ticks[0].figures) == {"count": 8, "container": "9 cm pot"}
    assert "cells" not in {ask.into for ask in task.asks}


def test_of_many_only_those_wanted_and_some_more_go_into_pots() -> None:
    """Ten wanted and 15 % more (from memory, common practice) are 12."""
    task = prick_out(raised("tomato", 30, wanted=10))
    assert task.instruction.startswith("Prick out 12 of 30 into 9 cm pots")


CELLS = [(8, "8 into 8 cells of a 40-cell tray", 8), (22, "22 into 40 cells", 40)]


@pytest.mark.parametrize(("up", "words", "cells"), CELLS)
def test_others_go_into_the_cells_there_are_plants_for(up: int, words: str, cells: int) -> None:
    task = prick_out(raised("delphinium", up))
    assert words in task.instruction
    assert task.ticks[0].figures["cells"] == cells
    assert task.ticks[0].figures["container"] == "40-cell tray"


@pytest.mark.parametrize(
    ("container", "pots_on"),
    [
        ("9 cm pot", False),
        ("9 cm pots", False),
        ("1 L pot", False),
        ("7 cm pot", True),
        ("40-cell tray", True),
        ("full tray", True),
    ],
)
def test_what_stands_in_its_last_pot_already_is_not_potted_on(
    container: str, pots_on: bool
) -> None:
    story = raised("tomato", 10)
    story.tell(LEAVES, Kind.PRICKED_OUT, "b01", count=10, container=container)
    story.tell(LEAVES + timedelta(days=7), Kind.TAKEN, "b01", count=10)
    days = range(8, 60)
    asked = [story.tasks(LEAVES + timedelta(days=n), Family.POT_ON) for n in days]
    assert any(asked) is pots_on
    season = story.season()
    part, crop = season.batches["b01"].main, season.crop("tomato")
    assert in_its_pot(part, crop, season.containers) is not pots_on


def test_in_its_last_pot_it_is_hardened_off_all_the_same() -> None:
    """By the crop's own days: 21 from pricking out and 10 more, never before the site's year."""
    story = raised("tomato", 10)
    story.tell(LEAVES, Kind.PRICKED_OUT, "b01", count=10, container="9 cm pot")
    story.tell(LEAVES + timedelta(days=7), Kind.TAKEN, "b01", count=10)
    begins = date(2026, 5, 25)  # the last frost is safely over
    assert story.tasks(begins - timedelta(days=8), Family.HARDEN) == []
    [task] = story.tasks(begins, Family.HARDEN)
    assert task.window.best == begins
