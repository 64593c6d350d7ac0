"""One limit, one answer: seed sown in warm weather, and rain that keeps lids down and plants in."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from benchround.core.crop.crop import Germination, Hardiness
from benchround.core.frame.lid_words import LidLimits
from benchround.core.record import Figure, Kind
from benchround.core.task import Family, Slot, Standing, Task
from benchround.rounds.build import build_round
from benchround.rounds.stalled import EVENING_SOWING_C
from tests.folding import fold_season
from tests.rounds.small_season import CROPS, DAY, Story, begin, crop, outlook, place

SALAD = replace(crop("salad", Hardiness.HARDY), germination=Germination(2, 18, 27, 3, 6, 20))
"""Seed that fails above 27 C, as lettuce does (limit 25.7 to 32.8 C by variety: read)."""
BEAN = replace(crop("bean", Hardiness.HARDY), germination=Germination(5, 25, 35, 4, 8, 20))
RULES = {**CROPS, "salad": SALAD, "bean": BEAN}
COMPOST_LIMIT_C, COMPOST_OVER_AIR_C = 25.0, 3.0
"""Lettuce, pansy and celery in compost above 25 C (University of Florida IFAS: read); what compost
in daylight stands above the air (our proposal)."""


def story(high_c: float) -> Story:
    told = begin()
    place(told, "bench", name="Bench", kind="bench")
    outlook(told, DAY, 9.0, high_c)
    return told


def slots(told: Story, *families: Family) -> dict[tuple[Family, str], Slot]:
    made = build_round(fold_season(told.records, RULES), DAY)
    return {(t.family, t.about): t.slot for t in made.tasks if t.family in families}


def test_the_limit_is_the_composts_less_what_it_stands_above_the_air() -> None:
    assert EVENING_SOWING_C == COMPOST_LIMIT_C - COMPOST_OVER_AIR_C


@pytest.mark.parametrize(("high_c", "hour"), [(21.9, Slot.MORNING), (22.0, Slot.EVENING)])
def test_sowing_and_sowing_again_wait_for_the_same_evening(high_c: float, hour: Slot) -> None:
    told = story(high_c)
    told.tell(DAY, Kind.PLANNED, "p1", crop="salad", seeds=40, place="bench", sow_on=str(DAY))
    told.tell(DAY, Kind.PLANNED, "p2", crop="bean", seeds=40, place="bench", sow_on=str(DAY))
    told.tell(DAY - timedelta(days=9), Kind.SOWN, "s1", crop="salad", seeds=40, place="bench")
    told.tell(DAY - timedelta(days=2), Kind.STALLED, "s1", cause="heat")
    found = slots(told, Family.SOW, Family.RESOW)
    assert found == {
        (Family.SOW, "p1"): hour,
        (Family.RESOW, "s1"): hour,
        (Family.SOW, "p2"): Slot.MORNING,
    }


def planting(rain: dict[str, Figure]) -> Task:
    told = begin()
    place(told, "frame", name="Frame", kind="frame", glazing="glass")
    outlook(told, DAY, 9.0, 18.0, **rain)
    told.tell(DAY - timedelta(days=60), Kind.SOWN, "h1", crop="hardling", place="frame", cells=40)
    told.tell(DAY - timedelta(days=50), Kind.TRUE_LEAVES, "h1", count=40)
    told.tell(DAY - timedelta(days=20), Kind.HARDENING_BEGUN, "h1", count=40)
    told.tell(DAY - timedelta(days=1), Kind.READY, "h1")
    return next(t for t in told.tasks(DAY, Family.PLANT_OUT) if t.about == "h1")


@pytest.mark.parametrize(
    ("rain", "held"),
    [
        pytest.param({"rain_mm": 9.9}, False, id="under 10 mm a day"),
        pytest.param({"rain_mm": 10.0}, True, id="10 mm a day: our proposal"),
        pytest.param({"rain_mm": 6.0, "rain_hour_mm": 4.9}, False, id="under 5 mm an hour"),
        pytest.param({"rain_mm": 6.0, "rain_hour_mm": 5.0}, True, id="5 mm an hour: our proposal"),
    ],
)
def test_the_rain_that_shuts_lids_keeps_plants_in(rain: dict[str, Figure], held: bool) -> None:
    limits = LidLimits()
    assert (limits.rain_day_mm, limits.rain_hour_mm) == (10.0, 5.0)
    task = planting(rain)
    assert (task.standing is Standing.HELD) is held
    assert (task.hold is not None and "mm of rain" in task.hold.because) is held
