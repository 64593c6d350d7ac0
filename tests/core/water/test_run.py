"""A tray's water by the day: books that close, days that match, absences that last."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.containers import container
from benchround.core.errors import OutOfRangeError
from benchround.core.water.balance import (
    ALLOWED_SHARE,
    RootStage,
    TrayWater,
    daily_loss_ml,
    days_left,
    tray_water,
    vapour_lost_g_h,
    weight_share_to_water_at,
)
from benchround.core.water.place import Exposure, place_loss_mm
from benchround.core.water.run import (
    DayPart,
    WaterDay,
    lasts_absence,
    looks_a_day,
    next_watering,
    run_balance,
    share_dried_by,
)

TRAY = TrayWater(128, 25.0, 0.177)

TRAYS = st.builds(
    TrayWater, st.integers(1, 300), st.floats(1, 2000), st.floats(0.005, 0.5), st.floats(0.05, 0.4)
)
DAYS = st.lists(
    st.builds(
        WaterDay,
        et0_mm=st.floats(0, 9),
        exposure=st.sampled_from(Exposure),
        rain_mm=st.floats(0, 40),
        lid_off=st.booleans(),
        watered_ml=st.floats(0, 3000),
        filled=st.booleans(),
        place_factor=st.floats(0.2, 4.0),
    ),
    max_size=12,
)
DRY_DAYS = st.lists(
    st.builds(
        WaterDay, st.floats(0, 9), st.sampled_from(Exposure), st.floats(0, 10), st.booleans()
    ),
    max_size=12,
)


@given(TRAYS, DAYS, st.floats(0, 1))
def test_the_books_close_every_day_and_over_the_run(
    tray: TrayWater, days: list[WaterDay], share: float
) -> None:
    start = share * tray.capacity_ml
    states = run_balance(tray, days, start)
    room = 1e-9 * (tray.capacity_ml + 1e5)
    assert len(states) == len(days)
    for state, following in pairwise(states):
        assert following.start_ml == state.end_ml
    came = sum(s.watered_ml + s.rain_ml for s in states)
    went = sum(s.lost_ml + s.drained_ml for s in states)
    end = states[-1].end_ml if states else start
    assert came - went == pytest.approx(end - start, abs=room)
    assert all(abs(state.residual_ml) <= room for state in states)


@given(TRAYS, DAYS)
def test_water_is_never_below_zero_nor_above_what_the_tray_holds(
    tray: TrayWater, days: list[WaterDay]
) -> None:
    for state in run_balance(tray, days):
        assert 0.0 <= state.end_ml <= tray.capacity_ml
        assert min(state.lost_ml, state.drained_ml, state.short_ml) >= -1e-6


@given(TRAYS, DAYS)
def test_rain_does_nothing_under_a_lid(tray: TrayWater, days: list[WaterDay]) -> None:
    lidded = [WaterDay(d.et0_mm, d.exposure, d.rain_mm, False) for d in days]
    dry = [WaterDay(d.et0_mm, d.exposure) for d in days]
    assert run_balance(tray, lidded) == run_balance(tray, dry)


@given(TRAYS, DRY_DAYS, st.floats(0.05, 1))
def test_a_tray_that_lasts_needs_nothing_and_one_that_does_not_is_told(
    tray: TrayWater, days: list[WaterDay], allowed: float
) -> None:
    away = lasts_absence(tray, days, allowed)
    if away.lasts:
        assert (away.days, away.dry) == (len(days), None)
        assert away.short_ml == pytest.approx(0.0, abs=1e-6 * tray.capacity_ml)
    else:
        assert away.dry is not None
        assert away.days == away.dry.day_index < len(days)


def test_the_water_short_for_an_absence_by_hand() -> None:
    """Three days at 2.5 mm take 1327.5 ml, the tray has 800: 527.5 ml are short."""
    away = lasts_absence(TRAY, [WaterDay(2.5)] * 3)
    assert not away.lasts
    assert away.days == 1
    assert away.short_ml == pytest.approx(3 * 442.5 - 800.0)


def test_the_water_short_within_an_allowance_by_hand() -> None:
    """The same three days with half of the 800 ml allowed: 1327.5 - 400 ml are short."""
    away = lasts_absence(TRAY, [WaterDay(2.5)] * 3, 0.5)
    assert away.days == 0
    assert away.short_ml == pytest.approx(3 * 442.5 - 400.0)


def test_an_absence_with_watering_in_it_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="absence"):
        lasts_absence(TRAY, [WaterDay(2.0, filled=True)])


@pytest.mark.parametrize(
    ("tray", "et0", "days", "ml"),
    [
        (TRAY, 1.0, 4.5, 177),
        (TRAY, 2.5, 1.8, 442.5),
        (TRAY, 4.5, 1.0, 796.5),
        (TrayWater(288, 9.0, 0.177), 1.0, 3.7, 177),
        (TrayWater(288, 9.0, 0.177), 4.5, 0.8, 796.5),
        (TrayWater(72, 40.0, 0.150), 1.0, 4.8, 150),
        (TrayWater(72, 40.0, 0.150), 2.5, 1.9, 375),
        (TrayWater(72, 40.0, 0.150), 4.5, 1.1, 675),
    ],
)
def test_days_left_against_the_worked_table(
    tray: TrayWater, et0: float, days: float, ml: float
) -> None:
    """Computed by the same formula elsewhere: EAW 25 %, Kc 1, all of it allowed."""
    loss = daily_loss_ml(et0, 1.0, tray.area_m2)
    assert loss == pytest.approx(ml, abs=0.5)
    assert days_left(tray, loss) == pytest.approx(days, abs=0.05)


@pytest.mark.parametrize(
    ("name", "loss_mm", "days"),
    [
        ("full tray", 1, 10.9),
        ("full tray", 3, 3.6),
        ("full tray", 7, 1.6),
        ("40-cell tray", 1, 8.5),
        ("40-cell tray", 3, 2.8),
        ("40-cell tray", 5, 1.7),
        ("84-cell tray", 2, 2.6),
        ("84-cell tray", 3, 1.8),
        ("84-cell tray", 7, 0.8),
    ],
)
def test_usual_trays_last_as_in_the_second_table(name: str, loss_mm: float, days: float) -> None:
    """Computed by the same formula elsewhere, 25 % available (from memory), area 0.085 m2."""
    tray = tray_water(container(name))
    loss = daily_loss_ml(loss_mm, 1.0, tray.area_m2)
    assert days_left(tray, loss) == pytest.approx(days, abs=0.08)


@pytest.mark.parametrize(
    ("stage", "low", "high"),
    [
        pytest.param(RootStage.COVERED_SEED, 0.80, 0.90, id="germination 80-90 % [from memory]"),
        pytest.param(RootStage.SEEDLING, 0.75, 0.83, id="establishment 75-80 % [from memory]"),
        pytest.param(RootStage.FULL, 0.63, 0.70, id="hardening 65-70 % [from memory]"),
    ],
)
def test_the_weight_to_water_at_follows_the_stage_targets(
    stage: RootStage, low: float, high: float
) -> None:
    """Stage targets by weight as growers of forest seedlings use them; rounding of 2 % allowed."""
    assert low <= weight_share_to_water_at(TRAY, ALLOWED_SHARE[stage]) <= high


def test_seed_on_the_surface_is_watered_before_any_other_stage() -> None:
    shares = [ALLOWED_SHARE[stage] for stage in RootStage]
    assert shares == sorted(shares)
    assert shares[0] < 0.25 < shares[2] == 0.5 < shares[-1] == 1.0


@given(st.floats(0, 12), st.floats(0.2, 3))
def test_a_shut_lid_loses_a_tenth_of_a_millimetre_at_most(et0: float, kc: float) -> None:
    """0 to 0.1 mm/d by the vapour that leaks out: derived."""
    assert place_loss_mm(et0, Exposure.SHUT) <= min(0.1, et0) + 1e-12
    cracked = place_loss_mm(et0, Exposure.CRACKED, kc)
    assert 0.3 * kc * et0 - 1e-12 <= cracked <= 0.5 * kc * et0 + 1e-12


def test_the_shut_lid_s_rate_agrees_with_the_vapour_it_leaks() -> None:
    """4.2 g/h over 0.72 m2 for a sunny 12 h is 0.07 mm: derived in the same place as W12."""
    mm = vapour_lost_g_h(0.216, 2.0, 20.0, 10.0, 80.0) * 12 / 0.72 / 1000.0
    assert mm == pytest.approx(0.07, abs=0.005)
    assert place_loss_mm(3.0, Exposure.SHUT) == pytest.approx(mm, abs=0.03)


@pytest.mark.parametrize(
    ("et0", "allowed", "day", "part"),
    [
        pytest.param(4.5, 1.0, 1, DayPart.MORNING, id="4.52 mm at 4.5 a day: next morning"),
        pytest.param(9.0, 0.2, 0, DayPart.MORNING, id="bare seed in heat: this morning"),
        pytest.param(4.5, 0.5, 0, DayPart.MIDDAY, id="half of 4.52 mm at 4.5: after noon"),
        pytest.param(4.5, 0.8, 0, DayPart.AFTERNOON, id="80 % by 17:00"),
        pytest.param(4.6, 1.0, 0, DayPart.EVENING, id="4.52 mm at 4.6: just by night"),
    ],
)
def test_the_next_watering_falls_when_the_allowance_is_gone(
    et0: float, allowed: float, day: int, part: DayPart
) -> None:
    """Half a sine wave from 06:00 to 20:00 has 28 % gone by 11, 61 % by 14, 89 % by 17."""
    found = next_watering(TRAY, [WaterDay(et0)] * 4, allowed)
    assert found is not None
    assert (found.day_index, found.part) == (day, part)
    assert found.used_share >= allowed - 1e-9


@pytest.mark.parametrize(
    ("hour", "share"), [(6, 0.0), (11, 0.283), (13, 0.5), (17, 0.891), (24, 1)]
)
def test_a_day_dries_as_the_sun_goes(hour: float, share: float) -> None:
    assert share_dried_by(hour) == pytest.approx(share, abs=0.001)


def test_a_tray_already_too_dry_is_due_this_morning() -> None:
    found = next_watering(TRAY, [WaterDay(1.0, rain_mm=30.0, lid_off=True)], 0.5, start_ml=100.0)
    assert found is not None
    assert (found.day_index, found.part) == (0, DayPart.MORNING)


def test_nothing_to_water_while_rain_makes_good_the_loss() -> None:
    assert next_watering(TRAY, [WaterDay(3.0, rain_mm=4.0, lid_off=True)] * 9, 0.5) is None


def test_filling_takes_just_what_is_missing_and_a_flood_drains() -> None:
    filled, flooded = run_balance(
        TRAY, [WaterDay(0.0, filled=True), WaterDay(0.0, watered_ml=500.0)], start_ml=300.0
    )
    assert (filled.watered_ml, filled.end_ml, filled.drained_ml) == (500.0, 800.0, 0.0)
    assert (flooded.end_ml, flooded.drained_ml) == (800.0, 500.0)


def test_rain_first_makes_good_what_the_day_took() -> None:
    """5 mm on 0.177 m2 is 885 ml: 531 ml replace the 3 mm lost, 354 ml drain."""
    (state,) = run_balance(TRAY, [WaterDay(3.0, rain_mm=5.0, lid_off=True)])
    assert state.end_ml == pytest.approx(800.0)
    assert state.drained_ml == pytest.approx(885.0 - 531.0)


@pytest.mark.parametrize(
    ("max_c", "warm", "looks"),
    [(27.0, True, 4), (18.0, True, 2), (9.0, False, 1), (26.0, False, 4)],
)
def test_a_hot_day_asks_for_four_looks(max_c: float, warm: bool, looks: int) -> None:
    """Four on a hot day, at most once a day in the cool season: UC Santa Cruz Unit 1.3, read."""
    assert len(looks_a_day(max_c, warm)) == looks


def test_no_loss_names_no_day_and_an_overdue_tray_has_none_left() -> None:
    assert days_left(TRAY, 0.0) is None
    assert days_left(TRAY, 100.0, 0.5, used_ml=450.0) == 0.0


@pytest.mark.parametrize(
    "build",
    [
        lambda: TrayWater(0, 25.0, 0.177),
        lambda: TrayWater(128, -1.0, 0.177),
        lambda: TrayWater(128, 25.0, 0.0),
        lambda: TrayWater(128, 25.0, 0.177, 0.9),
        lambda: daily_loss_ml(-1.0, 1.0, 0.177),
        lambda: days_left(TRAY, -5.0),
        lambda: TRAY.allowed_ml(1.5),
        lambda: WaterDay(1.0, rain_mm=-1.0),
        lambda: run_balance(TRAY, [], start_ml=900.0),
        lambda: share_dried_by(25.0),
        lambda: vapour_lost_g_h(0.2, 2.0, 20.0, 10.0, 180.0),
    ],
)
def test_figures_out_of_range_are_refused(build: object) -> None:
    assert callable(build)
    with pytest.raises(OutOfRangeError):
        build()
