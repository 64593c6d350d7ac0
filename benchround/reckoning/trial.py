"""`benchround reckon trial`: do the plates of a germination test agree, and do two tests?"""

from __future__ import annotations

import argparse
import math
from collections.abc import Iterator

from benchround.core.seed.tolerances import (
    binomial_range_limit,
    error_percent,
    large_sample_range,
    tolerated_difference,
    tolerated_range,
    two_agree,
)
from benchround.reckoning.answer import Answer, rounded
from benchround.reckoning.figures import count, number

HELP = "whether the plates of a germination test agree, and whether two tests do"
EXAMPLE = "benchround reckon trial 86 92 84 90 --of 100 --other 82"
CHANCE = "binomial: a wider range comes by chance once in 40 tests"
PRINTED = "7 CFR 201.55(a), older printing, four plates of 100"
TWO = "Federal Seed Act, after Miles 1963, two tests of 400 seeds"
FOUR, HUNDRED = 4, 100


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument("percents", type=number, nargs="+", metavar="PERCENT", help="of each plate")
    parser.add_argument("--of", type=count, default=HUNDRED, metavar="N", help="seeds each (100)")
    parser.add_argument("--other", type=number, metavar="PERCENT", help="mean of a second test")
    parser.set_defaults(refuse=parser.error)


def reckon(given: argparse.Namespace) -> Answer:
    """Mean, error, and the range or difference that chance allows."""
    if len(given.percents) < 2:
        given.refuse("give the per cent of two plates or more")
    plates, mean = len(given.percents), math.fsum(given.percents) / len(given.percents)
    spread = max(given.percents) - min(given.percents)
    error = error_percent(mean, plates * given.of)
    printed = (plates, given.of) == (FOUR, HUNDRED)
    limit = binomial_range_limit(mean, plates, given.of) if 0.0 < mean < 100.0 else None
    in_hundreds = None if limit is None else 100.0 * limit / given.of
    table = tolerated_range(mean) if printed else None
    large = large_sample_range(mean) if printed else None
    allowed = table if table is not None else in_hundreds
    agree = None if allowed is None else spread <= allowed
    other = two_agree(mean, given.other) if given.other is not None and printed else None
    between = tolerated_difference((mean + given.other) / 2.0) if other is not None else None
    return Answer(
        value={
            "mean_percent": rounded(mean),
            "error_percent": rounded(error),
            "range": rounded(spread),
            "allowed_by_chance": rounded(in_hundreds),
            "allowed_printed": table,
            "allowed_large_sample": rounded(large),
            "plates_agree": agree,
            "difference_allowed": between,
            "tests_agree": other,
            "source": "; ".join((CHANCE, PRINTED, TWO)),
        },
        lines=(
            f"mean {mean:.1f} %, give or take {error:.1f} (standard deviation by chance alone)",
            *_plates(spread, in_hundreds, table, agree),
            *_other(given, mean, between, other),
        ),
    )


def _plates(
    spread: float, chance: float | None, table: int | None, agree: bool | None
) -> Iterator[str]:
    if agree is None:
        yield "  all plates are alike: there is no range to judge"
        return
    told = [f"{chance:.0f} by chance ({CHANCE})"] if chance is not None else []
    told += [f"{table} as printed ({PRINTED})"] if table is not None else []
    verdict = "the plates agree" if agree else "the plates do not agree: test again"
    yield f"  they range over {spread:g} points; allowed {', '.join(told)}: {verdict}"


def _other(
    given: argparse.Namespace, mean: float, between: int | None, agree: bool | None
) -> Iterator[str]:
    if given.other is None:
        return
    if agree is None:
        yield f"  a second test: no difference is printed for this ({TWO})"
        return
    verdict = "the tests agree" if agree else "the tests do not agree: test a third time"
    off = abs(mean - given.other)
    yield f"  a second test is {off:.1f} points off; allowed {between} ({TWO}): {verdict}"
