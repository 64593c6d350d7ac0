"""The published and derived checks on frames and trays, one row each in the data file."""

import csv
from collections.abc import Callable
from pathlib import Path

import pytest

from benchround.core.containers import USUAL_CONTAINERS, round_cell_ml
from benchround.core.frame.balance import Sunlit, gain_through_c
from benchround.core.frame.build import (
    W_M2K_PER_BTU,
    FrameBuild,
    Glazing,
    LidPosition,
)
from benchround.core.frame.day import HourWeather, hour_gain_c
from benchround.core.frame.night import NightSky, night_gain_c
from benchround.core.water.balance import (
    CONTAINER_CAPACITY,
    EASILY_AVAILABLE,
    TRAY_KC,
    Compost,
    TrayWater,
    daily_loss_ml,
    days_left,
    vapour_lost_g_h,
)

ROWS = {
    row["id"]: row
    for row in csv.DictReader(
        (Path(__file__).parents[2] / "data" / "frame_water_checks.csv").open(encoding="utf-8")
    )
}
TRAY = TrayWater(128, 25.0, 0.177)
FRAME = FrameBuild(1.2, 0.6, 0.3, Glazing.GLASS, light_u_w_m2k=6.2)


def _propped_c(opening_m2: float) -> float:
    return gain_through_c(FRAME, Sunlit(600.0, 2.0), LidPosition.SECOND_NOTCH, opening_m2)


def _april_tunnel_c() -> float:
    tunnel = FrameBuild(10.0, 1.2, 0.5, Glazing.FILM)
    noon = HourWeather(15.0, 650.0, 2.0)
    return noon.air_c + hour_gain_c(tunnel, noon, LidPosition.SHUT, 0.5)


def _days() -> float:
    days = days_left(TRAY, daily_loss_ml(2.5, 1.0, 0.177))
    assert days is not None
    return days


def _film_nights() -> tuple[float, ...]:
    return tuple(night_gain_c(Glazing.FILM, sky) for sky in NightSky)


MEASURED: dict[str, Callable[[], tuple[float, ...]]] = {
    "W01": lambda: (daily_loss_ml(1.0, 1.0, 0.300 * 0.590),),
    "W02": lambda: (_days(),),
    "W04": lambda: (daily_loss_ml(2.5, 1.0, 0.177) / 128,),
    "W05": lambda: (TRAY_KC,),
    "W06": lambda: (TRAY_KC,),
    "W07": lambda: (USUAL_CONTAINERS["240-cell tray"].volume_l,),
    "W08": lambda: (round_cell_ml(30.0, 125.0),),
    "W08-cone": lambda: (round_cell_ml(30.0, 125.0, 0.0),),
    "W08-cylinder": lambda: (round_cell_ml(30.0, 125.0, 1.0),),
    "W09": lambda: (EASILY_AVAILABLE[Compost.PEAT_FREE],),
    "W10": lambda: (EASILY_AVAILABLE[Compost.BARK],),
    "W11": lambda: (EASILY_AVAILABLE[Compost.PEAT],),
    "W12": lambda: (vapour_lost_g_h(0.216, 2.0, 20.0, 10.0, 80.0),),
    "W13": lambda: (TRAY.capacity_mm,),
    "W14": lambda: (
        CONTAINER_CAPACITY - EASILY_AVAILABLE[Compost.PEAT] - 0.10,
        CONTAINER_CAPACITY - EASILY_AVAILABLE[Compost.PEAT] - 0.04,
    ),
    "G01": lambda: (gain_through_c(FRAME, Sunlit(600.0, 2.0), LidPosition.SHUT, 0.0),),
    "G02": lambda: (_propped_c(0.10),),
    "G03": lambda: (_april_tunnel_c(),),
    "G04": lambda: (sum(_film_nights()) / 2.0,),
    "G05": lambda: tuple(night_gain_c(g, sky) for g in Glazing for sky in NightSky),
    "G06": _film_nights,
    "G07-single-low": lambda: (1.0 * W_M2K_PER_BTU,),
    "G07-single-high": lambda: (1.2 * W_M2K_PER_BTU,),
    "G07-double-low": lambda: (0.6 * W_M2K_PER_BTU,),
    "G07-double-high": lambda: (0.7 * W_M2K_PER_BTU,),
    "G08": lambda: (_propped_c(0.20),),
}


@pytest.mark.parametrize(
    "check_id", [pytest.param(i, id=f"{i} {r['source']} [{r['status']}]") for i, r in ROWS.items()]
)
def test_check_lies_within_its_published_band(check_id: str) -> None:
    row = ROWS[check_id]
    for value in MEASURED[check_id]():
        assert float(row["low"]) - 1e-9 <= value <= float(row["high"]) + 1e-9, row["quantity"]


def test_every_row_is_measured_and_every_measure_has_a_row() -> None:
    assert set(MEASURED) == set(ROWS)


@pytest.mark.parametrize(
    ("opening_m2", "wind_ms", "gain"),
    [
        pytest.param(0.02, 2.0, 14.0, id="2 cm crack: same balance worked elsewhere"),
        pytest.param(0.10, 0.5, 10.8, id="5 cm, 0.5 m/s: same balance worked elsewhere"),
        pytest.param(0.10, 5.0, 2.8, id="5 cm, 5 m/s: same balance worked elsewhere"),
    ],
)
def test_propped_lid_against_the_worked_example(
    opening_m2: float, wind_ms: float, gain: float
) -> None:
    sun = Sunlit(600.0, wind_ms)
    assert gain_through_c(FRAME, sun, LidPosition.CRACK, opening_m2) == pytest.approx(gain, abs=0.1)


@pytest.mark.parametrize(("wm2", "gain"), [(100, 3.7), (200, 7.4), (400, 14.8), (800, 29.6)])
def test_shut_frame_gains_in_proportion(wm2: float, gain: float) -> None:
    """Worked elsewhere from the same balance."""
    sun = Sunlit(wm2, 2.0)
    assert gain_through_c(FRAME, sun, LidPosition.SHUT, 0.0) == pytest.approx(gain, abs=0.1)
