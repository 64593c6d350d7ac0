"""`benchround reckon tonight`: how cold it may get, from what can be read in the afternoon."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from benchround.core.frozen import dataclass
from benchround.core.sky.frost import (
    FrostTolerance,
    frost_severity,
    is_ground_frost,
    is_harmed,
    us_freeze,
)
from benchround.core.sky.tonight import (
    GUESSED_DEW_POINT_MARGIN_C,
    MinimumRange,
    NightWeather,
    at_tray_level,
    craddock_pritchard_range,
    guessed_dew_point_c,
    mckenzie_range,
    smith_grass_c,
)
from benchround.core.units import degrees
from benchround.plain import JsonValue
from benchround.reckoning.answer import Answer, rounded
from benchround.reckoning.figures import count, number

HELP = "tonight's minimum, its frost, and what it harms"
EXAMPLE = "benchround reckon tonight --max 12 --dew 4 --sky 'light wind, little cloud'"
SOURCE = (
    "McKenzie 1944 and Craddock & Pritchard 1951, UK Met Office, inland UK; Smith 1973, "
    "Canterbury, New Zealand; words: UK Met Office and US National Weather Service; harm: review "
    "in PMC10202904, table 2; trays 2 to 4 C colder on clear nights: from memory"
)
CLEAR = frozenset({NightWeather.DEAD_CALM_CLEAR, NightWeather.LIGHT_WIND_LITTLE_CLOUD})


@dataclass(frozen=True, slots=True)
class Rule:
    """What one rule gives, and whether it speaks of the screen or of grass."""

    name: str
    found: MinimumRange
    grass: bool = False


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument("--max", type=number, required=True, metavar="C", help="today's maximum")
    dew = parser.add_mutually_exclusive_group(required=True)
    dew.add_argument("--dew", type=number, metavar="C", help="dew point of the afternoon")
    dew.add_argument(
        "--last-min", type=number, metavar="C", help="last night's minimum, where none was read"
    )
    parser.add_argument(
        "--sky",
        choices=[str(night) for night in NightWeather],
        default=str(NightWeather.DEAD_CALM_CLEAR),
        metavar="NIGHT",
        help="what is coming: " + "; ".join(str(night) for night in NightWeather),
    )
    parser.add_argument("--noon", type=number, metavar="C", help="temperature at noon")
    parser.add_argument("--three", type=number, metavar="C", help="temperature at 15:00")
    parser.add_argument(
        "--month", type=count, metavar="N", help="month of the southern year, with --three"
    )


def reckon(given: argparse.Namespace) -> Answer:
    """The range of each rule that can be asked; the coldest end decides."""
    night = NightWeather(given.sky)
    guessed = given.dew is None
    dew_c = guessed_dew_point_c(given.last_min) if guessed else given.dew
    rules = tuple(_rules(given, night, dew_c, guessed))
    screen = rules[0].found
    trays = at_tray_level(screen, clear_sky=night in CLEAR)
    coldest = min(trays.coldest_c, *(rule.found.coldest_c for rule in rules))
    in_screen = min(rule.found.coldest_c for rule in rules if not rule.grass)
    word, american = frost_severity(in_screen), us_freeze(in_screen)
    harmed = [str(kind) for kind in FrostTolerance if is_harmed(kind, coldest)]
    grass = [rule.found.coldest_c for rule in rules if rule.grass]
    ground = is_ground_frost(min(grass)) if grass else None
    value: dict[str, JsonValue] = {
        "sky": str(night),
        "dew_point_c": rounded(dew_c, 2),
        "dew_point_guessed": guessed,
        "rules": [{"rule": rule.name, **_range(rule.found)} for rule in rules],
        "screen": _range(screen),
        "trays": _range(trays),
        "coldest_c": rounded(coldest, 2),
        "word": str(word),
        "us_word": str(american),
        "ground_frost": ground,
        "harmed": list(harmed),
        "source": SOURCE,
    }
    return Answer(
        value,
        (
            f"Tonight, {night}, dew point {dew_c:g} C"
            + (" taken from last night's minimum" if guessed else ""),
            *(f"  {rule.name}: {_words(rule.found)}" for rule in rules),
            f"  beside the trays in the open: {_words(trays)}",
            f"  reckon with the colder end: {word} (in the United States {american})",
            *([f"  on grass: {'ground frost' if ground else 'no ground frost'}"] if grass else []),
            f"  harmed at {degrees(coldest, 1)} C: {'; '.join(harmed) or 'no kind of plant'}",
            f"  formulas: {SOURCE}",
        ),
    )


def _rules(
    given: argparse.Namespace, night: NightWeather, dew_c: float, guessed: bool
) -> Iterator[Rule]:
    less = GUESSED_DEW_POINT_MARGIN_C if guessed else (0.0, 0.0)
    found = mckenzie_range(given.max, dew_c, night)
    yield Rule("in the screen, from the maximum (McKenzie)", found.lowered(*less))
    if given.noon is not None:
        found = craddock_pritchard_range(given.noon, dew_c)
        name = "in the screen, from noon, any weather (Craddock & Pritchard)"
        yield Rule(name, found.lowered(*less))
    if given.three is not None and given.month is not None:
        grass_c = smith_grass_c(given.three, dew_c, given.month)
        found = MinimumRange(grass_c, grass_c)
        yield Rule("on grass, a frosty night (Smith)", found.lowered(*less), grass=True)


def _range(found: MinimumRange) -> dict[str, JsonValue]:
    return {"coldest_c": rounded(found.coldest_c, 2), "warmest_c": rounded(found.warmest_c, 2)}


def _words(found: MinimumRange) -> str:
    if found.coldest_c == found.warmest_c:
        return f"{degrees(found.coldest_c, 1)} C"
    return f"{degrees(found.coldest_c, 1)} to {degrees(found.warmest_c, 1)} C"
