"""The view ahead of one batch, against published days and weeks, and against what was recorded."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.core.batch.batch import Batch, fold_batch
from benchround.core.crop.crop import Crop, PlantClass
from benchround.core.planning.schedule import Expected, Step, expected_course
from benchround.core.record import Figure, Kind, Record
from benchround.core.season import Season
from tests.crops.published import KEYS, LIBRARY, crop, rows
from tests.crops.test_vegetables_against_harrington import KEY_OF
from tests.folding import fold_season

SPRING = date(2026, 3, 1)
SUMMER = date(2026, 6, 1)
Line = tuple[date, Kind, dict[str, Figure]]


def season(temp_c: float = 20.0, **site: Figure) -> Season:
    """A season with a thermostat place at a steady temperature and a fridge."""
    told: dict[str, Figure] = {
        "lat_deg": 52.0,
        "last_frost": "05-10",
        "last_frost_safe": "05-30",
        "first_frost": "10-12",
        **site,
    }
    day = date(2025, 12, 1)
    places: dict[str, dict[str, Figure]] = {
        "warm": {"name": "Warm", "kind": "propagator", "set_c": temp_c, "order": 1},
        "fridge": {"name": "Fridge", "kind": "fridge", "order": 2},
    }
    records = [Record("1", day, Kind.SITE, "", told)]
    records += [Record(f"2{code}", day, Kind.PLACE, code, said) for code, said in places.items()]
    return fold_season(records, LIBRARY)


def batch(*lines: Line) -> Batch:
    records = [
        Record(f"{number:04d}", day, kind, "b01", figures)
        for number, (day, kind, figures) in enumerate(lines)
    ]
    found, doubts = fold_batch("b01", records)
    assert found is not None
    assert doubts == ()
    return found


def course(rules: Crop, *lines: Line, at: Season, day: date) -> Mapping[Step, Expected]:
    steps = expected_course(at, batch(*lines), rules, day)
    return {step.step: step for step in steps}


def sown(rules: Crop, day: date, at: Season, **figures: Figure) -> Mapping[Step, Expected]:
    line: Line = (day, Kind.SOWN, {"crop": rules.key, "place": "warm", **figures})
    return course(rules, line, at=at, day=day)


HARRINGTON = [
    (KEY_OF[row["crop"]], float(row["temp_c"]), float(row["days"]))
    for row in rows("harrington_minges.csv")
    if row["state"] == "days" and 10 <= float(row["temp_c"]) <= 20
]


@pytest.mark.parametrize(
    ("key", "temp_c", "days"),
    [
        pytest.param(*cell, id=f"{cell[0]} at {cell[1]:g} C: Harrington & Minges 1954 (read)")
        for cell in HARRINGTON
        if (germination := crop(cell[0]).germination) and cell[1] <= germination.optimum_c
    ],
)
def test_first_up_comes_when_the_table_says(key: str, temp_c: float, days: float) -> None:
    found = sown(crop(key), SPRING, season(temp_c))[Step.UP]
    # one day on top of the library's own tolerance: the forecast speaks of mornings
    assert (found.day - SPRING).days == pytest.approx(days, abs=2.3, rel=0.3)


POTTED_FIRST = ("nicotiana", "coleus", "new-guinea-impatiens", "lisianthus")
"""Raised in pots before they go out: two to five weeks more than a plug takes."""
WINTERED = ("pansy",)


@pytest.mark.parametrize(
    "row",
    [
        pytest.param(row, id=f"{row['key']}: {row['source']} ({row['status']})")
        for row in rows("iowa_weeks.csv")
        if row["key"] not in WINTERED
    ],
)
def test_weeks_from_sowing_to_planting_out(row: dict[str, str]) -> None:
    rules = crop(row["key"])
    assert rules.germination is not None
    found = sown(rules, SUMMER, season(rules.germination.at_c))[Step.PLANT_OUT]
    weeks = (found.day - SUMMER).days / 7
    more = 5.0 if row["key"] in POTTED_FIRST else 0.75
    least = int(row["weeks_min"]) - (2.0 if rules.growing.pot_on else 0.0)
    assert least <= weeks <= int(row["weeks_max"]) + more


def test_hardening_takes_eighteen_days() -> None:
    """Which? Gardening, trial of hardening-off methods: three steps of 6 days (read)."""
    found = sown(crop("cosmos"), SUMMER, season())
    assert found[Step.PLANT_OUT].day - found[Step.HARDEN].day == timedelta(days=6 + 6 + 6)


def test_tender_plants_wait_for_the_safe_day_and_hardy_ones_do_not() -> None:
    at = season()
    tender = sown(crop("cosmos"), SPRING, at)[Step.PLANT_OUT]
    assert tender.day == date(2026, 5, 30)
    assert "frost" in tender.because
    hardy = sown(crop("cornflower"), SPRING, at)[Step.PLANT_OUT]
    assert hardy.day < date(2026, 5, 10)


def test_a_biennial_goes_out_in_autumn_and_flowers_the_year_after() -> None:
    """Biennials: planted out September to October (Garden Answers magazine, 2019, read)."""
    found = sown(crop("foxglove"), SUMMER, season())
    assert found[Step.PLANT_OUT].day.month in (9, 10)
    assert found[Step.PLANT_OUT].day.year == 2026
    assert found[Step.FLOWER].day.year == 2027


def test_half_a_year_away_in_the_south() -> None:
    """Seasons of the southern half are six months off: common practice, no source."""
    south = season(lat_deg=-37.0, last_frost="11-10", last_frost_safe="11-30", first_frost="04-20")
    found = sown(crop("foxglove"), date(2026, 12, 1), south)
    assert found[Step.PLANT_OUT].day.month in (3, 4)
    assert found[Step.FLOWER].day.month in (11, 12)


def test_what_was_seen_goes_before_what_was_reckoned() -> None:
    rules, at = crop("snapdragon"), season()
    begun: Line = (SPRING, Kind.SOWN, {"crop": rules.key, "place": "warm"})
    reckoned = course(rules, begun, at=at, day=SPRING)[Step.PRICK_OUT].day
    late = SPRING + timedelta(days=30)
    seen: dict[str, Figure] = {}
    slow = course(rules, begun, (late, Kind.FIRST_UP, seen), at=at, day=late)
    assert Step.LOOK not in slow
    assert slow[Step.PRICK_OUT].day == late + timedelta(days=rules.growing.true_leaf_days)
    assert slow[Step.PRICK_OUT].day > reckoned
    leaves = late + timedelta(days=3)
    quick = course(
        rules, begun, (late, Kind.FIRST_UP, seen), (leaves, Kind.TRUE_LEAVES, seen), at=at, day=late
    )
    assert quick[Step.PRICK_OUT].day == leaves


def test_a_plan_is_reckoned_from_its_own_day_else_from_the_open_window() -> None:
    rules, at = crop("foxglove"), season()
    figures: dict[str, Figure] = {"crop": "foxglove", "place": "warm", "sow_on": "2026-06-20"}
    own: Line = (SPRING, Kind.PLANNED, figures)
    assert course(rules, own, at=at, day=SPRING)[Step.SOW].day == date(2026, 6, 20)
    none: Line = (SPRING, Kind.PLANNED, {"crop": "foxglove"})
    opens = course(rules, none, at=at, day=SPRING)[Step.SOW].day
    # May to July for biennials (Garden Answers magazine, 2018 and 2019, read)
    assert opens.month in (5, 6, 7)


def test_chilled_seed_is_sown_after_its_cold_where_it_is_meant_to_stand() -> None:
    rules, at = crop("aquilegia"), season()
    cold: Line = (
        SPRING,
        Kind.CHILLED,
        {"crop": rules.key, "days": 42, "place": "fridge", "sow_place": "warm"},
    )
    found = course(rules, cold, at=at, day=SPRING)
    assert found[Step.SOW].day == SPRING + timedelta(days=42)
    assert found[Step.LOOK].day < SPRING + timedelta(days=42 + 30)


def test_nothing_is_said_of_an_ended_batch_or_an_unknown_plant() -> None:
    at = season()
    line: Line = (SPRING, Kind.SOWN, {"crop": "cosmos", "place": "warm"})
    assert course(crop("cosmos"), line, (SUMMER, Kind.LOST, {}), at=at, day=SUMMER) == {}
    unknown = at.crop("no such plant")
    assert set(sown(unknown, SPRING, at)) <= {Step.HARDEN, Step.PLANT_OUT}


@settings(max_examples=150, deadline=None)
@given(
    st.sampled_from(KEYS),
    st.dates(date(2025, 1, 1), date(2027, 12, 31)),
    st.sampled_from((8.0, 15.0, 20.0, 26.0)),
)
def test_every_crop_goes_its_way_in_order(key: str, day: date, temp_c: float) -> None:
    rules = crop(key)
    steps = expected_course(
        season(temp_c),
        batch((day, Kind.SOWN, {"crop": key, "place": "warm"})),
        rules,
        day,
    )
    found = {step.step: step for step in steps}
    assert [step.day for step in steps] == sorted(step.day for step in steps)
    assert all(step.day >= day for step in steps)
    assert all(step.until is None or step.until >= step.day for step in steps)
    assert all(step.because for step in steps)
    chain = (Step.LOOK, Step.UP, Step.PRICK_OUT, Step.POT_ON, Step.HARDEN, Step.PLANT_OUT)
    days = [found[step].day for step in chain if step in found]
    assert days == sorted(days)
    if rules.plant_class is PlantClass.BIENNIAL and Step.FLOWER in found:
        assert found[Step.FLOWER].day > day + timedelta(days=100)
