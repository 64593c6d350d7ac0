"""How much water a day draws from well-watered plants, from whatever was noted that day.

With a maximum-minimum thermometer alone, eq. 52 of FAO Paper 56 is the better guess; as soon as
the sky or the humidity was noted, Penman-Monteith is, with a stand-in for each missing figure.
The estimate names the method and the stand-ins, so that a task can say why. Single days are good
to about 0.7 to 0.9 mm (mean error in humid Mississippi: Fisher & Pringle 2013, Agricultural
Sciences 4(8A)): average several and show no more than one decimal.
"""

from enum import StrEnum

from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import require_min_max, within
from benchround.core.sky import penman, sun, vapour
from benchround.core.sky.simple_evaporation import hargreaves_fao52_mm

FIXED_RESISTANCE_S_PER_M = 150.0
"""Aerodynamic resistance that fits an unheated plastic house; Fernandez et al. 2010, Irrigation
Science (abstract)."""
UNDER_COVER_WIND_MS = 1.39
"""The wind at 2 m that gives that resistance in FAO-56, where it is 208 / u2 (eq. 4)."""


class EtMethod(StrEnum):
    """Which formula gave an estimate."""

    HARGREAVES_FAO52 = "Hargreaves-Samani, FAO-56 eq. 52"
    PENMAN_MONTEITH = "Penman-Monteith, FAO-56 eq. 6"
    PENMAN_MONTEITH_COVERED = "Penman-Monteith under cover, fixed resistance 150 s/m"


class StandIn(StrEnum):
    """A figure that was not noted, and what was taken in its place."""

    SKY_FROM_RANGE = "radiation from the range of temperature (FAO-56 eq. 50)"
    DEW_POINT_FROM_MINIMUM = "dew point equal to the minimum (FAO-56 eq. 48)"
    USUAL_WIND = "wind of 2 m/s"


@dataclass(frozen=True, slots=True)
class EtSite:
    """Where the readings were taken: latitude (deg, north positive), height, and the coast."""

    lat_deg: float
    altitude_m: float = 0.0
    coastal: bool = False


@dataclass(frozen=True, slots=True)
class EtDay:
    """One day's readings; what was not noted is None.

    `share_of_sun` is 1 for a clear day, about 0.5 for part cloud, 0 to 0.1 for overcast.
    """

    day_of_year: int
    tmin_c: float
    tmax_c: float
    share_of_sun: float | None = None
    humidity_pct: float | None = None
    wind_2m_ms: float | None = None


@dataclass(frozen=True, slots=True)
class EtEstimate:
    """Reference evapotranspiration in mm per day, with the method and its stand-ins."""

    mm: float
    method: EtMethod
    stand_ins: tuple[StandIn, ...] = ()


def reference_et(site: EtSite, day: EtDay) -> EtEstimate:
    """Return the reference evapotranspiration in the open, by the best method the day allows.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    if day.share_of_sun is None and day.humidity_pct is None:
        ra_mj = sun.extraterrestrial_mj(site.lat_deg, day.day_of_year)
        mm = hargreaves_fao52_mm(day.tmin_c, day.tmax_c, ra_mj)
        return EtEstimate(mm, EtMethod.HARGREAVES_FAO52)
    return penman_monteith_et(site, day)


def penman_monteith_et(site: EtSite, day: EtDay) -> EtEstimate:
    """Return Penman-Monteith ETo in the open, with a stand-in for each figure not noted.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    wind_ms = penman.UNKNOWN_WIND_MS if day.wind_2m_ms is None else day.wind_2m_ms
    mm = _penman_monteith_mm(site, day, wind_ms, transmissivity=1.0)
    return EtEstimate(mm, EtMethod.PENMAN_MONTEITH, _stand_ins(day, wind_counts=True))


def under_cover_et(site: EtSite, day: EtDay, transmissivity: float) -> EtEstimate:
    """Return the reference evapotranspiration inside an unheated, ventilated glass or film house.

    Fernandez et al. 2010, Irrigation Science (abstract): Penman-Monteith with an aerodynamic
    resistance of 150 s/m. Only sunlight is cut by the cover; the heat lost to the sky is left as
    in the open, so the figure errs on the low side in winter. A shut frame loses next to nothing
    and is not meant here.

    Args:
        site: where the house stands.
        day: the readings; temperature and humidity as measured under the cover. A noted wind is
            not used.
        transmissivity: share of sunlight the cover lets through, 0 to 1.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    within("the share of light let through", transmissivity, 0.0, 1.0, "")
    mm = _penman_monteith_mm(site, day, UNDER_COVER_WIND_MS, transmissivity)
    return EtEstimate(mm, EtMethod.PENMAN_MONTEITH_COVERED, _stand_ins(day, wind_counts=False))


def radiation_mj(site: EtSite, day: EtDay) -> float:
    """Return the day's radiation on level ground: from the sky noted, else from the range.

    Allen et al. 1998, FAO-56, eqs. 35 and 50; the latter held to a clear sky (eq. 37).
    """
    ra_mj = sun.extraterrestrial_mj(site.lat_deg, day.day_of_year)
    if day.share_of_sun is not None:
        return sun.radiation_from_sky_word_mj(ra_mj, day.share_of_sun)
    guessed = sun.radiation_from_range_mj(ra_mj, day.tmax_c, day.tmin_c, site.coastal)
    return min(guessed, sun.clear_sky_mj(ra_mj, site.altitude_m))


def actual_vapour_kpa(day: EtDay) -> float:
    """Return the day's vapour pressure: from the humidity noted, else from the minimum.

    Allen et al. 1998, FAO-56, eqs. 19 and 48.
    """
    if day.humidity_pct is None:
        return vapour.actual_from_minimum_kpa(day.tmin_c)
    return vapour.actual_from_mean_humidity_kpa(day.tmin_c, day.tmax_c, day.humidity_pct)


def _penman_monteith_mm(site: EtSite, day: EtDay, wind_ms: float, transmissivity: float) -> float:
    require_min_max(day.tmin_c, day.tmax_c)
    ra_mj = sun.extraterrestrial_mj(site.lat_deg, day.day_of_year)
    rs_mj = radiation_mj(site, day)
    actual = actual_vapour_kpa(day)
    lost = penman.net_longwave_mj(
        day.tmin_c, day.tmax_c, rs_mj, sun.clear_sky_mj(ra_mj, site.altitude_m), actual
    )
    return penman.penman_monteith_mm(
        day.tmin_c,
        day.tmax_c,
        penman.net_shortwave_mj(rs_mj * transmissivity) - lost,
        actual,
        site.altitude_m,
        wind_2m_ms=wind_ms,
    )


def _stand_ins(day: EtDay, *, wind_counts: bool) -> tuple[StandIn, ...]:
    missing = (
        (day.share_of_sun is None, StandIn.SKY_FROM_RANGE),
        (day.humidity_pct is None, StandIn.DEW_POINT_FROM_MINIMUM),
        (day.wind_2m_ms is None and wind_counts, StandIn.USUAL_WIND),
    )
    return tuple(name for absent, name in missing if absent)
