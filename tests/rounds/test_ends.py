"""Things end: flowering, cropping, a quiet trap, seed of what is gone, planting before frost."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from benchround.core.record import Figure, Kind
from benchround.core.season import Season
from benchround.core.task import Family, Standing, Task
from benchround.crops.library import load_library
from benchround.rounds.answers import drafts_for
from benchround.rounds.build import build_round
from tests.folding import fold_season
from tests.rounds.small_season import Story, begin, place

LIBRARY = load_library()
PLANTED = date(2026, 5, 1)
AUSTRAL: dict[str, Figure] = {
    "lat_deg": -38.0,
    "lon_deg": 145.0,
    "last_frost": "09-20",
    "last_frost_safe": "10-15",
    "first_frost": "05-10",
}


def story(crop: str, site: dict[str, Figure] | None = None) -> Story:
    told = begin(site)
    place(told, "bed", name="Bed", kind="bed")
    place(told, "house", name="House", kind="greenhouse bench", order=2)
    sown = PLANTED - timedelta(days=60)
    told.tell(sown, Kind.SOWN, "x1", crop=crop, place="house", seeds=20, cells=20, raising="cells")
    told.tell(sown + timedelta(days=15), Kind.TRUE_LEAVES, "x1", count=20)
    return told


def season(told: Story) -> Season:
    return fold_season(told.records, LIBRARY)


def tasks(told: Story, day: date, family: Family) -> list[Task]:
    return [t for t in build_round(season(told), day).tasks if t.family is family]


@pytest.mark.parametrize(
    ("crop", "kind", "family"),
    [
        pytest.param("cabbage", Kind.CROPPED, Family.PICK, id="cropping"),
        pytest.param("calendula", Kind.FIRST_FLOWER, Family.DEADHEAD, id="flowering"),
    ],
)
def test_after_its_usual_time_it_is_asked_weekly_whether_it_is_over(
    crop: str, kind: Kind, family: Family
) -> None:
    """How long a crop lasts is the library's figure (common practice, no source)."""
    told = story(crop)
    told.tell(PLANTED, Kind.PLANTED_OUT, "x1", place="bed")
    begun = PLANTED + timedelta(days=45)
    told.tell(begun, kind, "x1")
    found = LIBRARY[crop].cropping if kind is Kind.CROPPED else LIBRARY[crop].flowering
    assert found is not None
    over = begun + timedelta(days=found.lasts_days)
    assert tasks(told, over - timedelta(days=1), Family.LOOK) == []
    (look,) = tasks(told, over, Family.LOOK)
    assert "over" in look.instruction and look.standing is Standing.DUE
    for draft in drafts_for(look, {"over": "no"}, season(told)):
        told.tell(over, draft.kind, draft.about, **draft.figures)
    assert tasks(told, over + timedelta(days=6), Family.LOOK) == []
    later = over + timedelta(days=7)
    (look,) = tasks(told, later, Family.LOOK)
    for draft in drafts_for(look, {"over": "yes"}, season(told)):
        told.tell(later, draft.kind, draft.about, **draft.figures)
    assert season(told).batches["x1"].main.stage == "going over"
    assert tasks(told, later + timedelta(days=10), family) == []
    assert tasks(told, later + timedelta(days=10), Family.CLEAR)


def test_a_trap_that_catches_nothing_for_two_weeks_is_taken_up() -> None:
    told = story("runner-bean")
    told.tell(PLANTED, Kind.TRAP_SET, "x1")
    (early,) = tasks(told, PLANTED + timedelta(days=13), Family.PESTS)
    assert early.asks[0].default == "no"
    day = PLANTED + timedelta(days=14)
    (late,) = tasks(told, day, Family.PESTS)
    for draft in drafts_for(late, {}, season(told)):
        told.tell(day, draft.kind, draft.about, **draft.figures)
    assert tasks(told, day + timedelta(days=1), Family.PESTS) == []


def test_no_seed_is_looked_for_on_what_was_composted() -> None:
    told = story("foxglove")
    told.tell(PLANTED, Kind.PLANTED_OUT, "x1", place="bed")
    told.tell(PLANTED + timedelta(days=30), Kind.FIRST_FLOWER, "x1")
    told.tell(PLANTED + timedelta(days=35), Kind.MARKED_FOR_SEED, "x1", count=2)
    day = PLANTED + timedelta(days=140)
    assert tasks(told, day, Family.SAVE_SEED)
    told.tell(day, Kind.COMPOSTED, "x1")
    assert tasks(told, day, Family.SAVE_SEED) == []


@pytest.mark.parametrize(
    ("site", "day", "held"),
    [
        pytest.param(None, date(2026, 10, 11), False, id="52 N, a day before the first frost"),
        pytest.param(None, date(2026, 10, 12), True, id="52 N, from the first frost on"),
        pytest.param(AUSTRAL, date(2026, 5, 9), False, id="38 S, a day before the first frost"),
        pytest.param(AUSTRAL, date(2026, 5, 10), True, id="38 S, from the first frost on"),
        pytest.param(AUSTRAL, date(2026, 10, 14), True, id="38 S, before the safe day of spring"),
        pytest.param(AUSTRAL, date(2026, 10, 15), False, id="38 S, from the safe day of spring"),
    ],
)
def test_tender_plants_stay_in_from_the_first_frost_to_the_last(
    site: dict[str, Figure] | None, day: date, held: bool
) -> None:
    """Tender plants go out after the last frost at 10 % risk (idea read); the rest follows."""
    told = story("cosmos", site)
    told.tell(day - timedelta(days=3), Kind.READY, "x1")
    (task,) = tasks(told, day, Family.PLANT_OUT)
    assert (task.standing is Standing.HELD) is held
