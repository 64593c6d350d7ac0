"""`benchround reckon late`: is a sowing late, is it alive, and what will a count come to?"""

from __future__ import annotations

import argparse
from collections.abc import Callable

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.seed.lateness import (
    DEAD_PRIOR,
    GIVE_UP_ALIVE,
    LATE_SURVIVAL,
    chance_alive,
    chance_up_within,
    loglogistic_day_when,
    loglogistic_nothing,
    loglogistic_steepness,
    lognormal_day_when,
    lognormal_nothing,
    survival_at_which_alive_is,
)
from benchround.plain import JsonValue
from benchround.reckoning.answer import Answer, rounded
from benchround.reckoning.figures import number, share
from benchround.reckoning.late_counts import count_arguments, count_lines, count_value

HELP = "whether a sowing is late or dead, and what a count so far will come to"
EXAMPLE = "benchround reckon late --median 10 --sigma 0.3 --looked 14 --within 7"
SOURCE = (
    "mixture-cure model: dead beforehand with chance pi, else up after a spread time (definition "
    "read in the curesurv manual); late and given up: our proposal"
)
NORMAL, LOGISTIC = "log-normal", "log-logistic"


@dataclass(frozen=True, slots=True)
class Law:
    """How the first seedlings of good batches spread over the days."""

    nothing: Callable[[float], float]
    day_when: Callable[[float], float]


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument(
        "--median", type=number, required=True, metavar="D", help="half of such batches show by"
    )
    parser.add_argument(
        "--sigma", type=number, required=True, metavar="S", help="spread of the logarithm of days"
    )
    parser.add_argument(
        "--looked", type=number, required=True, metavar="D", help="days to the last look"
    )
    parser.add_argument("--law", choices=(NORMAL, LOGISTIC), default=NORMAL, help="of the days")
    parser.add_argument(
        "--dead", type=share, default=DEAD_PRIOR, metavar="P", help="chance it is dead (0.1)"
    )
    parser.add_argument("--within", type=number, default=7.0, metavar="D", help="days more (7)")
    parser.add_argument(
        "--alive", type=share, default=GIVE_UP_ALIVE, metavar="P", help="give up below (0.2)"
    )
    count_arguments(parser)


def reckon(given: argparse.Namespace) -> Answer:
    """The chances of a batch that shows nothing, and the end of a count so far."""
    law = _law(given)
    if given.within < 0.0:
        raise InputError("the days more are below zero: give 0 or more.")
    now = law.nothing(given.looked)
    alive = chance_alive(now, given.dead)
    soon = chance_up_within(now, law.nothing(given.looked + given.within), given.dead)
    late = law.day_when(LATE_SURVIVAL)
    give_up = law.day_when(survival_at_which_alive_is(given.alive, given.dead))
    value: dict[str, JsonValue] = {
        "law": given.law,
        "nothing_yet": rounded(now, 6),
        "alive": None if given.up else rounded(alive, 6),
        "up_within": None if given.up else rounded(soon, 6),
        "late_day": rounded(late, 3),
        "give_up_day": rounded(give_up, 3),
        "source": SOURCE,
        **count_value(given, 1.0 - now),
    }
    return Answer(
        value,
        (
            f"nothing up at the last look, day {given.looked:g}: alive with chance {alive:.0%}"
            if not given.up
            else f"{given.up} up at the last look, day {given.looked:g}",
            *([] if given.up else [_soon_words(given, soon, now)]),
            f"  late from day {late:.1f}, given up from day {give_up:.1f} ({given.law} days)",
            *count_lines(given, 1.0 - now),
            f"  formula: {SOURCE}",
        ),
    )


def _soon_words(given: argparse.Namespace, soon: float, now: float) -> str:
    return (
        f"  up within {given.within:g} more days with chance {soon:.0%}; a good batch shows "
        f"nothing by then with chance {now:.0%}"
    )


def _law(given: argparse.Namespace) -> Law:
    median, sigma = given.median, given.sigma
    if given.law == NORMAL:
        return Law(
            lambda day: lognormal_nothing(day, median, sigma),
            lambda s: lognormal_day_when(s, median, sigma),
        )
    steepness = loglogistic_steepness(sigma)
    return Law(
        lambda day: loglogistic_nothing(day, median, steepness),
        lambda s: loglogistic_day_when(s, median, steepness),
    )
