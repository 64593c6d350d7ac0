"""Rain and damp air in words, each with the scheme that defines the word.

Rain words differ between services: 3 mm an hour is moderate in Britain and in the United States,
5 mm is heavy in one and moderate in the other. A word without its scheme means nothing.
"""

from enum import StrEnum

from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import within

RAISED_RISK_BELOW_KPA = 0.43
HIGH_RISK_BELOW_KPA = 0.20
"""Vapour pressure deficits below which leaf disease gains; attributed to Prenger & Ling, Ohio
State University fact sheet AEX-804, from memory."""
SHUT_TOO_LONG_H = 24.0
WET_TOO_LONG_H = 48.0
"""Limits of the damping-off note; common practice, no source."""


class RainScheme(StrEnum):
    """Who defined the words."""

    UK_RAIN = "UK Met Office, continuous rain"
    UK_SHOWER = "UK Met Office, showers"
    US = "American Meteorological Society"
    WMO = "World Meteorological Organization"


class RainWord(StrEnum):
    """How hard it rains, in the words of one of the schemes."""

    DRY = "dry"
    SLIGHT = "slight"
    LIGHT = "light"
    MODERATE = "moderate"
    HEAVY = "heavy"
    VIOLENT = "violent"


@dataclass(frozen=True, slots=True)
class _Step:
    """A word, and the rate (mm/h) it reaches up to; whether that rate itself still belongs."""

    up_to_mm_h: float
    counted: bool
    word: RainWord


_FOREVER = float("inf")
_STEPS: dict[RainScheme, tuple[_Step, ...]] = {
    # The Independent, 5 Jan 1998, printing the UK Met Office's definitions
    RainScheme.UK_RAIN: (
        _Step(0.5, True, RainWord.SLIGHT),
        _Step(4.0, True, RainWord.MODERATE),
        _Step(_FOREVER, True, RainWord.HEAVY),
    ),
    # same source
    RainScheme.UK_SHOWER: (
        _Step(2.0, False, RainWord.SLIGHT),
        _Step(10.0, True, RainWord.MODERATE),
        _Step(50.0, True, RainWord.HEAVY),
        _Step(_FOREVER, True, RainWord.VIOLENT),
    ),
    # AMS Glossary of Meteorology, entry Rain
    RainScheme.US: (
        _Step(2.5, True, RainWord.LIGHT),
        _Step(7.6, True, RainWord.MODERATE),
        _Step(_FOREVER, True, RainWord.HEAVY),
    ),
    # one secondary page; the WMO guide itself was not seen
    RainScheme.WMO: (
        _Step(2.5, False, RainWord.SLIGHT),
        _Step(10.0, False, RainWord.MODERATE),
        _Step(50.0, False, RainWord.HEAVY),
        _Step(_FOREVER, True, RainWord.VIOLENT),
    ),
}


def rain_word(mm_per_h: float, scheme: RainScheme = RainScheme.UK_RAIN) -> RainWord:
    """Return the word for a rate of rain in one scheme.

    Limits: UK rain 0.5 and 4, UK showers 2, 10 and 50, US 2.5 and 7.6, WMO 2.5, 10 and 50 mm/h.

    Args:
        mm_per_h: rate, mm/h, 0 to 500; a daily total is not a rate and must not be put in.
        scheme: whose words.

    Raises:
        OutOfRangeError: the rate is outside that range.
    """
    if within("the rain", mm_per_h, 0.0, 500.0, "mm/h") == 0.0:
        return RainWord.DRY
    return next(
        step.word
        for step in _STEPS[scheme]
        if mm_per_h < step.up_to_mm_h or (step.counted and mm_per_h == step.up_to_mm_h)
    )


class DampRisk(StrEnum):
    """How near to disease the air among leaves is."""

    LOW = "low"
    RAISED = "raised"
    HIGH = "high"


@dataclass(frozen=True, slots=True)
class Advice:
    """A rule of thumb, never a measurement: the text says so by itself."""

    text: str
    standing: str = "rule of thumb"


def damp_risk(deficit_kpa: float) -> DampRisk:
    """Return how much damp air favours disease: raised below 0.43 kPa, high below 0.20.

    Limits from memory, attributed to Prenger & Ling, AEX-804; advice, not a forecast.

    Args:
        deficit_kpa: vapour pressure deficit, kPa, 0 to 30.

    Raises:
        OutOfRangeError: the deficit is outside that range.
    """
    within("the vapour pressure deficit", deficit_kpa, 0.0, 30.0, "kPa")
    if deficit_kpa < HIGH_RISK_BELOW_KPA:
        return DampRisk.HIGH
    return DampRisk.RAISED if deficit_kpa < RAISED_RISK_BELOW_KPA else DampRisk.LOW


def damping_off_note(
    *, shut_h: float, deficit_kpa: float, wet_since_up_h: float, colder_than_best: bool
) -> Advice | None:
    """Return a note on damping-off where seedlings stand damp for too long, else None.

    A rule of thumb of growers, no source: shut for more than 24 h in air of less than 0.2 kPa
    deficit, or a surface wet for more than 48 h after emergence below the crop's best
    temperature.

    Args:
        shut_h: hours the lid has been shut without a break.
        deficit_kpa: vapour pressure deficit under the lid, kPa.
        wet_since_up_h: hours the surface has stayed wet since the seedlings came up.
        colder_than_best: whether it is colder than the crop likes best.

    Raises:
        OutOfRangeError: a figure is negative or not a number.
    """
    within("the hours shut", shut_h, 0.0, 1e4, "h")
    within("the hours wet", wet_since_up_h, 0.0, 1e4, "h")
    if shut_h > SHUT_TOO_LONG_H and damp_risk(deficit_kpa) is DampRisk.HIGH:
        return Advice(
            f"shut for {shut_h:.0f} h in air of {deficit_kpa:.2f} kPa deficit: rule of thumb says"
            " air it, damping-off gains"
        )
    if wet_since_up_h > WET_TOO_LONG_H and colder_than_best:
        return Advice(
            f"surface wet for {wet_since_up_h:.0f} h and colder than the crop likes: rule of thumb"
            " says let it dry, damping-off gains"
        )
    return None
