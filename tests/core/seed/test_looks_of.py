"""Looks read from a batch's records, against published germination figures."""

from __future__ import annotations

from itertools import accumulate

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.batch.batch import Batch
from benchround.core.record import Figure, Kind
from benchround.core.seed.looks_of import first_up_of, germination_of, looks_of
from tests.core.seed_stories import Event, batch_of, on

GERMINATIONMETRICS = (0, 0, 0, 0, 4, 17, 10, 7, 1, 0, 1, 0, 0, 0)
"""Newly up on days 1 to 14 of 50 sown: reference sample of germinationmetrics 0.1.10 (read)."""
SEEDCALC = (0, 4, 2, 12, 4, 17, 1, 8, 2, 0)
"""Newly up on days 1 to 10 of 50 sown: second sample of SeedCalc 1.0.0's GermCalc page (read)."""


def daily(newly_up: tuple[int, ...]) -> Batch:
    """A batch whose grower looked every day and wrote down what was up."""
    events: list[Event] = []
    for day, total in enumerate(accumulate(newly_up), start=1):
        if total == 0:
            events.append(on(day, Kind.LOOKED))
        else:
            events.append(on(day, Kind.COUNTED, count=total))
    return batch_of(*events)


PUBLISHED = [
    ("germinationmetrics, final %", GERMINATIONMETRICS, "final_share", 0.80),
    ("germinationmetrics, T50 Farooq", GERMINATIONMETRICS, "t50_farooq", 5.94117647058824),
    ("germinationmetrics, T50 Coolbear", GERMINATIONMETRICS, "t50_coolbear", 5.97058823529412),
    ("germinationmetrics, mean time", GERMINATIONMETRICS, "mean_days", 6.7),
    ("germinationmetrics, Maguire's speed", GERMINATIONMETRICS, "speed", 6.13892496392496),
    ("germinationmetrics, synchrony", GERMINATIONMETRICS, "synchrony", 0.266666666666667),
    ("SeedCalc, T50", SEEDCALC, "t50_farooq", 5.176471),
    ("SeedCalc, mean time", SEEDCALC, "mean_days", 5.46),
    ("SeedCalc, T90 - T10", SEEDCALC, "spread_days", 5.125),
    ("SeedCalc, speed", SEEDCALC, "speed", 10.66508),
]


@pytest.mark.parametrize(
    ("sample", "figure", "value"),
    [(sample, figure, value) for _, sample, figure, value in PUBLISHED],
    ids=[source for source, *_ in PUBLISHED],
)
def test_published_figures_come_out_of_records(
    sample: tuple[int, ...], figure: str, value: float
) -> None:
    summary = germination_of(daily(sample)).summary
    assert summary is not None
    assert getattr(summary, figure) == pytest.approx(value, rel=1e-6)


def test_the_curve_ends_at_the_share_and_the_range_is_wilsons() -> None:
    """8 of 10: 0.490 to 0.943 (Wilson 1927, by two methods in the reference checks L11, L12)."""
    batch = batch_of(on(6, Kind.LOOKED), on(8, Kind.FIRST_UP, count=8), seeds=10)
    found = germination_of(batch)
    assert found.share == 0.8
    assert found.range == pytest.approx((0.490, 0.943), abs=5e-4)
    assert found.curve == ((0.0, 0.0), (6.0, 0.0), (8.0, 0.8))
    assert found.t50_days == 7.0


def test_looks_are_intervals_from_the_last_look_without() -> None:
    batch = batch_of(
        on(3, Kind.LOOKED),
        on(5, Kind.STALLED, cause="cold"),
        on(9, Kind.FIRST_UP, count=6),
        on(12, Kind.COUNTED, count=20),
    )
    looks = looks_of(batch).looks
    assert looks is not None
    assert looks.steps == ((0, 3, 0), (3, 5, 0), (5, 9, 6), (9, 12, 14))
    first = first_up_of(batch)
    assert first is not None
    assert (first.after, first.by, first.middle, first.assumed) == (5, 9, 7, False)


def test_seedlings_lost_between_two_counts_had_come_up() -> None:
    batch = batch_of(
        on(7, Kind.FIRST_UP, count=30),
        on(8, Kind.LOST, count=10, cause="damping off"),
        on(11, Kind.COUNTED, count=25),
    )
    looks = looks_of(batch).looks
    assert looks is not None
    assert looks.cumulative == (0, 30, 35)


def test_a_count_that_falls_adds_none_and_says_so() -> None:
    batch = batch_of(on(7, Kind.FIRST_UP, count=30), on(9, Kind.COUNTED, count=28))
    found = looks_of(batch)
    assert found.looks is not None
    assert found.looks.up == 30
    assert any("fewer" in note for note in found.notes)


TAKEN = [
    (Kind.THINNED, 20),
    (Kind.PRICKED_OUT, 20),
    (Kind.POTTED_ON, 20),
    (Kind.COMPOSTED, 5),
]


@pytest.mark.parametrize(("kind", "count"), TAKEN, ids=[str(kind) for kind, _ in TAKEN])
def test_a_count_after_plants_were_taken_out_is_not_read(kind: Kind, count: int) -> None:
    batch = batch_of(
        on(7, Kind.FIRST_UP, count=30),
        on(14, kind, count=count),
        on(16, Kind.COUNTED, count=12),
    )
    looks = looks_of(batch).looks
    assert looks is not None
    assert looks.cumulative == (0, 30)


UNTOLD: list[tuple[str, dict[str, Figure], tuple[Event, ...], str]] = [
    ("no number of seeds", {"seeds": 0}, (on(7, Kind.FIRST_UP, count=3),), "how many seeds"),
    ("never looked at", {}, (), "nothing was looked at"),
    ("never counted", {}, (on(7, Kind.FIRST_UP),), "was not counted"),
    (
        "seed lost before it was up",
        {},
        (on(3, Kind.LOST, count=9, cause="mouse"), on(8, Kind.FIRST_UP, count=20)),
        "mouse",
    ),
    (
        "sown again",
        {},
        (on(9, Kind.RESOWN, seeds=20), on(14, Kind.COUNTED, count=20)),
        "two sowings",
    ),
    ("washed out", {}, (on(4, Kind.WASHED_OUT), on(9, Kind.COUNTED, count=5)), "washed out"),
    (
        "clumps counted",
        {"raising": "clumps"},
        (on(9, Kind.COUNTED, count=10),),
        "how many seedlings",
    ),
    ("up on the day it was sown", {}, (on(0, Kind.COUNTED, count=5),), "two days is wrong"),
]


@pytest.mark.parametrize(
    ("sown", "events", "words"),
    [(sown, events, words) for _, sown, events, words in UNTOLD],
    ids=[name for name, *_ in UNTOLD],
)
def test_what_cannot_be_said_has_its_reason(
    sown: dict[str, Figure], events: tuple[Event, ...], words: str
) -> None:
    found = germination_of(batch_of(*events, name="b01", **sown))
    assert found.summary is None
    assert (found.share, found.range, found.t50_days, found.curve) == (None, None, None, ())
    assert words in found.because


def test_clumps_with_their_mean_number_are_seedlings() -> None:
    batch = batch_of(on(9, Kind.COUNTED, count=10, mean_per_clump=3.2), seeds=40, raising="clumps")
    assert germination_of(batch).share == 32 / 40


def test_a_first_seedling_without_a_look_before_it_is_taken_as_looked_for_daily() -> None:
    first = first_up_of(batch_of(on(9, Kind.FIRST_UP)))
    assert first is not None
    assert (first.after, first.by, first.assumed) == (8, 9, True)
    assert first_up_of(batch_of(on(9, Kind.COUNTED, count=30))) is None
    assert first_up_of(batch_of(on(9, Kind.TRUE_LEAVES))) is None


@given(
    totals=st.lists(st.integers(0, 50), min_size=1, max_size=12).map(sorted),
    gaps=st.lists(st.integers(1, 5), min_size=12, max_size=12),
)
def test_counts_go_in_and_come_out_again(totals: list[int], gaps: list[int]) -> None:
    """Property: cumulative counts in any rhythm are read back as they were written."""
    days = list(accumulate(gaps))
    events = tuple(
        on(day, Kind.COUNTED, count=total) if total else on(day, Kind.LOOKED)
        for day, total in zip(days, totals, strict=False)
    )
    looks = looks_of(batch_of(*events)).looks
    assert looks is not None
    assert looks.cumulative == tuple(totals)
    assert looks.times() == tuple(float(day) for day in days[: len(totals)])
