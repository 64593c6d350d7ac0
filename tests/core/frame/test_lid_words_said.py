"""A lid that is off is said to be fully open, and what is said is understood when typed."""

from __future__ import annotations

from datetime import time

import pytest

from benchround.core.frame.build import LidPosition
from benchround.core.frame.place import SAID_POSITIONS, read_plan, say_positions, write_plan


@pytest.mark.parametrize("position", LidPosition)
def test_every_position_that_is_said_can_be_typed(position: LidPosition) -> None:
    assert SAID_POSITIONS[position.words] is position
    assert say_positions(str(position)) == position.words


def test_a_whole_plan_says_fully_open_and_reads_back() -> None:
    plan = write_plan(((time(8, 10), LidPosition.SECOND_NOTCH), (time(8, 55), LidPosition.OFF)))
    said = say_positions(plan)
    assert said == "08:10 second notch, 08:55 fully open"
    assert read_plan(said) == read_plan(plan)
