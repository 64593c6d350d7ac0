"""Where a part of a batch stood, and how warm it was there day by day; worked by hand."""

from __future__ import annotations

from datetime import date, timedelta
from itertools import islice

import pytest

from benchround.core.batch.batch import Batch, fold_batch
from benchround.core.batch.nouns import Moves
from benchround.core.record import Figure, Kind, Record
from benchround.core.seed.heat import felt_since, place_on, places_of
from benchround.core.sky.warmth import Warmth

DAY = date(2026, 4, 1)


def on(days: int) -> date:
    return DAY + timedelta(days=days)


Event = tuple[int, Kind, dict[str, Figure]]


def told(*events: Event) -> Batch:
    records = [
        Record(f"0{number:03d}", on(days), kind, "b01", figures)
        for number, (days, kind, figures) in enumerate(events)
    ]
    batch, doubts = fold_batch("b01", records)
    assert batch is not None
    assert not doubts
    return batch


SOWN: Event = (0, Kind.SOWN, {"crop": "cosmos", "seeds": 40, "place": "sill"})
COUNTED: Event = (10, Kind.COUNTED, {"count": 30})
PLANTED: Event = (40, Kind.PLANTED_OUT, {"count": 20, "place": "bed"})


def test_the_main_part_goes_out_and_the_spares_stay_where_they_stood() -> None:
    batch = told(SOWN, COUNTED, (20, Kind.MOVED, {"place": "bench"}), PLANTED)
    main, spares = batch.parts
    assert main.moves == ((on(0), "sill"), (on(20), "bench"), (on(40), "bed"))
    assert spares.moves == ((on(0), "sill"), (on(20), "bench"))
    assert (main.place, spares.place) == ("bed", "bench")


def test_each_part_moves_on_its_own_afterwards() -> None:
    to_frame: dict[str, Figure] = {"place": "frame", "part": "spares"}
    main, spares = told(SOWN, COUNTED, PLANTED, (45, Kind.MOVED, to_frame)).parts
    assert main.moves[-1] == (on(40), "bed")
    assert spares.moves[-1] == (on(45), "frame")


def test_a_part_nobody_placed_stood_nowhere_from_its_first_day() -> None:
    batch = told((0, Kind.SOWN, {"crop": "cosmos"}))
    assert places_of(batch, batch.main) == ((on(0), ""),)


@pytest.mark.parametrize(
    ("moves", "since", "stood"),
    [
        (((on(0), "sill"),), on(0), "sssss"),
        (((on(0), "sill"), (on(2), "bench")), on(0), "ssbbb"),
        (((on(0), "sill"), (on(2), "bench"), (on(2), "frame")), on(0), "ssfff"),
        (((on(3), "sill"), (on(4), "bench")), on(0), "ssssb"),
        (((on(0), "sill"), (on(2), "bench")), on(3), "bbbbb"),
    ],
    ids=["one place", "moved once", "twice in a day", "before the first", "begun later"],
)
def test_the_warmth_felt_is_that_of_the_place_stood_at(
    moves: Moves, since: date, stood: str
) -> None:
    def warmth_of(code: str) -> dict[int, Warmth]:
        numbers = range(on(-9).toordinal(), on(99).toordinal())
        return {number: Warmth(10.0, 5.0, 15.0, f"{code} {number}") for number in numbers}

    felt = [warm.basis for warm in islice(felt_since(moves, since, warmth_of), len(stood))]
    days = [since + timedelta(days=n) for n in range(len(stood))]
    assert [basis[0] for basis in felt] == list(stood)
    assert felt == [f"{place_on(moves, day)} {day.toordinal()}" for day in days]
