from datetime import date, timedelta

import pytest

from benchround.core.errors import InputError, OutOfRangeError
from benchround.core.planning.again import sow_in_turn
from benchround.core.planning.succession import (
    SOW_AGAIN_BASE_C,
    SOW_AGAIN_HEAT_C,
    SOW_AGAIN_HEIGHT_MM,
    days_at_temperature,
    days_back,
    days_to_collect,
    heat_between_sowings,
    learned_base,
    next_sowing,
    sow_by_heat,
    start_for,
    two_point_base,
)
from benchround.core.seed.emergence import days_at
from benchround.core.seed.thermal_model import ThermalModel
from benchround.core.units import celsius
from tests.core.published import Figure, Seen, figure_cases

OTTOSSON = "Ottosson, heat units in sowing programmes of vining peas, ISHS 27_34 (rule)"
UCONN = "UConn IPM, Scheduling sweet corn plantings"
MSU = "HortScience 30(4):861B (days); base own"
JOLY = "Joly, Forcella, Peterson & Eklund 2013, Industrial Crops and Products 42:133-136"
CALENDULA = ThermalModel(5.5, 25.0, 35.0, 89.0, 0.25)
PLANTING = date(2027, 5, 15)


def number(value: float | None) -> float:
    assert value is not None
    return value


FIGURES = (
    Figure("D01 heat", OTTOSSON, Seen.READ, 95.2, 1e-9, lambda: heat_between_sowings(7, 18, 4.4)),
    Figure("D01 days", OTTOSSON, Seen.READ, 21, 0, lambda: number(days_to_collect(95.2, 9, 4.4))),
    Figure("D02 days", OTTOSSON, Seen.READ, 12, 0, lambda: number(days_to_collect(95.2, 13, 4.4))),
    Figure("D03 heat", UCONN, Seen.READ, 55.5556, 0.001, lambda: SOW_AGAIN_HEAT_C),
    Figure("D03 base", UCONN, Seen.READ, 10.0, 0.001, lambda: celsius(50.0)),
    Figure("D03 base constant", UCONN, Seen.READ, 10.0, 0.001, lambda: SOW_AGAIN_BASE_C),
    Figure("D04 low", "Ward Upham, Kansas State University", Seen.READ, 12.7, 1e-9,
           lambda: SOW_AGAIN_HEIGHT_MM[0]),
    Figure("D04 high", "Ward Upham, Kansas State University", Seen.READ, 25.4, 1e-9,
           lambda: SOW_AGAIN_HEIGHT_MM[1]),
    Figure("D11 Rudbeckia 18 C", MSU, Seen.READ, 76.8, 0.05,
           lambda: number(days_at_temperature(1152, 18, 3))),
    Figure("D11 Rudbeckia 21 C", MSU, Seen.READ, 64.0, 0.05,
           lambda: number(days_at_temperature(1152, 21, 3))),
    Figure("D11 Coreopsis 18 C", MSU, Seen.READ, 47.3, 0.05,
           lambda: number(days_at_temperature(438.3, 18, 8.739))),
    Figure("D11 Coreopsis 21 C", MSU, Seen.READ, 35.7, 0.05,
           lambda: number(days_at_temperature(438.3, 21, 8.739))),
    Figure("D14", JOLY, Seen.READ, 7.0, 0.05, lambda: number(days_at_temperature(89, 18.2, 5.5))),
    Figure("D14 by the model", JOLY, Seen.READ, 7.0, 0.05,
           lambda: number(days_at(CALENDULA, 18.2))),
)  # fmt: skip


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_heat_and_days(figure: Figure) -> None:
    figure.assert_reproduced()


@pytest.mark.parametrize(
    ("cold_days", "warm_days", "base_c", "heat"),
    [
        pytest.param(70, 24, 8.739, 438.3, id=f"D10 Coreopsis: {MSU}"),
        pytest.param(64, 39, -3.72, 1198.1, id=f"D10 Gaillardia: {MSU}"),
        pytest.param(96, 48, 3.0, 1152.0, id=f"D10 Rudbeckia: {MSU}"),
        pytest.param(54, 36, -9.0, 1296.0, id=f"D10 Chrysanthemum x superbum: {MSU}"),
    ],
)
def test_two_point_base(cold_days: float, warm_days: float, base_c: float, heat: float) -> None:
    found = two_point_base(cold_days, 15, warm_days, 27)
    assert found.base_c == pytest.approx(base_c, abs=0.05)
    assert found.heat == pytest.approx(heat, abs=0.05)


def test_d10_trap_no_base_is_learned_from_two_temperatures_or_above_the_optimum() -> None:
    # two of the four published pairs give a base below zero
    with pytest.raises(InputError, match="2 temperature"):
        learned_base([(15, 64), (27, 39)], optimum_c=30)
    with pytest.raises(InputError, match=r"optimum 21\.7 C"):
        learned_base([(15, 64), (18, 50), (27, 39)], optimum_c=21.7)
    with pytest.raises(InputError, match="do not fall"):
        learned_base([(15, 30), (18, 40), (20, 50)], optimum_c=21.7)


def test_a_straight_line_is_found_again() -> None:
    found = learned_base([(t, 80 / (t - 2.5)) for t in (7.5, 12.5, 17.5, 22.5)], optimum_c=25)
    # onion 80 C d above 2.5 C: Brewster, from Harrington 1962 (read)
    assert (found.base_c, found.heat) == pytest.approx((2.5, 80.0))


def test_d12_start_for_a_wanted_day() -> None:
    # rule: UMass Amherst and SDSU Extension (read); date own
    assert start_for(date(2027, 6, 20), 76.8) == date(2027, 4, 4)
    assert start_for(date(2027, 6, 20), 77.0) == date(2027, 4, 4)


NORMALS = [8, 9, 10, 11, 12, 13, 14, 15, 15, 16, 16, 17, 17, 18, 18]


def test_d15_counting_normals_backwards() -> None:
    # own worked example on the calendula figures of Joly et al. 2013
    assert days_back(NORMALS, 89, 5.5) == 9
    assert sow_by_heat(date(2027, 4, 20), NORMALS, 89, 5.5) == date(2027, 4, 12)
    assert days_back(NORMALS, 500, 5.5) is None
    assert sow_by_heat(date(2027, 4, 20), NORMALS, 500, 5.5) is None


def test_next_sowing_waits_for_heat_not_days() -> None:
    start = date(2027, 4, 1)
    cool = [(start + timedelta(days=i), 9.0) for i in range(40)]
    warm = [(start + timedelta(days=i), 13.0) for i in range(40)]
    # D01, D02: 21 and 12 days
    assert next_sowing(start, 95.2, 4.4, cool) == start + timedelta(days=21)
    assert next_sowing(start, 95.2, 4.4, warm) == start + timedelta(days=12)
    assert next_sowing(start, 95.2, 4.4, cool[:10]) is None


def test_d01_sowings_in_turn_are_each_counted_from_the_first() -> None:
    """Harvests 7 days apart at 18 C, sowings at 9 C, base 4.4 C: 95.2 C d and 21 days each.

    The second is 190.4 C d on, 41.4 days of 4.6 C d: 42 days.
    """
    first, harvest = date(2027, 4, 1), date(2027, 7, 1)
    turns = sow_in_turn(first, harvest, 7, 3, 4.4, lambda day: 18.0 if day > harvest else 9.0)
    assert [turn.heat for turn in turns] == pytest.approx([95.2, 190.4])
    assert [turn.next_sowing for turn in turns] == [
        first + timedelta(days=21),
        first + timedelta(days=42),
    ]


def test_below_the_base_there_is_no_answer() -> None:
    assert days_to_collect(95.2, 4.4, 4.4) is None
    assert days_at_temperature(89, 5.0, 5.5) is None


@pytest.mark.parametrize(
    "call",
    [
        lambda: two_point_base(24, 15, 70, 27),
        lambda: two_point_base(24, 15, 24, 27),
        lambda: two_point_base(0, 15, 24, 27),
        lambda: start_for(PLANTING, -1),
        lambda: days_to_collect(-5, 10, 4),
        lambda: days_back(NORMALS, 0, 5.5),
        lambda: heat_between_sowings(-7, 18, 4.4),
    ],
)
def test_impossible_plans_are_refused(call: object) -> None:
    assert callable(call)
    with pytest.raises(OutOfRangeError):
        call()
