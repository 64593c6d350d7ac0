"""Tonight's minimum, from what a grower can read in the afternoon or at dusk.

Each formula was fitted somewhere; none was fitted in this garden. So each gives a range, and the
colder end is the one to act on. Where no hygrometer stands, the dew point may be taken from last
night's minimum. The screen is not the tray: on clear nights grass and trays are colder still.
"""

from enum import StrEnum

from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import require_air_temp, within

CRADDOCK_COLDEST_K = -2.2
CRADDOCK_WARMEST_K = 3.0
"""Correction K of Craddock & Pritchard: near calm and clear; windy and cloudy."""
SMITH_BY_MONTH: dict[int, float] = {5: 8.0, 6: 9.0, 8: 9.0, 9: 8.0, 10: 8.0}
"""Constant c of Smith 1973, degC, by month, for Canterbury, New Zealand."""
GRASS_BELOW_SCREEN_C = (2.0, 4.0)
"""How much colder grass is than the screen on a clear night; from memory."""
GUESSED_DEW_POINT_MARGIN_C = (1.0, 2.0)
"""What to take off a forecast built on a guessed dew point; common practice, no source."""


class NightWeather(StrEnum):
    """The nights for which McKenzie's constant is known."""

    DEAD_CALM_CLEAR = "dead calm, clear"
    LIGHT_WIND_LITTLE_CLOUD = "light wind, little cloud"
    LIGHT_WIND_CHANGING_CLOUD = "light wind, changing cloud"
    LIGHT_WIND_CLOUDY = "light wind, cloudy"
    MODERATE_WIND_LITTLE_CLOUD = "moderate wind, little cloud"
    MODERATE_WIND_CHANGING_CLOUD = "moderate wind, changing cloud"
    MODERATE_WIND_CLOUDY = "moderate wind, cloudy"
    BRISK_WIND = "brisk wind"


MCKENZIE_K: dict[NightWeather, tuple[float, float]] = {
    NightWeather.DEAD_CALM_CLEAR: (8.0, 9.0),
    NightWeather.LIGHT_WIND_LITTLE_CLOUD: (6.0, 8.0),
    NightWeather.LIGHT_WIND_CHANGING_CLOUD: (4.0, 7.0),
    NightWeather.LIGHT_WIND_CLOUDY: (2.0, 3.0),
    NightWeather.MODERATE_WIND_LITTLE_CLOUD: (3.0, 5.0),
    NightWeather.MODERATE_WIND_CHANGING_CLOUD: (2.0, 4.0),
    NightWeather.MODERATE_WIND_CLOUDY: (1.0, 2.0),
    NightWeather.BRISK_WIND: (1.0, 2.0),
}
"""McKenzie 1944, the constant K in degC, least and greatest; table at weatherfaqs.org.uk,
node 149."""


@dataclass(frozen=True, slots=True)
class MinimumRange:
    """The minimum to reckon with, from coldest to warmest, degC."""

    coldest_c: float
    warmest_c: float

    def lowered(self, least_c: float, most_c: float) -> "MinimumRange":
        """Return the range moved down by something between two amounts."""
        return MinimumRange(self.coldest_c - most_c, self.warmest_c - least_c)


def _require_dew_point(dew_point_c: float, temp_c: float) -> None:
    require_air_temp("the dew point", dew_point_c)
    if dew_point_c > temp_c:
        raise OutOfRangeError(
            f"the dew point {dew_point_c:g} degC is above the air, {temp_c:g} degC; it must lie"
            " between -60 degC and the air temperature: were the two swapped?"
        )


def mckenzie_c(tmax_c: float, dew_point_c: float, k_c: float) -> float:
    """Return tonight's minimum from today's maximum and the dew point: (Tmax + Td)/2 - K.

    McKenzie 1944, UK Met Office memorandum, as given at weatherfaqs.org.uk, node 149; inland UK.

    Args:
        tmax_c: today's maximum, degC.
        dew_point_c: afternoon dew point Td, degC; not above the maximum.
        k_c: constant K of the place and the weather, 1 to 9 degC.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    _require_dew_point(dew_point_c, require_air_temp("the maximum", tmax_c))
    within("McKenzie's constant", k_c, 1.0, 9.0, "degC")
    return (tmax_c + dew_point_c) / 2.0 - k_c


def mckenzie_range(tmax_c: float, dew_point_c: float, night: NightWeather) -> MinimumRange:
    """Return tonight's minimum by McKenzie for a kind of night; see `mckenzie_c`."""
    least_k, most_k = MCKENZIE_K[night]
    return MinimumRange(
        mckenzie_c(tmax_c, dew_point_c, most_k), mckenzie_c(tmax_c, dew_point_c, least_k)
    )


def craddock_pritchard_c(noon_c: float, noon_dew_point_c: float, k_c: float) -> float:
    """Return tonight's minimum from noon: 0.316 T12 + 0.548 Td12 - 1.24 + K.

    Craddock & Pritchard 1951, UK Met Office, as given at weatherfaqs.org.uk, node 149; inland UK.

    Args:
        noon_c: air temperature at noon T12, degC.
        noon_dew_point_c: dew point at noon Td12, degC; not above it.
        k_c: from -2.2 near calm and clear to 3 windy and cloudy.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    _require_dew_point(noon_dew_point_c, require_air_temp("the temperature at noon", noon_c))
    within("the correction K", k_c, CRADDOCK_COLDEST_K, CRADDOCK_WARMEST_K, "degC")
    return 0.316 * noon_c + 0.548 * noon_dew_point_c - 1.24 + k_c


def craddock_pritchard_range(noon_c: float, noon_dew_point_c: float) -> MinimumRange:
    """Return tonight's minimum from noon, whatever wind and cloud will be."""
    return MinimumRange(
        craddock_pritchard_c(noon_c, noon_dew_point_c, CRADDOCK_COLDEST_K),
        craddock_pritchard_c(noon_c, noon_dew_point_c, CRADDOCK_WARMEST_K),
    )


def smith_grass_c(afternoon_c: float, afternoon_dew_point_c: float, month: int) -> float:
    """Return tonight's grass minimum of a frosty night: (T15 + Td15/2)/3 - c.

    Smith 1973, Canterbury, New Zealand, as given at wiki.crowe.co.nz; c is 8 in May, September and
    October, 9 in June and August.

    Args:
        afternoon_c: air temperature at 15:00, degC.
        afternoon_dew_point_c: dew point at 15:00, degC; not above it.
        month: 5, 6, 8, 9 or 10, of the southern year.

    Raises:
        OutOfRangeError: a figure is outside its range, or no constant is known for the month.
    """
    _require_dew_point(
        afternoon_dew_point_c, require_air_temp("the temperature at 15:00", afternoon_c)
    )
    if month not in SMITH_BY_MONTH:
        known = ", ".join(str(name) for name in SMITH_BY_MONTH)
        raise OutOfRangeError(f"month {month} has no constant in Smith's rule, only {known} have")
    return (afternoon_c + afternoon_dew_point_c / 2.0) / 3.0 - SMITH_BY_MONTH[month]


def guessed_dew_point_c(last_tmin_c: float) -> float:
    """Return a dew point where none was measured: last night's minimum.

    After Allen et al. 1998, FAO-56, eq. 48. Lower the forecast by `GUESSED_DEW_POINT_MARGIN_C`.
    """
    return require_air_temp("last night's minimum", last_tmin_c)


def at_tray_level(screen: MinimumRange, clear_sky: bool) -> MinimumRange:
    """Return the minimum beside the trays in the open: 2 to 4 degC lower on clear nights.

    From memory; under cloud no difference is taken.
    """
    return screen.lowered(*GRASS_BELOW_SCREEN_C) if clear_sky else screen
