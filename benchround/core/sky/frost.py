"""What counts as frost, how hard it is, and how much of it a kind of plant bears."""

from enum import StrEnum

from benchround.core.numbers.ranges import require_air_temp, within
from benchround.core.units import celsius, fahrenheit

SEVERITY_MAX_WIND_KNOTS = 10.0
"""The severity words hold for a wind below this; above it the same air does more harm."""
FREEZE_THRESHOLDS_F = (16.0, 20.0, 24.0, 28.0, 32.0, 36.0)
FREEZE_THRESHOLDS_C = tuple(round(celsius(deg_f), 1) for deg_f in FREEZE_THRESHOLDS_F)
"""Thresholds for which US frost dates are published; NCEI, Normals Calculation Methodology 2020,
appendix on the 1981-2010 supplemental normals."""


class FrostSeverity(StrEnum):
    """The words of the UK Met Office for an air frost, as printed by BBC Weather."""

    NONE = "no frost"
    SLIGHT = "slight frost"
    MODERATE = "moderate frost"
    SEVERE = "severe frost"
    VERY_SEVERE = "very severe frost"


SEVERITY_LIMITS_C: tuple[tuple[float, FrostSeverity], ...] = (
    (-3.5, FrostSeverity.SLIGHT),
    (-6.5, FrostSeverity.MODERATE),
    (-11.5, FrostSeverity.SEVERE),
)
"""Coldest minimum that still bears each word; colder is very severe. Same source."""


class UsFreeze(StrEnum):
    """The words of the US National Weather Service (NWS Jackson)."""

    NONE = "no frost"
    FROST = "frost"
    FREEZE = "freeze"
    HARD_FREEZE = "hard freeze"


class FrostTolerance(StrEnum):
    """How much frost a food plant bears; review in PMC10202904, table 2."""

    CHILL_SENSITIVE = "hurt by cold above freezing"
    VERY_SENSITIVE = "very sensitive"
    SENSITIVE = "sensitive"
    MODERATE = "moderately hardy"
    REASONABLE = "reasonably hardy"
    GOOD = "hardy"


DAMAGE_BAND_C: dict[FrostTolerance, tuple[float, float]] = {
    FrostTolerance.CHILL_SENSITIVE: (5.0, 0.0),
    FrostTolerance.VERY_SENSITIVE: (0.0, -2.0),
    FrostTolerance.SENSITIVE: (-2.0, -4.0),
    FrostTolerance.MODERATE: (-4.0, -7.0),
    FrostTolerance.REASONABLE: (-7.0, -10.0),
    FrostTolerance.GOOD: (-10.0, -15.0),
}
"""Temperatures (degC) between which damage begins and becomes grave; same source."""


def is_air_frost(tmin_c: float) -> bool:
    """Tell whether a screen minimum was an air frost: below 0.0 degC, not at it.

    UK Met Office glossary. Raises OutOfRangeError outside -60 to 60 degC.
    """
    return require_air_temp("the minimum", tmin_c) < 0.0


def is_ground_frost(grass_min_c: float) -> bool:
    """Tell whether a grass minimum was a ground frost: below 0.0 degC, not at it.

    UK Met Office, the rule since 1961. Raises OutOfRangeError outside -60 to 60 degC.
    """
    return require_air_temp("the grass minimum", grass_min_c) < 0.0


def frost_severity(tmin_c: float, wind_knots: float = 0.0) -> FrostSeverity:
    """Return the word for an air frost with little wind.

    UK Met Office classes as printed by BBC Weather: slight to -3.5 degC, moderate to -6.5, severe
    to -11.5, very severe below.

    Args:
        tmin_c: screen minimum, degC.
        wind_knots: mean wind of the night, below 10 knots; the words are not defined above.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    within("the wind of the night", wind_knots, 0.0, SEVERITY_MAX_WIND_KNOTS, "knots")
    if not is_air_frost(tmin_c):
        return FrostSeverity.NONE
    words = (word for coldest, word in SEVERITY_LIMITS_C if tmin_c >= coldest)
    return next(words, FrostSeverity.VERY_SEVERE)


def us_freeze(tmin_c: float) -> UsFreeze:
    """Return the US word for a night: at or below 36, 32 and 28 degF (2.2, 0, -2.2 degC).

    US National Weather Service, Jackson. Raises OutOfRangeError outside -60 to 60 degC.
    """
    temp_f = round(fahrenheit(require_air_temp("the minimum", tmin_c)), 1)
    if temp_f <= 28.0:
        return UsFreeze.HARD_FREEZE
    if temp_f <= 32.0:
        return UsFreeze.FREEZE
    return UsFreeze.FROST if temp_f <= 36.0 else UsFreeze.NONE


def is_harmed(tolerance: FrostTolerance, tmin_c: float) -> bool:
    """Tell whether a minimum reaches the band in which damage begins for a kind of plant.

    Bands of the review in PMC10202904, table 2. Raises OutOfRangeError outside -60 to 60 degC.
    """
    return require_air_temp("the minimum", tmin_c) <= DAMAGE_BAND_C[tolerance][0]
