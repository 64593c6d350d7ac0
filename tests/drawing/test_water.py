"""Water left: order, words and lengths of bars."""

from __future__ import annotations

from dataclasses import replace

import pytest

from benchround.core.season import Season
from benchround.core.water.run import DayPart
from benchround.core.water.tray_outlook import tray_outlook
from benchround.drawing.canvas import ASCII, UNICODE, Role
from benchround.drawing.water import (
    NO_TRAYS,
    WaterLeft,
    driest_first,
    water_left,
    water_lines,
    water_rows,
    water_words,
)
from tests.drawing.checks import must_be_sayable, must_hold, text_of
from tests.drawing.fixed import WATER, tray
from tests.sample.story import DAY_0


def test_the_driest_comes_first() -> None:
    assert driest_first(reversed(WATER)) == WATER
    early, late = tray("b1", "", 0.9, 0, DayPart.MORNING), tray("b2", "", 0.1, 0, DayPart.EVENING)
    assert driest_first([late, early]) == (early, late)


@pytest.mark.parametrize(
    ("days", "part", "words"),
    [
        (-1, None, "dry by last night"),  # watered yesterday morning, it was not dry since then
        (-2, None, "dry since Mon 25"),  # 25 May 2026 was a Monday
        (0, DayPart.MIDDAY, "dry by midday"),
        (0, None, "dry today"),
        (1, None, "1 day"),
        (4, None, "4 days"),
        (None, None, "over 9 days"),
    ],
)
def test_days_left_in_words(days: int | None, part: DayPart | None, words: str) -> None:
    assert tray("b1", "x", 0.5, days, part).state == words


@pytest.mark.parametrize(("share", "cells"), [(0.0, 0), (0.001, 1), (0.25, 5), (0.5, 10), (1, 20)])
def test_bars_are_as_long_as_their_share(share: float, cells: int) -> None:
    # at 82 cells the bar has 20
    (line,) = water_rows([tray("b1", "x", share, 3)], 82, ASCII)
    text = "".join(span.text for span in line)
    assert (text.count("#"), text.count(".")) == (cells, 20 - cells)


def test_parts_of_a_cell_are_drawn_in_eighths() -> None:
    (line,) = water_rows([tray("b1", "x", 0.5 + 3 / 160, 3)], 82, UNICODE)
    assert "█" * 10 + "▍" + "·" * 9 in "".join(span.text for span in line)


def test_state_has_a_role_beside_its_words() -> None:
    def role(one: WaterLeft) -> Role:
        (line,) = water_rows([one], 80)
        return next(span.role for span in line if one.state in span.text)

    assert [role(one) for one in WATER] == [
        Role.BAD, Role.WARN, Role.WARN, Role.WARN, Role.GOOD, Role.GOOD
    ]  # fmt: skip


def test_every_watered_tray_of_the_sample_is_there_with_its_outlook(sample: Season) -> None:
    found = {one.about: one for one in water_left(sample, DAY_0)}
    for batch in sample.batches.values():
        for part in batch.parts:
            about = " ".join(filter(None, (batch.id, part.name)))
            outlook = tray_outlook(sample, batch, part, DAY_0)
            assert (outlook is not None) == (about in found)
            if outlook is not None:
                assert found[about].dry_on == outlook.runs_out
                assert found[about].spare_ml == outlook.allowed_left_ml
                assert 0.0 <= found[about].share <= 1.0
    days = [one.days if one.days is not None else 99 for one in water_left(sample, DAY_0)]
    assert days == sorted(days)


def test_without_trays_it_says_so() -> None:
    assert text_of(water_lines((), 60)) == [NO_TRAYS]
    must_be_sayable(water_words(()))
    must_be_sayable(water_words([replace(WATER[0], place="")]))
    for width in (20, 33, 74, 75):
        must_hold(water_lines(WATER, width, UNICODE), width, UNICODE)
