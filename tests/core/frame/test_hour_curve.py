"""Reading times off an hourly curve."""

from datetime import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.sky.hour_curve import clock_at, falls_below, last_above, rises_above, value_at

RAMP = tuple(float(hour) for hour in range(24))  # hour h stands at h:30
HUMP = tuple(12.0 - abs(12 - hour) for hour in range(24))
CURVES = st.lists(st.floats(-20, 60), min_size=24, max_size=24)


@pytest.mark.parametrize(("minute", "value"), [(0, 0.0), (30, 0.0), (60, 0.5), (750, 12.0)])
def test_between_hours_the_curve_is_straight(minute: float, value: float) -> None:
    assert value_at(RAMP, minute) == pytest.approx(value)


def test_times_on_a_hump_by_hand() -> None:
    """Above 9.5 from 10:00 to 15:00, the hours being marked at half past."""
    assert rises_above(HUMP, 9.5, 0.0, 1439.0) == pytest.approx(10 * 60.0)
    assert falls_below(HUMP, 9.5, 12 * 60.0, 1439.0) == pytest.approx(15 * 60.0)
    assert last_above(HUMP, 9.5, 0.0, 1439.0) == pytest.approx(15 * 60.0)
    assert rises_above(HUMP, 12.5, 0.0, 1439.0) is None


@given(CURVES, st.floats(-20, 60))
def test_no_time_before_the_first_rise_is_above(curve: list[float], limit: float) -> None:
    found = rises_above(curve, limit, 0.0, 1439.0)
    before = 1439.0 if found is None else found
    assert all(value_at(curve, m) <= limit + 1e-6 for m in range(0, int(before), 7))


@given(CURVES, st.floats(-20, 60))
def test_no_time_after_the_last_is_above(curve: list[float], limit: float) -> None:
    found = last_above(curve, limit, 0.0, 1439.0)
    after = 0 if found is None else int(found) + 1
    assert all(value_at(curve, m) <= limit + 1e-6 for m in range(after, 1439, 7))


@pytest.mark.parametrize(
    ("minute", "step", "clock"),
    [
        (522.9, 1, time(8, 42)),
        (522.9, 5, time(8, 40)),
        (-3.0, 1, time(0, 0)),
        (1500, 1, time(23, 59)),
    ],
)
def test_clock_times_are_rounded_down(minute: float, step: int, clock: time) -> None:
    assert clock_at(minute, step) == clock
