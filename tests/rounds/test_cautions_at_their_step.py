"""A caution is said where the season knows that it is called for.

Which step brings which caution is taken from the table of cautions in the trade notes (rows C03,
C10, C26, C43 and C46; sources stand in the rows); the limit of six trays and the pots on a tray
are our own.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import timedelta

import pytest

from benchround.core.containers import pots_a_tray
from benchround.core.crop.crop import Crop, Growing, PlantClass
from benchround.core.record import Figure, Kind
from benchround.core.season import Season
from benchround.core.task import Family, Round
from benchround.plain import round_lines, round_value
from benchround.rounds.build import build_round
from benchround.rounds.closing import closing_words
from benchround.rounds.kept import KeptRound
from tests.folding import fold_season
from tests.rounds.small_season import CROPS, DAY, GLASS, Story, begin, outlook, place, sown

SALAD = replace(CROPS["hardling"], key="salad", plant_class=PlantClass.VEGETABLE)
DELPHINIUM = replace(CROPS["hardling"], key="spire", latin="Delphinium elatum")
POTTED = replace(CROPS["hardling"], key="potted", growing=Growing(feed=False, pot_on=True))
KINDS: Mapping[str, Crop] = {**CROPS, "salad": SALAD, "spire": DELPHINIUM, "potted": POTTED}
WASH = "Wash your hands"


def season(told: Story) -> Season:
    return fold_season(told.records, KINDS)


def made(told: Story) -> Round:
    return build_round(season(told), DAY)


def cautions(told: Story, family: Family, about: str = "") -> frozenset[str]:
    tasks = [t for t in made(told).tasks if t.family is family and about in ("", t.about)]
    assert tasks
    return frozenset(name for task in tasks for name in task.cautions)


def bench(up: int = 30, **figures: Figure) -> Story:
    """One batch on a bench, grown enough to be potted on."""
    told = begin()
    place(told, "bench", name="Bench", kind="bench")
    place(told, "other", name="Other bench", kind="bench", order=2)
    said: dict[str, Figure] = {"container": "40-cell tray", "per_cell": 1, **figures}
    sown(told, "b1", "potted", DAY - timedelta(days=40), "bench", **said)
    told.tell(DAY - timedelta(days=30), Kind.FIRST_UP, "b1", count=up)
    return told


@pytest.mark.parametrize(
    ("crop", "where", "said"),
    [
        ("salad", "bench", True),
        ("salad", "other", False),
        ("hardling", "bench", False),
    ],
)
def test_food_beside_poison_is_said_at_the_tray(crop: str, where: str, said: bool) -> None:
    """C26: edible and poison-flagged batch in one place."""
    told = bench()
    told.records[-2] = replace(
        told.records[-2], figures={**told.records[-2].figures, "crop": "spire"}
    )
    sown(told, "b2", crop, DAY - timedelta(days=40), where, per_cell=3)
    told.tell(DAY - timedelta(days=20), Kind.TRUE_LEAVES, "b2", count=30)
    assert ("C26" in cautions(told, Family.THIN, "b2")) is said


def test_what_comes_to_stand_beside_it_is_noticed_by_the_kept_round() -> None:
    told = bench()
    sown(told, "b2", "salad", DAY - timedelta(days=40), "bench", per_cell=3)
    told.tell(DAY - timedelta(days=20), Kind.TRUE_LEAVES, "b2", count=30)
    kept = KeptRound()
    before = kept.round(season(told), DAY)
    sown(told, "b3", "spire", DAY, "bench")
    after = kept.round(season(told), DAY)
    assert after == made(told)
    thin = [t for t in before.tasks if t.family is Family.THIN and t.about == "b2"]
    assert thin and not any("C26" in task.cautions for task in thin)
    assert "C26" in cautions(told, Family.THIN, "b2")


@pytest.mark.parametrize(("up", "said"), [(30, False), (40, False), (41, True), (90, True)])
def test_many_trays_of_pots_are_heavy(up: int, said: bool) -> None:
    """C43: from six trays. A full tray of 37 x 23 cm takes 4 x 2 pots of 9 cm."""
    assert pots_a_tray(9.0) == 8
    assert ("C43" in cautions(bench(up, cells=120), Family.POT_ON)) is said


@pytest.mark.parametrize(("heater", "said"), [(True, True), (False, False)])
def test_a_flame_under_a_lid_is_said_before_the_lid(heater: bool, said: bool) -> None:
    """C46: heater type fuel."""
    told = begin()
    place(told, "frame", **{**GLASS, "fuel_heater": heater})
    sown(told, "b1", "tenderling", DAY - timedelta(days=40), "frame")
    told.tell(DAY - timedelta(days=30), Kind.FIRST_UP, "b1", count=30)
    outlook(told, DAY, 0, 12)
    outlook(told, DAY + timedelta(days=1), 0, 12)
    assert ("C46" in cautions(told, Family.LIDS)) is said
    assert ("C46" in cautions(told, Family.FLEECE)) is said


@pytest.mark.parametrize(("above", "said"), [(True, True), (False, False)])
def test_water_given_in_drops_is_fresh(above: bool, said: bool) -> None:
    """C10: mist or sprinkle method chosen; what is past its seed leaves is watered from above."""
    told = bench()
    if above:
        told.tell(DAY - timedelta(days=10), Kind.POTTED_ON, "b1", count=30, container="9 cm pot")
    for back in range(-2, 12):
        outlook(told, DAY - timedelta(days=back), 12, 26, sun_h=10, rain_mm=0)
    (task,) = [t for t in made(told).tasks if t.family is Family.WATER]
    assert ("from above" in task.instruction) is above
    assert ("C10" in task.cautions) is said


def test_hands_are_washed_at_the_end_of_a_round_with_compost_in_it() -> None:
    """C03: any compost task, one line at the end, every time; it stays when all is ticked."""
    told = bench()
    (task,) = [t for t in made(told).tasks if t.family is Family.POT_ON]
    lines = list(round_lines(made(told), season(told)))
    assert lines[-1].startswith(f"At the end: {WASH}")
    assert str(round_value(made(told), season(told))["at_the_end"]).startswith(f"['{WASH}")
    told.tick(task, DAY)
    assert Family.POT_ON not in {t.family for t in made(told).tasks}
    assert closing_words(made(told), season(told))[0].startswith(WASH)
    tomorrow = build_round(season(told), DAY + timedelta(days=1))
    assert closing_words(tomorrow, season(told)) == ()


def test_a_round_of_looks_needs_no_soap() -> None:
    told = begin()
    place(told, "bench", name="Bench", kind="propagator", set_c=18)
    sown(told, "b1", "hardling", DAY - timedelta(days=12), "bench", seeds=40)
    told.tell(DAY - timedelta(days=1), Kind.FIRST_UP, "b1", count=3)
    assert Family.LOOK in {task.family for task in made(told).today}
    assert closing_words(made(told), season(told)) == ()
