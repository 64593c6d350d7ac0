"""Counting back from the first autumn frost to the last useful sowing, on both hemispheres."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from benchround.core.crop.crop import Anchor, Hardiness, SowingWindow
from benchround.core.planning.last_sowing import (
    counted_back_days,
    days_to_reward,
    last_sowing,
    window_span,
)
from benchround.core.planning.plan import Goal, sow_plan
from benchround.core.site import Site
from benchround.crops.library import load_library

LIBRARY = load_library()
NORTH = Site(lat_deg=52.5, last_frost=(5, 11), last_frost_safe=(5, 30), first_frost=(10, 12))
SOUTH = Site(lat_deg=-38.0, last_frost=(9, 20), last_frost_safe=(10, 15), first_frost=(5, 10))
FAR_NORTH = Site(lat_deg=65.0, last_frost=(6, 5), last_frost_safe=(6, 20), first_frost=(8, 28))
TWO_WEEKS = 14
FROST_RULE = "first autumn frost: weeks to flower + 2, counted back (common practice, no source)"

LATE = ("cosmos", "zinnia", "basil", "french-marigold", "nasturtium", "sunflower")
"""The three the rule names, and what the library sows a second time for the same summer."""


@pytest.mark.parametrize(
    ("key", "weeks_to_planting", "days_to_reward_after"),
    [
        pytest.param("cosmos", 6, 56, id=f"cosmos, Iowa State 4 to 6 weeks (read); {FROST_RULE}"),
        pytest.param("zinnia", 6, 50, id=f"zinnia, Iowa State 4 to 6 weeks (read); {FROST_RULE}"),
        pytest.param("basil", 8, 35, id=f"basil, 6 to 8 weeks (common practice); {FROST_RULE}"),
    ],
)
@pytest.mark.parametrize("site", [NORTH, SOUTH], ids=["52 N", "38 S"])
def test_the_last_useful_sowing_is_counted_back_from_the_first_frost(
    site: Site, key: str, weeks_to_planting: int, days_to_reward_after: int
) -> None:
    spring = date(2026, *site.last_frost)
    frost = date(2027 if site is SOUTH else 2026, *site.first_frost)
    back = timedelta(days=7 * weeks_to_planting + days_to_reward_after + TWO_WEEKS)
    assert last_sowing(LIBRARY[key], site.year, spring) == frost - back


@pytest.mark.parametrize("key", LATE)
def test_the_late_window_ends_with_the_last_useful_sowing(key: str) -> None:
    crop = LIBRARY[key]
    edges = [w.closes for w in crop.windows if w.closes.anchor is Anchor.FIRST_FROST]
    days = counted_back_days(crop)
    assert days is not None
    assert [edge.days for edge in edges] == [-days[1]], FROST_RULE


def test_no_other_window_closes_by_the_first_frost() -> None:
    others = (crop for crop in LIBRARY.values() if crop.key not in LATE)
    windows = (window for crop in others for window in crop.windows)
    assert not [w for w in windows if w.closes.anchor is Anchor.FIRST_FROST]


@pytest.mark.parametrize("key", ["cosmos", "zinnia", "sunflower"])
def test_late_spring_at_38_south_is_in_time_for_a_late_sowing(key: str) -> None:
    """25 November there is 25 May in the north: five months of summer lie ahead."""
    day = date(2026, 11, 25)
    spans = [window_span(LIBRARY[key], SOUTH.year, w, day) for w in LIBRARY[key].windows]
    open_now = [span for span in spans if span is not None and day in span]
    assert open_now
    assert max(span.closes for span in open_now) > date(2027, 1, 1)
    plan = sow_plan(LIBRARY[key], Goal.PLANTING, date(2026, 12, 28), SOUTH, today=day)
    assert plan.possible
    assert not [remark for remark in plan.remarks if "usual sowing times" in remark]


@pytest.mark.parametrize("site", [NORTH, SOUTH], ids=["52 N", "38 S"])
def test_a_plan_past_the_last_useful_sowing_says_so(site: Site) -> None:
    frost = date(2027, *site.first_frost)
    late = sow_plan(LIBRARY["cosmos"], Goal.FLOWERING, frost + timedelta(days=5), site)
    last = last_sowing(LIBRARY["cosmos"], site.year, late.sow_from or frost)
    assert last is not None and late.sow_by is not None and late.sow_by > last
    assert any("last useful sowing" in remark for remark in late.remarks)
    early = sow_plan(LIBRARY["cosmos"], Goal.FLOWERING, frost - timedelta(days=60), site)
    assert not any("last useful sowing" in remark for remark in early.remarks)


@pytest.mark.parametrize("key", ["cornflower", "radish", "leek", "florence-fennel", "dahlia"])
def test_frost_sets_no_end_to_what_stands_it_or_lives_on(key: str) -> None:
    assert counted_back_days(LIBRARY[key]) is None
    assert last_sowing(LIBRARY[key], NORTH.year, date(2026, 6, 1)) is None


def test_days_count_from_sowing_where_the_crop_is_not_planted_out() -> None:
    assert days_to_reward(LIBRARY["radish"]) == (25, 35)
    assert days_to_reward(LIBRARY["foxglove"]) is None  # flowers at its own time of the year


def test_a_window_is_cut_where_not_even_the_quickest_plant_would_crop() -> None:
    """French bean: 21 + 45 days and two weeks before 28 August is the ninth of June."""
    bean = LIBRARY["french-bean"]
    under_cover = next(w for w in bean.windows if w.name == "under cover")
    whole = FAR_NORTH.year.span(under_cover, date(2026, 4, 1))
    cut = window_span(bean, FAR_NORTH.year, under_cover, date(2026, 4, 1))
    assert whole is not None and cut is not None
    assert whole.closes == date(2026, 6, 13)
    assert cut.closes == date(2026, 8, 28) - timedelta(days=21 + 45 + 14) == date(2026, 6, 9)
    hardy = replace(bean, hardiness=Hardiness.HARDY)
    assert window_span(hardy, FAR_NORTH.year, under_cover, date(2026, 4, 1)) == whole


def test_after_the_cut_the_next_window_is_the_coming_years() -> None:
    bean = LIBRARY["french-bean"]
    under_cover = next(w for w in bean.windows if w.name == "under cover")
    span = window_span(bean, FAR_NORTH.year, under_cover, date(2026, 6, 11))
    assert span is not None and span.opens.year == 2027


def test_a_window_with_no_day_left_stands_for_those_who_have_a_glasshouse() -> None:
    pumpkin = LIBRARY["pumpkin"]
    (window,) = pumpkin.windows
    whole = FAR_NORTH.year.span(window, date(2026, 1, 1))
    assert window_span(pumpkin, FAR_NORTH.year, window, date(2026, 1, 1)) == whole


WINDOWS = [(key, window) for key in sorted(LIBRARY) for window in LIBRARY[key].windows]


@pytest.mark.parametrize("site", [NORTH, SOUTH, FAR_NORTH], ids=["52 N", "38 S", "65 N"])
def test_no_window_lasts_most_of_a_year(site: Site) -> None:
    """Nothing is sown for longer than from the first warmth to the end of summer."""
    for key, window in WINDOWS:
        span = window_span(LIBRARY[key], site.year, window, date(2026, 1, 1))
        assert span is None or span.days <= 270, f"{key} {window.name}: {span}"


def _spring(window: SowingWindow) -> bool:
    return window.opens.anchor in (Anchor.SOIL_WARMING, Anchor.DAY_LENGTH_RISING)


def test_spring_opens_before_summer_in_the_south_too() -> None:
    """At 46 S the soil warms in September and October, not a year before the last frost."""
    otago = Site(lat_deg=-45.9, last_frost=(11, 11), last_frost_safe=(11, 30), first_frost=(4, 12))
    found = [
        (key, window, otago.year.span(window, date(2026, 6, 1)))
        for key, window in WINDOWS
        if _spring(window)
    ]
    assert len(found) > 20
    for key, window, span in found:
        assert span is not None, f"{key} {window.name}"
        assert date(2026, 7, 1) < span.opens < date(2026, 12, 31), f"{key} {window.name}: {span}"
        assert span.closes < date(2027, 4, 12), f"{key} {window.name}: {span}"
