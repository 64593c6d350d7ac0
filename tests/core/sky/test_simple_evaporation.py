import math
from datetime import date

import pandas as pd
import pyet
import pytest

from benchround.core.errors import OutOfRangeError
from benchround.core.sky import simple_evaporation as simple
from benchround.core.sky import sun
from tests.core.published import FAO56, MCMAHON, Figure, Seen, figure_cases, rows

SECOND = Seen.SECOND_HAND


def lyon_mm() -> float:
    return simple.hargreaves_fao52_mm(14.8, 26.6, sun.extraterrestrial_mj(45.72, 196))


FIGURES = [
    Figure("E15 Lyon, July", f"{FAO56}, ex. 20", SECOND, 5.03, 0.02, lyon_mm),
    Figure("E17 with a given mean", "V. K. Mehta 2006 worksheet, in PyETo tests", SECOND, 6.1, 0.05,
           lambda: simple.hargreaves_fao52_mm(28.0, 38.0, 38.93715, 35.0)),
    Figure("E18 radiation in millimetres", f"{FAO56}, eq. 52", Seen.DERIVED, 2.93, 0.01,
           lambda: simple.hargreaves_fao52_mm(19.0, 25.0, 32.0)),
    Figure("E19 Turc, Alice Springs", f"{MCMAHON}, S19.99", SECOND, 2.6727, 0.05,
           lambda: simple.turc_mm(11.5, 17.194, 48.0)),
    Figure("Fitted range, Alice Springs 20 July 1980", MCMAHON, SECOND, 4.1129, 0.001,
           lambda: simple.hargreaves_fitted_range_mm(2.0, 21.0, 23.6182)),
    Figure("Eq. 52, Alice Springs 20 July 1980", f"{FAO56}, eq. 52", Seen.DERIVED, 2.83, 0.01,
           lambda: simple.hargreaves_fao52_mm(2.0, 21.0, 23.6182)),
]  # fmt: skip


@pytest.mark.parametrize("figure", figure_cases(FIGURES))
def test_published_figures(figure: Figure) -> None:
    figure.assert_reproduced()


def test_the_figure_without_the_change_of_unit_is_not_reproduced() -> None:
    # E18: one public package test asserts 7.18, radiation left in MJ
    ours = simple.hargreaves_fao52_mm(19.0, 25.0, 32.0)
    assert ours / 0.408 == pytest.approx(7.175, abs=0.01)
    assert ours < 3.0


def test_the_two_forms_of_one_name_stay_apart() -> None:
    eq52 = simple.hargreaves_fao52_mm(2.0, 21.0, 23.6182)
    fitted = simple.hargreaves_fitted_range_mm(2.0, 21.0, 23.6182)
    assert fitted - eq52 > 1.2


EQ52_YEARS = {"2012": 799.1, "2013": 832.0, "2014": 866.2, "2015": 898.9}


@pytest.mark.parametrize(
    "year", EQ52_YEARS, ids=[f"E21 {year} ({Seen.DERIVED})" for year in EQ52_YEARS]
)
def test_a_year_of_open_readings(year: str) -> None:
    total_mm = sum(
        simple.hargreaves_fao52_mm(
            float(row["tmin_c"]),
            float(row["tmax_c"]),
            sun.extraterrestrial_mj(47.45, date.fromisoformat(row["date"]).timetuple().tm_yday),
        )
        for row in rows("seattle_extremes_2012-2015.csv")
        if row["date"].startswith(year)
    )
    assert total_mm == pytest.approx(EQ52_YEARS[year], abs=0.5)


def test_pyet_agrees_day_by_day_but_for_its_latent_heat() -> None:
    table = rows("seattle_extremes_2012-2015.csv")[:731]
    days = pd.DatetimeIndex([row["date"] for row in table])
    tmax = pd.Series([float(row["tmax_c"]) for row in table], index=days)
    tmin = pd.Series([float(row["tmin_c"]) for row in table], index=days)
    mean = (tmax + tmin) / 2.0
    for method, ours in enumerate((simple.hargreaves_fao52_mm, simple.hargreaves_fitted_range_mm)):
        theirs = pyet.hargreaves(mean, tmax, tmin, math.radians(47.45), method=method)
        for day, high, low, mm in zip(days, tmax, tmin, theirs, strict=True):
            ra_mj = sun.extraterrestrial_mj(47.45, day.dayofyear)
            assert ours(low, high, ra_mj) == pytest.approx(float(mm), abs=0.05)


def test_turc_dries_below_half_humidity_only() -> None:
    moist = simple.turc_mm(15.0, 18.0, 80.0)
    assert simple.turc_mm(15.0, 18.0, 50.0) == moist
    assert simple.turc_mm(15.0, 18.0, 15.0) == pytest.approx(1.5 * moist)
    assert simple.turc_mm(0.0, 18.0, 80.0) == 0.0


def test_arctic_cold_evaporates_nothing() -> None:
    assert simple.hargreaves_fao52_mm(-40.0, -20.0, 10.0) == 0.0
    assert simple.hargreaves_fitted_range_mm(-40.0, -20.0, 10.0) == 0.0


def test_bad_figures_are_named() -> None:
    with pytest.raises(OutOfRangeError, match="minimum 25 degC is above the maximum 19 degC"):
        simple.hargreaves_fao52_mm(25.0, 19.0, 32.0)
    with pytest.raises(OutOfRangeError, match="maximum is 80 degC"):
        simple.hargreaves_fitted_range_mm(25.0, 80.0, 32.0)
    with pytest.raises(OutOfRangeError, match="radiation is nan MJ/m2 a day"):
        simple.hargreaves_fao52_mm(9.0, 19.0, math.nan)
    with pytest.raises(OutOfRangeError, match="mean temperature is 30 degC, outside 9 to 19 degC"):
        simple.hargreaves_fao52_mm(9.0, 19.0, 32.0, 30.0)
    with pytest.raises(OutOfRangeError, match="mean temperature is -3 degC, outside 0 to 60 degC"):
        simple.turc_mm(-3.0, 10.0, 80.0)
