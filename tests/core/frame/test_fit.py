"""Refitting a frame to its thermometer: recovered, shrunk, and impossible readings named."""

from datetime import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.core.errors import OutOfRangeError
from benchround.core.frame.build import FrameBuild, Glazing, LidPosition
from benchround.core.frame.day import FrameFit, frame_day, usual_night_gain_c
from benchround.core.frame.fit import FrameReading, fit_frame
from benchround.core.frame.hours import frame_hours

FRAME = FrameBuild(1.8, 0.9, 0.3, Glazing.GLASS)
SHUT = (LidPosition.SHUT,) * 24
HOURS = frame_hours(6.0, 16.0, 18.0, 52.0, 105, time(6, 10), time(19, 55), 2.0)
DARKEST_C = min(hour.air_c for hour in HOURS if hour.radiation_wm2 == 0.0)


def shown_by(
    factor: float, name: str = "a day", plan: tuple[LidPosition, ...] = SHUT
) -> FrameReading:
    """The reading a frame with a known sun factor would give."""
    day = frame_day(FRAME, HOURS, plan, FrameFit(sun_factor=factor), night_gain=0.0)
    return FrameReading(name, HOURS, plan, inside_max_c=day.max_c)


@settings(deadline=None)
@given(st.floats(0.4, 2.0))
def test_many_readings_recover_the_factor_they_came_from(factor: float) -> None:
    fit = fit_frame(FRAME, [shown_by(factor)] * 40).fit
    assert fit.sun_factor == pytest.approx(factor, rel=0.03)


def test_the_factor_is_found_through_a_half_open_lid_too() -> None:
    plan = (LidPosition.CRACK,) * 24
    fit = fit_frame(FRAME, [shown_by(0.7, plan=plan)] * 60).fit
    assert fit.sun_factor == pytest.approx(0.7, rel=0.03)


def test_one_reading_moves_only_part_of_the_way() -> None:
    fit = fit_frame(FRAME, [shown_by(0.6)]).fit
    assert 0.6 < fit.sun_factor < 0.9
    assert fit.sun_readings == 1


def test_the_doubt_after_one_reading_by_hand() -> None:
    """Prior 0.4, reading sqrt(0.2^2 + (2 K / gain)^2): precisions add."""
    gain = shown_by(1.0).inside_max_c
    noon = max(HOURS, key=lambda hour: hour.air_c + 0.035 * hour.radiation_wm2)
    assert gain is not None
    error2 = 0.2**2 + (2.0 / (gain - noon.air_c)) ** 2
    fit = fit_frame(FRAME, [shown_by(1.0)]).fit
    assert fit.sun_spread == pytest.approx((1.0 / (1.0 / 0.16 + 1.0 / error2)) ** 0.5)


def test_more_readings_leave_less_doubt() -> None:
    spreads = [fit_frame(FRAME, [shown_by(0.7)] * n).fit.sun_spread for n in (0, 1, 4, 16)]
    assert spreads == sorted(spreads, reverse=True)
    assert len(set(spreads)) == 4


def test_readings_that_disagree_leave_more_doubt() -> None:
    agreeing = fit_frame(FRAME, [shown_by(0.8)] * 4).fit
    torn = fit_frame(FRAME, [shown_by(0.4), shown_by(1.6), shown_by(0.4), shown_by(1.6)]).fit
    assert torn.sun_spread > agreeing.sun_spread


def test_no_readings_leave_the_frame_as_built() -> None:
    fit = fit_frame(FRAME, []).fit
    assert (fit.sun_factor, fit.sun_readings, fit.night_readings) == (1.0, 0, 0)
    assert fit.night_gain_c == pytest.approx(usual_night_gain_c(FRAME))


def test_the_night_gain_is_weighed_against_the_default() -> None:
    """Equal errors: prior 2.0 and one reading of 0.0 meet at 1.0 with error 1/sqrt(2)."""
    reading = FrameReading("a night", HOURS, SHUT, inside_min_c=DARKEST_C)
    fit = fit_frame(FRAME, [reading]).fit
    assert fit.night_gain_c == pytest.approx(1.0)
    assert fit.night_spread_c == pytest.approx(0.5**0.5)
    assert fit.night_readings == 1


def test_a_night_with_the_lid_open_says_nothing_of_the_shut_frame() -> None:
    reading = FrameReading("a night", HOURS, (LidPosition.OFF,) * 24, inside_min_c=DARKEST_C)
    assert fit_frame(FRAME, [reading]).fit.night_readings == 0


@pytest.mark.parametrize(
    ("low", "high", "word"),
    [
        pytest.param(20.0, 12.0, "above the maximum", id="minimum above maximum"),
        pytest.param(5.0, 80.0, "80 C lies outside", id="80 degrees"),
        pytest.param(5.0, 12.0, "no sun on this frame", id="colder than outside on a bright day"),
        pytest.param(30.0, 42.0, "without heat", id="a night as warm as a heated one"),
    ],
)
def test_contradictory_readings_are_named_and_not_used(low: float, high: float, word: str) -> None:
    good = shown_by(0.8, "good day")
    bad = FrameReading("12 April", HOURS, SHUT, inside_max_c=high, inside_min_c=low)
    result = fit_frame(FRAME, [good, bad])
    alone = fit_frame(FRAME, [good])
    assert [r.name for r in result.rejected] == ["12 April"]
    assert word in result.rejected[0].reason
    if "no sun" not in word and "without" not in word:
        assert result.fit == alone.fit
    elif "no sun" in word:
        assert result.fit.sun_factor == alone.fit.sun_factor
    else:
        assert result.fit.night_gain_c == alone.fit.night_gain_c


def test_a_dull_day_says_nothing_of_the_sun() -> None:
    dull = frame_hours(6.0, 9.0, 0.5, 52.0, 105, time(6, 10), time(19, 55), 2.0)
    fit = fit_frame(FRAME, [FrameReading("dull", dull, SHUT, inside_max_c=15.0)]).fit
    assert fit.sun_readings == 0


def test_a_reading_without_its_hours_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="24"):
        fit_frame(FRAME, [FrameReading("short", HOURS[:5], SHUT, inside_max_c=30.0)])
