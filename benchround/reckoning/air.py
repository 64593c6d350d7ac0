"""`benchround reckon air`: how moist air is, by dew point, humidity or a wet bulb."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from benchround.core.sky.vapour import (
    actual_from_dew_point_kpa,
    actual_from_wet_bulb_kpa,
    deficit_kpa,
    dew_point_c,
    pressure_kpa,
    saturation_kpa,
)
from benchround.core.units import degrees
from benchround.core.water.balance import vapour_g_m3, vapour_lost_g_h
from benchround.reckoning.answer import Answer, rounded
from benchround.reckoning.figures import number, pair

HELP = "dew point, humidity and drying power of air, and what a shut frame loses"
EXAMPLE = "benchround reckon air --temp 20 --wet 14"
SOURCE = "Allen et al. 1998, FAO-56, eqs. 7, 10, 11, 14, 15"
LOSS = "mass balance of vapour"
RISK = (
    "leaves stay wet and disease spreads below 0.43 kPa, above all below 0.20: Prenger & Ling, "
    "AEX-804 (from memory)"
)
RISK_KPA, HIGH_RISK_KPA = 0.43, 0.20


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument("--temp", type=number, required=True, metavar="C", help="of the air")
    moist = parser.add_mutually_exclusive_group(required=True)
    moist.add_argument("--humidity", type=number, metavar="RH", help="relative humidity, %%")
    moist.add_argument("--dew", type=number, metavar="C", help="dew point")
    moist.add_argument("--wet", type=number, metavar="C", help="wet bulb, ventilated")
    parser.add_argument("--altitude", type=number, default=0.0, metavar="M", help="metres (0)")
    parser.add_argument(
        "--outside", type=pair, metavar="C,RH", help="air outside, for a shut frame with this air"
    )
    parser.add_argument(
        "--volume", type=number, default=0.2, metavar="M3", help="air in the frame (0.2)"
    )
    parser.add_argument(
        "--changes", type=number, default=2.0, metavar="N", help="air changes an hour (2)"
    )


def reckon(given: argparse.Namespace) -> Answer:
    """Vapour pressure, dew point, humidity, deficit, and what leaks out of a shut frame."""
    full = saturation_kpa(given.temp)
    actual = _actual(given, full)
    humidity = min(100.0, 100.0 * actual / full)
    lack = deficit_kpa(given.temp, humidity)
    dew = dew_point_c(actual) if actual >= 0.002 else None
    lost = _lost(given, humidity)
    source = SOURCE if lost is None else f"{SOURCE}; {LOSS}"
    return Answer(
        value={
            "humidity_percent": rounded(humidity, 3),
            "dew_point_c": rounded(dew, 3),
            "vapour_kpa": rounded(actual, 5),
            "saturation_kpa": rounded(full, 5),
            "deficit_kpa": rounded(lack, 5),
            "vapour_g_m3": rounded(vapour_g_m3(actual, given.temp), 4),
            "lost_g_h": rounded(lost, 4),
            "source": source,
        },
        lines=(
            f"{given.temp:g} C, {humidity:.0f} % humidity"
            + (f", dew point {degrees(dew, 1)} C" if dew is not None else ""),
            f"  holds {actual:.2f} of {full:.2f} kPa, {vapour_g_m3(actual, given.temp):.1f} g/m3; "
            f"it could take up {lack:.2f} kPa more (deficit)",
            *_risk(lack),
            *([f"  a shut frame loses {lost:.1f} g of water an hour"] if lost is not None else []),
            f"  formulas: {source}",
        ),
    )


def _actual(given: argparse.Namespace, full: float) -> float:
    if given.humidity is not None:
        return full - deficit_kpa(given.temp, given.humidity)
    if given.dew is not None:
        return min(full, actual_from_dew_point_kpa(given.dew))
    return actual_from_wet_bulb_kpa(given.temp, given.wet, pressure_kpa(given.altitude))


def _lost(given: argparse.Namespace, humidity: float) -> float | None:
    if given.outside is None:
        return None
    outside_c, outside_pct = given.outside
    return vapour_lost_g_h(
        given.volume, given.changes, given.temp, outside_c, outside_pct, humidity
    )


def _risk(lack: float) -> Iterator[str]:
    if lack < RISK_KPA:
        word = "very moist" if lack < HIGH_RISK_KPA else "moist"
        yield f"  {word}: {RISK}"
