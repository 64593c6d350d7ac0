"""`benchround reckon succession`: when to sow again, or to sow so as to be ready, by heat."""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Sequence
from datetime import date, timedelta

from benchround.core.planning.again import RULE
from benchround.core.planning.succession import (
    SOW_AGAIN_BASE_C,
    SOW_AGAIN_HEAT_C,
    SOW_AGAIN_HEIGHT_MM,
    days_to_collect,
    heat_between_sowings,
    next_sowing,
    sow_by_heat,
)
from benchround.reckoning.answer import Answer, iso, rounded
from benchround.reckoning.crop_named import crop_named
from benchround.reckoning.figures import day, number

HELP = "when to sow again for a harvest some days later, by heat units"
EXAMPLE = (
    "benchround reckon succession --gap 7 --harvest-mean 18 --base 4.4 --mean 9 --sown 2027-04-01"
)
SWEET_CORN = "sweetcorn"
STEADY_DAYS = 400
"""So far a steady mean is followed."""


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument("crop", nargs="?", default="", metavar="CROP", help="for its base")
    parser.add_argument("--base", type=number, metavar="C", help="instead of the crop's")
    parser.add_argument("--gap", type=number, metavar="DAYS", help="days between two harvests")
    parser.add_argument(
        "--harvest-mean", type=number, metavar="C", help="mean of the days between the harvests"
    )
    parser.add_argument(
        "--heat", type=number, metavar="CD", help="degree-days, instead of --gap and the mean"
    )
    parser.add_argument(
        "--mean",
        type=number,
        nargs="+",
        default=[],
        metavar="C",
        help="mean of each day from the one after --sown, or of each up to --wanted; one: of all",
    )
    parser.add_argument("--sown", type=day, metavar="DATE", help="day of the last sowing")
    parser.add_argument("--wanted", type=day, metavar="DATE", help="day it is to be ready on")
    parser.set_defaults(refuse=parser.error)


def reckon(given: argparse.Namespace) -> Answer:
    """The heat to leave between two sowings, and the days that bring it."""
    base = _base(given)
    heat = _heat(given, base)
    steady = given.mean[0] if len(given.mean) == 1 else None
    days = days_to_collect(heat, steady, base) if steady is not None else None
    again = _again(given, heat, base)
    ready = _ready(given, heat, base)
    lines = [f"{heat:.1f} degree-days above {base:g} C"]
    if steady is not None:
        lasts = "never, it is not above the base" if days is None else f"{days} days"
        lines.append(f"  at a mean of {steady:g} C: {lasts}")
    if given.sown is not None and given.mean:
        lines.append(f"  sow again {iso(again) or 'later than these temperatures reach'}")
    if given.wanted is not None and given.mean:
        lines.append(
            f"  ready on {iso(given.wanted)}: sow "
            f"{iso(ready) or 'earlier than these temperatures reach'}"
        )
    lines += [*_corn(given), f"  rule: {RULE}"]
    return Answer(
        value={
            "base_c": base,
            "heat": rounded(heat, 3),
            "days": days,
            "next_sowing": iso(again),
            "sow_by": iso(ready),
            "source": RULE,
        },
        lines=tuple(lines),
    )


def _base(given: argparse.Namespace) -> float:
    if given.base is not None:
        return float(given.base)
    crop = crop_named(given.crop) if given.crop else None
    if crop is None or crop.germination is None:
        given.refuse("give --base, or a CROP whose base is known")
    assert crop is not None and crop.germination is not None
    return crop.germination.base_c


def _heat(given: argparse.Namespace, base: float) -> float:
    if given.heat is not None:
        return float(given.heat)
    if given.gap is None or given.harvest_mean is None:
        given.refuse("give --heat, or --gap with --harvest-mean")
    return heat_between_sowings(given.gap, given.harvest_mean, base)


def _again(given: argparse.Namespace, heat: float, base: float) -> date | None:
    if given.sown is None or not given.mean:
        return None
    days = ((given.sown + timedelta(days=n), mean) for n, mean in enumerate(_means(given), 1))
    return next_sowing(given.sown, heat, base, days)


def _ready(given: argparse.Namespace, heat: float, base: float) -> date | None:
    if given.wanted is None or not given.mean or heat <= 0.0:
        return None
    return sow_by_heat(given.wanted, _means(given), heat, base)


def _means(given: argparse.Namespace) -> Sequence[float]:
    means: list[float] = given.mean
    return means * STEADY_DAYS if len(means) == 1 else means


def _corn(given: argparse.Namespace) -> Iterator[str]:
    """What growers of sweet corn go by."""
    if not given.crop or crop_named(given.crop).key != SWEET_CORN:
        return
    least, most = SOW_AGAIN_HEIGHT_MM
    yield (
        f"  sweet corn is also sown again {SOW_AGAIN_HEAT_C:.0f} degree-days above "
        f"{SOW_AGAIN_BASE_C:g} C after the last sowing came up (UConn IPM, Scheduling sweet corn "
        f"plantings), or when it stands {least:.0f} to {most:.0f} mm high (Ward Upham, Kansas "
        "State University)"
    )
