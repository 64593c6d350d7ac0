"""Bench room: trays counted by hand from the sample's story and sizes of places.

Footprint of a tray 24 x 38 cm: the trade's usual standard tray, from memory.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise

import pytest

from benchround.core.season import Season
from benchround.core.site import Place, PlaceKind
from benchround.drawing.canvas import ASCII, UNICODE
from benchround.drawing.room import (
    NO_TRAYS,
    PlaceRoom,
    bench_room,
    over_words,
    room_lines,
    room_words,
)
from benchround.drawing.room_stays import capacity, stays, trays_of
from tests.drawing.checks import must_be_sayable, must_hold, text_of
from tests.drawing.fixed import ROOM, TODAY
from tests.sample.story import DAY_0

MONDAY = date(2026, 5, 4)


@pytest.mark.parametrize(
    ("name", "trays"),
    [
        ("b05", 2.0),  # 80 seeds, one a cell, in trays of 40
        ("b19", 1.0),  # 24 cells in a tray of 24
        ("b13", 0.5),  # a half tray
        ("b16", 0.5),  # two quarter trays
        ("b02", 1.0),  # 40 cells in a tray of 40
        ("b04", 30 * 0.09 * 0.09 / (0.37 * 0.23)),  # 30 round pots of 9 cm, standing in squares
        ("b07", 0.0),  # planted at the arch
        ("b30", 0.0),  # bulbs in a bed
        ("b23", 0.0),  # drilled where it grows
        ("b31", 0.0),  # lost
    ],
)
def test_room_of_a_batch_in_full_trays(sample: Season, name: str, trays: float) -> None:
    batch = sample.batches[name]
    assert trays_of(sample, batch, batch.main) == pytest.approx(trays)


@pytest.mark.parametrize(
    ("trays", "size_m", "holds"),
    [
        (6, None, 6.0),
        (None, (1.8, 0.9), 17.0),  # 1.62 m2 / (0.24 x 0.38 m) = 17.8
        (None, (1.2, 0.6), 7.0),  # 0.72 / 0.0912 = 7.9
        (4, (1.8, 0.9), 4.0),  # what was told goes before what was measured
        (None, None, None),
    ],
)
def test_what_a_place_holds(
    trays: float | None, size_m: tuple[float, float] | None, holds: float | None
) -> None:
    place = Place("x", "X", PlaceKind.FRAME, 1, trays=trays, size_m=size_m)
    assert capacity(place) == holds


def test_stays_of_a_batch_never_overlap_and_end_with_planting_out(sample: Season) -> None:
    found = list(stays(sample, sample.batches["b01"], DAY_0))
    for before, after in pairwise(found):
        assert before.closes < after.opens
    assert found[0].place == "propagator" and found[0].opens == DAY_0 - timedelta(days=48)
    planted = DAY_0 + timedelta(days=7)  # 18 days of hardening begun 11 days ago
    assert found[-1].place == "frame-b" and found[-1].closes == planted - timedelta(days=1)


def test_today_on_bench_1_is_the_sum_of_what_stands_there(sample: Season) -> None:
    rooms = {room.name: room for room in bench_room(sample, DAY_0)}
    # b02 a tray, b28 a tray of 40, b04 30 pots of 9 cm, b27 17 pots of 9 cm
    pots = 47 * 0.09 * 0.09 / (0.37 * 0.23)
    assert rooms["Bench 1"].now == pytest.approx(2 + pots)
    assert rooms["Bench 1"].holds == 6.0
    assert "Bed 1" not in rooms


def test_places_come_in_walking_order_with_the_same_weeks(sample: Season) -> None:
    rooms = bench_room(sample, DAY_0, weeks_back=2, weeks_ahead=5)
    names = [room.name for room in rooms]
    assert names[:3] == ["Propagator P", "Bench 1", "Bench 2"]
    assert {len(room.used) for room in rooms} == {8}
    assert {room.monday for room in rooms} == {date(2026, 5, 11)}  # Monday, two weeks before


def test_state_is_a_word_with_its_figure() -> None:
    def state(holds: float | None, now: float) -> str:
        return PlaceRoom("x", holds, now, MONDAY, (now,)).state

    assert state(6, 4.5) == "1.5 free"
    assert state(6, 6) == "full"
    assert state(6, 7) == "1.0 over"
    assert state(None, 2) == "2.0 on it"
    assert state(None, 0) == "empty"


def test_weeks_too_full_are_marked_and_told() -> None:
    lines = text_of(room_lines(ROOM, TODAY, 80, ASCII))
    bench = next(line for line in lines if line.startswith("Bench 1"))
    # weeks of 6.5, 6.5 and 7.0 trays on a bench for 6, five cells each
    assert bench.count("!") == 15
    assert over_words(ROOM[0], TODAY) == (
        "Bench 1: too full this week, 3 weeks in all; at most 7.0 of 6 trays, week of 15 Jun"
    )
    assert over_words(ROOM[1], TODAY) == ""
    assert "15 Jun" in room_words(ROOM, TODAY)


def test_height_follows_the_share_in_use() -> None:
    room = PlaceRoom("x", 8.0, 1.0, TODAY - timedelta(days=2), (1.0, 2.0, 4.0, 8.0, 0.0))
    line = text_of(room_lines([room], TODAY, 40, UNICODE))[2]
    signs = [sign for sign in line[20:] if sign in "▁▂▃▄▅▆▇█·"]
    assert "".join(dict.fromkeys(signs)) == "▁▂▄█·"  # eighths: 1, 2, 4, 8, none


def test_narrow_pictures_keep_this_week_in_sight() -> None:
    rooms = [PlaceRoom("x", 1.0, 1.0, TODAY - timedelta(weeks=10), (1.0,) * 60)]
    for width in range(20, 120):
        lines = room_lines(rooms, TODAY, width, UNICODE)
        must_hold(lines, width, UNICODE)
        assert UNICODE.pointer in text_of(lines)[1]


def test_without_places_it_says_so() -> None:
    assert text_of(room_lines((), TODAY, 60)) == [NO_TRAYS]
    must_be_sayable(room_words((), TODAY))


def test_two_places_of_one_name_are_both_drawn_and_told_apart(sample: Season) -> None:
    (bench,) = (place for place in sample.places if place.code == "bench-1")
    both = replace(sample, places=(*sample.places, replace(bench, code="bench-1-b")))
    rooms = bench_room(both, DAY_0)
    assert {"bench-1", "bench-1-b"} <= {room.code for room in rooms}
    names = [room.name for room in rooms]
    assert {"Bench 1 (bench-1)", "Bench 1 (bench-1-b)"} <= set(names)
    assert len(names) == len(set(names)) == len(bench_room(sample, DAY_0)) + 1
