"""What flowers together; days are counted on the calendar by hand."""

from __future__ import annotations

from datetime import date

from benchround.core.dates import Span as Days
from benchround.drawing.canvas import ASCII, UNICODE
from benchround.drawing.flowering import (
    NONE,
    WORDS_BESIDE_FROM,
    bare_words,
    flowering_lines,
    flowering_rows,
    flowerings,
    looks_like,
)
from tests.drawing.checks import must_hold, text_of
from tests.drawing.fixed import STRIPS, TODAY, TULIP, YEAR

FOUND = flowerings(STRIPS, YEAR, "b01")


def test_only_flowerings_in_sight_the_chosen_first_then_by_first_flower() -> None:
    assert [one.batch for one in FOUND] == ["b01", "b30", "b08"]
    assert [one.batch for one in flowerings(STRIPS, YEAR)] == ["b30", "b08", "b01"]
    next_year = flowerings(STRIPS, Days(date(2027, 1, 1), date(2027, 12, 31)))
    assert [one.batch for one in next_year] == ["b30", "b26"]


def test_a_bulb_that_flowers_twice_is_two_flowerings() -> None:
    assert TULIP.flowerings == (
        Days(date(2026, 4, 23), date(2026, 5, 9)),
        Days(date(2027, 4, 20), date(2027, 5, 14)),
    )


def test_recorded_and_expected_days_that_meet_are_one_flowering() -> None:
    fox = next(one for one in FOUND if one.batch == "b08")
    assert fox.days == Days(date(2026, 5, 21), date(2026, 7, 20))
    assert not fox.expected
    assert next(one for one in FOUND if one.batch == "b01").expected


def test_days_together_with_the_chosen_batch() -> None:
    together = {one.batch: one.together for one in FOUND}
    # b01 flowers 8 July to 15 October (100 days), b08 until 20 July: 8 to 20 July is 13 days
    assert together == {"b01": 100, "b08": 13, "b30": 0}
    assert {one.together for one in flowerings(STRIPS, YEAR)} == {None}
    assert {one.together for one in flowerings(STRIPS, YEAR, "not there")} == {None}


def test_colours_and_height_in_words() -> None:
    assert looks_like(FOUND[0]) == "60-120 cm, white or pink"
    drawn = " ".join(text_of(flowering_lines(FOUND, YEAR, TODAY, 200, chosen="b01")))
    assert "13 days with b01" in drawn
    assert "not with b01" in drawn


def test_when_nothing_flowers_is_said() -> None:
    # flowerings: 23 Apr to 9 May, 21 May to 20 Jul, 8 Jul to 15 Oct
    bare = "Nothing in flower 1 Jan to 22 Apr; 10 May to 20 May; 16 Oct to 31 Dec."
    assert bare_words(FOUND, YEAR, TODAY) == bare
    july = Days(date(2026, 7, 1), date(2026, 7, 31))
    assert bare_words(FOUND, july, TODAY) == "Something is in flower all the time."


def test_words_stand_under_the_strip_and_beside_it_where_there_is_room() -> None:
    narrow = [len(lines) for lines in flowering_rows(FOUND, YEAR, TODAY, 80, UNICODE, "b01")]
    wide = [
        len(lines)
        for lines in flowering_rows(FOUND, YEAR, TODAY, WORDS_BESIDE_FROM, UNICODE, "b01")
    ]
    assert narrow == [2, 2, 2] and wide == [1, 1, 1]


def test_no_word_is_lost_at_sixty_cells() -> None:
    text = " ".join(" ".join(text_of(flowering_lines(FOUND, YEAR, TODAY, 60))).split())
    for one in FOUND:
        assert looks_like(one) in text


def test_nothing_in_flower_at_all() -> None:
    assert text_of(flowering_lines((), YEAR, TODAY, 60)) == [NONE]
    for width in (20, 60, 149, 150):
        must_hold(flowering_lines(FOUND, YEAR, TODAY, width, ASCII), width, ASCII)
