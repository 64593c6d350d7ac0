"""Water in a tray: what it holds that plants can take, what a day takes, how many days are left.

The water counted is the easily available water: what compost gives up between 10 and 50 hPa of
suction (de Boodt & Verdonck 1972, Acta Horticulturae 26:37, from memory). Below it plants wilt.
All of it is only 4 to 12 mm over the tray, so drying runs at the full rate the weather asks for
until it is gone, and no slower second stage is modelled.
"""

from enum import StrEnum

from benchround.core.containers import Container
from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import within
from benchround.core.sky.vapour import saturation_kpa

TRAY_KC = 1.0
"""Crop coefficient of a tray kept wet, at every stage: bare wet compost loses what a sward does.

Our proposal between open water, 1.05 (read), and small vegetables, 1.00-1.05 in mid season (FAO-56
Table 12 through a published data set, read).
"""
VAPOUR_G_K_PER_PA_M3 = 2.1668
"""Density of vapour is 2.1668 e / T g/m3, e in Pa and T in K (gas law for water)."""
FREEZING_K = 273.15


CONTAINER_CAPACITY = 0.60
"""Water a drained container holds, of its volume; 0.45-0.65 (Bilderback, Yeager: from memory)."""
DRY_G_PER_ML = 0.10
"""Weight of dry compost; common practice, no source."""


class Compost(StrEnum):
    """Kinds of compost by the water they give up easily."""

    PEAT = "peat"
    PEAT_FREE = "peat-free"
    BARK = "bark-rich"


EASILY_AVAILABLE = {Compost.PEAT: 0.25, Compost.PEAT_FREE: 0.20, Compost.BARK: 0.12}
"""Easily available share of the volume. Our proposal within what was read: ideal 0.20-0.30 (de
Boodt & Verdonck 1972, from memory), coir under 0.01-0.36 (Abad et al. 2005, HortScience), bark and
sawdust 0.10-0.12 (Prasad 1979, Scientia Horticulturae 10:317)."""


class RootStage(StrEnum):
    """How far the roots reach, which sets how dry a tray may get."""

    BARE_SEED = "seed on the surface"
    COVERED_SEED = "seed under a cover"
    SEEDLING = "seedling"
    ROOTED = "rooted"
    FULL = "roots throughout"


ALLOWED_SHARE = {
    RootStage.BARE_SEED: 0.2,
    RootStage.COVERED_SEED: 0.35,
    RootStage.SEEDLING: 0.5,
    RootStage.ROOTED: 0.8,
    RootStage.FULL: 1.0,
}
"""Share of the easily available water that may go before watering; our proposal. Seed on the
surface dies of the top few millimetres drying, roots at the base can use the whole cell."""


@dataclass(frozen=True, slots=True)
class TrayWater:
    """The water side of one tray or pot.

    Attributes:
        cells: how many cells, 1 to 1000.
        cell_ml: compost in one cell, 0.5 to 50,000 ml.
        area_m2: surface that dries, 0.0004 to 4 m2.
        easily_available_share: easily available share of the volume, 0.01 to 0.6.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """

    cells: int
    cell_ml: float
    area_m2: float
    easily_available_share: float = EASILY_AVAILABLE[Compost.PEAT]

    def __post_init__(self) -> None:
        within("the number of cells", self.cells, 1, 1000, "")
        within("the compost in a cell", self.cell_ml, 0.5, 50_000.0, "ml")
        within("the area of the tray", self.area_m2, 0.0004, 4.0, "m2")
        within("the easily available share of water", self.easily_available_share, 0.01, 0.6, "")

    @property
    def capacity_ml(self) -> float:
        """Easily available water of the full tray, ml."""
        return self.cells * self.cell_ml * self.easily_available_share

    @property
    def capacity_mm(self) -> float:
        """The same as a depth over the tray, mm."""
        return mm_from_ml(self.capacity_ml, self.area_m2)

    def allowed_ml(self, allowed_share: float) -> float:
        """Return the water that may go before watering, ml; also the weight lost by then, g."""
        return self.capacity_ml * within(
            "the share of water allowed to go", allowed_share, 0.01, 1.0, ""
        )


def weight_share_to_water_at(tray: TrayWater, allowed_share: float) -> float:
    """Return the share of its full weight at which a tray wants water, container left out.

    Watering by the weight a container has fallen to against its weight when full: Dumroese,
    Montville & Pinto 2015, Native Plants Journal 16:67 (read). The weights are our estimate from
    0.60 of the volume as water and 0.10 g/ml of dry compost; two weighings of a tray are better.

    Args:
        tray: the tray.
        allowed_share: share of the easily available water that may go, 0.01 to 1.
    """
    full_g = tray.cells * tray.cell_ml * (CONTAINER_CAPACITY + DRY_G_PER_ML)
    return 1.0 - tray.allowed_ml(allowed_share) / full_g


def tray_water(container: Container, compost: Compost = Compost.PEAT) -> TrayWater:
    """Return the water side of a container filled with a kind of compost."""
    return TrayWater(
        container.cells, container.cell_ml, container.area_m2, EASILY_AVAILABLE[compost]
    )


def ml_from_mm(depth_mm: float, area_m2: float) -> float:
    """Return a depth of water over an area as ml: 1 mm on 1 m2 is 1 litre."""
    return depth_mm * area_m2 * 1000.0


def mm_from_ml(volume_ml: float, area_m2: float) -> float:
    """Return a volume of water as a depth over an area, mm."""
    return volume_ml / area_m2 / 1000.0


def daily_loss_ml(et0_mm: float, kc: float, area_m2: float) -> float:
    """Return the water an open tray loses in a day, ml: Kc ET0 A.

    Allen et al. 1998, FAO-56, the single crop coefficient, over an area.

    Args:
        et0_mm: reference evapotranspiration ET0, 0 to 20 mm/d.
        kc: crop coefficient Kc, 0 to 3.
        area_m2: surface that dries A, 0.0004 to 4 m2.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    within("the day's evapotranspiration", et0_mm, 0.0, 20.0, "mm/d")
    within("the crop coefficient", kc, 0.0, 3.0, "")
    within("the area of the tray", area_m2, 0.0004, 4.0, "m2")
    return ml_from_mm(kc * et0_mm, area_m2)


def days_left(
    tray: TrayWater, loss_ml_a_day: float, allowed_share: float = 1.0, used_ml: float = 0.0
) -> float | None:
    """Return the days until the allowed water is gone: (p EAW - used) / loss.

    Args:
        tray: the tray.
        loss_ml_a_day: loss a day, ml, not below zero.
        allowed_share: share p of the easily available water that may go, 0.01 to 1.
        used_ml: what has gone since it was full, ml, not below zero.

    Returns:
        Days, zero when it is due already; None when nothing is lost and no day can be named.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    if loss_ml_a_day < 0.0 or used_ml < 0.0:
        raise OutOfRangeError(
            f"a tray cannot lose {loss_ml_a_day:g} ml a day with {used_ml:g} ml gone: neither may"
            " be below zero; rain and watering are counted on their own"
        )
    left_ml = tray.allowed_ml(allowed_share) - used_ml
    if left_ml <= 0.0:
        return 0.0
    return None if loss_ml_a_day == 0.0 else left_ml / loss_ml_a_day


def vapour_g_m3(vapour_kpa: float, temp_c: float) -> float:
    """Return the density of water vapour in air, g/m3: 2.1668 e / T (gas law for water).

    Args:
        vapour_kpa: vapour pressure e, 0 to 40 kPa.
        temp_c: air temperature, -60 to 75 degC.
    """
    within("the vapour pressure", vapour_kpa, 0.0, 40.0, "kPa")
    within("the air temperature", temp_c, -60.0, 75.0, "degC")
    return VAPOUR_G_K_PER_PA_M3 * vapour_kpa * 1000.0 / (temp_c + FREEZING_K)


def vapour_lost_g_h(
    volume_m3: float,
    air_changes_h: float,
    inside_c: float,
    outside_c: float,
    outside_humidity_pct: float,
    inside_humidity_pct: float = 100.0,
) -> float:
    """Return the water a shut frame loses with the air that leaks out, g/h; never below zero.

    A mass balance: ach V (rho_in - rho_out), rho from `vapour_g_m3`.

    Args:
        volume_m3: air in the frame V, 0 to 200 m3.
        air_changes_h: air changes an hour, 0 to 60.
        inside_c: inside temperature, -60 to 75 degC.
        outside_c: outside temperature, the same range.
        outside_humidity_pct: relative humidity outside, 0 to 100 %.
        inside_humidity_pct: relative humidity inside, 0 to 100 %; wet trays saturate it.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    within("the volume of the frame", volume_m3, 0.0, 200.0, "m3")
    within("the air changes", air_changes_h, 0.0, 60.0, "/h")
    inside = vapour_g_m3(_vapour_kpa(inside_c, inside_humidity_pct), inside_c)
    outside = vapour_g_m3(_vapour_kpa(outside_c, outside_humidity_pct), outside_c)
    return max(0.0, air_changes_h * volume_m3 * (inside - outside))


def _vapour_kpa(temp_c: float, humidity_pct: float) -> float:
    within("the relative humidity", humidity_pct, 0.0, 100.0, "%")
    return saturation_kpa(temp_c) * humidity_pct / 100.0
