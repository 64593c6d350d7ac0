"""The round in F: every why of the sample season, turned once and turned again."""

from __future__ import annotations

import re
from datetime import timedelta

from benchround.core.book import RecordBook
from benchround.core.unit_words import UnitWords
from benchround.core.units import Degrees, Rain, Units
from benchround.crops.library import load_library
from benchround.rounds.build import build_round
from benchround.rounds.in_units import round_in_units
from tests.sample.story import DAY_0, records

HEAT = re.compile(r"([0-9]+) of ([0-9]+) (F )?degree-days")


def test_every_why_is_turned_exactly_once() -> None:
    library = load_library()
    season = RecordBook(records(), lambda _: library).season
    words = UnitWords(Units(Degrees.F, Rain.INCH))
    heats = 0
    for number in range(0, 12, 3):
        told = build_round(season, DAY_0 + timedelta(days=number))
        once = round_in_units(told, words)
        assert round_in_units(once, words) == once
        for task, turned in zip(told.tasks, once.tasks, strict=True):
            for in_c, in_f in zip(task.why.figures, turned.why.figures, strict=True):
                had, said = HEAT.search(in_c), HEAT.search(in_f)
                if had is None:
                    continue
                assert said is not None
                heats += 1
                # a degree-day of F is 5/9 of one of C, by definition
                wanted = [f"{int(heat) * 1.8:.0f}" for heat in had.groups()[:2]]
                assert list(said.groups()) == [*wanted, "F "], in_f
    assert heats >= 4
