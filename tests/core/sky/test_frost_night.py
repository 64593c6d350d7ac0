import math
from functools import partial

import numpy as np
import pytest
from scipy.stats import linregress

from benchround.core.errors import OutOfRangeError
from benchround.core.sky.frost_night import FrostNight, fit_frost_rule, night_trend_c
from tests.core.published import Figure, Seen, figure_cases

SNYDER = "Snyder & de Melo-Abreu 2005, FAO, vol. 1, ch. 5, as in anadiedrichs/frost"

TEMPS = (3.2, 0.8, 0.2, 2.6, 4.4, 5.2, 2.7, 1.2, 4.5, 5.6)
DEW_POINTS = (-4.2, -8.8, -6.5, -6.2, -6.1, 2.6, -0.7, -1.7, -1.2, 0.1)
MINIMA = (-3.1, -5.0, -6.3, -5.4, -4.0, -2.5, -4.8, -5.0, -4.4, -3.3)
SAMPLE = tuple(
    FrostNight(temp, dew_point, tmin)
    for temp, dew_point, tmin in zip(TEMPS, DEW_POINTS, MINIMA, strict=True)
)

FIGURES = [
    Figure("F01 slope on temperature", SNYDER, Seen.SECOND_HAND, 0.5028, 0.0005,
           lambda: fit_frost_rule(SAMPLE).per_temp),
    Figure("F01 slope on dew point", SNYDER, Seen.SECOND_HAND, 0.02647, 0.0005,
           lambda: fit_frost_rule(SAMPLE).per_dew_point),
    Figure("F01 constant", SNYDER, Seen.SECOND_HAND, -5.8220, 0.0005,
           lambda: fit_frost_rule(SAMPLE).constant_c),
    Figure("F01 forecast for 10 and 2", SNYDER, Seen.SECOND_HAND, -0.7409, 0.0005,
           lambda: fit_frost_rule(SAMPLE).tmin_c(10.0, 2.0)),
    *(
        Figure(f"F02 trend, {hours:g} h after sunset", f"{SNYDER}, getTrend", Seen.READ, temp_c,
               0.0005, partial(night_trend_c, 0.95, -5.45, hours, 15.0))
        for hours, temp_c in ((3.0, -0.8250), (4.0, -1.5603), (9.0, -3.7463), (15.0, -5.45))
    ),
]  # fmt: skip


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_published_figures(figure: Figure) -> None:
    figure.assert_reproduced()


def test_the_joint_regression_is_not_the_method() -> None:
    # F01: both at once gives 0.4473, 0.0451, -5.5924, which is another rule
    matrix = np.column_stack([TEMPS, DEW_POINTS, np.ones(len(TEMPS))])
    joint = np.linalg.lstsq(matrix, np.array(MINIMA), rcond=None)[0]
    assert list(joint) == pytest.approx([0.4473, 0.0451, -5.5924], abs=0.0005)
    rule = fit_frost_rule(SAMPLE)
    assert abs(rule.per_temp - joint[0]) > 0.05
    assert abs(rule.constant_c - joint[2]) > 0.2


def test_scipy_agrees_on_both_steps() -> None:
    first = linregress(TEMPS, MINIMA)
    left = np.array(MINIMA) - first.slope * np.array(TEMPS) - first.intercept
    second = linregress(DEW_POINTS, left)
    rule = fit_frost_rule(SAMPLE)
    assert rule.per_temp == pytest.approx(first.slope)
    assert rule.per_dew_point == pytest.approx(second.slope)
    assert rule.constant_c == pytest.approx(first.intercept + second.intercept)
    rest = left - second.slope * np.array(DEW_POINTS) - second.intercept
    assert rule.error_c == pytest.approx(math.sqrt(float(np.mean(rest**2))))
    assert rule.nights == 10


def test_the_trend_starts_where_it_is_told() -> None:
    assert night_trend_c(0.95, -5.45, 2.0, 15.0) == pytest.approx(0.95)


def test_too_few_or_like_nights_are_refused() -> None:
    with pytest.raises(OutOfRangeError, match="2 frost nights are too few"):
        fit_frost_rule(SAMPLE[:2])
    with pytest.raises(OutOfRangeError, match="all alike"):
        fit_frost_rule([SAMPLE[0]] * 5)


def test_bad_figures_are_named() -> None:
    with pytest.raises(OutOfRangeError, match="dew point is nan degC, outside -60 to 60"):
        fit_frost_rule([*SAMPLE, FrostNight(1.0, math.nan, -3.0)])
    with pytest.raises(OutOfRangeError, match="temperature after sunset is 80 degC"):
        fit_frost_rule(SAMPLE).tmin_c(80.0, 2.0)
    with pytest.raises(OutOfRangeError, match="minimum is 3 degC, outside -60 to 1 degC"):
        night_trend_c(1.0, 3.0, 5.0, 12.0)
    with pytest.raises(OutOfRangeError, match="hours since sunset is 1 h, outside 2 to 12 h"):
        night_trend_c(1.0, -3.0, 1.0, 12.0)
