"""`benchround reckon lots`: what counts of some lots teach about the next one."""

from __future__ import annotations

import argparse
import math
import re
from collections.abc import Iterator, Sequence

from benchround.core.errors import InputError, OutOfRangeError
from benchround.core.learning.losses import LossBelief, shrink_together
from benchround.core.learning.lot_spread import LotSpread, spread_of_lots
from benchround.core.learning.share import (
    GERMINATION_PER_YEAR,
    PRIOR_SEEDS,
    ShareBelief,
    belief_from_lots,
    beta_update,
    count_sd,
    old_seed_belief,
    packet_belief,
    shrunk_share,
)
from benchround.plain import JsonValue
from benchround.reckoning.answer import Answer, rounded
from benchround.reckoning.figures import number, share

HELP = "what counts of some sowings teach: the share to reckon with, and how far lots differ"
EXAMPLE = "benchround reckon lots 28/40 35/40 31/40 --packet 85%"
SOURCE = (
    "beta-binomial: packet worth so many seeds (our proposal), spread of lots Crowder 1978, drawn "
    "together Efron & Morris 1977 (second-hand), older counts Ibrahim & Chen 2000 (from memory)"
)
LOSS_SOURCE = "gamma-Poisson, rule read in Berry's slides, pnl.gov/bayesian"
_LOT = re.compile(r"([0-9]{1,7})/([0-9]{1,7})")


def arguments(parser: argparse.ArgumentParser) -> None:
    """The subject's arguments."""
    parser.add_argument("lots", nargs="+", metavar="UP/SOWN", help="counts, as 28/40")
    parser.add_argument("--packet", type=share, metavar="G", help="share before any own count")
    parser.add_argument(
        "--worth", type=number, default=PRIOR_SEEDS, metavar="N", help="seeds it is worth (25)"
    )
    parser.add_argument(
        "--ages", type=number, nargs="+", metavar="Y", help="years since each count, same order"
    )
    parser.add_argument(
        "--losses", type=_lot, metavar="N/WEEKS", help="trays lost in so many tray-weeks, as 3/4"
    )
    parser.add_argument(
        "--losses-before", type=_lot, metavar="N/WEEKS", help="belief before that, as 2/4"
    )


def reckon(given: argparse.Namespace) -> Answer:
    """The share to reckon with, its range, how lots differ, and each lot drawn to the mean."""
    lots = [_lot(word) for word in given.lots]
    if given.ages is not None and len(given.ages) != len(lots):
        raise InputError(f"{len(given.ages)} ages for {len(lots)} counts: give one for each.")
    up, sown = sum(y for y, _ in lots), sum(n for _, n in lots)
    belief = _belief(given, lots, up, sown)
    low, high = belief.interval()
    pooled = None if given.packet is None else shrunk_share(given.packet, up, sown, given.worth)
    spread = spread_of_lots([lots]) if len(lots) > 1 else None
    moments = _moments(lots)
    drawn = _drawn(lots, up, sown)
    losses = _losses(given)
    value: dict[str, JsonValue] = {
        "up": up,
        "sown": sown,
        "share": rounded(belief.mean, 6),
        "low": rounded(low, 6),
        "high": rounded(high, 6),
        "with_packet": rounded(pooled, 6),
        "lot_worth_seeds": rounded(spread.seeds, 3) if spread else None,
        "lot_correlation": rounded(spread.phi, 6) if spread else None,
        "moments_share": rounded(moments.mean, 6) if moments else None,
        "moments_seeds": rounded(moments.seeds, 3) if moments else None,
        "drawn_together": [rounded(one, 4) for one in drawn] if drawn else None,
        "losses_a_week": rounded(losses.mean, 6) if losses else None,
        "no_loss_next_week": rounded(losses.chance_none(), 6) if losses else None,
        "source": SOURCE,
        "losses_source": LOSS_SOURCE if losses else None,
    }
    return Answer(
        value,
        (
            f"{up} of {sown} up in {len(lots)} lots: reckon with {belief.mean:.1%}, between "
            f"{low:.0%} and {high:.0%} (90 % range)",
            *_lines(lots, belief, spread, drawn),
            *(
                [
                    f"  {losses.mean:.2f} losses a tray-week; none next week with chance "
                    f"{losses.chance_none():.0%} ({LOSS_SOURCE})"
                ]
                if losses
                else []
            ),
            f"  formulas: {SOURCE}",
        ),
    )


def _lot(word: str) -> tuple[int, int]:
    match = _LOT.fullmatch(word.strip())
    if match is None:
        raise InputError(f"{word.strip()[:20]!r} is no count such as 28/40, up of sown.")
    return int(match[1]), int(match[2])


def _belief(
    given: argparse.Namespace, lots: Sequence[tuple[int, int]], up: int, sown: int
) -> ShareBelief:
    prior = packet_belief(given.packet, given.worth) if given.packet is not None else None
    if given.ages is not None:
        aged = [(y, n, age) for (y, n), age in zip(lots, given.ages, strict=True)]
        return old_seed_belief(aged, GERMINATION_PER_YEAR, prior)
    return beta_update(prior or ShareBelief(1.0, 1.0), up, sown)


def _moments(lots: Sequence[tuple[int, int]]) -> ShareBelief | None:
    """The belief by moments; None where the lots tell no spread."""
    try:
        return belief_from_lots([up / sown for up, sown in lots if sown])
    except OutOfRangeError:
        return None


def _drawn(lots: Sequence[tuple[int, int]], up: int, sown: int) -> tuple[float, ...]:
    """Each lot's share drawn to the mean of all; nothing where there are fewer than four."""
    if len(lots) < 4 or not 0 < up < sown or any(n == 0 for _, n in lots):
        return ()
    shares = [y / n for y, n in lots]
    mean = math.fsum(shares) / len(shares)
    variance = mean * (1.0 - mean) / (sown / len(lots))
    return shrink_together(shares, variance)


def _losses(given: argparse.Namespace) -> LossBelief | None:
    if given.losses is None:
        return None
    lost, weeks = given.losses
    a, b = given.losses_before or (1, 1)
    return LossBelief(a, b).update(lost, weeks)


def _lines(
    lots: Sequence[tuple[int, int]],
    belief: ShareBelief,
    spread: LotSpread | None,
    drawn: Sequence[float],
) -> Iterator[str]:
    size = round(sum(n for _, n in lots) / len(lots))
    phi = spread.phi if spread else 0.0
    if spread is not None:
        yield (
            f"  a lot's share is worth {spread.seeds:.0f} seeds as a forecast of the next lot's; "
            f"a count of {size} varies by {count_sd(size, belief.mean, phi):.1f}, by chance alone "
            f"{count_sd(size, belief.mean):.1f} (standard deviations)"
        )
    if drawn:
        yield "  each lot drawn to the mean of all: " + ", ".join(f"{one:.1%}" for one in drawn)
