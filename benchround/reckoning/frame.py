"""`benchround reckon frame`: how warm a cold frame gets, and what to do with its lid."""

from __future__ import annotations

import argparse

from benchround.core.frame.balance import HeatTerms, Sunlit, day_terms, gain_c
from benchround.core.frame.build import COVERS, LID_ORDER, FrameBuild, Glazing, LidPosition
from benchround.core.frame.day import STILL_AIR_MS
from benchround.core.frame.lid_words import Stock
from benchround.core.frame.place import SAID_POSITIONS
from benchround.core.numbers.ranges import within
from benchround.plain import JsonValue
from benchround.reckoning.answer import Answer, rounded
from benchround.reckoning.figures import day, number, pair, within_sky
from benchround.reckoning.frame_day import day_answer

HELP = "a cold frame's warmth at a radiation, or through a day with advice on its lid"
EXAMPLE = "benchround reckon frame --size 1.2,0.6 --glazing glass --radiation 600 --wind 2"
BALANCE = (
    "steady heat balance as ASABE EP406 (from memory); air through the opening Boulard & Baille "
    "1995, Agricultural and Forest Meteorology 76:145 (values from memory)"
)
DAY_FIGURES = ("min", "max", "lat", "lon", "on")


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    build = parser.add_argument_group("the frame")
    build.add_argument(
        "--size", type=pair, default=(1.2, 0.6), metavar="L,W", help="metres (1.2,0.6)"
    )
    build.add_argument(
        "--height", type=number, default=0.3, metavar="M", help="mean inside height (0.3)"
    )
    build.add_argument(
        "--glazing", choices=[str(g) for g in Glazing], default=str(Glazing.GLASS), help="(glass)"
    )
    build.add_argument(
        "--shade", type=number, default=0.0, metavar="S", help="share of sun kept off, 0 to 1 (0)"
    )
    build.add_argument(
        "--lid",
        choices=[*(lid.words for lid in LidPosition), str(LidPosition.OFF)],
        default=str(LidPosition.SHUT),
        metavar="POSITION",
        help="; ".join(lid.words for lid in LidPosition),
    )
    now = parser.add_argument_group("at one radiation")
    now.add_argument("--radiation", type=number, metavar="W", help="on level ground, W/m2")
    now.add_argument(
        "--wind", type=number, default=STILL_AIR_MS, metavar="MS", help="wind, m/s (1)"
    )
    whole = parser.add_argument_group("through a day")
    whole.add_argument("--min", type=number, metavar="C", help="lowest outside")
    whole.add_argument("--max", type=number, metavar="C", help="highest outside")
    whole.add_argument("--sun-hours", type=number, metavar="H", help="hours of sunshine")
    whole.add_argument("--lat", type=number, metavar="L", help="south negative")
    whole.add_argument("--lon", type=number, metavar="L", help="west negative")
    whole.add_argument("--on", type=day, metavar="DATE", help="as 2026-05-27")
    whole.add_argument("--tz", default="", metavar="ZONE", help="as Europe/London (sun time)")
    whole.add_argument("--next-min", type=number, metavar="C", help="lowest of the next night")
    whole.add_argument("--gust", type=number, metavar="KMH", help="highest gust, km/h")
    whole.add_argument("--rain", type=number, metavar="MM", help="rain of the day")
    whole.add_argument(
        "--stock",
        choices=[str(stock) for stock in Stock],
        default=str(Stock.HALF_HARDY),
        help="the most delicate thing in it (half-hardy)",
    )
    parser.set_defaults(refuse=parser.error)


def reckon(given: argparse.Namespace) -> Answer:
    """The gain at each lid position, or the day's curve and advice."""
    told = [name for name in DAY_FIGURES if getattr(given, name) is not None]
    if given.radiation is not None and told:
        given.refuse("give either --radiation or a day (--min --max --lat --lon --on), not both")
    if given.radiation is None and len(told) < len(DAY_FIGURES):
        missing = ", ".join(f"--{name}" for name in DAY_FIGURES if name not in told)
        given.refuse(f"give --radiation, or for a day also {missing}")
    length, width = given.size
    frame = FrameBuild(length, width, given.height, Glazing(given.glazing), shade_share=given.shade)
    if given.radiation is None:
        within_sky(given.lat, given.lon)
        return day_answer(given, frame, f"{BALANCE}; {cover_words(frame)}")
    return _gain_answer(given, frame)


def _gain_answer(given: argparse.Namespace, frame: FrameBuild) -> Answer:
    within("the wind", given.wind, 0.0, 60.0, "m/s")
    gains = {lid: gain_c(frame, given.radiation, lid, given.wind) for lid in LID_ORDER}
    lid = SAID_POSITIONS[given.lid]
    source = f"{BALANCE}; {cover_words(frame)}"
    heat = day_terms(frame, Sunlit(given.radiation, given.wind), lid)
    by_lid: dict[str, JsonValue] = {str(p): rounded(gain, 3) for p, gain in gains.items()}
    return Answer(
        value={
            "lid": str(lid),
            "gain_c": rounded(gains[lid], 3),
            "gains_c": by_lid,
            "heat_w": {name: rounded(watts, 2) for name, watts in _heat(heat).items()},
            "radiation_wm2": given.radiation,
            "wind_ms": given.wind,
            "glazing": str(frame.glazing),
            "length_m": frame.length_m,
            "width_m": frame.width_m,
            "height_m": frame.height_m,
            "source": source,
        },
        lines=(
            f"{frame.length_m:g} x {frame.width_m:g} m, {frame.glazing}, {given.radiation:g} W/m2, "
            f"wind {given.wind:g} m/s",
            f"  lid {lid.words}: {gains[lid]:.1f} K warmer than outside",
            "  " + ", ".join(f"{position.words} {gain:.1f}" for position, gain in gains.items()),
            "  where the sun's heat goes, W: "
            + ", ".join(f"{name} {watts:.0f}" for name, watts in _heat(heat).items()),
            f"  formula: {source}",
        ),
    )


def _heat(terms: HeatTerms) -> dict[str, float]:
    """Where the heat of a steady frame goes, W, by name."""
    return {
        "taken in": terms.taken_w,
        "evaporation": terms.evaporated_w,
        "into the ground": terms.into_ground_w,
        "through the light": terms.through_light_w,
        "through the walls": terms.through_walls_w,
        "leaks": terms.leaked_w,
        "out at the lid": terms.ventilated_w,
    }


def cover_words(frame: FrameBuild) -> str:
    """Where the figures of the glazing come from."""
    cover = COVERS[frame.glazing]
    return f"{frame.glazing}: {cover.source} ({cover.status})"
