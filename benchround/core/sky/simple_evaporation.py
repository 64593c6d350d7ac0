"""Evapotranspiration from little: two readings of a thermometer, or mean, sun and humidity.

Three formulas, each under the name of its variant, since more than one goes by the same name.
Radiation goes in as MJ m-2 d-1 everywhere and is turned into millimetres inside.
"""

from math import sqrt

from benchround.core.numbers.ranges import require_min_max, within
from benchround.core.sky.penman import LATENT_HEAT_MJ_PER_KG, MM_PER_MJ


def hargreaves_fao52_mm(
    tmin_c: float, tmax_c: float, ra_mj: float, tmean_c: float | None = None
) -> float:
    """Return ETo in mm per day from the day's minimum and maximum alone.

    Hargreaves & Samani 1985 as given by Allen et al. 1998, FAO Irrigation and Drainage Paper 56,
    eq. 52: 0.0023 (Tmean + 17.8) sqrt(Tmax - Tmin) Ra, Ra in mm/d, hence the 0.408.

    Args:
        tmin_c: the day's minimum, degC.
        tmax_c: the day's maximum, degC; not below the minimum.
        ra_mj: radiation above the air Ra, in MJ m-2 d-1 (not mm), 0 to 50.
        tmean_c: the day's mean if it was measured; else the middle of the two.

    Raises:
        OutOfRangeError: a figure is outside its range. Below a mean of -17.8 degC: 0 mm.
    """
    require_min_max(tmin_c, tmax_c)
    within("the radiation", ra_mj, 0.0, 50.0, "MJ/m2 a day")
    mean_c = (tmin_c + tmax_c) / 2.0 if tmean_c is None else tmean_c
    within("the mean temperature", mean_c, tmin_c, tmax_c, "degC")
    return max(0.0, 0.0023 * (mean_c + 17.8) * sqrt(tmax_c - tmin_c) * MM_PER_MJ * ra_mj)


def hargreaves_fitted_range_mm(tmin_c: float, tmax_c: float, ra_mj: float) -> float:
    """Return evapotranspiration in mm per day by the Hargreaves-Samani form with fitted range.

    McMahon, Peel, Lowe, Srikanthan & McVicar 2013, Hydrol. Earth Syst. Sci. 17:1331, Supplement:
    0.0135 C Ra (T + 17.8) sqrt(D), with D = Tmax - Tmin, C = 0.00185 D^2 - 0.0433 D + 0.4023 and
    Ra in mm/d. It can stand far from eq. 52 of FAO Paper 56: never compare the two.

    Args:
        tmin_c: the day's minimum, degC.
        tmax_c: the day's maximum, degC; not below the minimum.
        ra_mj: radiation above the air Ra, in MJ m-2 d-1, 0 to 50.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    require_min_max(tmin_c, tmax_c)
    within("the radiation", ra_mj, 0.0, 50.0, "MJ/m2 a day")
    spread = tmax_c - tmin_c
    fitted = 0.00185 * spread**2 - 0.0433 * spread + 0.4023
    mean_c = (tmin_c + tmax_c) / 2.0
    ra_mm = ra_mj / LATENT_HEAT_MJ_PER_KG
    return max(0.0, 0.0135 * fitted * ra_mm * (mean_c + 17.8) * sqrt(spread))


def turc_mm(tmean_c: float, rs_mj: float, humidity_pct: float) -> float:
    """Return evapotranspiration in mm per day from mean, sun and humidity: for humid places.

    Turc 1961 as given by McMahon et al. 2013, Hydrol. Earth Syst. Sci. 17:1331, Supplement:
    0.013 (23.88 Rs + 50) T / (T + 15), times 1 + (50 - RH)/70 below 50 percent humidity.

    Args:
        tmean_c: the day's mean T, degC, 0 to 60; it is 0 mm at 0 degC.
        rs_mj: radiation on level ground Rs, MJ m-2 d-1, 0 to 50.
        humidity_pct: the day's mean relative humidity RH, percent.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    within("the mean temperature", tmean_c, 0.0, 60.0, "degC")
    within("the radiation", rs_mj, 0.0, 50.0, "MJ/m2 a day")
    within("the relative humidity", humidity_pct, 0.0, 100.0, "%")
    dryness = 1.0 + max(0.0, 50.0 - humidity_pct) / 70.0
    return 0.013 * (23.88 * rs_mj + 50.0) * tmean_c / (tmean_c + 15.0) * dryness
