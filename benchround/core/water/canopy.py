"""How far a plant's leaves reach beyond its pot, and so how much more than the pot's surface dries.

Theory. A crop loses water by the ground its leaves cover (FAO-56, ch. 9: the crop coefficient goes
with the share of the ground that is covered). In a tray of cells the leaves of neighbours close
over the tray and reach no further, so the tray's own surface counts. A pot stands free and is
given room as its leaves touch: its plant covers more ground than the pot, and what the weather
takes from each square metre it takes from all of that.

The spread grows evenly from first up to the age at which the crop is planted out; by then a plant
is so many times as wide as its pot, or as wide as it is planted apart where that is less.
"""

from __future__ import annotations

from datetime import date, timedelta
from math import pi, sqrt

from benchround.core.batch.batch import Batch, Part
from benchround.core.crop.crop import Crop
from benchround.core.frozen import dataclass
from benchround.core.record import Kind
from benchround.core.water.balance import TrayWater

SEEDLING_CM = 3.0
"""Spread of a seedling as it comes up; our proposal."""
GROWN_POTS = 2.5
"""Pot widths a young plant is across when it is fit to plant out (common practice, no source)."""
GROWN_AFTER_DAYS = 70
"""From sowing to planting out where the crop does not say; our proposal."""
UP = (Kind.FIRST_UP, Kind.SEED_LEAVES, Kind.TRUE_LEAVES, Kind.PRICKED_OUT, Kind.POTTED_ON)
STEPS_A_POT = 10
"""A cover is told to a tenth of the pot's surface: plants of about one size share their figures."""


@dataclass(frozen=True, slots=True)
class Canopy:
    """The leaves over one pot as they grow.

    Attributes:
        up: the day its plants came up; None while nothing is up, or in a tray.
        grown: the day they are as wide as they get there.
        grown_cm: how wide that is.
        pot_m2: surface of the pot.
    """

    up: date | None = None
    grown: date | None = None
    grown_cm: float = 0.0
    pot_m2: float = 1.0

    def spread_cm(self, day: date) -> float:
        """How wide a plant is on a day; zero before it is up."""
        if self.up is None or self.grown is None or day < self.up:
            return 0.0
        share = min(1.0, (day - self.up).days / max(1, (self.grown - self.up).days))
        return SEEDLING_CM + (self.grown_cm - SEEDLING_CM) * share

    def cover(self, day: date) -> float:
        """The surface that dries, pot or leaves, in surfaces of the pot; 1 or more."""
        if self.up is None:
            return 1.0
        leaves_m2 = pi / 4.0 * (self.spread_cm(day) / 100.0) ** 2
        return max(1.0, round(leaves_m2 / self.pot_m2 * STEPS_A_POT) / STEPS_A_POT)


NO_LEAVES = Canopy()
"""Nothing reaches beyond its tray."""


def canopy_of(batch: Batch, part: Part, crop: Crop, pot: TrayWater | None) -> Canopy:
    """The leaves of a part over its pot; `pot` is None where it stands in a tray."""
    if pot is None:
        return NO_LEAVES
    days = [day for kind in UP if (day := part.first_day(kind)) is not None]
    if not days:
        return NO_LEAVES
    up = min(days)
    after = crop.planting.from_sowing_days
    grown = batch.begun + timedelta(days=after[1] if after is not None else GROWN_AFTER_DAYS)
    pot_cm = sqrt(pot.area_m2) * 100.0
    grown_cm = max(pot_cm, min(GROWN_POTS * pot_cm, float(crop.planting.spacing_cm)))
    return Canopy(up, max(grown, up + timedelta(days=1)), grown_cm, pot.area_m2)
