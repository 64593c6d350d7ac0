"""The sample season's morning against the round a grower wrote down for it.

The expectations are the invented scenario's own table (an acceptance list made by hand before the
program was written), not output of this program.
"""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from benchround.core.numbers.shares import wilson
from benchround.core.season import Season
from benchround.core.task import Family, Harm, Round, Slot, Standing, Task
from benchround.rounds.build import build_round
from tests.sample.story import DAY_0

F, S = Family, Standing


@pytest.fixture(scope="module")
def morning(sample: Season) -> Round:
    return build_round(sample, DAY_0)


def later(sample: Season, days: int) -> Round:
    return build_round(sample, DAY_0 + timedelta(days=days))


def find(a_round: Round, family: Family, about: str, part: str = "") -> Task:
    found = [t for t in a_round.tasks if (t.family, t.about, t.part) == (family, about, part)]
    assert found, f"no task '{family}' for {about}"
    return found[0]


EXPECTED = [
    # family, batch or place, standing, overdue days
    (F.THERMOMETER, "", S.DUE, 0),
    (F.LIDS, "frame-a", S.DUE, 0),
    (F.LIDS, "frame-b", S.DUE, 0),
    (F.LOOK, "b06", S.DUE, 0),
    (F.LOOK, "b13", S.EARLY, 0),
    (F.LOOK, "b14", S.LATE, 0),
    (F.UNCOVER, "b06", S.OVERDUE, 4),
    (F.WATER, "b13", S.DUE, 0),
    (F.WATER, "b02", S.DUE, 0),
    (F.WATER, "b25", S.DUE, 0),
    (F.WATER, "b20", S.DUE, 0),
    (F.PLANT_OUT, "b17", S.OVERDUE, 8),
    (F.PRICK_OUT, "b25", S.DUE, 0),
    (F.THIN, "b20", S.DUE, 0),
    (F.THIN, "b23", S.OVERDUE, 3),
    (F.PINCH, "b27", S.OVERDUE, 1),
    (F.SOW, "b09", S.DUE, 0),
    (F.SOW, "b24", S.DUE, 0),
    (F.CHILL, "b24", S.DUE, 0),
    (F.RELABEL, "b32", S.DUE, 0),
    (F.LOCATE, "b33", S.DUE, 0),
    (F.DEADHEAD, "b07", S.DUE, 0),
    (F.DEADHEAD, "b29", S.OVERDUE, 1),
    (F.SUPPORT, "b22", S.DUE, 0),
    (F.SAVE_SEED, "b12", S.DUE, 0),
    (F.CLEAR, "b12", S.DUE, 0),
    (F.COUNT, "b02", S.DUE, 0),
    (F.TURN, "b02", S.DUE, 0),
    (F.FEED, "b16", S.DUE, 0),
    (F.FEED, "b28", S.OVERDUE, 1),
    (F.MEASURE, "b16", S.DUE, 0),
    (F.HARDEN, "b01", S.DUE, 0),
    (F.HARDEN, "b04", S.DUE, 0),
    (F.HARDEN, "b18", S.DUE, 0),
    (F.HARDEN, "b19", S.DUE, 0),
    (F.HARDEN, "b21", S.DUE, 0),
    (F.PLANT_OUT, "b05", S.HELD, 0),
    (F.PLANT_OUT, "b21", S.HELD, 0),
    (F.PLANT_OUT, "b15", S.DUE, 0),
    (F.RESOW, "b14", S.DUE, 0),
    (F.SOAK, "b26", S.DUE, 0),
    (F.PESTS, "b19", S.DUE, 0),
    (F.PESTS, "b21", S.DUE, 0),
]


@pytest.mark.parametrize(
    ("family", "about", "standing", "overdue"),
    EXPECTED,
    ids=[f"{family}-{about or 'site'}" for family, about, _, _ in EXPECTED],
)
def test_the_morning_holds(
    morning: Round, family: Family, about: str, standing: Standing, overdue: int
) -> None:
    task = find(morning, family, about)
    assert (task.standing, task.overdue_days) == (standing, overdue)
    assert task.why.rule
    assert task.why.source


def test_the_overdue_list_is_the_growers_own(morning: Round) -> None:
    days = {(task.about, task.overdue_days) for task in morning.overdue}
    assert days == {("b17", 8), ("b06", 4), ("b23", 3), ("b27", 1), ("b28", 1), ("b29", 1)}
    assert [task.about for task in morning.overdue][:3] == ["b17", "b06", "b23"]


def test_held_is_not_overdue_and_says_when_to_look_again(morning: Round) -> None:
    assert {task.about for task in morning.held} == {"b05", "b21"}
    hold = find(morning, F.PLANT_OUT, "b05").hold
    assert hold is not None
    assert "2 C on Sun 31 May" in hold.because
    assert hold.look_again == DAY_0 + timedelta(days=5)


@pytest.mark.parametrize("batch", ["b08", "b10", "b11", "b30", "b31", "b03"])
def test_quiet_batches_ask_nothing_today(morning: Round, batch: str) -> None:
    assert [task for task in morning.today if task.about == batch] == []


def test_only_the_lettuce_is_late(morning: Round) -> None:
    assert {t.about for t in morning.tasks if t.standing is S.LATE} == {"b14"}
    late = find(morning, F.LOOK, "b14")
    assert "stalled by heat" in late.instruction
    assert any("expected from Mon 25 May" in figure for figure in late.why.figures)


def test_evening_and_afternoon_work_stands_in_its_slot(morning: Round) -> None:
    for family, about in ((F.SOAK, "b26"), (F.PESTS, "b19"), (F.RESOW, "b14")):
        assert find(morning, family, about).slot is Slot.EVENING
    assert find(morning, F.PLANT_OUT, "b15").slot is Slot.AFTERNOON
    assert find(morning, F.PLANT_OUT, "b17").slot < Slot.AFTERNOON  # roots circling: no waiting


NUMBERS = [
    (F.PRICK_OUT, "b25", "22 into 40 cells"),
    (F.SOW, "b09", "95 seeds"),
    (F.RESOW, "b14", "20 cells"),
    (F.SOAK, "b26", "16 seeds"),
    (F.PLANT_OUT, "b15", "36 plants"),
    (F.THIN, "b23", "15 cm"),
    (F.PINCH, "b27", "third pair"),
    (F.HARDEN, "b01", "day 12 of 18: fully open by day, shut at night"),
    (F.HARDEN, "b04", "day 1 of 18"),
    (F.MEASURE, "b16", "8 mm"),
]


@pytest.mark.parametrize(
    ("family", "about", "words"), NUMBERS, ids=[f"{f}-{b}" for f, b, _ in NUMBERS]
)
def test_instructions_carry_their_numbers(
    morning: Round, family: Family, about: str, words: str
) -> None:
    assert words in find(morning, family, about).instruction


COMING = [
    # days ahead, family, batch, standing
    (1, F.SOW, "b26", S.DUE),
    (1, F.PLANT_OUT, "b18", S.DUE),
    (1, F.PLANT_OUT, "b19", S.DUE),
    (2, F.SPARES, "b03", S.DUE),
    (3, F.THIN, "b06", S.DUE),
    (3, F.POT_ON, "b28", S.DUE),
    (4, F.LOOK, "b13", S.DUE),
    (4, F.PLANT_OUT, "b05", S.HELD),
    (5, F.PLANT_OUT, "b05", S.DUE),
    (6, F.PLANT_OUT, "b21", S.DUE),
    (8, F.DEADHEAD, "b10", S.DUE),
    (10, F.RESOW, "b13", S.DUE),
    (25, F.SAVE_SEED, "b11", S.DUE),
    (27, F.BULBS, "b30", S.DUE),
]


@pytest.mark.parametrize(
    ("days", "family", "about", "standing"), COMING, ids=[f"+{d}-{f}-{b}" for d, f, b, _ in COMING]
)
def test_what_is_due_later_comes_on_its_day(
    sample: Season, days: int, family: Family, about: str, standing: Standing
) -> None:
    part = "spares" if family is F.SPARES else ""
    assert find(later(sample, days), family, about, part).standing is standing
    if standing is S.DUE:
        before = later(sample, days - 1)
        early = [t for t in before.today if (t.family, t.about, t.part) == (family, about, part)]
        assert early == []


def test_the_cold_night_steps_hardening_back(sample: Season) -> None:
    step = find(later(sample, 4), F.HARDEN, "b01")
    assert "STEP BACK" in step.instruction
    assert "shut tonight" in step.instruction


def test_cautions_stand_where_the_work_is(morning: Round) -> None:
    assert find(morning, F.PRICK_OUT, "b25").cautions  # delphinium: poisonous, and compost
    assert find(morning, F.SUPPORT, "b22").cautions  # ammi sap in sun, eyes on sticks
    assert find(morning, F.LIDS, "frame-a").cautions  # glass


def test_walking_order_and_worst_first_within_a_place(sample: Season, morning: Round) -> None:
    order = {place.code: place.order for place in sample.places}
    keys = [(t.slot, order.get(t.place, 0), t.harm, -t.overdue_days) for t in morning.today]
    assert keys == sorted(keys)
    assert {t.harm for t in morning.today} >= {Harm.SPOILS_THIS_WEEK, Harm.GETS_LATE}


RANGES = [
    ("cosmos", 35, 40, 74, 95),
    ("delphinium", 22, 60, 26, 49),
    ("leek", 171, 220, 72, 83),
    ("marigold", 71, 80, 80, 94),
]


@pytest.mark.parametrize(("crop", "up", "sown", "low", "high"), RANGES, ids=[r[0] for r in RANGES])
def test_germination_ranges(crop: str, up: int, sown: int, low: int, high: int) -> None:
    """Wilson 95 % ranges as printed in the scenario."""
    bottom, top = wilson(up, sown)
    assert (round(bottom * 100), round(top * 100)) == (low, high), crop


def test_every_day_of_two_years_makes_a_round(sample: Season) -> None:
    for ahead in range(-400, 400, 9):
        day: date = DAY_0 + timedelta(days=ahead)
        assert build_round(sample, day).day == day


def test_one_day_is_one_day(sample: Season) -> None:
    """Yesterday's round held plants back that had been ready for a day."""
    held = next(task for task in later(sample, -1).held if task.about == "b05")
    assert held.instruction.startswith("Held back, 1 day ready, ")
