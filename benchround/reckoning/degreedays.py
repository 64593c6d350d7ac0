"""`benchround reckon degreedays`: heat above a base, of one day or of a file of days."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Sequence
from datetime import timedelta

from benchround.core.errors import InputError
from benchround.core.sky import degreedays as heat
from benchround.feeds.daily_reading import DailyReading
from benchround.plain import JsonValue
from benchround.reckoning.answer import Answer, rounded
from benchround.reckoning.figures import number
from benchround.reckoning.weather_file import fault_remarks, file_arguments, weather_file

HELP = "degree-days above a base, of a day or of a file"
EXAMPLE = "benchround reckon degreedays --min 7 --max 40 --base 12 --ceiling 33"

Single = Callable[[float, float, float, float | None], float]
Double = Callable[[float, float, float, float, float | None], float]
ZALOM = "Zalom et al. 1983, UC leaflet 21373"
SINGLE: dict[str, tuple[Single, str]] = {
    "single-sine": (heat.single_sine, f"Baskerville & Emin 1969, Ecology 50:514; {ZALOM}"),
    "single-triangle": (heat.single_triangle, ZALOM),
    "average": (heat.averaging, ZALOM),
}
DOUBLE: dict[str, tuple[Double, str]] = {
    "double-sine": (heat.double_sine, ZALOM),
    "double-triangle": (heat.double_triangle, ZALOM),
}
MET_OFFICE, TRUNCATED = "met-office", "truncated"
METHODS = (*SINGLE, *DOUBLE, MET_OFFICE, TRUNCATED)
SOURCES = {
    MET_OFFICE: "UK Met Office four-case rule as printed on Met Eireann's degree-day page",
    TRUNCATED: "both readings drawn in to the thresholds, then averaged (NOAA, 50 and 86 F)",
}

Extremes = tuple[float, float, float | None]
"""Lowest, highest, and the next night's lowest where it is known."""


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument("file", nargs="?", default="", metavar="FILE", help="table of days")
    parser.add_argument("--min", type=number, metavar="C", help="lowest of the day")
    parser.add_argument("--max", type=number, metavar="C", help="highest of the day")
    parser.add_argument(
        "--next-min", type=number, metavar="C", help="the next night's lowest, for double methods"
    )
    parser.add_argument("--base", type=number, required=True, metavar="C", help="lower threshold")
    parser.add_argument("--ceiling", type=number, metavar="C", help="upper threshold, cut off flat")
    parser.add_argument(
        "--method", choices=METHODS, default="single-sine", help="how the day is drawn"
    )
    file_arguments(parser)
    parser.set_defaults(refuse=parser.error)


def reckon(given: argparse.Namespace) -> Answer:
    """The degree-days of a day, or the sum over a file with the days that were not read."""
    one = given.min is not None or given.max is not None
    if bool(given.file) == one or (one and (given.min is None or given.max is None)):
        given.refuse("give either a FILE or both --min and --max")
    if given.method == MET_OFFICE and given.ceiling is not None:
        given.refuse("the met-office rule has no --ceiling")
    if given.method == TRUNCATED and given.ceiling is None:
        given.refuse("the truncated form needs a --ceiling")
    if one and given.method in DOUBLE and given.next_min is None:
        given.refuse(f"{given.method} needs --next-min, the next night's lowest")
    if one:
        return _of_day(given)
    return _of_file(given)


def _of_day(given: argparse.Namespace) -> Answer:
    value = _one(given, (given.min, given.max, given.next_min))
    return Answer(
        value=_value(given, value, 1, 0),
        lines=(
            f"{value:.2f} degree-days above {given.base:g} C from {given.min:g} to {given.max:g} C",
            *_method_lines(given),
        ),
    )


def _of_file(given: argparse.Namespace) -> Answer:
    found = weather_file(given, given.file)
    read = [r for r in found.readings if r.min_c is not None and r.max_c is not None]
    if not read:
        raise InputError(
            f"{given.file} has no day with both a lowest and a highest: name them with --map."
        )
    days = _extremes(read, need_next=given.method in DOUBLE)
    total = sum(_one(given, extremes) for extremes in days)
    span = (read[-1].day - read[0].day).days + 1
    missing = span - len(days)
    value = _value(given, total, len(days), missing)
    value["first"], value["last"] = read[0].day.isoformat(), read[-1].day.isoformat()
    return Answer(
        value=value,
        lines=(
            f"{total:.1f} degree-days above {given.base:g} C, {len(days)} days of "
            f"{read[0].day.isoformat()} to {read[-1].day.isoformat()}, {missing} missing",
            *_method_lines(given),
        ),
        remarks=fault_remarks(found),
    )


def _extremes(read: Sequence[DailyReading], *, need_next: bool) -> list[Extremes]:
    """The days that can be reckoned; a double method passes over a day before a gap."""
    lows = {r.day: r.min_c for r in read}
    found: list[Extremes] = []
    for reading in read:
        following = lows.get(reading.day + timedelta(days=1))
        if reading.min_c is None or reading.max_c is None or (need_next and following is None):
            continue
        found.append((reading.min_c, reading.max_c, following))
    return found


def _one(given: argparse.Namespace, extremes: Extremes) -> float:
    low, high, following = extremes
    method, base, ceiling = given.method, given.base, given.ceiling
    if method == MET_OFFICE:
        return heat.met_office_four_case(low, high, base)
    if method == TRUNCATED:
        return heat.truncated_average(low, high, base, ceiling)
    if method in DOUBLE:
        return DOUBLE[method][0](low, high, low if following is None else following, base, ceiling)
    return SINGLE[method][0](low, high, base, ceiling)


def _value(
    given: argparse.Namespace, total: float, days: int, missing: int
) -> dict[str, JsonValue]:
    return {
        "degree_days": rounded(total, 3),
        "days": days,
        "missing_days": missing,
        "base_c": given.base,
        "ceiling_c": given.ceiling,
        "method": given.method,
        "source": _source(given.method),
    }


def _source(method: str) -> str:
    if method in SOURCES:
        return SOURCES[method]
    return DOUBLE[method][1] if method in DOUBLE else SINGLE[method][1]


def _method_lines(given: argparse.Namespace) -> tuple[str, ...]:
    cut = "" if given.ceiling is None else f", cut off above {given.ceiling:g} C"
    return (f"  method: {given.method}{cut}; {_source(given.method)}",)
