"""The year picture: what each cell must say, worked out by hand from the calendar."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from itertools import islice

import pytest

from benchround.core.dates import Span as Days
from benchround.core.season import Season
from benchround.drawing.canvas import ASCII, UNICODE, Role
from benchround.drawing.phases import LETTERS, Phase
from benchround.drawing.scale import Scale, growing_year
from benchround.drawing.stretches import Stretch
from benchround.drawing.year import axis_lines, legend_lines, rows, strip_words
from benchround.drawing.year_bar import bar
from benchround.drawing.year_strips import Order, YearStrip, year_strips
from tests.drawing.checks import must_be_sayable, must_hold, text_of
from tests.drawing.fixed import COSMOS, FOXGLOVE, LOBELIA, STRIPS, TODAY, TULIP, YEAR
from tests.drawing.whole_year import year_lines
from tests.sample.story import BATCHES, DAY_0

WEEKS = Days(date(2026, 1, 5), date(2027, 1, 3))  # 52 whole weeks, one a cell


def bar_text(stretches: tuple[Stretch, ...], days: Days = WEEKS, columns: int = 52) -> str:
    return "".join(span.text for span in bar(stretches, Scale(days, columns), TODAY, ASCII))


def test_a_letter_begins_each_phase_in_the_week_it_fills() -> None:
    text = bar_text(COSMOS.stretches)
    # weeks of 2026 from Monday 5 January: 9 Apr is in week 13, 14 Apr in 14, 5 May in 17,
    # 27 May (today) in 20, 3 Jun in 21, 8 Jul in 26, 15 Oct in 40. 16 May is the Saturday of
    # week 18, which is still mostly spent growing on, so H stands in 19.
    letters = {at: sign for at, sign in enumerate(text) if sign not in " =-:"}
    assert letters == {13: "S", 14: "U", 17: "G", 19: "H", 20: "|", 21: "o", 26: "f"}
    assert text[27:41] == ":" * 14
    assert text[41:].strip() == ""


def test_recorded_is_capital_and_expected_small_on_either_side_of_today() -> None:
    for strip in STRIPS:
        text = bar_text(strip.stretches)
        assert not [sign for sign in text[:20] if sign.islower()], strip.title
        assert not [sign for sign in text[21:] if sign.isupper()], strip.title


def test_today_runs_through_every_strip_that_does_not_begin_a_phase_there() -> None:
    assert bar_text(())[20] == "|"
    assert bar_text(TULIP.stretches)[20] == "|"
    begun_today = (Stretch(TODAY, TODAY, Phase.FLOWER),)
    assert bar_text(begun_today)[20] == "F"


def test_a_short_flowering_is_never_swallowed() -> None:
    a_day = date(2026, 7, 8)
    stretches = (
        Stretch(date(2026, 6, 1), date(2026, 7, 7), Phase.OUT, True),
        Stretch(a_day, a_day, Phase.FLOWER, True),
        Stretch(date(2026, 7, 9), date(2026, 9, 1), Phase.OVER, True),
    )
    assert "f" in bar_text(stretches)
    assert "f" in bar_text(stretches, WEEKS, 12)


def test_what_goes_on_beyond_the_edges_is_marked() -> None:
    fox, tulip = bar_text(FOXGLOVE.stretches), bar_text(TULIP.stretches)
    assert fox[0] == tulip[0] == "<" and fox[1] == "O"
    assert tulip[-1] == ">" and fox[-1] == " "
    assert bar_text(LOBELIA.stretches).strip()[0] == "S"
    none_in_sight = bar_text(LOBELIA.stretches, Days(date(2027, 1, 1), date(2027, 12, 31)))
    assert none_in_sight.strip() == ""


def test_meaning_does_not_hang_on_colour() -> None:
    """Strips that differ in any phase differ in their signs."""
    texts = set()
    for phase in LETTERS:
        for ahead in (False, True):
            opens = date(2026, 6, 10) if ahead else date(2026, 2, 1)
            text = bar_text((Stretch(opens, date(2026, 8, 1), phase, ahead),))
            texts.add(text.replace("|", "").strip()[:2])
    assert len(texts) == 2 * len(LETTERS)


def test_rows_are_drawn_one_at_a_time() -> None:
    asked: list[str] = []

    def strips() -> Iterator[YearStrip]:
        for strip in STRIPS:
            asked.append(strip.batch)
            yield strip

    drawn = rows(strips(), YEAR, TODAY, 80)
    assert asked == []
    assert len(list(islice(drawn, 2))) == 2
    assert len(asked) == 2


def test_one_row_for_each_strip_and_all_of_one_width() -> None:
    for width in (60, 80, 120, 200):
        lines = text_of(tuple(rows(STRIPS, YEAR, TODAY, width, UNICODE)))
        assert len(lines) == len(STRIPS)
        bars = {line.index(UNICODE.now) for line in lines if UNICODE.now in line}
        hostile = lines.pop()
        assert hostile.index(UNICODE.now) <= max(bars)
        assert len({line.index(UNICODE.now) for line in lines if UNICODE.now in line}) == 1


@pytest.mark.parametrize("order", Order)
def test_sorted_as_asked(sample: Season, order: Order) -> None:
    strips = year_strips(sample, DAY_0, order)
    assert {strip.batch for strip in strips} == set(BATCHES)
    if order is Order.PLACE:
        keys = [strip.place_order for strip in strips]
    elif order is Order.SOWING:
        keys = [strip.begins.toordinal() for strip in strips if strip.begins]
        assert strips[0].batch == "b11"  # sown 372 days before, the first in the story
    else:
        keys = [strip.flowerings[0].opens.toordinal() for strip in strips if strip.flowerings]
        assert strips[0].batch == "b29"  # in flower 70 days before, the first in the story
        bare = [not strip.flowerings for strip in strips]
        assert bare == sorted(bare)
    assert keys == sorted(keys)


def test_the_lead_says_what_the_strips_are_sorted_by() -> None:
    for order, lead in (
        (Order.PLACE, "Frame B"),
        (Order.SOWING, "9 Apr"),
        (Order.FLOWERING, "8 Jul"),
    ):
        line = text_of(tuple(rows([COSMOS], YEAR, TODAY, 80, UNICODE, order)))[0]
        assert line.startswith(lead)


def test_spares_are_a_strip_of_their_own(sample: Season) -> None:
    strips = [strip for strip in year_strips(sample, DAY_0) if strip.batch == "b03"]
    assert {strip.part for strip in strips} == {"", "spares"}


def test_axis_and_legend_name_what_is_drawn() -> None:
    text = "\n".join(text_of(axis_lines(YEAR, TODAY, 80, UNICODE, Order.SOWING)))
    assert "sown" in text and "2026" in text and "Oct" in text
    legend = " ".join(text_of(legend_lines(200, UNICODE)))
    assert all(f"{letter} {phase}" in legend for phase, letter in LETTERS.items())
    only = " ".join(text_of(legend_lines(200, UNICODE, [Phase.SOWN])))
    assert "S sown" in only and "F in flower" not in only


def test_flower_and_crop_have_roles_of_their_own() -> None:
    roles = {span.role for line in rows(STRIPS, YEAR, TODAY, 80) for span in line}
    assert {Role.FLOWER, Role.CROP, Role.DONE, Role.AHEAD, Role.NOW} <= roles


def test_words_tell_past_and_future_apart() -> None:
    words = strip_words(FOXGLOVE, TODAY)
    past, _, ahead = words.partition("Expected:")
    assert "in flower since 21 May" in past and "21 Jun 2025" in past
    assert ahead.strip() == "in flower until 20 Jul."


@pytest.mark.parametrize("width", (20, 60, 80, 120, 200, 300))
def test_the_whole_sample_keeps_to_its_width(sample: Season, width: int) -> None:
    strips = year_strips(sample, DAY_0)
    for glyphs in (UNICODE, ASCII):
        must_hold(
            year_lines(strips, growing_year(sample.site, DAY_0), DAY_0, width, glyphs),
            width,
            glyphs,
        )
    for strip in strips:
        must_be_sayable(strip_words(strip, DAY_0))
