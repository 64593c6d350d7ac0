"""What own sowings teach of germination and of the time to come up, and which teach nothing."""

from __future__ import annotations

import math
from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.batch.batch import apply, fold_batch
from benchround.core.book import RecordBook
from benchround.core.learning.learned import Learned, learned_model
from benchround.core.record import Cause, Figure, Kind, Record
from benchround.core.seed.heat import thermal_model
from tests.core.seed_stories import (
    DAY_0,
    TENBELL,
    WARM_PLACE,
    Event,
    batch_of,
    came_up,
    on,
    sowing_records,
    warm_season,
)

assert TENBELL.germination is not None
LIBRARY = thermal_model(TENBELL.germination)
HEATS = st.lists(st.floats(40.0, 600.0), min_size=1, max_size=20).map(tuple)


def learned(*stories: tuple[Event, ...], set_c: float = 20.0, **sown: Figure) -> Learned:
    records = [
        record
        for number, events in enumerate(stories)
        for record in sowing_records(f"b{number:02d}", 30 * number, *events, **sown)
    ]
    return warm_season(records, set_c).learned("tenbell")


def test_with_no_own_sowing_the_library_stands() -> None:
    found = learned()
    assert found.share is not None
    assert found.time is not None
    assert (found.share.share, found.share.tested) == (0.8, None)
    assert found.time.model == LIBRARY
    assert str(found.time) == "library 10 days at 20 C"


def test_median_days_shrink_towards_own_sowings() -> None:
    """Library 10 d worth 4 sowings, own 7, 8, 9 d -> 9.07 d (reference check L24)."""
    found = learned(came_up(8, looked=6), came_up(9, looked=7), came_up(10, looked=8)).time
    assert found is not None
    assert [days for _, days, _ in found.own] == [7.0, 8.0, 9.0]
    assert found.days == pytest.approx(9.07, abs=0.005)
    assert str(found) == "library 10 days at 20 C, yours 9 from 3 sowings"


def test_heat_not_days_is_learned() -> None:
    """Twice the warmth above base in half the days is the same heat (thermal time, by its rule)."""
    cool = learned(came_up(21, looked=19), set_c=12.0).time
    warm = learned(came_up(11, looked=9), set_c=20.0).time
    assert cool is not None
    assert warm is not None
    assert cool.model.theta50 == pytest.approx(warm.model.theta50)
    assert cool.own[0][2] == pytest.approx(160.0)


def test_own_counts_are_added_to_a_share_worth_25_seeds() -> None:
    """(k m + y) / (k + n) with k 25, m 0.80, y 28, n 50 (rule of the beta update, L08)."""
    share = learned(came_up(9, looked=8, up=28)).share
    assert share is not None
    assert share.share == pytest.approx((25 * 0.8 + 28) / (25 + 50))
    assert share.tested == pytest.approx(75.0)
    assert "yours 64% from 50 seeds in 1 sowing" in str(share)


def test_a_packet_starts_from_its_own_figure_and_a_small_test_weighs_little() -> None:
    story = sowing_records("b01", 0, *came_up(9, looked=8, up=40), packet="p1")
    printed: dict[str, Figure] = {"crop": "tenbell", "germination": 0.6}
    for figures, worth in ((printed, 25.0), ({**printed, "tested": 10}, 10.0)):
        packet = Record("0p", DAY_0, Kind.PACKET, "p1", figures)
        share = warm_season([packet, *story]).learned_of_packet("p1").share
        assert share is not None
        assert (share.prior, share.of) == (0.6, "packet")
        assert share.share == pytest.approx((worth * 0.6 + 40) / (worth + 50))


SPOILT = [
    Cause.MOUSE,
    Cause.DRIED_OUT,
    Cause.WASHED_OUT,
    Cause.COOKED,
    Cause.FROSTED,
    Cause.BIRD,
    Cause.SLUG,
]


@pytest.mark.parametrize("cause", SPOILT)
def test_a_loss_before_or_at_emergence_teaches_nothing(cause: Cause) -> None:
    """The closed list of losses that say nothing of the seed (common practice, no source)."""
    events = (
        on(8, Kind.LOOKED),
        on(9, Kind.FIRST_UP, count=3),
        on(9, Kind.LOST, count=1, cause=str(cause)),
        on(18, Kind.COUNTED, count=10, final=True),
    )
    found = learned(events)
    assert found.share is not None
    assert found.time is not None
    assert found.share.share == 0.8
    assert found.time.model == LIBRARY
    assert [(left.batch, str(cause) in left.because) for left in found.left_out] == [("b00", True)]


MISHAPS = [
    ("stalled, as recorded", (on(5, Kind.STALLED, cause="heat"),), "stalled by heat"),
    ("washed out", (on(5, Kind.WASHED_OUT),), "washed out"),
    ("sown again", (on(5, Kind.RESOWN, seeds=10),), "sown again"),
]


@pytest.mark.parametrize(
    ("events", "words"), [(e, w) for _, e, w in MISHAPS], ids=[name for name, *_ in MISHAPS]
)
def test_a_mishap_leaves_the_sowing_out_by_name(events: tuple[Event, ...], words: str) -> None:
    found = learned((*events, *came_up(9, looked=8, up=40)))
    assert found.share is not None
    assert found.time is not None
    assert (found.share.batches, found.time.batches) == ((), ())
    assert all(left.batch == "b00" and words in left.because for left in found.left_out)
    assert found.left_out


def test_standing_too_hot_or_too_cold_teaches_nothing() -> None:
    for set_c, words in ((31.0, "stalled by heat"), (4.5, "stalled by cold")):
        found = learned(came_up(9, looked=8, up=40), set_c=set_c)
        assert found.share is not None
        assert found.share.batches == ()
        assert any(words in left.because for left in found.left_out)


def test_a_loss_after_the_final_count_still_teaches() -> None:
    found = learned((*came_up(9, looked=8, up=40), on(30, Kind.LOST, count=5, cause="slug")))
    assert found.share is not None
    assert found.share.batches == ("b00",)
    assert found.left_out == ()


def test_slugs_between_first_seedling_and_final_count_spoil_the_count_only() -> None:
    events = (
        *came_up(9, looked=8),
        on(12, Kind.LOST, count=1, cause="slug"),
        on(18, Kind.COUNTED, count=20, final=True),
    )
    found = learned(events)
    assert found.time is not None
    assert found.share is not None
    assert (found.time.batches, found.share.batches) == (("b00",), ())


def test_old_seed_teaches_of_its_packet_and_not_of_the_crop() -> None:
    dead = sowing_records("b01", 0, on(40, Kind.LOST, cause="old seed"), packet="p1")
    packet = Record("0p", DAY_0, Kind.PACKET, "p1", {"crop": "tenbell"})
    season = warm_season([packet, *dead])
    crop, own = season.learned("tenbell").share, season.learned_of_packet("p1").share
    assert crop is not None
    assert own is not None
    assert crop.share == 0.8
    assert own.share == pytest.approx(25 * 0.8 / (25 + 50))


UNKNOWING = [
    ("nobody knows why", (on(40, Kind.LOST, cause="unknown"),), "nothing came up"),
    (
        "not looked at for weeks",
        (on(2, Kind.LOOKED), on(20, Kind.COUNTED, count=30)),
        "nobody looked",
    ),
    ("a day written wrong", (on(80, Kind.FIRST_UP),), "wrong day"),
]


@pytest.mark.parametrize(
    ("events", "words"), [(e, w) for _, e, w in UNKNOWING], ids=[name for name, *_ in UNKNOWING]
)
def test_records_that_tell_too_little_are_named(events: tuple[Event, ...], words: str) -> None:
    found = learned(events).time
    assert found is not None
    assert found.model == LIBRARY
    assert words in found.left_out[0].because


def test_a_sowing_still_coming_up_is_neither_used_nor_left_out() -> None:
    found = learned((on(8, Kind.LOOKED), on(9, Kind.FIRST_UP, count=3)))
    assert found.share is not None
    assert (found.share.batches, found.share.left_out) == ((), ())


@given(heats=HEATS)
def test_the_learned_median_lies_between_library_and_own(heats: tuple[float, ...]) -> None:
    """Property: shrinkage never leaves the range of what went in."""
    model = learned_model(LIBRARY, heats)
    ends = (*heats, LIBRARY.theta50)
    assert min(ends) - 1e-9 <= model.theta50 <= max(ends) + 1e-9
    weighed = 4 * math.log(LIBRARY.theta50) + sum(map(math.log, heats))
    assert model.theta50 == pytest.approx(math.exp(weighed / (4 + len(heats))))


@given(number=st.integers(1, 30))
def test_sowings_that_do_as_the_library_says_only_make_it_surer(number: int) -> None:
    """Property: agreement keeps the median and narrows the spread, with every sowing more."""
    model = learned_model(LIBRARY, (LIBRARY.theta50,) * number)
    more = learned_model(LIBRARY, (LIBRARY.theta50,) * (number + 1))
    assert model.theta50 == pytest.approx(LIBRARY.theta50)
    assert more.sigma <= model.sigma <= LIBRARY.sigma


@given(
    ups=st.lists(st.integers(0, 50), min_size=1, max_size=6),
    extra=st.integers(0, 5),
)
def test_what_is_learned_does_not_hang_on_how_the_season_came_to_be(
    ups: list[int], extra: int
) -> None:
    """Property: records added one by one teach the same as all at once."""
    records = [
        record
        for number, up in enumerate(ups)
        for record in sowing_records(f"b{number:02d}", number, *came_up(9, looked=8, up=up))
    ]
    whole = warm_season(records)
    book = RecordBook([WARM_PLACE], lambda _: {"tenbell": TENBELL})
    for record in records:
        season = book.add([record])
        if extra:
            season.learned("tenbell")  # asked for on the way, it must not go stale
    assert book.season.learned("tenbell") == whole.learned("tenbell")


def test_a_reading_that_makes_the_place_colder_is_taken_in() -> None:
    story = sowing_records("b01", 0, *came_up(9, looked=8))
    book = RecordBook([WARM_PLACE, *story], lambda _: {"tenbell": TENBELL})
    before = book.season.learned("tenbell").time
    day = DAY_0 + timedelta(days=2)
    book.add([Record("9r", day, Kind.READING, "warm", {"min_c": 5.0, "max_c": 15.0})])
    after = book.season.learned("tenbell").time
    assert before is not None
    assert after is not None
    assert before.own[0][2] - after.own[0][2] == pytest.approx(10.0)  # 20 C became 10 C for a day


def test_a_batch_told_record_by_record_is_the_batch_told_at_once() -> None:
    events = (*came_up(9, looked=8, up=40), on(30, Kind.POTTED_ON, count=20, rest="kept"))
    records = sowing_records("b01", 0, *events)
    whole, _ = fold_batch("b01", records)
    batch = None
    for record in records:
        batch = apply(batch, record, "b01")
    assert batch == whole == batch_of(*events)
