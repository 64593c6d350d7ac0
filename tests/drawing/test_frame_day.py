"""A frame's day: figures read back off the picture."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from benchround.core.frame.build import LidPosition
from benchround.core.frame.lid_words import Stock, limits_for
from benchround.core.frame.outlook import frame_outlook
from benchround.core.season import Season
from benchround.drawing.canvas import ASCII, UNICODE
from benchround.drawing.frame_curve import FrameCurve, extremes, frame_curve
from benchround.drawing.frame_day import frame_lines
from benchround.drawing.frame_words import NO_FIGURES, frame_words, lid_words
from tests.drawing.checks import must_be_sayable, must_hold, text_of
from tests.drawing.fixed import FRAME, TODAY
from tests.sample.story import DAY_0


def level(c: float) -> FrameCurve:
    """A day on which nothing changes."""
    return replace(FRAME, outside_c=(c,) * 24, inside_c=(), shut_c=(), lid=(), steps=())


def rows_of(curve: FrameCurve, width: int = 80) -> dict[str, str]:
    """Rows of the chart by the figure in front of them."""
    lines = text_of(frame_lines(curve, width, ASCII))
    return {line[:4].strip(): line[5:] for line in lines if line[4:5] == "|"}


@pytest.mark.parametrize("temp_c", [-12.0, 0.0, 5.0, 16.0, 20.0, 27.0, 33.0, 51.0])
def test_a_letter_stands_in_the_row_of_its_temperature(temp_c: float) -> None:
    rows = rows_of(level(temp_c))
    figures = [float(name) for name, row in rows.items() if row.count("o") >= 24]
    assert len(figures) == 1
    nearest = min((float(n) for n in rows if n and n != "lid"), key=lambda c: abs(c - temp_c))
    assert figures[0] == nearest


def test_both_limits_run_through_the_picture() -> None:
    rows = rows_of(level(10.0))
    assert rows["27"].count("-") == rows["16"].count("-") == 72  # three cells an hour
    tender = rows_of(replace(level(10.0), low_c=limits_for(Stock.TENDER).aim_low_c))
    assert tender["18"].count("-") == 72 and "-" not in tender.get("16", "")


def test_hours_stand_where_their_cells_begin() -> None:
    lines = text_of(frame_lines(FRAME, 80, ASCII))
    hours = next(line for line in lines if line.strip().startswith("|0"))[5:]
    for hour in (0, 2, 12, 22):
        assert hours[hour * 3 :].startswith(str(hour))


def test_lid_letters_stand_at_the_hours_of_the_plan() -> None:
    lid = rows_of(FRAME)["lid"]
    # the plan: crack at 7, first notch at 8, second at 9, off from 10, shut from 18
    assert lid[: 7 * 3] == "s" + "." * 20
    assert lid[7 * 3] == "c" and lid[8 * 3] == "1" and lid[9 * 3] == "2" and lid[10 * 3] == "O"
    assert lid[18 * 3] == "s"
    assert lid_words(FRAME.lid).startswith("shut from 0:00, crack from 7:00, first notch from 8:00")


def test_three_curves_have_three_letters_and_the_inside_one_lies_on_top() -> None:
    text = "".join(rows_of(FRAME).values())
    assert {"o", "s", "i"} <= set(text)
    same = replace(FRAME, outside_c=(10.0,) * 24, inside_c=(10.0,) * 24, shut_c=(10.0,) * 24)
    row = next(row for row in rows_of(same).values() if row.count("i") >= 24)
    assert "o" not in row and "s" not in row


def test_headline_tells_danger_first() -> None:
    hot = " ".join(text_of(frame_lines(FRAME, 120, UNICODE)))
    assert "too hot if left shut: passes 27 C at 08:40" in hot
    cool = replace(FRAME, shut_c=(12.0,) * 24, shut_passes_at=None)
    assert "Safe if left shut: at most 12 C" in frame_words(cool)


def test_words_give_the_extremes_the_picture_shows() -> None:
    words = frame_words(FRAME)
    for temps in (FRAME.outside_c, FRAME.shut_c, FRAME.inside_c):
        assert f"lowest {min(temps):.0f} C" in words and f"highest {max(temps):.0f} C" in words
    assert "16 C" in words and "27 C" in words


def test_curve_of_the_sample_is_the_outlook(sample: Season) -> None:
    place = sample.place("frame-a")
    assert place is not None
    outlook = frame_outlook(sample, place, DAY_0, Stock.GERMINATING)
    curve = frame_curve(place.name, DAY_0, outlook)
    assert curve.outside_c == tuple(hour.air_c for hour in outlook.day.hours)
    assert curve.shut_c == outlook.shut.inside_c and curve.lid == outlook.advice.lid_plan
    assert (curve.act_c, curve.low_c) == (27.0, 16.0)
    for width in (20, 60, 80, 120, 200):
        must_hold(frame_lines(curve, width, UNICODE), width, UNICODE)
    must_be_sayable(frame_words(curve))


def test_a_day_nobody_knows_anything_of() -> None:
    empty = FrameCurve("Frame A", TODAY)
    assert NO_FIGURES in text_of(frame_lines(empty, 60))
    must_be_sayable(frame_words(empty))
    assert extremes(()) is None
    assert extremes((float("nan"), 3.0, 5.0)) == (3.0, 1, 5.0, 2)


def test_half_a_day_and_odd_figures_are_still_drawn() -> None:
    half = FrameCurve(
        "Frame",
        date(2026, 1, 1),
        outside_c=(1.0, float("nan"), float("inf"), 4.0),
        lid=(LidPosition.SHUT, LidPosition.OFF),
    )
    for width in (20, 29, 53, 80):
        must_hold(frame_lines(half, width, ASCII), width, ASCII)


def test_rows_keep_to_what_was_asked() -> None:
    wide = replace(FRAME, shut_c=(-40.0,) * 12 + (70.0,) * 12)
    for most in (4, 8, 12, 20):
        chart = [line for line in text_of(frame_lines(wide, 80, ASCII, most_rows=most))]
        rows = [line for line in chart if line[4:5] == "|"]
        assert len(rows) - 2 <= most  # the lid and the hours stand under the curves
