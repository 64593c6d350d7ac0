"""Where to harden, and that a day stepped back is no day of the course.

Trade rules: plants are hardened in a frame or in the open, never indoors; a day that was stepped
back is repeated (both common practice, no source).
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from benchround.core.crop.crop import Growing
from benchround.core.record import Figure, Kind
from benchround.core.season import Season
from benchround.core.task import Family, Task
from benchround.rounds.answers import drafts_for
from tests.folding import fold_season
from tests.rounds.small_season import CROPS, DAY, GLASS, LONDON, Story, outlook, place, sown

POTTED = replace(CROPS["tenderling"], growing=Growing(feed=False, pot_on=True))

SILL: dict[str, Figure] = {"name": "Kitchen windowsill", "kind": "windowsill", "order": 1}
HEATED: dict[str, Figure] = {"name": "Heated bench", "kind": "bench", "heated": True}
OPEN: dict[str, Figure] = {"name": "Yard bench", "kind": "bench", "order": 4}
SMALL: dict[str, Figure] = {**GLASS, "name": "Small frame", "length_m": 1.0, "order": 2}
COLD: dict[str, Figure] = {**GLASS, "name": "Cold frame", "order": 3}


class Told(Story):
    """A story of plants that are potted on before they are hardened."""

    def season(self) -> Season:
        return fold_season(self.records, {**CROPS, "tenderling": POTTED})


def on_the_sill(**places: dict[str, Figure]) -> Story:
    """Plants potted on long ago on a windowsill, and what other places there are."""
    told = Told()
    told.tell(date(2026, 1, 1), Kind.SITE, **LONDON)
    place(told, "sill", **SILL)
    for code, figures in places.items():
        place(told, code, **figures)
    for name in ("b1", "b2"):
        sown(told, name, "tenderling", DAY - timedelta(days=70), "sill")
        told.tell(DAY - timedelta(days=55), Kind.FIRST_UP, name, count=17)
        told.tell(DAY - timedelta(days=40), Kind.POTTED_ON, name)
    for ahead in range(-1, 6):
        outlook(told, DAY + timedelta(days=ahead), 12, 20)
    return told


def start(told: Story, name: str = "b1") -> Task:
    (task,) = (t for t in told.tasks(DAY, Family.HARDEN) if t.about == name)
    return task


def tick(told: Story, task: Task) -> Figure | None:
    """Tick with one key, every answer left as it stands; the place recorded."""
    answers = {ask.into: ask.default for ask in task.asks}
    (draft,) = drafts_for(task, answers, told.season())
    told.tell(DAY, draft.kind, draft.about, **draft.figures)
    return draft.figures.get("place")


def test_hardening_goes_into_the_frame_and_the_words_say_so() -> None:
    told = on_the_sill(cold=COLD)
    task = start(told)
    assert task.instruction.startswith("Start hardening 17, into Cold frame: day 1 of 18, half")
    assert tick(told, task) == "cold"
    assert tick(told, start(told, "b2")) == "cold"


def test_what_was_begun_on_the_windowsill_draws_nothing_else_there() -> None:
    told = on_the_sill(cold=COLD)
    told.tell(DAY, Kind.HARDENING_BEGUN, "b2")
    assert told.season().hardening_place == "cold"
    assert tick(told, start(told)) == "cold"


@pytest.mark.parametrize("other", [{}, {"heated": HEATED}, {"bed": {"name": "B", "kind": "bed"}}])
def test_without_a_place_for_it_the_words_say_to_stand_it_outside(
    other: dict[str, dict[str, Figure]],
) -> None:
    told = on_the_sill(**other)
    told.tell(DAY, Kind.HARDENING_BEGUN, "b2")
    task = start(told)
    assert task.instruction == (
        "Start hardening 17: day 1 of 18, outside by day in shade and shelter, in at night"
    )
    assert tick(told, task) is None


def test_a_bench_in_the_open_comes_after_a_frame() -> None:
    assert start(on_the_sill(yard=OPEN)).asks[0].default == "yard"
    assert start(on_the_sill(yard=OPEN, cold=COLD)).asks[0].default == "cold"


def test_of_two_frames_the_one_with_most_hardening_then_the_larger() -> None:
    told = on_the_sill(small=SMALL, cold=COLD)
    assert start(told).asks[0].default == "cold"
    told.tell(DAY, Kind.HARDENING_BEGUN, "b2", place="small")
    assert start(told).asks[0].default == "small"


def test_what_stands_in_a_frame_already_stays_there() -> None:
    told = on_the_sill(small=SMALL, cold=COLD)
    told.tell(DAY, Kind.MOVED, "b1", place="small")
    task = start(told)
    assert task.instruction.startswith("Start hardening 17: day 1 of 18")
    assert task.asks[0].default == "small"


def hardening(begun_ago: int, back: int, low: float = 12.0) -> list[Task]:
    """The tasks of a batch whose course of 18 days was stepped back on its last days."""
    told = on_the_sill(cold=COLD)
    told.tell(DAY - timedelta(days=begun_ago), Kind.HARDENING_BEGUN, "b1", place="cold")
    for ago in range(back, 0, -1):
        day = DAY - timedelta(days=ago)
        told.tell(day, Kind.HARDENING_STEP, "b1", step=1, back=True)
    outlook(told, DAY, low, 20)
    tasks = told.tasks(DAY, Family.HARDEN, Family.PLANT_OUT)
    return [task for task in tasks if task.about == "b1"]


def test_days_stepped_back_are_added_to_the_course_before_planting_out() -> None:
    (ready,) = hardening(begun_ago=18, back=0)
    assert ready.family is Family.PLANT_OUT
    (step,) = hardening(begun_ago=18, back=6)
    assert (step.family, step.instruction[:19]) == (Family.HARDEN, "Hardening day 13 of")
    (ready,) = hardening(begun_ago=24, back=6)
    assert ready.family is Family.PLANT_OUT
    assert "6 of them stepped back, 18 days wanted" in ready.why.figures[0]


@pytest.mark.parametrize("back", range(6))
@pytest.mark.parametrize("low", [3.0, 12.0])
def test_no_morning_asks_to_step_back_and_to_plant_out(back: int, low: float) -> None:
    """A course of 18 days with a shortest of 18: day 18 is both a step and early to plant."""
    for begun_ago in range(16, 20):
        said = [task.instruction for task in hardening(begun_ago + back, back, low)]
        assert not ("STEP BACK" in said[0] and len(said) > 1), said
