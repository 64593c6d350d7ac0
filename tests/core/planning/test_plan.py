"""Counting back from a day: published weeks, warmth, frost, biennials, both hemispheres."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.crop.crop import Crop, PlantClass, Raising
from benchround.core.errors import InputError, OutOfRangeError
from benchround.core.planning.plan import (
    AS_GIVEN,
    Goal,
    SowPlan,
    cells_for,
    sow_plan,
    steady,
    usual_in,
)
from benchround.core.site import PlaceKind, Site
from benchround.crops.library import load_library
from tests.crops.published import rows

LIBRARY = load_library()
NORTH = Site(lat_deg=52.5, last_frost=(5, 11), last_frost_safe=(5, 30), first_frost=(10, 12))
SOUTH = Site(lat_deg=-45.9, last_frost=(11, 11), last_frost_safe=(11, 30), first_frost=(4, 12))
IOWA = "Iowa State University Extension, Germination Requirements, 2023 (read)"
WANTED = date(2027, 5, 15)
D13 = [
    ("snapdragon", date(2027, 3, 6), date(2027, 3, 20)),
    ("wax-begonia", date(2027, 2, 20), date(2027, 3, 6)),
    ("cosmos", date(2027, 4, 3), date(2027, 4, 17)),
    ("lisianthus", date(2027, 2, 6), date(2027, 2, 6)),
]


@pytest.mark.parametrize(
    ("key", "first", "last"), D13, ids=[f"D13 {key}: {IOWA}" for key, _, _ in D13]
)
@pytest.mark.parametrize("own_warmth", [False, True], ids=["as given", "at its own warmth"])
def test_the_weeks_of_iowa_for_a_planting_day(
    key: str, first: date, last: date, own_warmth: bool
) -> None:
    germination = LIBRARY[key].germination
    assert germination is not None
    raised = steady(germination.at_c) if own_warmth else AS_GIVEN
    plan = sow_plan(LIBRARY[key], Goal.PLANTING, WANTED, NORTH, raised)
    assert (plan.sow_from, plan.sow_by) == (first, last)
    assert plan.possible
    assert plan.ready_from is not None and plan.ready_by is not None
    assert plan.ready_from <= WANTED <= plan.ready_by
    # cosmos has its weeks from another printing of the same service
    assert "Iowa State" in plan.source


IOWA_ROWS = [row for row in rows("iowa_weeks.csv") if row["key"] in LIBRARY]


@pytest.mark.parametrize("row", IOWA_ROWS, ids=[f"{r['key']}: {r['source']}" for r in IOWA_ROWS])
@pytest.mark.parametrize("site", [NORTH, SOUTH], ids=["52 N", "46 S"])
def test_every_row_of_iowas_table(row: dict[str, str], site: Site) -> None:
    wanted = date(2027, *site.last_frost)
    plan = sow_plan(LIBRARY[row["key"]], Goal.PLANTING, wanted, site)
    assert plan.sow_from == wanted - timedelta(weeks=int(row["weeks_max"]))
    assert plan.sow_by == wanted - timedelta(weeks=int(row["weeks_min"]))


def test_a_colder_bench_moves_the_days_by_the_later_emergence() -> None:
    # snapdragon needs 138.6 degree-days above 6 C: 9.9 d at 20 C or more, 23.1 d at 12 C (closed
    # form of the thermal model), so 13 days more
    warm = sow_plan(LIBRARY["snapdragon"], Goal.PLANTING, WANTED, NORTH)
    cold = sow_plan(LIBRARY["snapdragon"], Goal.PLANTING, WANTED, NORTH, steady(12.0))
    assert warm.sow_from is not None and cold.sow_from is not None
    assert (warm.sow_from - cold.sow_from).days == 13
    assert warm.sow_by is not None and cold.sow_by is not None
    assert (warm.sow_by - cold.sow_by).days == 13


def test_too_cold_is_said_with_the_base() -> None:
    plan = sow_plan(LIBRARY["snapdragon"], Goal.PLANTING, WANTED, NORTH, steady(5.0))
    assert not plan.possible
    assert plan.sow_from is None
    assert "base of 6 C" in plan.reason


def test_a_frame_through_the_usual_year_is_slower_than_a_heated_bench() -> None:
    lettuce = LIBRARY["lettuce"]
    frame = sow_plan(lettuce, Goal.PLANTING, WANTED, NORTH, usual_in(PlaceKind.FRAME, NORTH))
    heated = sow_plan(lettuce, Goal.PLANTING, WANTED, NORTH, usual_in(PlaceKind.PROPAGATOR, NORTH))
    assert frame.sow_best is not None and heated.sow_best is not None
    assert frame.sow_best < heated.sow_best


def test_days_to_sow_that_are_over_name_the_earliest_day() -> None:
    today = date(2027, 4, 1)
    plan = sow_plan(LIBRARY["snapdragon"], Goal.PLANTING, WANTED, NORTH, today=today)
    assert not plan.possible
    assert plan.reason.startswith("not possible any more, earliest is")
    assert plan.earliest == today + timedelta(weeks=8)  # Iowa's least weeks
    assert "20 Mar 2027" in plan.reason
    still = sow_plan(LIBRARY["snapdragon"], Goal.PLANTING, WANTED, NORTH, today=date(2027, 3, 20))
    assert still.possible


def test_flowering_counts_back_through_planting_and_waits_for_frost() -> None:
    cosmos = LIBRARY["cosmos"]
    assert cosmos.flowering is not None
    least, most = cosmos.flowering.from_planting_days or (0, 0)
    plan = sow_plan(cosmos, Goal.FLOWERING, date(2027, 8, 1), NORTH)
    assert plan.sow_from is not None and plan.sow_by is not None
    planting = cosmos.planting.from_sowing_days
    assert planting is not None
    first_planting = max(date(2027, 8, 1) - timedelta(days=most), date(2027, 5, 30))
    assert plan.sow_by == date(2027, 8, 1) - timedelta(days=least + planting[0])
    assert plan.sow_from == first_planting - timedelta(days=planting[1])
    early = sow_plan(cosmos, Goal.FLOWERING, date(2027, 6, 1), NORTH)
    assert not early.possible
    assert early.earliest == date(2027, 5, 30) + timedelta(days=least)
    assert "last-frost" in early.reason


def test_a_biennial_flowers_in_its_window_after_a_winter_and_at_no_other_time() -> None:
    bell = LIBRARY["canterbury-bell"]
    plan = sow_plan(bell, Goal.FLOWERING, date(2027, 6, 20), NORTH, today=date(2026, 4, 1))
    assert plan.possible
    # sown May to June of the year before: Garden Answers, 2018 and 2019 (read)
    assert plan.sow_from is not None and plan.sow_by is not None
    assert plan.sow_from.year == plan.sow_by.year == 2026
    assert date(2026, 5, 1) <= plan.sow_from < plan.sow_by <= date(2026, 7, 1)
    refused = sow_plan(bell, Goal.FLOWERING, date(2027, 8, 20), NORTH)
    assert not refused.possible
    assert refused.sow_from is None
    assert "biennial" in refused.reason and "its own time" in refused.reason
    late = sow_plan(bell, Goal.FLOWERING, date(2027, 6, 20), NORTH, today=date(2026, 8, 1))
    assert not late.possible
    assert late.earliest is not None and late.earliest.year == 2028
    assert late.reason.startswith("not possible any more, earliest is")


BIENNIALS = sorted(k for k in LIBRARY if LIBRARY[k].plant_class is PlantClass.BIENNIAL)


@pytest.mark.parametrize("key", BIENNIALS)
@pytest.mark.parametrize("site", [NORTH, SOUTH], ids=["52 N", "46 S"])
def test_every_biennial_is_sown_before_the_winter_it_flowers_after(key: str, site: Site) -> None:
    """Sown around midsummer, flowering the year after (common practice, no source)."""
    crop = LIBRARY[key]
    assert crop.flowering is not None and crop.flowering.window is not None
    span = site.year.span(crop.flowering.window, date(2027, 1, 1))
    assert span is not None
    plan = sow_plan(crop, Goal.FLOWERING, span.opens, site)
    assert plan.possible
    assert plan.sow_from is not None and plan.sow_by is not None
    winters = [site.year.midwinter(year) for year in (2025, 2026, 2027, 2028)]
    assert sum(plan.sow_by < winter < span.opens for winter in winters) == 1
    assert (span.opens - plan.sow_from).days < 366 + 200


def test_a_planting_day_outside_the_crops_planting_time_is_remarked_on() -> None:
    bell = LIBRARY["canterbury-bell"]
    autumn = sow_plan(bell, Goal.PLANTING, date(2027, 9, 20), NORTH)
    assert not any("planting time" in words for words in autumn.remarks)
    spring = sow_plan(bell, Goal.PLANTING, date(2027, 4, 20), NORTH)
    assert any("planting time is in autumn" in words for words in spring.remarks)


@pytest.mark.parametrize(
    ("key", "goal", "words"),
    [
        ("cornflower-drill", Goal.PLANTING, "sown where it grows"),
        ("daffodil", Goal.PLANTING, "planted as bulbs"),
        ("tomato", Goal.FLOWERING, "no days to 'in flower'"),
        ("snapdragon", Goal.PICKING, "no days to 'first picking'"),
    ],
)
def test_goals_a_crop_has_no_figures_for_are_refused(key: str, goal: Goal, words: str) -> None:
    with pytest.raises(InputError, match=words):
        sow_plan(_crop(key), goal, date(2027, 6, 20), NORTH)


def _crop(key: str) -> Crop:
    if key == "daffodil":
        return next(crop for crop in LIBRARY.values() if crop.raising is Raising.BULB)
    if key == "cornflower-drill":
        return next(crop for crop in LIBRARY.values() if crop.raising is Raising.DRILL)
    return LIBRARY[key]


def test_without_published_weeks_the_crops_own_steps_are_added_up() -> None:
    snapdragon = LIBRARY["snapdragon"]
    bare = replace(snapdragon, planting=replace(snapdragon.planting, from_sowing_days=None))
    plan = sow_plan(bare, Goal.PLANTING, WANTED, NORTH)
    assert plan.sow_best is not None
    # 10 days to half up (7 to 14 at 21.1 C: middle 9.9), 14 to true leaves, 14, then 18 hardening
    assert (WANTED - plan.sow_best).days == 10 + 14 + 14 + 18
    assert "own days" in plan.source


def test_steps_stand_in_order_and_end_at_the_goal() -> None:
    plan = sow_plan(LIBRARY["snapdragon"], Goal.FLOWERING, date(2027, 8, 1), NORTH)
    days = [step.day for step in plan.steps]
    assert days == sorted(days)
    names = [step.name for step in plan.steps]
    assert names == ["sow", "first up", "prick out", "start hardening", "plant out", "in flower"]
    assert plan.bench_days == (plan.steps[4].day - plan.steps[0].day).days


def test_remarks_name_frost_and_a_sowing_out_of_season() -> None:
    plan = sow_plan(LIBRARY["snapdragon"], Goal.PLANTING, WANTED, NORTH)
    assert any("safe last-frost day" in words for words in plan.remarks)
    hardy = sow_plan(LIBRARY["leek"], Goal.PLANTING, date(2027, 11, 20), NORTH)
    assert any("far from its usual sowing time" in words for words in hardy.remarks)
    south = sow_plan(LIBRARY["snapdragon"], Goal.PLANTING, date(2027, 12, 5), SOUTH)
    assert south.remarks == ()


def test_tender_plants_ready_before_frosts_end_wait_and_are_planted_after_it() -> None:
    """Ready on 1 May; one spring in ten has a frost after 30 May (common practice, no source).

    Tender kinds go into the frame around the last frost, not before: Which? Gardening, how to
    harden off tender plants (read).
    """
    plan = sow_plan(LIBRARY["tomato"], Goal.PLANTING, date(2027, 5, 1), NORTH)
    days = {step.name: step.day for step in plan.steps}
    assert plan.possible
    assert plan.ready_from is not None and plan.ready_from <= date(2027, 5, 1)
    hardening = LIBRARY["tomato"].hardening
    assert hardening is not None
    assert days["start hardening"] == date(2027, 5, 30)
    assert (days["plant out"] - days["start hardening"]).days == hardening.days


@pytest.mark.parametrize(
    ("key", "goal", "wanted", "soonest"),
    [
        pytest.param("tomato", Goal.PLANTING, date(2027, 11, 1), date(2028, 5, 30), id="planted"),
        pytest.param("tomato", Goal.PICKING, date(2027, 12, 1), date(2028, 7, 1), id="picked"),
        pytest.param("french-bean", Goal.PICKING, date(2027, 10, 30), date(2028, 6, 1), id="bean"),
        pytest.param("cosmos", Goal.FLOWERING, date(2027, 11, 20), date(2028, 6, 1), id="flower"),
    ],
)
def test_what_is_tender_is_not_had_after_the_first_frost(
    key: str, goal: Goal, wanted: date, soonest: date
) -> None:
    """The first frost of 12 October kills it (common practice, no source)."""
    plan = sow_plan(LIBRARY[key], goal, wanted, NORTH, today=date(2027, 1, 1))
    assert not plan.possible
    assert plan.sow_from is None
    assert "first frost, Tue 12 Oct 2027; after that the earliest is" in plan.reason
    assert plan.earliest is not None
    assert soonest <= plan.earliest < date(2028, 8, 15)


def test_an_earliest_day_for_tender_plants_is_never_one_after_the_first_frost() -> None:
    plan = sow_plan(
        LIBRARY["tomato"], Goal.PLANTING, date(2027, 6, 10), NORTH, today=date(2027, 9, 1)
    )
    assert plan.earliest == date(2028, 6, 13)  # the safe last frost and 14 days of hardening


def test_zinnia_is_not_hardened_before_the_last_frost_to_flower_sooner() -> None:
    """Tender: not into the frame before the last frost (Which? Gardening, read)."""
    plan = sow_plan(LIBRARY["zinnia"], Goal.FLOWERING, date(2027, 7, 10), NORTH)
    assert not plan.possible
    assert "hardened for 18 days from Sun 30 May 2027, not before Thu 17 Jun 2027" in plan.reason
    plan = sow_plan(LIBRARY["zinnia"], Goal.FLOWERING, date(2027, 7, 31), NORTH)
    days = {step.name: step.day for step in plan.steps}
    assert date(2027, 5, 30) <= days["start hardening"]
    assert (days["plant out"] - days["start hardening"]).days == 18


PLANNABLE = sorted(
    key
    for key, crop in LIBRARY.items()
    if crop.raising not in (Raising.BULB, Raising.DRILL) and crop.planting.from_sowing_days
)


@given(
    st.sampled_from(PLANNABLE),
    st.sampled_from([Goal.PLANTING, Goal.FLOWERING, Goal.PICKING]),
    st.dates(date(2024, 1, 1), date(2030, 12, 31)),
    st.sampled_from([NORTH, SOUTH]),
    st.integers(-400, 400),
)
def test_whatever_is_asked_the_answer_holds_together(
    key: str, goal: Goal, wanted: date, site: Site, ahead: int
) -> None:
    """Property, over all crops, days and goals."""
    today = wanted - timedelta(days=ahead)
    try:
        plan = sow_plan(LIBRARY[key], goal, wanted, site, today=today)
    except InputError as error:
        assert LIBRARY[key].name in str(error)
        return
    assert_holds_together(plan, today)


def assert_holds_together(plan: SowPlan, today: date) -> None:
    assert plan.reason
    if plan.sow_from is None or plan.sow_best is None or plan.sow_by is None:
        assert not plan.possible
        return
    assert plan.sow_from <= plan.sow_best <= plan.sow_by < plan.wanted
    assert plan.ready_from is not None and plan.ready_by is not None
    assert plan.sow_best < plan.ready_from <= plan.ready_by
    assert plan.possible == (plan.sow_by >= today)
    if not plan.possible and plan.earliest is not None:
        assert plan.earliest > today


def test_cells_follow_from_germination_and_survival() -> None:
    # S21: 24 plants at p 0.684 and chance 0.9 take 40 cells (exact binomial, own worked example)
    amount = cells_for(LIBRARY["snapdragon"], 24, germination=0.8, survival=(0.95, 0.9), chance=0.9)
    assert amount is not None
    assert amount.cells == 40
    # S26: 43 where the share rests on 20 seeds
    tested = cells_for(
        LIBRARY["snapdragon"], 24, germination=0.8, tested=20, survival=(0.95, 0.9), chance=0.9
    )
    assert tested is not None
    assert tested.cells == 43
    assert cells_for(_crop("daffodil"), 24) is None
    with pytest.raises(OutOfRangeError):
        cells_for(LIBRARY["snapdragon"], 0)


def test_bulbs_for_next_spring_are_still_planted_in_november() -> None:
    """Tulips are planted in November and December (common practice, no source)."""
    tulip = LIBRARY["tulip"]
    plan = sow_plan(tulip, Goal.FLOWERING, date(2027, 5, 1), NORTH, today=date(2026, 11, 10))
    assert plan.possible
    assert plan.sow_best == date(2026, 11, 10)
    assert plan.sow_by is not None and plan.sow_by.year == 2026
    assert "sown" not in plan.reason
    assert [step.name for step in plan.steps] == ["plant", "in flower"]


PERENNIALS = sorted(
    key
    for key, crop in LIBRARY.items()
    if crop.plant_class is PlantClass.HARDY_PERENNIAL
    and crop.flowering is not None
    and crop.flowering.window is not None
)


@pytest.mark.parametrize("key", PERENNIALS)
@pytest.mark.parametrize("site", [NORTH, SOUTH], ids=["52 N", "46 S"])
def test_a_perennial_is_planted_out_before_it_flowers_and_not_in_winter(
    key: str, site: Site
) -> None:
    """Planted in autumn before the first frost, or in spring (common practice, no source)."""
    crop = LIBRARY[key]
    assert crop.flowering is not None and crop.flowering.window is not None
    span = site.year.span(crop.flowering.window, date(2030, 1, 1))
    assert span is not None
    plan = sow_plan(crop, Goal.FLOWERING, span.opens, site)
    days = [step.day for step in plan.steps]
    assert days == sorted(days)
    out = next(step for step in plan.steps if step.name == "plant out")
    assert out.until is not None and out.until <= span.opens
    if crop.planting.window is None:
        for day in (out.day, out.until):
            winter = [site.year.midwinter(year) for year in (day.year - 1, day.year, day.year + 1)]
            assert min(abs((day - middle).days) for middle in winter) > 55


@pytest.mark.parametrize("key", ["hellebore", "monkshood", "astrantia"])
def test_seed_that_comes_up_after_a_winter_flowers_after_a_second_one(key: str) -> None:
    """They flower in the second or third year from seed (common practice, no source)."""
    crop = LIBRARY[key]
    assert crop.flowering is not None and crop.flowering.window is not None
    span = NORTH.year.span(crop.flowering.window, date(2029, 1, 1))
    assert span is not None
    plan = sow_plan(crop, Goal.FLOWERING, span.opens, NORTH)
    assert plan.sow_by is not None and plan.sow_by.year == 2027
    assert "after 2 winters" in plan.reason


def test_no_best_day_is_over_and_planting_comes_years_before_the_first_asparagus() -> None:
    """Crowns are cut from the third year (common practice, no source)."""
    today = date(2026, 11, 10)
    plan = sow_plan(LIBRARY["asparagus"], Goal.PICKING, date(2029, 5, 1), NORTH, today=today)
    assert plan.sow_from is not None and plan.sow_best is not None
    assert today <= plan.sow_from <= plan.sow_best
    days = {step.name: step.day for step in plan.steps}
    assert days["plant out"].year == 2027
    assert (days["first picking"] - days["plant out"]).days > 365


@pytest.mark.parametrize(
    ("key", "goal", "wanted"),
    [
        ("sweet-pea", Goal.FLOWERING, date(2027, 6, 20)),
        ("sweet-pea", Goal.PLANTING, date(2027, 4, 1)),
        ("parsnip", Goal.PICKING, date(2027, 11, 10)),
        ("broad-bean", Goal.PLANTING, date(2026, 12, 28)),
    ],
)
def test_the_best_day_lies_in_a_sowing_window_and_days_outside_are_told(
    key: str, goal: Goal, wanted: date
) -> None:
    """The windows are those of the crop's own table."""
    crop = LIBRARY[key]
    plan = sow_plan(crop, goal, wanted, NORTH)
    assert plan.sow_best is not None
    spans = [NORTH.year.span(window, plan.sow_best) for window in crop.windows]
    assert any(span is not None and plan.sow_best in span for span in spans)
    assert any("lie in its usual sowing times" in words for words in plan.remarks)


@pytest.mark.parametrize("key", ["broad-bean", "delphinium"])
def test_hardy_plants_wanted_in_midwinter_are_told_to_wait(key: str) -> None:
    plan = sow_plan(LIBRARY[key], Goal.PLANTING, date(2026, 12, 28), NORTH)
    assert any("is in winter" in words for words in plan.remarks)
    autumn = sow_plan(LIBRARY[key], Goal.PLANTING, date(2026, 9, 28), NORTH)
    assert not any("is in winter" in words for words in autumn.remarks)


def test_flowers_for_christmas_name_the_frost_and_the_summer_before_it() -> None:
    """Cosmos is killed by the first frost (common practice, no source)."""
    plan = sow_plan(
        LIBRARY["cosmos"], Goal.FLOWERING, date(2027, 12, 25), NORTH, today=date(2027, 1, 10)
    )
    assert not plan.possible
    assert "first frost, Tue 12 Oct 2027" in plan.reason
    assert "before it" in plan.reason and "Jul 2027" in plan.reason
