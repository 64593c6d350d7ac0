"""The evening before a cold night: how hard a frost is coming stands in the why."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from benchround.core.record import Figure, Kind, Record
from benchround.core.task import Family, Task
from benchround.crops.library import load_library
from benchround.rounds.build import build_round
from tests.folding import fold_season
from tests.rounds.small_season import LONDON

DAY = date(2027, 5, 20)
Event = tuple[int, Kind, str, dict[str, Figure]]


def fleece(min_c: float) -> Task | None:
    told: list[Event] = [
        (-90, Kind.SITE, "", {**LONDON}),
        (-90, Kind.PLACE, "bed", {"name": "Bed", "kind": "bed"}),
        (-50, Kind.SOWN, "b01", {"crop": "zinnia", "seeds": 20, "raising": "cells"}),
        (-40, Kind.COUNTED, "b01", {"count": 16, "final": True}),
        (-3, Kind.PLANTED_OUT, "b01", {"count": 15, "place": "bed"}),
        (0, Kind.OUTLOOK, "", {"min_c": min_c, "max_c": 12.0}),
    ]
    season = fold_season(
        [
            Record(f"F{number:03d}", DAY + timedelta(days=day), kind, about, said)
            for number, (day, kind, about, said) in enumerate(told)
        ],
        load_library(),
    )
    tasks = build_round(season, DAY).tasks
    return next((task for task in tasks if task.family is Family.FLEECE), None)


@pytest.mark.parametrize(
    ("min_c", "word"),
    # UK Met Office classes as printed by BBC Weather (read)
    [(-1.0, "(slight frost)"), (-5.0, "(moderate frost)"), (-8.0, "(severe frost)")],
)
def test_the_why_names_the_frost(min_c: float, word: str) -> None:
    task = fleece(min_c)
    assert task is not None
    assert word in task.why.figures[0]


def test_a_cold_night_without_frost_names_none() -> None:
    task = fleece(2.0)
    assert task is not None and "frost" not in task.why.figures[0]
