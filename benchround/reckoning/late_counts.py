"""What a count so far says of the seed still to come: a part of `reckon late`."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from benchround.core.frozen import dataclass
from benchround.core.learning.share import PRIOR_SEEDS, packet_belief
from benchround.core.numbers.shares import none_up_limit
from benchround.core.seed.partial_count import (
    chance_dead_after_none,
    chance_final_at_least,
    chance_none_up,
    expected_final,
    expected_final_uncertain,
    germination_after_none,
)
from benchround.plain import JsonValue
from benchround.reckoning.answer import rounded
from benchround.reckoning.figures import count, number, share

SOURCE = "beta-binomial, seeds taken as independent (textbook formula)"


@dataclass(frozen=True, slots=True)
class _Count:
    """A count so far: seeds, up, germination as Beta(a, b) and as known, share due."""

    sown: int
    up: int
    known: float
    a: float
    b: float
    due: float


def count_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments of a count so far."""
    parser.add_argument("--sown", type=count, metavar="N", help="seeds sown, for a count so far")
    parser.add_argument("--up", type=count, default=0, metavar="N", help="up at the look (0)")
    parser.add_argument("--germination", type=share, default=0.8, metavar="G", help="(0.8)")
    parser.add_argument(
        "--tested", type=number, default=PRIOR_SEEDS, metavar="N", help="seeds it rests on (25)"
    )
    parser.add_argument(
        "--due", type=share, metavar="F", help="share of the good seed due by then (as of batches)"
    )
    parser.add_argument("--want", type=count, metavar="N", help="seedlings wanted in the end")


def count_value(given: argparse.Namespace, due: float) -> dict[str, JsonValue]:
    """Keys for JSON; none without --sown."""
    one = _count(given, due)
    if one is None:
        return {}
    none = chance_none_up(one.sown, one.a, one.b, one.due) if one.up == 0 else None
    return {
        "due": rounded(one.due, 6),
        "final": rounded(expected_final_uncertain(*_figures(one)), 6),
        "final_if_known": rounded(expected_final(one.sown, one.up, one.known, one.due), 6),
        "enough": None
        if given.want is None
        else rounded(chance_final_at_least(*_figures(one), given.want), 6),
        "none_up": rounded(none, 9),
        "germination_after_none": None
        if none is None
        else rounded(germination_after_none(one.sown, one.a, one.b, one.due), 9),
        "all_dead": None if none is None else rounded(chance_dead_after_none(none, given.dead), 6),
        "greatest_share": rounded(none_up_limit(one.sown), 6) if one.up == 0 else None,
        "count_source": SOURCE,
    }


def count_lines(given: argparse.Namespace, due: float) -> Iterator[str]:
    """The same to read."""
    one = _count(given, due)
    if one is None:
        return
    final = expected_final_uncertain(*_figures(one))
    known = expected_final(one.sown, one.up, one.known, one.due)
    yield (
        f"  {one.up} of {one.sown} up when {one.due:.0%} of the good seed is due: about "
        f"{final:.1f} in the end, {known:.1f} if germination were sure ({SOURCE})"
    )
    if given.want is not None:
        chance = chance_final_at_least(*_figures(one), given.want)
        yield f"  {given.want} or more with chance {chance:.0%}"
    if one.up == 0:
        none = chance_none_up(one.sown, one.a, one.b, one.due)
        left = germination_after_none(one.sown, one.a, one.b, one.due)
        yield (
            f"  none up would happen with chance {none:.1%}: the whole sowing is dead with chance "
            f"{chance_dead_after_none(none, given.dead):.0%}, germination else {left:.0%}"
        )
        limit = none_up_limit(one.sown)
        yield f"  were all of it due, no more than {limit:.0%} could be good (95 %)"


def _count(given: argparse.Namespace, due: float) -> _Count | None:
    if given.sown is None:
        return None
    belief = packet_belief(given.germination, given.tested)
    by_now = due if given.due is None else given.due
    return _Count(given.sown, given.up, given.germination, belief.a, belief.b, by_now)


def _figures(one: _Count) -> tuple[int, int, float, float, float]:
    return one.sown, one.up, one.a, one.b, one.due
