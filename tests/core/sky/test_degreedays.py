import math
from collections.abc import Callable
from functools import partial

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import OutOfRangeError
from benchround.core.sky import degreedays as heat
from tests.core.published import Figure, Seen, figure_cases, rows

UCIPM = "UC IPM tool output, in TrenchR tests"
TRENCHR = "TrenchR tests"
MET = "rule on Met Eireann's degree-day page, value computed"

Single = Callable[[float, float, float, float | None], float]


def ojai() -> list[tuple[float, float, dict[str, str]]]:
    table = rows("ucipm_degree_days_ojai_2016.csv")
    return [(float(row["tmin_c"]), float(row["tmax_c"]), row) for row in table]


# Totals of the days as the tool printed them, rounded to 0.01, halves up. Readings in tenths make
# exact halves frequent, so unrounded days add up to as much as 0.3 less.
YEAR_TOTALS = {"dd_single_sine": 2095.99, "dd_single_triangle": 2026.76,
               "dd_double_sine": 2096.13, "dd_double_triangle": 2027.02}  # fmt: skip


def as_printed(degree_days: float) -> float:
    return math.floor(degree_days * 100.0 + 0.5 + 1e-6) / 100.0


@pytest.mark.parametrize(
    ("column", "method"),
    [
        pytest.param("dd_single_sine", heat.single_sine, id=f"D01: {UCIPM} ({Seen.READ})"),
        pytest.param("dd_single_triangle", heat.single_triangle, id=f"D02: {UCIPM} ({Seen.READ})"),
    ],
)
def test_a_year_by_the_single_methods(column: str, method: Single) -> None:
    ours = [method(low, high, 12.0, 33.0) for low, high, _ in ojai()]
    printed = [float(row[column]) for _, _, row in ojai()]
    assert len(ours) == 366
    assert max(abs(a - b) for a, b in zip(ours, printed, strict=True)) < 0.006
    assert sum(map(as_printed, ours)) == pytest.approx(YEAR_TOTALS[column], abs=0.02)


@pytest.mark.parametrize(
    ("column", "method"),
    [
        pytest.param("dd_double_sine", heat.double_sine, id=f"D03 sine: {UCIPM} ({Seen.READ})"),
        pytest.param("dd_double_triangle", heat.double_triangle,
                     id=f"D03 triangle: {UCIPM} ({Seen.READ})"),
    ],
)  # fmt: skip
def test_a_year_by_the_double_methods(
    column: str, method: Callable[[float, float, float, float, float | None], float]
) -> None:
    days = ojai()
    following = [low for low, _, _ in days[1:]]
    ours = [
        method(low, high, next_low, 12.0, 33.0)
        for (low, high, _), next_low in zip(days, following, strict=False)
    ]
    printed = [float(row[column]) for _, _, row in days]
    assert len(ours) == 365
    gaps = [abs(a - b) for a, b in zip(ours, printed, strict=False)]
    assert max(gaps) < 0.006
    total = sum(map(as_printed, ours)) + printed[-1]  # no night is known after the last day
    assert total == pytest.approx(YEAR_TOTALS[column], abs=0.02)


FIGURES = [
    Figure(f"D04 {low}/{high} {name}", UCIPM, Seen.READ, dd, 0.006,
           partial(method, low, high, 12.0, 33.0))
    for name, method, days in (
        ("sine", heat.single_sine,
         ((7.8, 19.4, 2.72), (4.4, 22.2, 3.51), (10.0, 21.7, 4.21), (10.6, 38.9, 11.71))),
        ("triangle", heat.single_triangle,
         ((7.8, 19.4, 2.36), (4.4, 22.2, 2.92), (10.0, 21.7, 4.02), (10.6, 38.9, 12.17))),
    )
    for low, high, dd in days
]  # fmt: skip
FIGURES += [
    Figure(f"D05 {low}/40 {name}", TRENCHR, Seen.SECOND_HAND, dd, 0.01,
           partial(method, low, 40.0, 12.0, 33.0))
    for name, method, days in (
        ("sine", heat.single_sine, ((7.0, 10.94), (13.0, 12.94), (35.0, 21.0))),
        ("triangle", heat.single_triangle, ((7.0, 11.14), (13.0, 13.59), (35.0, 21.0))),
        ("average", heat.averaging, ((7.0, 11.5), (13.0, 14.5), (35.0, 21.0))),
    )
    for low, dd in days
]  # fmt: skip
FIGURES += [
    Figure("D08 7/14 sine", TRENCHR, Seen.SECOND_HAND, 0.468, 0.005,
           lambda: heat.single_sine(7.0, 14.0, 12.0, 33.0)),
    Figure("D08 7/20 sine", TRENCHR, Seen.SECOND_HAND, 2.874, 0.005,
           lambda: heat.single_sine(7.0, 20.0, 12.0, 33.0)),
    Figure("D08 7/14 triangle", TRENCHR, Seen.SECOND_HAND, 0.286, 0.005,
           lambda: heat.single_triangle(7.0, 14.0, 12.0, 33.0)),
    Figure("D08 7/20 triangle", TRENCHR, Seen.SECOND_HAND, 2.462, 0.005,
           lambda: heat.single_triangle(7.0, 20.0, 12.0, 33.0)),
    Figure("D09 5/25 between 10 and 30", "fine integration", Seen.DERIVED, 6.090, 0.001,
           lambda: heat.single_sine(5.0, 25.0, 10.0, 30.0)),
    Figure("D09 3.3/16.7 between 12 and 33", "fine integration", Seen.DERIVED, 1.2284, 0.001,
           lambda: heat.single_sine(3.3, 16.7, 12.0, 33.0)),
    Figure("D09 2/12 above 5", "fine integration", Seen.DERIVED, 2.7207, 0.001,
           lambda: heat.single_sine(2.0, 12.0, 5.0)),
    Figure("D10 2/12 above 5.5", MET, Seen.READ, 2.375, 0.001,
           lambda: heat.met_office_four_case(2.0, 12.0, 5.5)),
    Figure("D10 0/9 above 5.5", MET, Seen.READ, 0.875, 0.001,
           lambda: heat.met_office_four_case(0.0, 9.0, 5.5)),
    Figure("D10 5/25 above 10", MET, Seen.READ, 6.25, 0.001,
           lambda: heat.met_office_four_case(5.0, 25.0, 10.0)),
    Figure("2/12 above 5.5 by sine", "closed form", Seen.DERIVED, 2.414, 0.001,
           lambda: heat.single_sine(2.0, 12.0, 5.5)),
    Figure("2/12 above 5.5 by triangle", "closed form", Seen.DERIVED, 2.112, 0.001,
           lambda: heat.single_triangle(2.0, 12.0, 5.5)),
]  # fmt: skip


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_published_days(figure: Figure) -> None:
    figure.assert_reproduced()


def test_the_sine_of_35_to_40_in_circulation_is_not_reproduced() -> None:
    # D05: a public test asserts 5 for a day wholly above both thresholds; 33 - 12 = 21 is right
    assert heat.single_sine(35.0, 40.0, 12.0, 33.0) == pytest.approx(21.0)


@pytest.mark.parametrize(
    ("method", "total"),
    [(heat.single_sine, 237.8), (heat.single_triangle, 226.1), (heat.averaging, 203.9)],
    ids=[f"Seattle spring 2013, base 10: {name} ({Seen.DERIVED})"
         for name in ("sine", "triangle", "average")],
)  # fmt: skip
def test_the_method_matters_over_a_spring(method: Single, total: float) -> None:
    spring = [
        row
        for row in rows("seattle_extremes_2012-2015.csv")
        if "2013-03-01" <= row["date"] <= "2013-05-31"
    ]
    ours = sum(method(float(row["tmin_c"]), float(row["tmax_c"]), 10.0, None) for row in spring)
    assert len(spring) == 92
    assert ours == pytest.approx(total, abs=0.1)


@given(st.floats(-20.0, 40.0), st.floats(0.0, 19.0), st.floats(-5.0, 20.0), st.floats(5.0, 20.0))
def test_sine_is_the_area_under_the_sine(
    low: float, spread: float, base: float, gap: float
) -> None:
    hours = np.linspace(0.0, 2.0 * math.pi, 20001)[:-1]
    curve = low + spread / 2.0 + spread / 2.0 * np.sin(hours)
    area = float(np.clip(curve - base, 0.0, gap).mean())
    assert heat.single_sine(low, low + spread, base, base + gap) == pytest.approx(area, abs=0.002)


@given(st.floats(-20.0, 40.0), st.floats(0.0, 19.0), st.floats(-5.0, 20.0), st.floats(5.0, 20.0))
def test_triangle_is_the_area_under_the_triangle(
    low: float, spread: float, base: float, gap: float
) -> None:
    curve = low + spread * (np.arange(20000) + 0.5) / 20000.0
    area = float(np.clip(curve - base, 0.0, gap).mean())
    ours = heat.single_triangle(low, low + spread, base, base + gap)
    assert ours == pytest.approx(area, abs=0.002)


@given(st.floats(-10.0, 30.0), st.floats(0.0, 25.0), st.floats(0.0, 15.0))
def test_averaging_never_counts_more_than_the_curve(low: float, spread: float, base: float) -> None:
    average = heat.averaging(low, low + spread, base)
    assert average <= heat.single_triangle(low, low + spread, base) + 1e-9
    assert average <= heat.single_sine(low, low + spread, base) + 1e-9


@given(st.floats(-10.0, 30.0), st.floats(0.0, 25.0))
def test_double_with_a_like_night_is_single(low: float, spread: float) -> None:
    day = (low, low + spread)
    assert heat.double_sine(*day, low, 8.0, 30.0) == pytest.approx(
        heat.single_sine(*day, 8.0, 30.0)
    )
    assert heat.double_triangle(*day, low, 8.0, 30.0) == pytest.approx(
        heat.single_triangle(*day, 8.0, 30.0)
    )


def test_a_night_warmer_than_the_day_before_counts_its_rise() -> None:
    # 2/9 and then a minimum of 11: half the day as 2/9, half rising from 9 to 11, all above 5
    half = heat.single_sine(2.0, 9.0, 5.0) / 2.0
    assert heat.double_sine(2.0, 9.0, 11.0, 5.0) == pytest.approx(half + (10.0 - 5.0) / 2.0)


@pytest.mark.parametrize(
    ("low", "high", "dd"),
    [(4.0, 20.0, 5.0), (12.0, 38.0, 11.0), (2.0, 8.0, 0.0), (31.0, 36.0, 20.0), (12.0, 20.0, 6.0)],
    ids=[f"{low}/{high} drawn in to 10 and 30, NOAA base and cap 50/86 degF ({Seen.READ})"
         for low, high in ((4, 20), (12, 38), (2, 8), (31, 36), (12, 20))],
)  # fmt: skip
def test_truncated_average(low: float, high: float, dd: float) -> None:
    assert heat.truncated_average(low, high) == pytest.approx(dd)


@pytest.mark.parametrize(
    "method", [heat.single_sine, heat.single_triangle, heat.averaging, heat.truncated_average]
)
def test_bad_days_are_named(method: Callable[[float, float, float, float], float]) -> None:
    with pytest.raises(OutOfRangeError, match="minimum 20 degC is above the maximum 10 degC"):
        method(20.0, 10.0, 5.0, 30.0)
    with pytest.raises(OutOfRangeError, match="maximum is 80 degC, outside -60 to 60 degC"):
        method(10.0, 80.0, 5.0, 30.0)
    with pytest.raises(OutOfRangeError, match="minimum is nan degC, outside -60 to 60 degC"):
        method(math.nan, 20.0, 5.0, 30.0)
    with pytest.raises(OutOfRangeError, match="upper threshold 5 degC must lie above"):
        method(10.0, 20.0, 30.0, 5.0)


def test_bad_base_and_next_night_are_named() -> None:
    with pytest.raises(OutOfRangeError, match="base temperature is nan degC"):
        heat.met_office_four_case(2.0, 12.0, math.nan)
    with pytest.raises(OutOfRangeError, match="outside -60 to 60 degC"):
        heat.double_sine(2.0, 12.0, -80.0, 5.0)
