"""`benchround reckon base`: base temperature and heat from days at some temperatures."""

from __future__ import annotations

import argparse
import re
from collections.abc import Sequence

from benchround.core.errors import InputError
from benchround.core.planning.succession import (
    TwoPointBase,
    days_at_temperature,
    learned_base,
    start_for,
    two_point_base,
)
from benchround.core.seed.emergence_fit import fit_from_table
from benchround.core.seed.emergence_row import Point
from benchround.core.units import degrees
from benchround.reckoning.answer import Answer, iso, rounded, said
from benchround.reckoning.figures import day, number

HELP = "base temperature and heat from days at some temperatures, for a crop's own table"
EXAMPLE = "benchround reckon base 10:29 15:13 20:8 25:6 --optimum 25 --at 18"
LINE = "straight line through 1/days against temperature up to the optimum"
TWO = (
    "two temperatures, for showing only: of four perennials tried two gave a base below zero "
    "(HortScience 30(4):861B)"
)
GIVEN = "heat over mean less base"
MODEL = "least squares on the logarithm of the days, shape of Garcia-Huidobro et al. 1982"
_POINT = re.compile(r"(-?[0-9]+(?:\.[0-9]+)?):([0-9]+(?:\.[0-9]+)?|-)")


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument(
        "points",
        nargs="*",
        metavar="C:DAYS",
        help="temperature and days, as 15:13; - for days where nothing came up",
    )
    parser.add_argument("--optimum", type=number, metavar="C", help="the line ends here")
    parser.add_argument("--base", type=number, metavar="C", help="a known base, with --heat")
    parser.add_argument("--heat", type=number, metavar="CD", help="known degree-days, with --base")
    parser.add_argument("--at", type=number, metavar="C", help="days at this temperature")
    parser.add_argument("--wanted", type=day, metavar="DATE", help="day to be ready on, with --at")
    parser.set_defaults(refuse=parser.error)


def reckon(given: argparse.Namespace) -> Answer:
    """Base and heat by the line, the model's temperatures, and days at a temperature."""
    points = _points(given)
    line, how = _line(given, points)
    known = [point for point in points if point[1] is not None]
    model = fit_from_table(points, best_c=given.optimum) if len(known) > 2 else None
    days = days_at_temperature(line.heat, given.at, line.base_c) if given.at is not None else None
    start = start_for(given.wanted, days) if given.wanted is not None and days else None
    lines = [f"base {degrees(line.base_c, 1)} C, {line.heat:.0f} degree-days"]
    if model is not None:
        lines.append(
            f"  own table: base {model.base_c:g} C, optimum {model.optimum_c:g} C, ceiling "
            f"{model.ceiling_c:g} C, half up after {model.theta50:g} degree-days ({MODEL})"
        )
    if given.at is not None:
        lines.append(f"  at {given.at:g} C: {said(days, 'days')}")
    if start is not None:
        lines.append(f"  ready on {iso(given.wanted)}: start {iso(start)}")
    lines.append(f"  rule: {how}")
    return Answer(
        value={
            "base_c": rounded(line.base_c),
            "heat": rounded(line.heat, 3),
            "days": rounded(days, 3),
            "start": iso(start),
            "table": None
            if model is None
            else {
                "base_c": model.base_c,
                "optimum_c": model.optimum_c,
                "ceiling_c": model.ceiling_c,
                "theta50": model.theta50,
            },
            "source": how,
            "table_source": None if model is None else MODEL,
        },
        lines=tuple(lines),
    )


def _points(given: argparse.Namespace) -> list[Point]:
    found: list[Point] = []
    for word in given.points:
        match = _POINT.fullmatch(word.strip())
        if match is None:
            raise InputError(f"{word.strip()[:20]!r} is no temperature and days such as 15:13.")
        found.append((float(match[1]), None if match[2] == "-" else float(match[2])))
    return sorted(found, key=lambda point: point[0])


def _line(given: argparse.Namespace, points: Sequence[Point]) -> tuple[TwoPointBase, str]:
    if given.base is not None and given.heat is not None:
        return TwoPointBase(given.base, given.heat), GIVEN
    known = [(temp_c, days) for temp_c, days in points if days is not None]
    if len(known) < 2:
        given.refuse("give two temperatures with their days or more, or --base and --heat")
    if len(known) == 2:
        (cold_c, cold), (warm_c, warm) = known
        return two_point_base(cold, cold_c, warm, warm_c), TWO
    optimum = max(temp_c for temp_c, _ in known) if given.optimum is None else given.optimum
    return learned_base(known, optimum), LINE
