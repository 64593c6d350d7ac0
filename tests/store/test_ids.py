from __future__ import annotations

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.store.ids import DIGITS, LATEST_MS, LENGTH, IdMaker, stamp_of
from tests.store.builders import START_MS


class Readings:
    """A clock that shows the readings given, then stands still."""

    def __init__(self, readings: list[int]) -> None:
        self.readings = readings
        self.last = 0

    def __call__(self) -> int:
        if self.readings:
            self.last = self.readings.pop(0)
        return self.last


def maker(readings: list[int], last_seen: str = "", seed: int = 1) -> IdMaker:
    return IdMaker(last_seen, Readings(readings), random.Random(seed).randbytes)


@given(st.lists(st.integers(-10, LATEST_MS + 10), min_size=2, max_size=60))
def test_ids_rise_whatever_the_clock_does(readings: list[int]) -> None:
    ids = maker(readings)
    names = [ids.next() for _ in readings]
    assert names == sorted(names)
    assert len(set(names)) == len(names)


@given(st.integers(0, LATEST_MS - 1), st.integers(0, LATEST_MS - 1))
def test_ids_go_on_from_the_last_one_seen_after_a_restart(before: int, after: int) -> None:
    last = maker([before]).next()
    assert maker([after], last, seed=2).next() > last


def test_a_clock_set_back_a_year_does_not_set_ids_back() -> None:
    ids = maker([START_MS, START_MS - 31_536_000_000, START_MS - 31_535_999_000])
    first, second, third = ids.next(), ids.next(), ids.next()
    assert first < second < third


def test_more_records_in_a_millisecond_than_there_are_counts_go_on_rising() -> None:
    ids = maker([START_MS])
    names = [ids.next() for _ in range(32**3 + 5)]
    assert names == sorted(set(names))


def test_an_id_seen_from_another_computer_moves_the_ids_on() -> None:
    ahead = maker([START_MS + 86_400_000], seed=2).next()
    ids = maker([START_MS])
    assert ids.next() < ahead
    ids.saw(ahead)
    assert ids.next() > ahead


@pytest.mark.parametrize("name", ["", "r1", "z" * LENGTH, "0" * 15, "0" * 17, "U" * 16, "ü" * 16])
def test_a_name_that_is_no_id_is_ignored(name: str) -> None:
    assert stamp_of(name) is None
    assert maker([START_MS], name).next() == maker([START_MS]).next()


@given(st.integers(0, LATEST_MS))
def test_the_time_stands_in_the_id_in_base_32(time_ms: int) -> None:
    name = maker([time_ms]).next()
    # Source: Python's own reading of numbers in base 32, digits mapped one to one.
    plain = name[:9].translate(str.maketrans(DIGITS, "0123456789abcdefghijklmnopqrstuv"))
    assert int(plain, 32) == time_ms
    assert stamp_of(name) == (time_ms, 0)


def test_the_digits_sort_as_text_the_way_they_count() -> None:
    assert sorted(DIGITS) == list(DIGITS)
    assert len(set(DIGITS)) == 32


def test_two_computers_in_the_same_millisecond_differ() -> None:
    assert maker([START_MS], seed=1).next() != maker([START_MS], seed=2).next()


def test_without_a_given_clock_the_computers_own_is_used() -> None:
    first, second = IdMaker(), IdMaker()
    name = first.next()
    stamp = stamp_of(name)
    assert stamp is not None
    assert stamp[0] > START_MS - 10 * 31_536_000_000
    assert second.next() != name
