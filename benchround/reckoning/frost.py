"""`benchround reckon frost`: a site's frost dates from a file of daily minima."""

from __future__ import annotations

import argparse

from benchround.core.errors import InputError
from benchround.core.sky.frost import FREEZE_THRESHOLDS_C
from benchround.core.sky.frost_dates import DailyMinimum, FrostDates, YearFrosts, frost_dates
from benchround.core.sky.frost_line import FrostLine
from benchround.plain import JsonValue
from benchround.reckoning.answer import Answer, iso, month_day, rounded
from benchround.reckoning.figures import number, within_sky
from benchround.reckoning.weather_file import fault_remarks, file_arguments, weather_file

HELP = "last spring and first autumn frost from a file of daily minima"
EXAMPLE = "benchround reckon frost minima.csv --lat 36.8"
SOURCE = (
    "last day at or below the threshold before midsummer and first after it, a half year with more "
    "than ten days missing left out (Utah Climate Center); p10 early, p90 late (MRCC)"
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument("file", metavar="FILE", help="table of daily minima, headings first")
    parser.add_argument(
        "--lat", type=number, required=True, metavar="L", help="latitude, south negative"
    )
    parser.add_argument(
        "--threshold", type=number, default=0.0, metavar="C", help="counts as frost at or below (0)"
    )
    parser.add_argument("--column", default="", metavar="NAME", help="heading of the minima")
    file_arguments(parser)


def reckon(given: argparse.Namespace) -> Answer:
    """The frost dates of the file."""
    within_sky(given.lat)
    found = weather_file(given, given.file, given.column)
    minima = [DailyMinimum(r.day, r.min_c) for r in found.readings if r.min_c is not None]
    if not minima:
        raise InputError(
            f"{given.file} has no usable daily minima: name their column with --column."
        )
    dates = frost_dates(minima, given.lat, given.threshold)
    return Answer(
        value={
            "threshold_c": given.threshold,
            "last_spring": _line(dates.last_spring),
            "first_autumn": _line(dates.first_autumn),
            "years": dates.years,
            "void_years": list(dates.void_years),
            "by_threshold": _by_threshold(minima, given.lat),
            "per_year": [_year(frosts) for frosts in dates.per_year],
            "source": SOURCE,
        },
        lines=_lines(dates),
        remarks=fault_remarks(found),
    )


def _by_threshold(minima: list[DailyMinimum], lat_deg: float) -> list[JsonValue]:
    """The middle dates for each threshold of NOAA's frost tables."""
    found: list[JsonValue] = []
    for threshold_c in FREEZE_THRESHOLDS_C:
        dates = frost_dates(minima, lat_deg, threshold_c)
        spring, autumn = dates.last_spring, dates.first_autumn
        found.append(
            {
                "threshold_c": rounded(threshold_c, 2),
                "last_spring_p50": month_day(spring.p50) if spring else None,
                "first_autumn_p50": month_day(autumn.p50) if autumn else None,
            }
        )
    return found


def _line(line: FrostLine | None) -> JsonValue:
    if line is None:
        return None
    return {
        "p10": month_day(line.p10),
        "p50": month_day(line.p50),
        "p90": month_day(line.p90),
        "normal_p10": month_day(line.normal_p10),
        "normal_p50": month_day(line.normal_p50),
        "normal_p90": month_day(line.normal_p90),
        "years": line.years,
        "frost_years": line.frost_years,
    }


def _year(frosts: YearFrosts) -> JsonValue:
    return {
        "year": frosts.year,
        "last_spring": iso(frosts.last_spring),
        "first_autumn": iso(frosts.first_autumn),
        "spring_void": frosts.spring_void,
        "autumn_void": frosts.autumn_void,
        "frost_free_days": frosts.frost_free_days,
    }


def _lines(dates: FrostDates) -> tuple[str, ...]:
    void = ", ".join(str(year) for year in dates.void_years)
    return (
        f"Frost at or below {dates.threshold_c:g} C, {dates.years} years read",
        f"  last in spring:  {_words(dates.last_spring)}",
        f"  first in autumn: {_words(dates.first_autumn)}",
        "  p10 is early, p90 late: after the spring p90, one year in ten still has a frost",
        *((f"  years with a half left out: {void}",) if void else ()),
        f"  method: {SOURCE}",
    )


def _words(line: FrostLine | None) -> str:
    if line is None:
        return "hardly ever reached"
    return (
        f"p10 {month_day(line.p10)}, p50 {month_day(line.p50)}, p90 {month_day(line.p90)} "
        f"({line.frost_years} of {line.years} years)"
    )
