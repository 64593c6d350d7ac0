"""What a count so far promises, against a published sample and the plain rule."""

from __future__ import annotations

import pytest

from benchround.core.record import Kind
from benchround.core.seed.expected_count import due_share, expected_count
from benchround.core.seed.heat import thermal_model
from tests.core.seed_stories import TENBELL, on, sowing_records, warm_season

assert TENBELL.germination is not None
MODEL = thermal_model(TENBELL.germination)

# Cumulative share of the 40 that came up, reference sample of germinationmetrics 0.1.10 (read):
# first seedlings found on day 5, half-way on day 5.97.
SAMPLE = [(5.0, 4 / 40), (5.97, 0.5), (6.0, 21 / 40), (7.0, 31 / 40), (8.0, 38 / 40)]


@pytest.mark.parametrize(("day", "share"), SAMPLE, ids=[f"day {day:g}" for day, _ in SAMPLE])
def test_the_share_that_should_be_up_follows_a_published_sample(day: float, share: float) -> None:
    """From its first seedling alone, in (4, 5] at a steady temperature."""
    assert due_share(MODEL, 4.5, day, 40) == pytest.approx(share, abs=0.07)


def test_nothing_is_due_before_any_heat_and_all_of_it_in_the_end() -> None:
    assert due_share(MODEL, 80.0, 0.0, 40) == 0.0
    assert due_share(MODEL, 80.0, 800.0, 40) == pytest.approx(1.0, abs=1e-6)


def expected(*counts: tuple[int, int], seeds: int = 50) -> float | None:
    events = [on(8, Kind.LOOKED), on(9, Kind.FIRST_UP)]
    events += [on(day, Kind.COUNTED, count=count) for day, count in counts]
    season = warm_season(sowing_records("b01", 0, *events, seeds=seeds))
    found = expected_count(season, season.batches["b01"], TENBELL)
    return None if found is None else found.final


def test_an_early_count_leaves_the_library_share_standing_and_a_late_one_decides() -> None:
    """With hardly any seed due, 80 % of 50 is expected; with all of it due, what is up."""
    early, late = expected((9, 1)), expected((16, 20))
    assert early is not None
    assert late is not None
    assert early == pytest.approx(0.8 * 50, abs=3)
    assert late == pytest.approx(20, abs=2)


def test_no_count_or_a_settled_one_promises_nothing() -> None:
    assert expected() is None
    assert expected((18, 30)) is None  # nine days after the first seedling it is over


def test_thousands_of_seeds_promise_what_fewer_do_in_proportion() -> None:
    """The beta-binomial sum hangs on the proportions once own seeds outweigh the library's 25."""
    many, few = expected((12, 2000), seeds=6000), expected((12, 600), seeds=1800)
    assert many is not None
    assert few is not None
    assert many / 6000 == pytest.approx(few / 1800, abs=0.03)
