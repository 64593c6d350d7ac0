"""When seed sulks: too hot or too cold where it stands."""

from __future__ import annotations

from datetime import date

from benchround.core.frozen import dataclass
from benchround.core.seed.thermal_model import ThermalModel
from benchround.core.sky.warmth import Warmth
from benchround.core.units import degrees

COLD_DAYS = 5
"""So many days on end near its base temperature stall seed (our proposal)."""
COLD_MARGIN_C = 1.0


@dataclass(frozen=True, slots=True)
class Stall:
    """Why seed may be sulking: too hot or too cold, where and when."""

    cause: str  # "heat" or "cold"
    day: date
    temp_c: float
    limit_c: float

    def __str__(self) -> str:
        side = "above" if self.cause == "heat" else "below"
        return (
            f"stalled by {self.cause}: {degrees(self.temp_c)} C on {self.day.day} {self.day:%b}, "
            f"{side} its {degrees(self.limit_c)} C"
        )


def too_hot(model: ThermalModel, warm: Warmth) -> bool:
    """Whether the day went above the ceiling, where nothing comes up and seed may fall dormant."""
    return warm.max_c > model.ceiling_c


def too_cold(model: ThermalModel, warm: Warmth) -> bool:
    """Whether the day brought hardly any heat."""
    return warm.mean_c <= cold_up_to_c(model)


def cold_up_to_c(model: ThermalModel) -> float:
    """The mean of a day that brings hardly any heat, at most."""
    return model.base_c + COLD_MARGIN_C
