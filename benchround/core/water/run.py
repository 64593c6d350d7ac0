"""A tray's water day by day: what came in, what went out, and when to water next."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from math import cos, pi

from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import within
from benchround.core.water.balance import TRAY_KC, TrayWater, ml_from_mm
from benchround.core.water.place import Exposure, checked_loss_mm, place_loss_mm

DRYING_FROM_H, DRYING_TO_H = 6.0, 20.0
"""Hours between which a tray dries on a growing-season day; our proposal."""
HOT_DAY_C = 25.0
"""A day this warm or warmer asks for four looks; trigger ours, the four looks read (UC Santa Cruz,
Teaching Organic Farming & Gardening, Unit 1.3 Supplement 1)."""


class DayPart(StrEnum):
    """The four times a grower looks at water on a hot day."""

    MORNING = "morning"
    MIDDAY = "midday"
    AFTERNOON = "afternoon"
    EVENING = "evening"


_ENDS_H = {
    DayPart.MORNING: 11.0,
    DayPart.MIDDAY: 14.0,
    DayPart.AFTERNOON: 17.0,
    DayPart.EVENING: 24.0,
}


@dataclass(frozen=True, slots=True)
class WaterDay:
    """What one day does to a tray.

    Attributes:
        et0_mm: reference evapotranspiration in the open, 0 to 20 mm.
        exposure: what stands over the tray.
        rain_mm: rain of the day, 0 to 500 mm; it counts only with the lid off.
        lid_off: whether rain reaches the tray.
        watered_ml: water given in the morning, ml; the surplus drains off.
        filled: whether it was watered until full, whatever that took.
        kc: crop coefficient, 0 to 3.
        place_factor: what observations say of the place, 0.05 to 10.
        cover: the surface that dries in surfaces of the tray, 1 to 100.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """

    et0_mm: float
    exposure: Exposure = Exposure.OPEN
    rain_mm: float = 0.0
    lid_off: bool = False
    watered_ml: float = 0.0
    filled: bool = False
    kc: float = TRAY_KC
    place_factor: float = 1.0
    cover: float = 1.0

    def __post_init__(self) -> None:
        within("the rain of a day", self.rain_mm, 0.0, 500.0, "mm")
        within("the water given", self.watered_ml, 0.0, 1e6, "ml")
        place_loss_mm(self.et0_mm, self.exposure, self.kc, self.place_factor, self.cover)

    @property
    def loss_mm(self) -> float:
        """What the day would take from a tray with water enough, mm over the tray."""
        return checked_loss_mm(self.et0_mm, self.exposure, self.kc, self.place_factor, self.cover)

    @property
    def bare_loss_mm(self) -> float:
        """The same where no leaves reach beyond the tray."""
        return checked_loss_mm(self.et0_mm, self.exposure, self.kc, self.place_factor, 1.0)


@dataclass(frozen=True, slots=True)
class WaterState:
    """One day of a tray's books, ml: start + watered + rain - lost - drained = end.

    Attributes:
        start_ml: easily available water in the morning.
        watered_ml: water given.
        rain_ml: rain that fell on the open tray.
        lost_ml: evaporated and drunk.
        drained_ml: watering and rain the tray could not hold.
        end_ml: easily available water next morning.
        short_ml: what the day would have taken beyond the water there was; the plants lacked it.
    """

    start_ml: float
    watered_ml: float
    rain_ml: float
    lost_ml: float
    drained_ml: float
    end_ml: float
    short_ml: float

    @property
    def residual_ml(self) -> float:
        """In minus out minus change, ml: nothing but rounding."""
        came = self.watered_ml + self.rain_ml
        went = self.lost_ml + self.drained_ml
        return self.start_ml + came - went - self.end_ml


@dataclass(frozen=True, slots=True)
class NextWatering:
    """When a tray should be watered next.

    Attributes:
        day_index: which of the days given, from 0.
        part: the part of that day by which its allowed water is gone.
        used_share: share of the easily available water gone by the end of that part.
    """

    day_index: int
    part: DayPart
    used_share: float


@dataclass(frozen=True, slots=True)
class Absence:
    """Whether a tray lasts while nobody waters it.

    Attributes:
        lasts: whether the allowed water suffices for every day away.
        days: whole days it suffices for.
        dry: when the allowed water is gone, or None.
        short_ml: water to be given by somebody while away so that it lasts, ml.
    """

    lasts: bool
    days: int
    dry: NextWatering | None
    short_ml: float


def run_balance(
    tray: TrayWater, days: Sequence[WaterDay], start_ml: float | None = None
) -> tuple[WaterState, ...]:
    """Return a tray's books for a run of days.

    Watering comes first in the morning and is capped at what the tray can hold; rain and loss
    share the day, so rain fills what the day has emptied, and the rest of it drains off.

    Args:
        tray: the tray.
        days: what each day does to it.
        start_ml: easily available water at first, 0 to capacity; None for a full tray.

    Raises:
        OutOfRangeError: the start is outside what the tray can hold.
    """
    level_ml = _start(tray, start_ml)
    states: list[WaterState] = []
    for day in days:
        state = _one_day(tray, day, level_ml)
        states.append(state)
        level_ml = state.end_ml
    return tuple(states)


def _start(tray: TrayWater, start_ml: float | None) -> float:
    if start_ml is None:
        return tray.capacity_ml
    return within("the water in the tray", start_ml, 0.0, tray.capacity_ml, "ml")


def _one_day(tray: TrayWater, day: WaterDay, start_ml: float) -> WaterState:
    room_ml = tray.capacity_ml - start_ml
    given_ml = max(day.watered_ml, room_ml) if day.filled else day.watered_ml
    kept_ml = min(given_ml, room_ml)
    rain_ml = ml_from_mm(day.rain_mm, tray.area_m2) if day.lid_off else 0.0
    wanted_ml = ml_from_mm(day.loss_mm, tray.area_m2)
    there_ml = start_ml + kept_ml + rain_ml
    lost_ml = min(wanted_ml, there_ml)
    end_ml = min(tray.capacity_ml, there_ml - lost_ml)
    return WaterState(
        start_ml=start_ml,
        watered_ml=given_ml,
        rain_ml=rain_ml,
        lost_ml=lost_ml,
        drained_ml=(given_ml - kept_ml) + (there_ml - lost_ml - end_ml),
        end_ml=end_ml,
        short_ml=wanted_ml - lost_ml,
    )


def share_dried_by(hour: float) -> float:
    """Return the share of a day's loss that is over by a clock hour, 0 to 1.

    Half a sine wave between 06:00 and 20:00, as the sun gives it; our proposal.

    Args:
        hour: clock hour, 0 to 24.
    """
    within("the hour", hour, 0.0, 24.0, "h")
    passed = (hour - DRYING_FROM_H) / (DRYING_TO_H - DRYING_FROM_H)
    return (1.0 - cos(pi * max(0.0, min(1.0, passed)))) / 2.0


_DRIED_BY = {part: share_dried_by(hour) for part, hour in _ENDS_H.items()}
"""Share of a day's drying that is over when a part of it ends."""


def next_watering(
    tray: TrayWater,
    days: Sequence[WaterDay],
    allowed_share: float,
    start_ml: float | None = None,
) -> NextWatering | None:
    """Return when a tray's allowed water will be gone, given what the days bring.

    Args:
        tray: the tray.
        days: the days ahead, today first.
        allowed_share: share of the easily available water that may go, 0.01 to 1.
        start_ml: easily available water this morning; None for a full tray.

    Returns:
        The first day and the part of it in which the limit is reached, the evening standing for
        the night too; None when the days given do not bring it there.
    """
    floor_ml = tray.capacity_ml - tray.allowed_ml(allowed_share)
    for index, state in enumerate(run_balance(tray, days, start_ml)):
        part = _part_reached(tray, state, floor_ml)
        if part is not None:
            left_ml = _level_after(tray, state, _DRIED_BY[part])
            return NextWatering(index, part, 1.0 - left_ml / tray.capacity_ml)
    return None


def _part_reached(tray: TrayWater, state: WaterState, floor_ml: float) -> DayPart | None:
    dry_ml = floor_ml + 1e-9 * tray.capacity_ml
    if _level_after(tray, state, 0.0) <= dry_ml:
        return DayPart.MORNING
    if _level_after(tray, state, 1.0) > dry_ml:
        return None  # within a day the level only falls, or only rises
    return next(
        part for part, dried in _DRIED_BY.items() if _level_after(tray, state, dried) <= dry_ml
    )


def _net_loss_ml(state: WaterState) -> float:
    return state.lost_ml + state.short_ml - state.rain_ml


def _level_after(tray: TrayWater, state: WaterState, dried: float) -> float:
    """Return the water in the tray after a share of the day's drying, ml; rain goes alike."""
    morning_ml = min(tray.capacity_ml, state.start_ml + state.watered_ml)
    level_ml = morning_ml - _net_loss_ml(state) * dried
    return max(0.0, min(tray.capacity_ml, level_ml))


def looks_a_day(max_c: float, warm_season: bool) -> tuple[DayPart, ...]:
    """Return the parts of a day at which to look at the water.

    Four on a hot day, once a day at most in the cool season (both read: UC Santa Cruz, Unit 1.3
    Supplement 1); morning and afternoon on other days of the warm season (our proposal).

    Args:
        max_c: the day's maximum, -60 to 60 degC.
        warm_season: whether it is the warm half of the year.
    """
    within("the day's maximum", max_c, -60.0, 60.0, "degC")
    if max_c >= HOT_DAY_C:
        return tuple(DayPart)
    return (DayPart.MORNING, DayPart.AFTERNOON) if warm_season else (DayPart.MORNING,)


def lasts_absence(
    tray: TrayWater,
    days: Sequence[WaterDay],
    allowed_share: float = 1.0,
    start_ml: float | None = None,
) -> Absence:
    """Return whether a tray lasts through days on which nobody waters it.

    Args:
        tray: the tray.
        days: the days away; any watering in them is refused.
        allowed_share: share of the easily available water that may go, 0.01 to 1.
        start_ml: easily available water on leaving; None for a full tray.

    Raises:
        OutOfRangeError: a day away has water given in it.
    """
    if any(day.watered_ml > 0.0 or day.filled for day in days):
        raise OutOfRangeError(
            "an absence was asked about with watering in it: leave the water given out, or ask for"
            " the days between two waterings"
        )
    dry = next_watering(tray, days, allowed_share, start_ml)
    lasts = len(days) if dry is None else dry.day_index
    return Absence(dry is None, lasts, dry, _needed_ml(tray, days, allowed_share, start_ml))


def _needed_ml(
    tray: TrayWater, days: Sequence[WaterDay], allowed_share: float, start_ml: float | None
) -> float:
    """Return the least water that, given just in time, keeps a tray within its allowance, ml."""
    floor_ml = tray.capacity_ml - tray.allowed_ml(allowed_share)
    level_ml = _start(tray, start_ml)
    needed_ml = 0.0
    for day in days:
        state = _one_day(tray, day, level_ml)
        lacking_ml = max(0.0, floor_ml - (state.end_ml - state.short_ml))
        needed_ml += lacking_ml
        level_ml = max(floor_ml, state.end_ml)
    return needed_ml
