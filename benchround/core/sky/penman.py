"""Evaporation from the energy that arrives and the air that carries it off: Penman's family.

Equations of Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56 ("FAO-56"
below). Radiation is MJ m-2 d-1, pressure kPa, wind m/s, water mm d-1.
"""

from math import log, sqrt

from benchround.core.numbers.ranges import require_min_max, within
from benchround.core.sky.vapour import (
    mean_saturation_kpa,
    pressure_kpa,
    psychrometric_kpa_per_c,
    saturation_kpa,
    slope_kpa_per_c,
)

MM_PER_MJ = 0.408
"""Water evaporated by 1 MJ m-2, as FAO-56 eq. 20 rounds it."""
LATENT_HEAT_MJ_PER_KG = 2.45
"""Heat that evaporates 1 kg (1 mm over 1 m2) of water; McMahon et al. 2013 divide by it."""
GRASS_ALBEDO = 0.23
"""Share of radiation the reference grass throws back, FAO-56 eq. 38."""
UNKNOWN_WIND_MS = 2.0
"""Wind at 2 m where none was noted: a mean over many stations, FAO-56 chapter 3."""

_STEFAN_BOLTZMANN_MJ = 4.903e-9  # MJ K-4 m-2 d-1, FAO-56 eq. 39
_FREEZING_K = 273.16  # as FAO-56 eq. 39 rounds it


def _wind(wind_ms: float) -> float:
    return within("the wind", wind_ms, 0.0, 60.0, "m/s")


def wind_at_2m_ms(wind_ms: float, height_m: float) -> float:
    """Return the wind 2 m above short grass from one measured at another height.

    Allen et al. 1998, FAO-56, eq. 47: uz 4.87 / ln(67.8 z - 5.42).

    Args:
        wind_ms: wind uz at the height of the instrument, m/s, 0 to 60.
        height_m: height z of the instrument, m, 0.5 to 100.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    within("the height of the wind gauge", height_m, 0.5, 100.0, "m")
    return _wind(wind_ms) * 4.87 / log(67.8 * height_m - 5.42)


def net_shortwave_mj(rs_mj: float, albedo: float = GRASS_ALBEDO) -> float:
    """Return the sunlight kept by a surface: (1 - albedo) Rs; FAO-56 eq. 38."""
    within("the albedo", albedo, 0.0, 1.0, "")
    return (1.0 - albedo) * within("the radiation", rs_mj, 0.0, 50.0, "MJ/m2 a day")


def net_longwave_mj(
    tmin_c: float, tmax_c: float, rs_mj: float, clear_mj: float, actual_kpa: float
) -> float:
    """Return the heat a grass surface loses to the sky in a day, Rnl, MJ m-2 d-1.

    Allen et al. 1998, FAO-56, eq. 39. Rs/Rso stands for cloud and is held to at most 1; where the
    sun stays down (Rso = 0) it says nothing about cloud, and a clear sky is taken.

    Args:
        tmin_c: the day's minimum, degC.
        tmax_c: the day's maximum, degC; not below the minimum.
        rs_mj: radiation on level ground Rs.
        clear_mj: the same under a cloudless sky, Rso.
        actual_kpa: actual vapour pressure ea.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    require_min_max(tmin_c, tmax_c)
    within("the radiation", rs_mj, 0.0, 50.0, "MJ/m2 a day")
    within("the clear-sky radiation", clear_mj, 0.0, 50.0, "MJ/m2 a day")
    within("the vapour pressure", actual_kpa, 0.0, saturation_kpa(tmax_c), "kPa")
    share = min(1.0, rs_mj / clear_mj) if clear_mj > 0.0 else 1.0
    glow = ((tmin_c + _FREEZING_K) ** 4 + (tmax_c + _FREEZING_K) ** 4) / 2.0
    return _STEFAN_BOLTZMANN_MJ * glow * (0.34 - 0.14 * sqrt(actual_kpa)) * (1.35 * share - 0.35)


def penman_monteith_mm(
    tmin_c: float,
    tmax_c: float,
    net_radiation_mj: float,
    actual_kpa: float,
    altitude_m: float,
    *,
    wind_2m_ms: float = UNKNOWN_WIND_MS,
    ground_heat_mj: float = 0.0,
) -> float:
    """Return the evapotranspiration of short, well-watered grass, ETo, in mm per day.

    Allen et al. 1998, FAO-56, eq. 6 (Penman-Monteith). Dew is not counted: never below 0.

    Args:
        tmin_c: the day's minimum, degC.
        tmax_c: the day's maximum, degC; not below the minimum.
        net_radiation_mj: Rn = Rns - Rnl, MJ m-2 d-1, -20 to 40.
        actual_kpa: actual vapour pressure ea, at most saturation at the maximum.
        altitude_m: height of the site, m.
        wind_2m_ms: wind at 2 m; 2 m/s where none was noted.
        ground_heat_mj: heat going into the ground G; 0 for a day.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    require_min_max(tmin_c, tmax_c)
    within("the net radiation", net_radiation_mj, -20.0, 40.0, "MJ/m2 a day")
    within("the heat into the ground", ground_heat_mj, -20.0, 20.0, "MJ/m2 a day")
    within("the vapour pressure", actual_kpa, 0.0, saturation_kpa(tmax_c), "kPa")
    mean_c = (tmin_c + tmax_c) / 2.0
    slope = slope_kpa_per_c(mean_c)
    gamma = psychrometric_kpa_per_c(pressure_kpa(altitude_m))
    lack = mean_saturation_kpa(tmin_c, tmax_c) - actual_kpa
    energy = MM_PER_MJ * slope * (net_radiation_mj - ground_heat_mj)
    air = gamma * 900.0 / (mean_c + 273.0) * _wind(wind_2m_ms) * lack
    return max(0.0, (energy + air) / (slope + gamma * (1.0 + 0.34 * wind_2m_ms)))


def open_water_mm(
    tmin_c: float,
    tmax_c: float,
    net_radiation_mj: float,
    actual_kpa: float,
    altitude_m: float,
    *,
    wind_2m_ms: float = UNKNOWN_WIND_MS,
) -> float:
    """Return the evaporation from open water, such as a tray standing in a dish, in mm per day.

    Penman 1948 with the wind function of Penman 1956, f(u) = 1.313 + 1.381 u, as written out in
    McMahon, Peel, Lowe, Srikanthan & McVicar 2013, Hydrol. Earth Syst. Sci. 17:1331, eq. 12.

    Args:
        tmin_c: the day's minimum, degC.
        tmax_c: the day's maximum, degC; not below the minimum.
        net_radiation_mj: net radiation of the water (albedo 0.08), MJ m-2 d-1, -20 to 40.
        actual_kpa: actual vapour pressure, at most saturation at the maximum.
        altitude_m: height of the site, m.
        wind_2m_ms: wind at 2 m; 2 m/s where none was noted.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    require_min_max(tmin_c, tmax_c)
    within("the net radiation", net_radiation_mj, -20.0, 40.0, "MJ/m2 a day")
    within("the vapour pressure", actual_kpa, 0.0, saturation_kpa(tmax_c), "kPa")
    slope = slope_kpa_per_c((tmin_c + tmax_c) / 2.0)
    gamma = psychrometric_kpa_per_c(pressure_kpa(altitude_m))
    lack = mean_saturation_kpa(tmin_c, tmax_c) - actual_kpa
    drawn = (1.313 + 1.381 * _wind(wind_2m_ms)) * lack
    warmed = net_radiation_mj / LATENT_HEAT_MJ_PER_KG
    return max(0.0, (slope * warmed + gamma * drawn) / (slope + gamma))
