"""`benchround reckon evaporation`: what a day takes from grass, trays, a dish and under cover."""

from __future__ import annotations

import argparse
from datetime import date

from benchround.core.numbers.ranges import within
from benchround.core.sky import sun
from benchround.core.sky.evapotranspiration import (
    EtDay,
    EtSite,
    actual_vapour_kpa,
    radiation_mj,
    reference_et,
    under_cover_et,
)
from benchround.core.sky.penman import (
    UNKNOWN_WIND_MS,
    net_longwave_mj,
    net_shortwave_mj,
    open_water_mm,
    wind_at_2m_ms,
)
from benchround.core.sky.simple_evaporation import hargreaves_fitted_range_mm, turc_mm
from benchround.core.sky.vapour import actual_from_extremes_kpa, mean_saturation_kpa
from benchround.reckoning.answer import Answer, rounded, said
from benchround.reckoning.figures import day, number, pair, share, within_sky

HELP = "what a day takes from wet ground, from a dish of water and under cover"
EXAMPLE = (
    "benchround reckon evaporation --tmin 12.3 --tmax 21.5 --lat 50.8 --on 2027-07-06 "
    "--altitude 100 --sun-share 0.58 --humidity 73"
)
WATER_ALBEDO = 0.08
"""Share of radiation open water throws back: McMahon et al. 2013, worked example 3."""
SOURCE = (
    "grass FAO-56 (Penman-Monteith, Hargreaves-Samani eq. 52); open water Penman 1948 and 1956, "
    "Turc 1961 and Hargreaves-Samani with fitted range after McMahon et al. 2013; under cover "
    "Fernandez et al. 2010; wind FAO-56 eq. 47"
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument("--tmin", type=number, required=True, metavar="C", help="lowest of the day")
    parser.add_argument("--tmax", type=number, required=True, metavar="C", help="highest")
    parser.add_argument("--lat", type=number, required=True, metavar="L", help="south negative")
    parser.add_argument("--on", type=day, required=True, metavar="DATE", help="as 2026-05-27")
    parser.add_argument("--sun-share", type=share, metavar="S", help="1 clear, 0 overcast")
    moist = parser.add_mutually_exclusive_group()
    moist.add_argument("--humidity", type=number, metavar="RH", help="mean humidity, %%")
    moist.add_argument(
        "--humidities", type=pair, metavar="HIGH,LOW", help="highest and lowest humidity, %%"
    )
    parser.add_argument("--wind", type=number, metavar="MS", help="mean wind, m/s")
    parser.add_argument(
        "--wind-height", type=number, default=2.0, metavar="M", help="of the wind gauge (2)"
    )
    parser.add_argument("--altitude", type=number, default=0.0, metavar="M", help="metres (0)")
    parser.add_argument(
        "--cover", type=share, metavar="T", help="light the cover lets through, for under cover"
    )


def reckon(given: argparse.Namespace) -> Answer:
    """Evaporation of the day by every formula its readings allow, mm."""
    within_sky(given.lat)
    within("the altitude", given.altitude, -500.0, 6000.0, "m")
    if given.sun_share is not None:
        within("the share of sun", given.sun_share, 0.0, 1.0, "")
    site, one = EtSite(given.lat, given.altitude), _day(given)
    grass = reference_et(site, one)
    water = _open_water_mm(site, one)
    humid = _turc(site, one)
    fitted = hargreaves_fitted_range_mm(one.tmin_c, one.tmax_c, _above_air(given.lat, given.on))
    covered = under_cover_et(site, one, given.cover).mm if given.cover is not None else None
    return Answer(
        value={
            "grass_mm": rounded(grass.mm, 3),
            "method": str(grass.method),
            "stand_ins": [str(word) for word in grass.stand_ins],
            "open_water_mm": rounded(water, 3),
            "turc_mm": rounded(humid, 3),
            "hargreaves_fitted_mm": rounded(fitted, 3),
            "under_cover_mm": rounded(covered, 3),
            "wind_2m_ms": rounded(one.wind_2m_ms, 3),
            "source": SOURCE,
        },
        lines=(
            f"wet ground and trays in the open lose {grass.mm:.1f} mm ({grass.method})",
            f"  a dish of water loses {water:.1f} mm, {water:.1f} litres from a square metre",
            *([f"  under cover {covered:.1f} mm"] if covered is not None else []),
            f"  other formulas: {said(humid, 'mm')} (Turc, humid places), {fitted:.1f} mm "
            "(Hargreaves-Samani with fitted range)",
            *(
                [f"  taken for granted: {', '.join(str(word) for word in grass.stand_ins)}"]
                if grass.stand_ins
                else []
            ),
            f"  formulas: {SOURCE}",
        ),
    )


def _day(given: argparse.Namespace) -> EtDay:
    wind = None if given.wind is None else _wind_2m(given)
    humidity = given.humidity
    if given.humidities is not None:
        actual = actual_from_extremes_kpa(given.tmin, given.tmax, *given.humidities)
        humidity = 100.0 * actual / mean_saturation_kpa(given.tmin, given.tmax)
    on = given.on.timetuple().tm_yday
    return EtDay(on, given.tmin, given.tmax, given.sun_share, humidity, wind)


def _wind_2m(given: argparse.Namespace) -> float:
    return (
        float(given.wind)
        if given.wind_height == 2.0
        else wind_at_2m_ms(given.wind, given.wind_height)
    )


def _above_air(lat_deg: float, on: date) -> float:
    return sun.extraterrestrial_mj(lat_deg, on.timetuple().tm_yday)


def _open_water_mm(site: EtSite, one: EtDay) -> float:
    rs_mj, actual = radiation_mj(site, one), actual_vapour_kpa(one)
    above = sun.extraterrestrial_mj(site.lat_deg, one.day_of_year)
    clear = sun.clear_sky_mj(above, site.altitude_m)
    lost = net_longwave_mj(one.tmin_c, one.tmax_c, rs_mj, clear, actual)
    wind = UNKNOWN_WIND_MS if one.wind_2m_ms is None else one.wind_2m_ms
    kept = net_shortwave_mj(rs_mj, WATER_ALBEDO) - lost
    return open_water_mm(one.tmin_c, one.tmax_c, kept, actual, site.altitude_m, wind_2m_ms=wind)


def _turc(site: EtSite, one: EtDay) -> float | None:
    """By Turc; None where no humidity was read, or it froze on the mean."""
    mean_c = (one.tmin_c + one.tmax_c) / 2.0
    if one.humidity_pct is None or mean_c < 0.0:
        return None
    return turc_mm(mean_c, radiation_mj(site, one), one.humidity_pct)
