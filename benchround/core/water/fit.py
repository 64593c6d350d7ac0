"""Learning how fast a place dries: from two weighings, or from looking at the tray.

Two weighings settle it: k = loss / (ET0 A). A look is a weaker sign, used as a bounded step: a
tray still wet when its allowed water should be gone loses less than thought, one already dry
loses more. The steps shrink as looks add up. All figures of the looks are our proposal.
"""

from __future__ import annotations

from dataclasses import replace
from enum import StrEnum

from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import within
from benchround.core.water.balance import ml_from_mm

LEAST_FACTOR, MOST_FACTOR = 0.2, 4.0
"""A place never dries slower or faster than this against the model."""
LARGEST_STEP = 1.4
"""One look changes the factor by this much at most, up or down."""
WET_BELOW = 0.8
"""A tray called wet has used at most this share of its allowed water."""
DRY_FROM = 1.0
"""A tray called dry has used all of its allowed water."""
LOOKS_TO_HALVE = 4.0
"""After this many looks a new one counts half."""
LEAST_WEIGHT = 0.2
"""A new look always counts this much, so that a place may change with the season."""


class Moisture(StrEnum):
    """What the grower says of a tray."""

    STILL_WET = "still wet"
    ALREADY_DRY = "already dry"


@dataclass(frozen=True, slots=True)
class PlaceFactor:
    """How fast a place dries against the model.

    Attributes:
        factor: multiplies the loss, 0.2 to 4.
        looks: how many looks it rests on.
        weighings: how many pairs of weighings it rests on.

    Raises:
        OutOfRangeError: the factor is outside its range.
    """

    factor: float = 1.0
    looks: int = 0
    weighings: int = 0

    def __post_init__(self) -> None:
        within("the place's own factor", self.factor, LEAST_FACTOR, MOST_FACTOR, "")


def loss_factor_from_weights(wet_g: float, later_g: float, et0_mm: float, area_m2: float) -> float:
    """Return k, the loss measured against ET0 over the tray: (wet - later) / (ET0 A).

    A gram is a millilitre. k stands in the place of Kc times the exposure's share.

    Args:
        wet_g: weight of the tray when full, 10 to 100,000 g.
        later_g: weight later, with nothing added between, not above the first.
        et0_mm: evapotranspiration summed between the two, above 0 to 100 mm.
        area_m2: area of the tray, 0.0004 to 4 m2.

    Raises:
        OutOfRangeError: a figure is outside its range, or the tray became heavier.
    """
    within("the weight of the wet tray", wet_g, 10.0, 100_000.0, "g")
    within("the area of the tray", area_m2, 0.0004, 4.0, "m2")
    within("the evapotranspiration between weighings", et0_mm, 0.1, 100.0, "mm")
    if not 0.0 < later_g <= wet_g:
        raise OutOfRangeError(
            f"the tray went from {wet_g:g} g to {later_g:g} g: it must lose weight between the"
            " weighings, so weigh again with no watering or rain between"
        )
    return (wet_g - later_g) / ml_from_mm(et0_mm, area_m2)


def after_weighing(place: PlaceFactor, measured_ml: float, modelled_ml: float) -> PlaceFactor:
    """Return the place's factor after a pair of weighings.

    The first pair sets the factor to show just the loss it measured, whatever looks said before;
    later pairs are averaged with those before them.

    Args:
        place: what was known.
        measured_ml: loss by weight, ml.
        modelled_ml: loss of the model over the same time with a factor of 1, ml, above zero.

    Raises:
        OutOfRangeError: the loss is below zero, or the factor would lie outside 0.2 to 4.
    """
    within("the loss of the model", modelled_ml, 0.1, 1e6, "ml")
    within("the loss by weight", measured_ml, 0.0, 1e6, "ml")
    measured = within(
        "the place's factor by weight", measured_ml / modelled_ml, LEAST_FACTOR, MOST_FACTOR, ""
    )
    pairs = place.weighings
    return PlaceFactor((place.factor * pairs + measured) / (pairs + 1), 0, pairs + 1)


def after_look(place: PlaceFactor, said: Moisture, used_share: float) -> PlaceFactor:
    """Return the place's factor after the grower looked at a tray.

    What agrees with the model changes nothing but the count of looks.

    Args:
        place: what was known.
        said: what the tray looked like.
        used_share: share of the allowed water the model took as gone, with the factor as it was;
            0 to 20, above 1 once it is overdue.

    Raises:
        OutOfRangeError: the share is outside its range.
    """
    within("the share of allowed water gone", used_share, 0.0, 20.0, "")
    bounded = max(1.0 / LARGEST_STEP, min(LARGEST_STEP, _ratio_shown(said, used_share)))
    moved = place.factor * bounded ** look_weight(place)
    return replace(place, factor=max(LEAST_FACTOR, min(MOST_FACTOR, moved)), looks=place.looks + 1)


def _ratio_shown(said: Moisture, used_share: float) -> float:
    """Return by what the factor would have to change for the look to fit, at the least."""
    if said is Moisture.STILL_WET:
        return WET_BELOW / used_share if used_share > WET_BELOW else 1.0
    if used_share >= DRY_FROM:
        return 1.0
    return DRY_FROM / used_share if used_share > 0.0 else LARGEST_STEP


def look_weight(place: PlaceFactor) -> float:
    """Return how much a new look counts, from 1 down to 0.2; a weighing counts as four looks."""
    behind = place.looks + LOOKS_TO_HALVE * place.weighings
    return max(LEAST_WEIGHT, 1.0 / (1.0 + behind / LOOKS_TO_HALVE))
