"""Heat in degree-days: how long and how far the day stood above what a plant needs to grow.

Between a day's minimum and maximum the temperature is taken to run as a sine or as a triangle.
With m the mean and a half the range, the area above a threshold T is

    0                                              where the maximum is at or below T
    m - T                                          where the minimum is at or above T
    ((m - T)(pi/2 - u) + a cos u) / pi             sine, u = asin((T - m) / a)
    (Tmax - T)^2 / (2 (Tmax - Tmin))               triangle

(sine: Baskerville & Emin 1969, Ecology 50:514; both, with the cutoff, in Zalom et al. 1983,
University of California leaflet 21373). An upper threshold cuts the curve off flat: area above the
lower one less area above the upper one. The double forms take the second half of the day down to
the next night's minimum. Which form is used matters: a season's sums differ by a tenth and more,
so a heat requirement goes with its method.
"""

from collections.abc import Callable
from math import asin, cos, pi

from benchround.core.errors import OutOfRangeError
from benchround.core.numbers.ranges import require_air_temp, require_min_max

FAHRENHEIT_50_C = 10.0
FAHRENHEIT_86_C = 30.0
"""Base and cap of the truncated North American form (50 and 86 degF; NOAA)."""

_Above = Callable[[float, float, float], float]


def single_sine(
    tmin_c: float, tmax_c: float, lower_c: float, upper_c: float | None = None
) -> float:
    """Return one day's degree-days by the single sine, horizontal cutoff.

    Baskerville & Emin 1969, Ecology 50:514; Zalom et al. 1983, UC leaflet 21373.

    Args:
        tmin_c: the day's minimum, degC.
        tmax_c: the day's maximum, degC; not below the minimum.
        lower_c: threshold above which heat counts, degC.
        upper_c: threshold above which it counts no further; None for none.

    Raises:
        OutOfRangeError: a temperature is outside -60 to 60 degC, or a pair is the wrong way round.
    """
    return _cut_off(_above_sine, tmin_c, tmax_c, lower_c, upper_c)


def single_triangle(
    tmin_c: float, tmax_c: float, lower_c: float, upper_c: float | None = None
) -> float:
    """Return one day's degree-days by the single triangle, horizontal cutoff.

    Zalom et al. 1983, UC leaflet 21373; arguments and errors as `single_sine`.
    """
    return _cut_off(_above_triangle, tmin_c, tmax_c, lower_c, upper_c)


def averaging(tmin_c: float, tmax_c: float, lower_c: float, upper_c: float | None = None) -> float:
    """Return one day's degree-days from the mean alone: max(0, m - lower), cut at the upper.

    Zalom et al. 1983, UC leaflet 21373; arguments and errors as `single_sine`. Misses the warm
    hours of a day whose mean is below the threshold.
    """
    return _cut_off(_above_mean, tmin_c, tmax_c, lower_c, upper_c)


def double_sine(
    tmin_c: float,
    tmax_c: float,
    next_tmin_c: float,
    lower_c: float,
    upper_c: float | None = None,
) -> float:
    """Return one day's degree-days by the double sine, horizontal cutoff.

    Half from this day's minimum, half from the next night's; Zalom et al. 1983, UC leaflet 21373.
    Where the next night stays warmer than this day was, that half rises instead of falling.
    Arguments and errors as `single_sine`.
    """
    halves = _halves(tmin_c, tmax_c, next_tmin_c)
    return sum(single_sine(*half, lower_c, upper_c) for half in halves) / 2.0


def double_triangle(
    tmin_c: float,
    tmax_c: float,
    next_tmin_c: float,
    lower_c: float,
    upper_c: float | None = None,
) -> float:
    """Return one day's degree-days by the double triangle, horizontal cutoff.

    As `double_sine`, with `single_triangle` for each half.
    """
    halves = _halves(tmin_c, tmax_c, next_tmin_c)
    return sum(single_triangle(*half, lower_c, upper_c) for half in halves) / 2.0


def met_office_four_case(tmin_c: float, tmax_c: float, base_c: float) -> float:
    """Return one day's growing degree-days by the four-case rule of the UK Met Office.

    Rule as printed on Met Eireann's degree-day page, cases I to IV:
        Tmin >= B: m - B;  Tmax <= B: 0;
        m >= B: (Tmax - B)/2 - (B - Tmin)/4;  m < B: (Tmax - B)/4.

    Args:
        tmin_c: the day's minimum, degC.
        tmax_c: the day's maximum, degC; not below the minimum.
        base_c: the base temperature B, degC.

    Raises:
        OutOfRangeError: a temperature is outside -60 to 60 degC, or the pair is swapped.
    """
    require_min_max(tmin_c, tmax_c)
    require_air_temp("the base temperature", base_c)
    mean_c = (tmin_c + tmax_c) / 2.0
    if tmin_c >= base_c:
        return mean_c - base_c
    if tmax_c <= base_c:
        return 0.0
    if mean_c >= base_c:
        return (tmax_c - base_c) / 2.0 - (base_c - tmin_c) / 4.0
    return (tmax_c - base_c) / 4.0


def truncated_average(
    tmin_c: float,
    tmax_c: float,
    lower_c: float = FAHRENHEIT_50_C,
    upper_c: float = FAHRENHEIT_86_C,
) -> float:
    """Return one day's degree-days with both readings drawn in to the thresholds, then averaged.

    The North American form: a minimum below the base counts as the base, a maximum above the cap
    as the cap (NOAA, base 50 and cap 86 degF). Arguments and errors as `single_sine`.
    """
    require_min_max(tmin_c, tmax_c)
    _require_thresholds(lower_c, upper_c)
    low = min(max(tmin_c, lower_c), upper_c)
    high = min(max(tmax_c, lower_c), upper_c)
    return (low + high) / 2.0 - lower_c


def _halves(
    tmin_c: float, tmax_c: float, next_tmin_c: float
) -> tuple[tuple[float, float], tuple[float, float]]:
    """Return the (lowest, highest) of the rising and of the falling half of a day."""
    return (tmin_c, tmax_c), (min(tmax_c, next_tmin_c), max(tmax_c, next_tmin_c))


def _cut_off(
    above: _Above, tmin_c: float, tmax_c: float, lower_c: float, upper_c: float | None
) -> float:
    require_min_max(tmin_c, tmax_c)
    _require_thresholds(lower_c, upper_c)
    whole = above(tmin_c, tmax_c, lower_c)
    return whole if upper_c is None else whole - above(tmin_c, tmax_c, upper_c)


def _require_thresholds(lower_c: float, upper_c: float | None) -> None:
    require_air_temp("the lower threshold", lower_c)
    if upper_c is None:
        return
    require_air_temp("the upper threshold", upper_c)
    if upper_c <= lower_c:
        raise OutOfRangeError(
            f"the upper threshold {upper_c:g} degC must lie above the lower one, {lower_c:g} degC:"
            " were the two swapped?"
        )


def _above_sine(tmin_c: float, tmax_c: float, threshold_c: float) -> float:
    if tmax_c <= threshold_c:
        return 0.0
    mean_c, half = (tmin_c + tmax_c) / 2.0, (tmax_c - tmin_c) / 2.0
    if tmin_c >= threshold_c:
        return mean_c - threshold_c
    angle = asin((threshold_c - mean_c) / half)
    return ((mean_c - threshold_c) * (pi / 2.0 - angle) + half * cos(angle)) / pi


def _above_triangle(tmin_c: float, tmax_c: float, threshold_c: float) -> float:
    if tmax_c <= threshold_c:
        return 0.0
    if tmin_c >= threshold_c:
        return (tmin_c + tmax_c) / 2.0 - threshold_c
    return (tmax_c - threshold_c) ** 2 / (2.0 * (tmax_c - tmin_c))


def _above_mean(tmin_c: float, tmax_c: float, threshold_c: float) -> float:
    return max(0.0, (tmin_c + tmax_c) / 2.0 - threshold_c)
