"""Calendars made one after another: what moves is moved, what has gone is taken back."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from icalendar import Calendar

from benchround.core.errors import InputError
from benchround.feeds.calendar import calendar_data, uid_of
from benchround.feeds.calendar_told import (
    CANCELLED_FOR,
    Told,
    follow,
    newest,
    told_data,
    told_from,
)
from benchround.feeds.coming import Event

DAY = date(2026, 5, 27)
WEEK = timedelta(weeks=1)


def event(key: str, days: int, at: time | None = None, text: str = "why") -> Event:
    return Event(key, DAY + timedelta(days=days), at, f"do {key}", text, "Frame A", "feed")


def stamp_of(days: int) -> datetime:
    return datetime.combine(DAY + timedelta(days=days), time(6), UTC)


def made(
    before: dict[str, Told], *living: Event, on: int = 0
) -> tuple[dict[str, Told], dict[str, Told]]:
    """The file of a day, four weeks of it: what it tells by key, and what is kept."""
    first = DAY + timedelta(days=on)
    telling, kept = follow(before, living, first=first, last=first + 4 * WEEK, stamp=stamp_of(on))
    return {one.event.key: one for one in telling}, told_from(told_data(kept), "kept")


def test_what_is_asked_again_unchanged_keeps_its_number_and_its_time() -> None:
    """RFC 5545, 3.8.7.4 (from memory): SEQUENCE begins at 0 and grows with a revision."""
    first, kept = made({}, event("a", 2))
    again, _ = made(kept, event("a", 2), on=1)
    assert (first["a"].sequence, again["a"].sequence) == (0, 0)
    assert first["a"].changed == again["a"].changed == stamp_of(0)


@pytest.mark.parametrize(
    "other",
    [event("a", 3), event("a", 2, time(7)), event("a", 2, text="since Monday")],
    ids=["another day", "an hour", "another reason"],
)
def test_a_change_gets_a_higher_number_and_a_later_time(other: Event) -> None:
    _, kept = made({}, event("a", 2))
    again, _ = made(kept, other, on=1)
    assert (again["a"].sequence, again["a"].changed) == (1, stamp_of(1))


def test_what_has_gone_is_taken_back_for_a_while_and_its_number_is_remembered() -> None:
    _, kept = made({}, event("a", 20), event("b", 20))
    telling, kept = made(kept, event("b", 20), on=1)
    assert telling["a"].gone == DAY + timedelta(days=1)
    assert (telling["a"].sequence, telling["b"].sequence) == (1, 0)
    day = 1 + CANCELLED_FOR.days - 1
    telling, kept = made(kept, event("b", 40), on=day)
    assert (telling["a"].sequence, telling["a"].changed) == (1, stamp_of(1))
    telling, kept = made(kept, event("b", 40), on=day + 1)
    assert "a" not in telling
    telling, _ = made(kept, event("a", 40), on=day + 2)
    assert (telling["a"].gone, telling["a"].sequence) == (None, 2)


def test_what_lay_in_the_past_when_it_went_is_left_alone() -> None:
    _, kept = made({}, event("a", 1))
    telling, kept = made(kept, on=2)
    assert telling == {}
    telling, _ = made(kept, event("a", 12), on=11)
    assert telling["a"].sequence == 1


def test_what_comes_back_is_confirmed_with_a_higher_number() -> None:
    _, kept = made({}, event("a", 5))
    _, kept = made(kept, on=1)
    telling, _ = made(kept, event("a", 5), on=2)
    assert (telling["a"].gone, telling["a"].sequence) == (None, 2)


def test_a_shorter_file_takes_nothing_back_and_what_moved_beyond_it_is_told() -> None:
    _, kept = made({}, event("a", 20), event("b", 20))
    living = (event("a", 20), event("b", 60))
    telling, kept = follow(kept, living, first=DAY, last=DAY + WEEK, stamp=stamp_of(0))
    assert [(one.event.key, one.gone) for one in telling] == [("b", None)]
    assert set(kept) == {"a", "b"}


def test_what_was_never_told_is_neither_told_nor_kept_beyond_the_weeks() -> None:
    telling, kept = made({}, event("a", 60))
    assert (telling, kept) == ({}, {})


def test_a_reader_finds_the_same_name_cancelled() -> None:
    """RFC 5545, 3.8.1.11 (from memory): STATUS of a VEVENT may be CANCELLED; read by icalendar."""
    _, kept = made({}, event("a", 5, time(7)))
    telling, _ = made(kept, event("b", 5), on=1)
    data, _ = calendar_data(
        telling.values(), name="n", site="s", stamp=stamp_of(1), timezone="Europe/London"
    )
    entries = {str(e["uid"]): e for e in Calendar.from_ical(data).walk("VEVENT")}
    gone, stays = entries[uid_of("a", "s")], entries[uid_of("b", "s")]
    assert (str(gone["status"]), gone["sequence"]) == ("CANCELLED", 1)
    assert (str(stays["status"]), stays["sequence"]) == ("CONFIRMED", 0)
    assert gone.decoded("last-modified") == stamp_of(1)
    assert gone.decoded("dtstart").astimezone(UTC).hour == 6
    assert "No longer asked for, 2026-05-28" in str(gone["description"])


KEYS = st.sampled_from("abcd")
LIVING = st.dictionaries(KEYS, st.integers(0, 50), max_size=4)


@settings(deadline=None)
@given(st.lists(LIVING, max_size=8))
def test_a_calendar_that_reads_every_file_shows_what_is_asked_for(
    days: list[dict[str, int]],
) -> None:
    """Property, against a calendar by hand: the highest SEQUENCE of a UID holds."""
    kept: dict[str, Told] = {}
    shown: dict[str, Told] = {}
    for on, living in enumerate(days):
        events = [event(key, max(ahead, on)) for key, ahead in living.items()]
        telling, kept = made(kept, *events, on=on)
        for key, one in telling.items():
            if key in shown:
                assert one.sequence >= shown[key].sequence
            shown[key] = one
        today = DAY + timedelta(days=on)
        seen = {
            key: one.event.day
            for key, one in shown.items()
            if one.gone is None and today <= one.event.day < today + 4 * WEEK
        }
        asked = {one.key: one.day for one in events if one.day < today + 4 * WEEK}
        assert seen == asked


def test_two_computers_tell_the_later_of_two() -> None:
    _, first = made({}, event("a", 5), event("b", 5))
    _, other = made(first, event("a", 6), on=1)
    assert newest([first, other]) == newest([other, first]) == {**other}
    assert newest([first, other])["b"].gone is not None


@pytest.mark.parametrize(
    "damage",
    [b"", b"[]", b"{}", b'{"events": 3}', b'{"events": [{}]}', b"\xff", b"[" * 100_000],
)
def test_a_damaged_file_is_named(damage: bytes) -> None:
    with pytest.raises(InputError, match="calendar-shed"):
        told_from(damage, "calendar-shed.json")


def test_a_time_without_a_zone_is_refused() -> None:
    _, kept = made({}, event("a", 5))
    bare = {"a": replace(kept["a"], changed=datetime(2026, 5, 27, 6))}
    with pytest.raises(InputError, match="without a zone"):
        told_from(told_data(bare), "kept")
