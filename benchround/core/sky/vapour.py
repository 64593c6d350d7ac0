"""Water vapour in air: how much it holds, how much it could hold, and what is between.

All after Allen, Pereira, Raes & Smith 1998, Crop evapotranspiration, FAO Irrigation and Drainage
Paper 56 ("FAO-56" below). Pressures are in kPa, temperatures in degC, humidities in percent.
"""

from math import exp, log

from benchround.core.errors import OutOfRangeError
from benchround.core.numbers.ranges import COLDEST_AIR_C, within

HOTTEST_UNDER_GLASS_C = 75.0
"""A shut frame in full sun can pass 60 degC; above this a reading is taken for a mistake."""
STANDARD_PRESSURE_KPA = 101.3
"""Air pressure at sea level, FAO-56 eq. 7."""
PSYCHROMETRIC_PER_KPA = 0.000665
"""Psychrometric constant per kPa of air pressure, 1/degC, FAO-56 eq. 8."""
VENTILATED_WET_BULB_PER_C = 0.000662
"""Coefficient of a ventilated wet bulb, 1/degC, FAO-56 eq. 16 (air moving at some 5 m/s)."""

_TETENS_A = 17.27  # FAO-56 eq. 11
_TETENS_B_C = 237.3  # FAO-56 eq. 11
_TETENS_KPA = 0.6108  # FAO-56 eq. 11, the pressure at 0 degC


def _temperature(temp_c: float) -> float:
    return within("the air temperature", temp_c, COLDEST_AIR_C, HOTTEST_UNDER_GLASS_C, "degC")


def _humidity(humidity_pct: float) -> float:
    return within("the relative humidity", humidity_pct, 0.0, 100.0, "%")


def saturation_kpa(temp_c: float) -> float:
    """Return the vapour pressure of saturated air, e0(T), in kPa.

    Allen et al. 1998, FAO-56, eq. 11: e0 = 0.6108 exp(17.27 T / (T + 237.3)).

    Args:
        temp_c: air temperature T in degC, -60 to 75.

    Raises:
        OutOfRangeError: the temperature is outside that range.
    """
    temp_c = _temperature(temp_c)
    return _TETENS_KPA * exp(_TETENS_A * temp_c / (temp_c + _TETENS_B_C))


def mean_saturation_kpa(tmin_c: float, tmax_c: float) -> float:
    """Return the day's mean saturation pressure, es, in kPa: the mean of both ends.

    Allen et al. 1998, FAO-56, eq. 12. The curve bends upward, so e0 of the mean temperature
    would be too small.
    """
    return (saturation_kpa(tmin_c) + saturation_kpa(tmax_c)) / 2.0


def slope_kpa_per_c(temp_c: float) -> float:
    """Return how steeply saturation pressure rises at a temperature, in kPa per degC.

    Allen et al. 1998, FAO-56, eq. 13: 4098 e0(T) / (T + 237.3)^2; T in degC, -60 to 75.
    """
    return 4098.0 * saturation_kpa(temp_c) / (temp_c + _TETENS_B_C) ** 2


def deficit_kpa(temp_c: float, humidity_pct: float) -> float:
    """Return the vapour pressure deficit in kPa: what the air could still take up.

    Follows from Allen et al. 1998, FAO-56, eqs. 10 and 11: e0(T) (1 - RH/100).

    Args:
        temp_c: air temperature T in degC, -60 to 75.
        humidity_pct: relative humidity RH in percent, 0 to 100.

    Raises:
        OutOfRangeError: a figure is outside its range.
    """
    return saturation_kpa(temp_c) * (1.0 - _humidity(humidity_pct) / 100.0)


def pressure_kpa(altitude_m: float) -> float:
    """Return the usual air pressure at an altitude, in kPa.

    Allen et al. 1998, FAO-56, eq. 7: P = 101.3 ((293 - 0.0065 z) / 293)^5.26; z in m, -500 to
    6000.
    """
    within("the altitude", altitude_m, -500.0, 6000.0, "m")
    return STANDARD_PRESSURE_KPA * float(((293.0 - 0.0065 * altitude_m) / 293.0) ** 5.26)


def psychrometric_kpa_per_c(pressure_kpa: float) -> float:
    """Return the psychrometric constant in kPa per degC.

    Allen et al. 1998, FAO-56, eq. 8: 0.000665 P; P in kPa, 40 to 110.
    """
    within("the air pressure", pressure_kpa, 40.0, 110.0, "kPa")
    return PSYCHROMETRIC_PER_KPA * pressure_kpa


def actual_from_extremes_kpa(
    tmin_c: float, tmax_c: float, humidity_max_pct: float, humidity_min_pct: float
) -> float:
    """Return the day's actual vapour pressure from its humidity extremes, in kPa.

    Allen et al. 1998, FAO-56, eq. 17: the highest humidity goes with the lowest temperature.
    """
    at_dawn = saturation_kpa(tmin_c) * _humidity(humidity_max_pct) / 100.0
    at_noon = saturation_kpa(tmax_c) * _humidity(humidity_min_pct) / 100.0
    return (at_dawn + at_noon) / 2.0


def actual_from_mean_humidity_kpa(tmin_c: float, tmax_c: float, humidity_pct: float) -> float:
    """Return the day's actual vapour pressure from its mean humidity, in kPa.

    Allen et al. 1998, FAO-56, eq. 19; less certain than the extremes.
    """
    return mean_saturation_kpa(tmin_c, tmax_c) * _humidity(humidity_pct) / 100.0


def actual_from_dew_point_kpa(dew_point_c: float) -> float:
    """Return the actual vapour pressure of air with a known dew point, in kPa.

    Allen et al. 1998, FAO-56, eq. 14: saturation pressure at the dew point.
    """
    return saturation_kpa(dew_point_c)


def actual_from_minimum_kpa(tmin_c: float) -> float:
    """Return a guess at the actual vapour pressure when no humidity was measured, in kPa.

    Allen et al. 1998, FAO-56, eq. 48: the dew point is taken to equal the night's minimum. Too
    moist for dry places.
    """
    return saturation_kpa(tmin_c)


def actual_from_wet_bulb_kpa(
    dry_c: float,
    wet_c: float,
    pressure_kpa: float,
    coefficient_per_c: float = VENTILATED_WET_BULB_PER_C,
) -> float:
    """Return the actual vapour pressure from a dry and a wet bulb, in kPa.

    Allen et al. 1998, FAO-56, eq. 15: e0(Twet) - a P (Tdry - Twet).

    Args:
        dry_c: dry bulb, degC.
        wet_c: wet bulb, degC; at most the dry bulb.
        pressure_kpa: air pressure P in kPa, 40 to 110.
        coefficient_per_c: coefficient a of the instrument in 1/degC; 0.000662 for a ventilated
            one, 0.0008 naturally ventilated, 0.0012 indoors.

    Raises:
        OutOfRangeError: a figure is outside its range, the wet bulb is above the dry one, or the
            two together would need air drier than dry.
    """
    within("the air pressure", pressure_kpa, 40.0, 110.0, "kPa")
    within("the wet bulb", wet_c, COLDEST_AIR_C, _temperature(dry_c), "degC")
    actual = saturation_kpa(wet_c) - coefficient_per_c * pressure_kpa * (dry_c - wet_c)
    if actual < 0.0:
        raise OutOfRangeError(
            f"a wet bulb of {wet_c:g} degC under a dry bulb of {dry_c:g} degC would need a vapour"
            f" pressure of {actual:.2f} kPa, below 0 kPa: is the wick wet?"
        )
    return actual


def dew_point_c(actual_kpa: float) -> float:
    """Return the dew point in degC of air holding a known vapour pressure.

    The inverse of Allen et al. 1998, FAO-56, eq. 11; the pressure from 0.002 to 38 kPa.
    """
    within("the vapour pressure", actual_kpa, 0.002, 38.0, "kPa")
    ratio = log(actual_kpa / _TETENS_KPA)
    return _TETENS_B_C * ratio / (_TETENS_A - ratio)
