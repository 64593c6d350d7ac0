"""The nouns of lid advice: the stock, the limits, the day's weather, a step, the whole advice."""

from __future__ import annotations

from datetime import time
from enum import StrEnum

from benchround.core.frame.build import LidPosition
from benchround.core.frame.day import HourWeather, require_day
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import require_air_temp, within

GLASSHOUSE = "RHS, Greenhouse: ventilation and shading (read)"
SANTA_CRUZ = "UC Santa Cruz, Teaching Organic Farming & Gardening, Unit 1.3 Supplement 1 (read)"
TRIAL = "Which? Gardening, how to harden off tender plants: a trial of methods (read)"
COLORADO = "Colorado State University, GardenNotes 722, frost protection (read)"
MATS = "Intergardening, Cold frames (read); trigger from memory"
OWN = "our proposal, no source"
PRACTICE = "common practice, no source"


class Stock(StrEnum):
    """The most delicate thing in the frame."""

    GERMINATING = "germinating"
    TENDER = "tender"
    HALF_HARDY = "half-hardy"
    HARDY = "hardy"


class HalfYear(StrEnum):
    """The half of the year, which sets when lids come down."""

    WARM = "warm"
    COOL = "cool"


class HardeningPlan(StrEnum):
    """How far hardening off has come."""

    HALF_OPEN = "half open by day"
    FULLY_OPEN = "fully open by day"
    NIGHT_OPEN = "open day and night"


class AdviceKind(StrEnum):
    """What a step is about."""

    STAY_SHUT = "stay shut"
    OPEN = "open"
    TAKE_OFF = "take off"
    HARDEN = "harden off"
    HOLD_BACK = "hold back"
    AIR = "air"
    SHADE = "shade"
    RAIN = "keep rain off"
    LATCH = "latch"
    STRAP = "shut and strap"
    HANDLE = "handle with care"
    SNOW = "brush snow off"
    LOWER = "lower"
    LEAVE_OPEN = "leave open tonight"
    FLEECE = "fleece"
    MAT = "mat"
    BRING_IN = "bring in"


@dataclass(frozen=True, slots=True)
class LidLimits:
    """Temperatures, winds and rains the advice acts on.

    Attributes:
        crack_at_c: a shut frame is opened from here (wax openers lift at about 22: read).
        raise_at_c: an open lid goes one further from here (best range 18-24: read).
        act_above_c: heat above this harms plants under glass (27: read).
        aim_low_c: an afternoon below this is time to shut what is left of the warmth (16: read).
        spike_c: above this for no more than `spike_h` hours once shut in the afternoon (29: read).
        spike_h: how many hours that may last ("a few": read; 3 ours).
        never_above_c: a shut afternoon frame must stay below (35: from memory).
        close_min_c: lids go down at night when the outside minimum is below this; None takes the
            stock's own (4.4, 7.2, 10 for hardy, half-hardy, tender: read).
        half_open_at_c: hardening: half open from here inside (15: ours).
        fleece_at_c, mat_at_c: forecast minima that call for a cover (4 ours; -3 from memory).
        latch_kmh, step_back_kmh, strap_kmh: gusts (40, 50, 60: ours, Beaufort 6 to 8).
        rain_hour_mm, rain_day_mm: a downpour (5 and 10: ours).
        wet_spell_mean_c, wet_spell_days: cold and damp for long (8 and 2: from memory).
        bright_wm2, bright_air_c: sun that must find the lid open (300 and 5: ours).

    Raises:
        OutOfRangeError: a figure is outside its range, or the limits are not in order.
    """

    crack_at_c: float = 22.0
    raise_at_c: float = 24.0
    act_above_c: float = 27.0
    aim_low_c: float = 16.0
    spike_c: float = 29.0
    spike_h: float = 3.0
    never_above_c: float = 35.0
    close_min_c: float | None = None
    half_open_at_c: float = 15.0
    fleece_at_c: float = 4.0
    mat_at_c: float = -3.0
    latch_kmh: float = 40.0
    step_back_kmh: float = 50.0
    strap_kmh: float = 60.0
    rain_hour_mm: float = 5.0
    rain_day_mm: float = 10.0
    wet_spell_mean_c: float = 8.0
    wet_spell_days: int = 2
    bright_wm2: float = 300.0
    bright_air_c: float = 5.0

    def __post_init__(self) -> None:
        within("the limit to crack the lid", self.crack_at_c, 0.0, 45.0, "degC")
        within("the limit to raise it", self.raise_at_c, self.crack_at_c, 45.0, "degC")
        within("the limit to act", self.act_above_c, self.raise_at_c, 45.0, "degC")
        within("the afternoon spike", self.spike_c, self.act_above_c, 50.0, "degC")
        within("the limit when shut", self.never_above_c, self.spike_c, 60.0, "degC")
        within("the gust to latch at", self.latch_kmh, 0.0, 200.0, "km/h")
        within("the gust to strap at", self.strap_kmh, self.latch_kmh, 200.0, "km/h")


STAND_OPEN_C = {
    Stock.GERMINATING: 10.0,
    Stock.TENDER: 10.0,
    Stock.HALF_HARDY: 7.2,
    Stock.HARDY: 4.4,
}
"""Outside temperature above which stock may stand open (40, 45, 50 degF: extension lists, read)."""


def limits_for(stock: Stock) -> LidLimits:
    """Return the usual limits for a stock: warm-season plants like 21-29 by day (read)."""
    if stock is Stock.TENDER:
        return LidLimits(crack_at_c=24.0, raise_at_c=26.0, aim_low_c=18.0)
    return LidLimits()


@dataclass(frozen=True, slots=True)
class LidDay:
    """What the day holds for the lids; None where nothing is known, and the advice says so.

    Attributes:
        hours: 24 hours of outside weather, by the clock.
        sunrise, sunset: clock times.
        season: warm or cool half of the year.
        sun_leaves: when direct sun leaves the frame; None takes sunset.
        gust_kmh: highest gust, 0 to 300 km/h.
        rain_mm: rain of the day, 0 to 500 mm.
        rain_in_hour_mm: most rain in one hour, 0 to 300 mm.
        storm_from: when gale or downpour set in; None takes the whole day.
        tonight_min_c: the coming night's minimum at screen height.
        damp_days: days it has been damp in a row.
        standing: where the lid stands in the morning.
        snow_lying: whether snow lies on the lids.

    Raises:
        OutOfRangeError: not 24 hours, or a figure outside its range.
    """

    hours: tuple[HourWeather, ...]
    sunrise: time | None
    sunset: time | None
    season: HalfYear
    sun_leaves: time | None = None
    gust_kmh: float | None = None
    rain_mm: float | None = None
    rain_in_hour_mm: float | None = None
    storm_from: time | None = None
    tonight_min_c: float | None = None
    damp_days: int | None = None
    standing: LidPosition = LidPosition.SHUT
    snow_lying: bool = False

    def __post_init__(self) -> None:
        require_day("hours of weather", self.hours)
        for figure, value, high, unit in (
            ("the gust", self.gust_kmh, 300.0, "km/h"),
            ("the rain of the day", self.rain_mm, 500.0, "mm"),
            ("the rain in an hour", self.rain_in_hour_mm, 300.0, "mm"),
            ("the number of damp days", self.damp_days, 366.0, ""),
        ):
            if value is not None:
                within(figure, value, 0.0, high, unit)
        if self.tonight_min_c is not None:
            require_air_temp("tonight's minimum", self.tonight_min_c)

    @property
    def mean_c(self) -> float:
        """Mean outside temperature of the day, degC."""
        return sum(hour.air_c for hour in self.hours) / len(self.hours)


@dataclass(frozen=True, slots=True)
class LidStep:
    """One thing to do with a lid.

    Attributes:
        kind: what it is about.
        at: do it by then; None holds for the whole day.
        position: where the lid then stands; None leaves it.
        figures: the numbers behind it, in words.
        reason: why, in a few words.
        source: where the rule comes from.
        latest: the end of the window, where there is one.
    """

    kind: AdviceKind
    at: time | None
    position: LidPosition | None
    figures: tuple[str, ...]
    reason: str
    source: str
    latest: time | None = None


@dataclass(frozen=True, slots=True)
class LidAdvice:
    """The lid's day.

    Attributes:
        steps: what to do, in order of time, what holds all day first.
        shut_passes_at: when the frame, left shut, would pass the limit to act; None if it stays
            below.
        shut_max_c: the warmest hour of the frame left shut, degC.
        lid_plan: position in the middle of each hour when the steps are followed.
        inside_c: inside temperatures under that plan, degC.
        assumed: what was not known, and what was taken instead.
    """

    steps: tuple[LidStep, ...]
    shut_passes_at: time | None
    shut_max_c: float
    lid_plan: tuple[LidPosition, ...]
    inside_c: tuple[float, ...]
    assumed: tuple[str, ...]

    def first(self, kind: AdviceKind) -> LidStep | None:
        """Return the first step of a kind, or None."""
        return next((step for step in self.steps if step.kind is kind), None)
