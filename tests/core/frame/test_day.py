"""A day in the frame, and the weather it is drawn from."""

from datetime import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import OutOfRangeError
from benchround.core.frame.build import LID_ORDER, FrameBuild, Glazing, LidPosition
from benchround.core.frame.day import FrameFit, HourWeather, frame_day
from benchround.core.frame.hours import frame_hours

FRAME = FrameBuild(1.8, 0.9, 0.3, Glazing.GLASS)
SHUT = (LidPosition.SHUT,) * 24

HOUR = st.builds(HourWeather, st.floats(-20, 40), st.floats(0, 1000), st.floats(0, 20))
DAY = st.lists(HOUR, min_size=24, max_size=24)


@given(DAY, st.lists(st.sampled_from(LID_ORDER), min_size=24, max_size=24), st.floats(-2, 5))
def test_the_day_s_heat_adds_up(
    hours: list[HourWeather], plan: list[LidPosition], night: float
) -> None:
    day = frame_day(FRAME, hours, plan, night_gain=night)
    lost = sum(t.lost_w + t.evaporated_w + t.into_ground_w for t in day.terms)
    assert day.in_wh == pytest.approx(lost, rel=1e-9, abs=1e-6)
    assert day.in_wh == pytest.approx(day.out_wh, rel=1e-9, abs=1e-6)


@given(DAY, st.integers(0, 23), st.floats(0, 300), st.floats(-2, 5))
def test_more_sun_in_a_shut_frame_is_never_cooler(
    hours: list[HourWeather], hour: int, more: float, night: float
) -> None:
    before = frame_day(FRAME, hours, SHUT, night_gain=night).inside_c
    old = hours[hour]
    brighter = [*hours]
    brighter[hour] = HourWeather(old.air_c, old.radiation_wm2 + more, old.wind_ms)
    after = frame_day(FRAME, brighter, SHUT, night_gain=night).inside_c
    assert after[hour] >= before[hour] - 1e-6
    assert [t for i, t in enumerate(after) if i != hour] == [
        t for i, t in enumerate(before) if i != hour
    ]


def test_a_dark_shut_frame_holds_just_its_night_gain() -> None:
    night = [HourWeather(3.0, 0.0, 1.0)] * 24
    assert frame_day(FRAME, night, SHUT, night_gain=-0.8).inside_c == pytest.approx([2.2] * 24)


def test_by_day_the_larger_of_sun_and_night_gain_counts_not_both() -> None:
    dawn, noon = HourWeather(5.0, 20.0, 1.0), HourWeather(5.0, 500.0, 1.0)
    hours = [dawn] * 12 + [noon] * 12
    inside = frame_day(FRAME, hours, SHUT, night_gain=2.0).inside_c
    assert inside[0] == pytest.approx(7.0)
    assert inside[12] == frame_day(FRAME, hours, SHUT, night_gain=0.0).inside_c[12]


def test_a_night_gain_below_zero_fades_by_a_hundred_watts() -> None:
    hours = [HourWeather(5.0, 50.0, 1.0)] * 12 + [HourWeather(5.0, 100.0, 1.0)] * 12
    cold = frame_day(FRAME, hours, SHUT, night_gain=-1.0).inside_c
    plain = frame_day(FRAME, hours, SHUT, night_gain=0.0).inside_c
    assert cold[0] == pytest.approx(plain[0] - 0.5)
    assert cold[12] == pytest.approx(plain[12])


def test_an_open_lid_keeps_nothing_by_night() -> None:
    night = [HourWeather(3.0, 0.0, 1.0)] * 24
    off = (LidPosition.OFF,) * 24
    assert frame_day(FRAME, night, off, night_gain=2.0).inside_c == (3.0,) * 24


def test_the_fitted_sun_factor_scales_a_shut_frame_s_gain() -> None:
    noon = [HourWeather(15.0, 500.0, 2.0)] * 24
    plain = frame_day(FRAME, noon, SHUT, night_gain=0.0).max_c - 15.0
    fitted = frame_day(FRAME, noon, SHUT, FrameFit(sun_factor=0.6), night_gain=0.0).max_c - 15.0
    assert fitted == pytest.approx(0.6 * plain)


def test_a_forgotten_frame_cooks_and_an_open_one_does_not() -> None:
    """Shut tunnels reach about 40 C in April: Guttormsen 1972, read."""
    hours = frame_hours(6.0, 15.0, 20.0, 52.0, 105, time(6, 10), time(19, 55), 2.0)
    assert 35.0 < frame_day(FRAME, hours, SHUT).max_c < 48.0
    assert frame_day(FRAME, hours, (LidPosition.OFF,) * 24).max_c < 18.0


def test_hours_carry_the_day_s_sun_and_extremes() -> None:
    hours = frame_hours(6.0, 16.0, 18.0, 52.0, 105, time(6, 10), time(19, 55))
    energy = sum(hour.radiation_wm2 for hour in hours) * 0.0036
    assert energy == pytest.approx(18.0)
    assert max(hour.air_c for hour in hours) == pytest.approx(16.0, abs=0.3)
    assert min(hour.air_c for hour in hours) == pytest.approx(6.0, abs=1.0)
    assert all(hour.wind_ms is None and hour.wind_taken_ms == 1.0 for hour in hours)


@pytest.mark.parametrize("count", [0, 23, 25])
def test_a_day_has_twenty_four_hours(count: int) -> None:
    with pytest.raises(OutOfRangeError, match="24"):
        frame_day(FRAME, [HourWeather(10.0, 0.0)] * count, SHUT)


@pytest.mark.parametrize(
    ("air", "sun", "wind"), [(80.0, 0.0, 1.0), (10.0, -5.0, 1.0), (10.0, 0.0, -1.0)]
)
def test_an_hour_out_of_range_is_refused(air: float, sun: float, wind: float) -> None:
    with pytest.raises(OutOfRangeError):
        HourWeather(air, sun, wind)
