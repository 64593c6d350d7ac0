"""What the season taught, against published intervals and the sample story."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import binomtest

from benchround.core.dates import year_on
from benchround.core.learning.lesson import lesson_of
from benchround.core.record import Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.seed.looks_of import germination_of
from benchround.core.sky.warmth import Warmth
from benchround.crops.library import load_library
from benchround.feeds.next_year import next_year
from benchround.feeds.pages import Grid
from benchround.feeds.report import report_page
from benchround.feeds.review import (
    By,
    CameUp,
    came_up,
    counted_of,
    losses,
    not_counted,
    wanted_had,
)
from tests.feeds.seasons import empty_season, many_season, sample_season
from tests.folding import fold_season
from tests.sample.story import DAY_0

SOWN = DAY_0 - timedelta(days=60)

NEWCOMBE = [
    # R. G. Newcombe 1998, Statistics in Medicine 17:857-872, table I, method 3 (from memory)
    (81, 263, 0.2553, 0.3662),
    (15, 148, 0.0624, 0.1605),
    (0, 20, 0.0, 0.1611),
    (1, 29, 0.0061, 0.1718),
]


@pytest.mark.parametrize(("up", "sown", "low", "high"), NEWCOMBE)
def test_ranges_are_those_published(up: int, sown: int, low: float, high: float) -> None:
    limits = CameUp("x", 1, sown, up).limits
    assert limits == pytest.approx((low, high), abs=5e-5)


@settings(deadline=None)
@given(st.integers(1, 500).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n))))
def test_ranges_are_scipys(counts: tuple[int, int]) -> None:
    up, sown = counts
    ours = CameUp("x", 1, sown, up).limits
    theirs = binomtest(up, sown).proportion_ci(0.95, method="wilson")
    assert ours == pytest.approx((theirs.low, theirs.high), abs=1e-6)


Event = tuple[str, int, Kind, dict[str, Figure]]
"""Batch, days from the first sowing, kind, figures."""


def tell(*events: Event) -> Season:
    story = [
        Record(f"0A{at:04d}", SOWN + timedelta(days=days), kind, about, figures)
        for at, (about, days, kind, figures) in enumerate(events)
    ]
    return fold_season(story, load_library())


COSMOS: dict[str, Figure] = {"crop": "cosmos", "seeds": 40, "packet": "p01", "place": "bench"}


def test_batches_of_a_crop_packet_and_place_are_added_up() -> None:
    season = tell(
        ("b01", 0, Kind.SOWN, COSMOS),
        ("b02", 0, Kind.SOWN, {**COSMOS, "place": "frame"}),
        ("b03", 0, Kind.SOWN, {**COSMOS, "packet": ""}),
        ("b01", 9, Kind.COUNTED, {"count": 30, "final": True}),
        ("b02", 9, Kind.COUNTED, {"count": 20, "final": True}),
        ("b03", 9, Kind.COUNTED, {"count": 10, "final": True}),
    )
    assert came_up(season, By.CROP) == (CameUp("Cosmos", 3, 120, 60),)
    assert came_up(season, By.PACKET) == (CameUp("p01", 2, 80, 50),)
    assert came_up(season, By.PLACE) == (CameUp("bench", 2, 80, 40), CameUp("frame", 1, 40, 20))


def test_a_batch_belongs_to_the_place_it_was_sown_at() -> None:
    season = tell(
        ("b01", 0, Kind.SOWN, COSMOS),
        ("b01", 9, Kind.COUNTED, {"count": 30, "final": True}),
        ("b01", 20, Kind.MOVED, {"place": "frame"}),
        ("b01", 30, Kind.LOST, {"count": 3, "cause": "slug"}),
    )
    assert [one.name for one in came_up(season, By.PLACE)] == ["bench"]
    assert [(one.name, one.count) for one in losses(season, By.PLACE)] == [("frame", 3)]


def test_a_count_that_is_not_the_last_one_is_not_counted() -> None:
    up: Event = ("b01", 5, Kind.FIRST_UP, {})
    sown: Event = ("b01", 0, Kind.SOWN, COSMOS)
    early = tell(sown, up, ("b01", 7, Kind.COUNTED, {"count": 12}))
    late = tell(sown, up, ("b01", 13, Kind.COUNTED, {"count": 31}))
    said = tell(sown, up, ("b01", 7, Kind.COUNTED, {"count": 31, "final": True}))
    assert counted_of(early, early.batches["b01"]) is None
    assert not_counted(early) == ("b01",)
    assert (
        counted_of(late, late.batches["b01"]) == counted_of(said, said.batches["b01"]) == (31, 40)
    )


def test_seedlings_lost_before_the_last_count_had_come_up_wherever_it_is_told() -> None:
    """Worked by hand: 20 up, 5 of them gone, 18 standing at the end: 23 of 40 came up."""
    season = tell(
        ("bench", 0, Kind.PLACE, {"name": "Bench", "kind": "propagator", "set_c": 18.0}),
        ("b01", 0, Kind.SOWN, {**COSMOS, "wanted": 24}),
        ("b01", 5, Kind.FIRST_UP, {}),
        ("b01", 7, Kind.COUNTED, {"count": 20}),
        ("b01", 9, Kind.LOST, {"count": 5, "cause": "damping off"}),
        ("b01", 16, Kind.COUNTED, {"count": 18, "final": True}),
    )
    batch, crop = season.batches["b01"], season.crop("cosmos")
    mild = {SOWN.toordinal() + day: Warmth(18.0, 18.0, 18.0, "") for day in range(20)}
    card, lesson = germination_of(batch).summary, lesson_of(batch, crop, lambda _: mild)
    assert card is not None and lesson is not None
    assert (card.up, lesson.up, counted_of(season, batch)) == (23, 23, (23, 40))
    assert came_up(season, By.CROP) == (CameUp("Cosmos", 1, 40, 23),)
    assert "from 40 seeds in 1 sowing, 23 up" in next_year(season, DAY_0)[0].why
    raised = next(b for b in report_page(season, "s", DAY_0).blocks if isinstance(b, Grid))
    assert dict(zip(raised.columns, raised.rows[0], strict=True))["up"] == "23"


def test_a_count_taken_early_is_final_where_it_reaches_what_the_crop_gives() -> None:
    """Cosmos gives 85 % in the library: 34 of 40 is all there is to wait for."""
    up: Event = ("b01", 5, Kind.FIRST_UP, {})
    sown: Event = ("b01", 0, Kind.SOWN, COSMOS)
    for count, final in ((33, None), (34, (34, 40))):
        season = tell(sown, up, ("b01", 7, Kind.COUNTED, {"count": count}))
        assert counted_of(season, season.batches["b01"]) == final


def test_a_count_taken_at_the_true_leaves_is_a_count_for_card_learning_and_review() -> None:
    season = tell(
        ("b01", 0, Kind.SOWN, COSMOS),
        ("b01", 5, Kind.FIRST_UP, {}),
        ("b01", 14, Kind.TRUE_LEAVES, {"count": 31}),
    )
    batch = season.batches["b01"]
    card = germination_of(batch)
    assert card.summary is not None and card.settled
    assert (card.summary.up, counted_of(season, batch)) == (31, (31, 40))


def test_seed_sown_again_counts_as_sown() -> None:
    season = tell(
        ("b01", 0, Kind.SOWN, COSMOS),
        ("b01", 9, Kind.RESOWN, {"seeds": 10}),
        ("b01", 30, Kind.COUNTED, {"count": 45, "final": True}),
    )
    assert counted_of(season, season.batches["b01"]) == (45, 50)


def test_clumps_are_counted_by_their_seedlings_or_not_at_all() -> None:
    """Worked by hand: 28 clumps of 4.1 seedlings are 115 of 120 seeds."""
    clumps: dict[str, Figure] = {"crop": "beetroot", "seeds": 120, "raising": "clumps"}
    known = tell(
        ("b01", 0, Kind.SOWN, clumps),
        ("b01", 9, Kind.COUNTED, {"count": 28, "mean_per_clump": 4.1, "final": True}),
    )
    unknown = tell(
        ("b01", 0, Kind.SOWN, clumps), ("b01", 9, Kind.COUNTED, {"count": 28, "final": True})
    )
    assert counted_of(known, known.batches["b01"]) == (115, 120)
    assert counted_of(unknown, unknown.batches["b01"]) is None


def test_all_that_was_alive_is_lost_where_no_number_was_said() -> None:
    season = tell(
        ("b01", 0, Kind.SOWN, COSMOS),
        ("b01", 9, Kind.COUNTED, {"count": 30, "final": True}),
        ("b01", 12, Kind.LOST, {"count": 4, "cause": "slug"}),
        ("b01", 20, Kind.LOST, {"cause": "frosted"}),
    )
    (frost, slug) = losses(season, By.CAUSE)
    assert (frost.name, frost.times, frost.count) == ("frosted", 1, 26)
    assert (slug.name, slug.times, slug.count) == ("slug", 1, 4)
    assert sum(one.count for one in losses(season, By.CROP)) == 30


def test_the_sample_story_is_told_as_it_was() -> None:
    """The story's own lines: 5 + 2 to mice, 4 + 2 to slugs, 2 drowned, 4 unknown, a tray damped."""
    found = {one.name: (one.times, one.count) for one in losses(sample_season(), By.CAUSE)}
    assert found == {
        "mouse": (2, 7),
        "slug": (2, 6),
        "unknown": (1, 4),
        "drowned": (1, 2),
        "damping off": (1, 0),
    }
    assert CameUp("Leek", 1, 220, 171) in came_up(sample_season(), By.CROP)
    had = {one.batch: (one.wanted, one.had, one.planted) for one in wanted_had(sample_season())}
    assert had["b03"] == (60, 60, True)
    assert had["b01"] == (24, 32, False)
    assert "b09" not in had


def test_losses_are_the_same_sum_however_they_are_told_apart() -> None:
    for season in (sample_season(), many_season()):
        sums = {by: sum(one.count for one in losses(season, by)) for by in (By.CROP, By.CAUSE)}
        told = sum(sum(batch.tally.losses.values()) for batch in season.batches.values())
        assert set(sums.values()) == {told}


@pytest.mark.parametrize(
    ("day", "next_day"), [("2026-05-27", "2027-05-27"), ("2028-02-29", "2029-02-28")]
)
def test_a_year_on(day: str, next_day: str) -> None:
    assert year_on(date.fromisoformat(day)) == date.fromisoformat(next_day)


def test_next_year_is_later_where_plants_stood_ready() -> None:
    waited = tell(
        ("b01", 0, Kind.SOWN, {**COSMOS, "wanted": 24}),
        ("b01", 9, Kind.COUNTED, {"count": 30, "final": True}),
        ("b01", 20, Kind.READY, {}),
        ("b01", 50, Kind.PLANTED_OUT, {"count": 24}),
    )
    (advice,) = next_year(waited, DAY_0)
    assert advice.day == year_on(SOWN) + timedelta(days=30)
    assert "30 days" in advice.why


def test_next_year_needs_more_seed_where_less_came_up() -> None:
    def sowing(up: int) -> int:
        (advice,) = next_year(
            tell(
                ("b01", 0, Kind.SOWN, {**COSMOS, "wanted": 24}),
                ("b01", 9, Kind.COUNTED, {"count": up, "final": True}),
            ),
            DAY_0,
        )
        assert advice.seeds is not None
        return advice.seeds

    seeds = [sowing(up) for up in (40, 30, 20, 10)]
    assert seeds == sorted(seeds)
    assert 24 < seeds[0] < seeds[-1]


def test_next_year_never_lies_in_the_past() -> None:
    assert all(one.day >= DAY_0 for one in next_year(sample_season(), DAY_0))
    crops = {one.crop for one in next_year(sample_season(), DAY_0)}
    assert "Tulip" not in crops  # bulbs are planted, not sown
    assert "Cosmos" in crops


def test_an_empty_season_teaches_nothing() -> None:
    season = empty_season()
    for by in By:
        assert losses(season, by) == ()
    assert came_up(season, By.CROP) == ()
    assert wanted_had(season) == ()
    assert next_year(season, DAY_0) == ()
