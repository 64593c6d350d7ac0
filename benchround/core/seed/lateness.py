"""Is a batch late, and is it still alive? Chances from the last look that showed nothing.

A batch is either dead (prior chance pi) or comes up after a spread time. This is the
mixture-cure model: the chance of being "cured" given no event so far (definition read in the
curesurv package manual). Days may be calendar days or degree-days, as long as both sides agree.
"""

from __future__ import annotations

import math

from benchround.core.errors import OutOfRangeError
from benchround.core.numbers.normal import NORMAL
from benchround.core.numbers.ranges import chance, within

DEAD_PRIOR = 0.10
"""Prior chance that a sowing is dead, before anything is known; our proposal, no source."""

LATE_SURVIVAL = 0.10
"""A batch is late once a good one would have shown by now with chance 0.90; our proposal."""

GIVE_UP_ALIVE = 0.20
"""A batch is probably dead once its chance of being alive is 0.20; our proposal."""


def chance_alive(s: float, dead_prior: float = DEAD_PRIOR) -> float:
    """Return the chance that a batch that shows nothing is alive.

    (1 - pi) S / (pi + (1 - pi) S).

    Args:
        s: Chance that a good batch shows nothing at the last look, 0 to 1.
        dead_prior: pi, prior chance that the batch is dead, between 0 and 1.
    """
    within("chance of nothing yet", s, 0.0, 1.0)
    chance("prior chance of a dead sowing", dead_prior)
    return (1.0 - dead_prior) * s / (dead_prior + (1.0 - dead_prior) * s)


def chance_up_within(s_now: float, s_later: float, dead_prior: float = DEAD_PRIOR) -> float:
    """Return the chance that a batch that shows nothing now shows something by a later time.

    (1 - pi)(S_now - S_later) / (pi + (1 - pi) S_now).

    Args:
        s_now: S at the last look.
        s_later: S at the later time, not above `s_now`.
        dead_prior: pi.
    """
    within("chance of nothing now", s_now, 0.0, 1.0)
    within("chance of nothing later", s_later, 0.0, s_now)
    chance("prior chance of a dead sowing", dead_prior)
    return (1.0 - dead_prior) * (s_now - s_later) / (dead_prior + (1.0 - dead_prior) * s_now)


def survival_at_which_alive_is(q: float, dead_prior: float = DEAD_PRIOR) -> float:
    """Return the S at which the chance of being alive has fallen to q.

    q pi / ((1 - q)(1 - pi)), the inverse of `chance_alive`.

    Raises:
        OutOfRangeError: q is above 1 - pi, where the chance starts on the day of sowing.
    """
    chance("chance alive", q)
    chance("prior chance of a dead sowing", dead_prior)
    if q > 1.0 - dead_prior:
        raise OutOfRangeError(
            f"a chance alive of {q:g} is never passed: it starts at {1.0 - dead_prior:g} on the "
            "day of sowing; give a lower one."
        )
    return min(1.0, q * dead_prior / ((1.0 - q) * (1.0 - dead_prior)))


def lognormal_nothing(day: float, median: float, sigma: float) -> float:
    """Return S(d) = 1 - Phi(ln(d / median) / sigma) for log-normal first emergence."""
    _check(day, median)
    within("spread (sigma)", sigma, 0.0, low_open=True)
    return 1.0 - NORMAL.cdf(math.log(day / median) / sigma) if day > 0.0 else 1.0


def lognormal_day_when(s: float, median: float, sigma: float) -> float:
    """Return the day on which S has fallen to s: median exp(sigma Phi^-1(1 - s))."""
    chance("chance of nothing yet", s)
    _check(0.0, median)
    within("spread (sigma)", sigma, 0.0, low_open=True)
    return median * math.exp(sigma * NORMAL.inv_cdf(1.0 - s))


def loglogistic_steepness(sigma: float) -> float:
    """Return k = pi / (sqrt(3) sigma), the log-logistic with the spread of a log-normal."""
    within("spread (sigma)", sigma, 0.0, low_open=True)
    return math.pi / (math.sqrt(3.0) * sigma)


def loglogistic_nothing(day: float, median: float, steepness: float) -> float:
    """Return S(d) = 1 / (1 + (d / median)^k) for log-logistic first emergence."""
    _check(day, median)
    within("steepness (k)", steepness, 0.0, low_open=True)
    if day == 0.0:
        return 1.0
    exponent = steepness * math.log(day / median)
    return 1.0 / (1.0 + math.exp(exponent)) if exponent < 700.0 else 0.0


def loglogistic_day_when(s: float, median: float, steepness: float) -> float:
    """Return the day on which S has fallen to s: median (1/s - 1)^(1/k)."""
    chance("chance of nothing yet", s)
    _check(0.0, median)
    within("steepness (k)", steepness, 0.0, low_open=True)
    return median * math.exp(math.log(1.0 / s - 1.0) / steepness)


def _check(day: float, median: float) -> None:
    """Refuse negative days and medians that are not above 0."""
    within("days since sowing", day, 0.0)
    within("median days", median, 0.0, low_open=True)
