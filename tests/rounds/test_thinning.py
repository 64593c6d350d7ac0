"""Thinning cells leaves as many as the crop keeps in each: plain arithmetic."""

from __future__ import annotations

from datetime import date

import pytest

from benchround.core.record import Kind
from benchround.core.task import Family
from benchround.crops.library import load_library
from benchround.rounds.build import build_round
from tests.folding import fold_season
from tests.rounds.small_season import begin, place

LIBRARY = load_library()
DAY = date(2026, 5, 11)


@pytest.mark.parametrize(
    ("crop", "per_cell", "up", "left"),
    [
        pytest.param("parsley", 6, 200, 160, id="four a cell"),
        pytest.param("parsley", 6, 90, 90, id="never more than are up"),
        pytest.param("lettuce", 3, 100, 40, id="one a cell"),
    ],
)
def test_what_is_left_in_forty_cells(crop: str, per_cell: int, up: int, left: int) -> None:
    told = begin()
    place(told, "bench", name="Bench", kind="greenhouse bench")
    told.tell(
        date(2026, 4, 1),
        Kind.SOWN,
        "p1",
        crop=crop,
        seeds=240,
        cells=40,
        per_cell=per_cell,
        raising="cells",
        place="bench",
    )
    told.tell(date(2026, 4, 28), Kind.COUNTED, "p1", count=up, final=True)
    told.tell(date(2026, 5, 10), Kind.TRUE_LEAVES, "p1")
    tasks = build_round(fold_season(told.records, LIBRARY), DAY).tasks
    (task,) = [task for task in tasks if task.family is Family.THIN]
    assert task.ticks[0].figures["count"] == left
    assert [ask.default for ask in task.asks] == [str(left)]
