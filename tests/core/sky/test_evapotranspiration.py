import pytest

from benchround.core.errors import OutOfRangeError
from benchround.core.sky import evapotranspiration as et
from benchround.core.sky import penman, sun
from tests.core.published import FAO56, Figure, Seen, figure_cases

LYON = et.EtSite(lat_deg=45.72, altitude_m=200.0)
GARDEN = et.EtSite(lat_deg=52.0)
ALMERIA = et.EtSite(lat_deg=36.8, altitude_m=150.0)


def lyon_mm(wind_2m_ms: float | None = None) -> float:
    return et.penman_monteith_et(LYON, et.EtDay(196, 14.8, 26.6, wind_2m_ms=wind_2m_ms)).mm


FIGURES = [
    Figure("E14 Lyon, July, only Tmax and Tmin", f"{FAO56}, ex. 20", Seen.SECOND_HAND, 4.56, 0.02,
           lyon_mm),
    Figure("E14 wind 1 m/s instead of 2", f"{FAO56}, ex. 20, -7 %", Seen.SECOND_HAND, -7.0, 0.5,
           lambda: 100.0 * (lyon_mm(1.0) / lyon_mm() - 1.0)),
    Figure("E14 wind 3 m/s instead of 2", f"{FAO56}, ex. 20, +6 %", Seen.SECOND_HAND, 6.0, 0.5,
           lambda: 100.0 * (lyon_mm(3.0) / lyon_mm() - 1.0)),
]  # fmt: skip


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_published_figures(figure: Figure) -> None:
    figure.assert_reproduced()


@pytest.mark.parametrize(
    ("day", "mm"),
    [
        (et.EtDay(74, 2.0, 10.0), 1.3),
        (et.EtDay(105, 4.0, 14.0), 2.5),
        (et.EtDay(135, 8.0, 18.0), 3.5),
        (et.EtDay(172, 11.0, 22.0), 4.5),
    ],
    ids=[f"52 N day {day}: eq. 52 ({Seen.DERIVED})" for day in (74, 105, 135, 172)],
)
def test_a_thermometer_alone_gets_eq_52(day: et.EtDay, mm: float) -> None:
    estimate = et.reference_et(GARDEN, day)
    assert estimate.method is et.EtMethod.HARGREAVES_FAO52
    assert estimate.stand_ins == ()
    assert estimate.mm == pytest.approx(mm, abs=0.06)


@pytest.mark.parametrize(
    ("day_of_year", "tmin_c", "tmax_c", "overcast_mm", "clear_mm"),
    [(105, 4.0, 14.0, 1.8, 2.7), (135, 8.0, 18.0, 2.3, 4.0)],
    ids=[f"52 N day {day}: overcast to clear ({Seen.DERIVED})" for day in (105, 135)],
)
def test_a_sky_word_brings_penman_monteith(
    day_of_year: int, tmin_c: float, tmax_c: float, overcast_mm: float, clear_mm: float
) -> None:
    for share, mm in ((0.0, overcast_mm), (1.0, clear_mm)):
        day = et.EtDay(day_of_year, tmin_c, tmax_c, share_of_sun=share)
        estimate = et.reference_et(GARDEN, day)
        assert estimate.method is et.EtMethod.PENMAN_MONTEITH
        assert estimate.stand_ins == (et.StandIn.DEW_POINT_FROM_MINIMUM, et.StandIn.USUAL_WIND)
        assert estimate.mm == pytest.approx(mm, abs=0.06)


def test_every_stand_in_is_named_and_none_when_all_was_noted() -> None:
    bare = et.penman_monteith_et(LYON, et.EtDay(196, 14.8, 26.6))
    assert bare.stand_ins == tuple(et.StandIn)
    noted = et.EtDay(196, 14.8, 26.6, share_of_sun=0.6, humidity_pct=65.0, wind_2m_ms=1.5)
    assert et.reference_et(LYON, noted).stand_ins == ()


def test_humidity_alone_is_enough_for_penman_monteith() -> None:
    dry = et.reference_et(GARDEN, et.EtDay(135, 8.0, 18.0, humidity_pct=45.0))
    damp = et.reference_et(GARDEN, et.EtDay(135, 8.0, 18.0, humidity_pct=90.0))
    assert dry.method is damp.method is et.EtMethod.PENMAN_MONTEITH
    assert et.StandIn.SKY_FROM_RANGE in dry.stand_ins
    assert dry.mm > damp.mm + 0.5


def test_guessed_radiation_never_passes_a_clear_sky() -> None:
    # FAO-56 eq. 50 is to be held to eq. 37 (read second-hand)
    wide = et.EtDay(172, 2.0, 34.0)
    clear_mj = sun.clear_sky_mj(sun.extraterrestrial_mj(52.0, 172), 0.0)
    assert et.radiation_mj(et.EtSite(52.0, coastal=True), wide) == pytest.approx(clear_mj)


def test_fixed_resistance_is_a_wind_of_1_39() -> None:
    # FAO-56 eq. 4: ra = 208 / u2 (read second-hand)
    wind_ms = 208.0 / et.FIXED_RESISTANCE_S_PER_M
    assert wind_ms == pytest.approx(et.UNDER_COVER_WIND_MS, abs=0.005)


@pytest.mark.parametrize(
    ("day", "low_mm", "high_mm"),
    [
        pytest.param(et.EtDay(15, 6.0, 24.0, 0.7, 75.0), 0.6, 1.05,
                     id=f"E23 January, just under 1 mm: Fernandez et al. 2010 ({Seen.READ})"),
        pytest.param(et.EtDay(196, 20.0, 35.0, 0.85, 65.0), 3.2, 4.3,
                     id=f"E23 July, about 4 mm: Fernandez et al. 2010 ({Seen.READ})"),
    ],
)  # fmt: skip
def test_under_cover_in_almeria(day: et.EtDay, low_mm: float, high_mm: float) -> None:
    # Temperatures, sun and a transmissivity of 0.6 are ours, so this is a band, not a figure.
    estimate = et.under_cover_et(ALMERIA, day, transmissivity=0.6)
    assert estimate.method is et.EtMethod.PENMAN_MONTEITH_COVERED
    assert low_mm < estimate.mm < high_mm


def test_whitening_the_cover_saves_water() -> None:
    # E23: whitening took 21.4 % off (read); a fifth less light must do about that
    day = et.EtDay(196, 20.0, 35.0, 0.85, 65.0)
    plain = et.under_cover_et(ALMERIA, day, transmissivity=0.6).mm
    white = et.under_cover_et(ALMERIA, day, transmissivity=0.45).mm
    assert 0.10 < 1.0 - white / plain < 0.25


def test_wind_outside_does_not_reach_under_cover() -> None:
    still = et.under_cover_et(GARDEN, et.EtDay(135, 8.0, 24.0, 0.5), 0.8)
    gale = et.under_cover_et(GARDEN, et.EtDay(135, 8.0, 24.0, 0.5, wind_2m_ms=15.0), 0.8)
    assert still == gale
    assert et.StandIn.USUAL_WIND not in still.stand_ins


def test_clear_cover_and_the_same_wind_give_the_open_figure() -> None:
    day = et.EtDay(135, 8.0, 24.0, 0.5, 60.0, wind_2m_ms=et.UNDER_COVER_WIND_MS)
    covered = et.under_cover_et(GARDEN, day, transmissivity=1.0).mm
    assert covered == pytest.approx(et.reference_et(GARDEN, day).mm)


def test_polar_night_still_gives_an_answer() -> None:
    night = et.EtDay(355, -12.0, -4.0, share_of_sun=0.0)
    assert et.reference_et(et.EtSite(75.0), night).mm == pytest.approx(0.0, abs=0.3)
    assert penman.UNKNOWN_WIND_MS == 2.0  # FAO-56 chapter 3 (read second-hand)


@pytest.mark.parametrize(
    ("day", "named"),
    [
        (et.EtDay(135, 18.0, 8.0), "minimum 18 degC is above the maximum 8 degC"),
        (et.EtDay(135, 8.0, 80.0), "maximum is 80 degC, outside -60 to 60 degC"),
        (et.EtDay(135, float("nan"), 18.0, 0.5), "minimum is nan degC, outside -60 to 60 degC"),
        (et.EtDay(135, 8.0, 18.0, 1.5), r"share of sun is 1\.5, outside 0 to 1"),
        (et.EtDay(135, 8.0, 18.0, 0.5, 140.0), "relative humidity is 140 %, outside 0 to 100 %"),
        (et.EtDay(400, 8.0, 18.0), "day of the year is 400, outside 1 to 366"),
    ],
)
def test_bad_readings_are_named(day: et.EtDay, named: str) -> None:
    with pytest.raises(OutOfRangeError, match=named):
        et.reference_et(GARDEN, day)
