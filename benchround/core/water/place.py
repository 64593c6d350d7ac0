"""How much of the open-air loss a tray has where it stands."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType

from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import within
from benchround.core.water.balance import TRAY_KC


class Exposure(StrEnum):
    """What stands between a tray and the weather."""

    OPEN = "open air"
    SHADED = "open, shaded"
    CRACKED = "lid cracked"
    SHUT = "lid shut"
    UNDER_GLASS = "greenhouse bench"
    INDOORS = "indoors"


@dataclass(frozen=True, slots=True)
class ExposureLoss:
    """The loss in a place: a share of the open-air rate, or a rate of its own.

    Attributes:
        factor: share of ET0; zero where the weather outside hardly counts.
        fixed_mm: loss of its own, mm/d.
        source: where the figures come from.
        status: how far the source was read.
    """

    factor: float
    fixed_mm: float
    source: str
    status: str


EXPOSURE_LOSS: Mapping[Exposure, ExposureLoss] = MappingProxyType(
    {
        Exposure.OPEN: ExposureLoss(1.0, 0.0, "the reference rate itself", "derived"),
        Exposure.SHADED: ExposureLoss(
            0.79, 0.0, "whitening took 21.4 % off (Fernandez et al. 2010, abstract)", "read"
        ),
        Exposure.CRACKED: ExposureLoss(0.4, 0.0, "0.3-0.5 of open", "our proposal"),
        Exposure.SHUT: ExposureLoss(
            0.0, 0.05, "0-0.1 mm/d by the vapour that leaks out", "derived"
        ),
        Exposure.UNDER_GLASS: ExposureLoss(
            0.7, 0.0, "sun through one light, air hardly moving", "our proposal"
        ),
        Exposure.INDOORS: ExposureLoss(
            0.2, 0.6, "a room's dry air without wind, and some sun at a window", "our proposal"
        ),
    }
)
"""What each exposure loses. A shut lid loses no more than the weather would take in the open."""


def place_loss_mm(
    et0_mm: float,
    exposure: Exposure,
    kc: float = TRAY_KC,
    place_factor: float = 1.0,
    cover: float = 1.0,
) -> float:
    """Return the loss of a tray in its place, mm/d.

    Kc ET0 times the exposure's share, or the exposure's own rate; times what the grower's
    observations say of the place.

    Args:
        et0_mm: reference evapotranspiration in the open, 0 to 20 mm/d.
        exposure: what stands over the tray.
        kc: crop coefficient, 0 to 3.
        place_factor: what observations say of the place, 0.05 to 10.
        cover: the surface that dries in surfaces of the tray, 1 to 100; more where leaves reach
            beyond a pot.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    within("the day's evapotranspiration", et0_mm, 0.0, 20.0, "mm/d")
    within("the crop coefficient", kc, 0.0, 3.0, "")
    within("the place's own factor", place_factor, 0.05, 10.0, "")
    within("the ground the leaves cover", cover, 1.0, 100.0, "surfaces of the pot")
    return checked_loss_mm(et0_mm, exposure, kc, place_factor, cover)


def checked_loss_mm(
    et0_mm: float, exposure: Exposure, kc: float, place_factor: float, cover: float
) -> float:
    """The same of figures that were checked before, as a `WaterDay` checks its own.

    Under a shut lid the air that leaks out carries what is lost, however many leaves there are.
    """
    rule = EXPOSURE_LOSS[exposure]
    if exposure is Exposure.SHUT:
        return place_factor * kc * min(rule.fixed_mm, et0_mm)
    return place_factor * kc * cover * (rule.factor * et0_mm + rule.fixed_mm)
