"""What a count so far says about the seeds that are still to come.

Seeds are taken as independent, which is false when a whole tray dries out: for the daily
question "is it late?" use the batch-level chances of `lateness`.

Symbols: n seeds sown, y up so far, g germination share, g ~ Beta(a, b) where it is uncertain,
F share of the viable seeds that should be up by now.
"""

from __future__ import annotations

import math
from itertools import accumulate

from benchround.core.errors import OutOfRangeError
from benchround.core.numbers.distributions import beta_binomial_pmf
from benchround.core.numbers.ranges import share, whole, within
from benchround.core.seed.lateness import chance_alive


def chance_none_up(n: int, a: float, b: float, due: float) -> float:
    """Return the chance that none of n seeds is up: sum BetaBin(k; n, a, b)(1 - F)^k.

    Args:
        n: Seeds sown.
        a: Beta parameter of germination, above 0.
        b: Beta parameter of germination, above 0.
        due: F, 0 to 1.
    """
    _check(n, 0, a, b, due)
    return math.fsum(beta_binomial_pmf(k, n, a, b) * (1.0 - due) ** k for k in range(n + 1))


def germination_after_none(n: int, a: float, b: float, due: float) -> float:
    """Return the expected germination share once none of n is up at F."""
    _check(n, 0, a, b, due)
    weights = [beta_binomial_pmf(k, n, a, b) * (1.0 - due) ** k for k in range(n + 1)]
    means = [(a + k) / (a + b + n) for k in range(n + 1)]
    total = math.fsum(weights)
    return math.fsum(w * m for w, m in zip(weights, means, strict=True)) / total


def chance_dead_after_none(none_up: float, dead_prior: float) -> float:
    """Return the chance that the whole sowing is dead: pi / (pi + (1 - pi) P(none))."""
    return 1.0 - chance_alive(none_up, dead_prior)


def final_count_chances(n: int, up: int, a: float, b: float, due: float) -> tuple[float, ...]:
    """Return the chance of 0, 1, 2 ... more seedlings after y of n are up.

    Weights C(n-y, k) B(a+y+k, b+n-y-k)(1 - F)^k, each from the one before by the ratio of the two,
    (n-y-k)(a+y+k)(1 - F) / ((k+1)(b+n-y-k-1)), and made to sum to 1.
    """
    _check(n, up, a, b, due)
    rest, late = n - up, 1.0 - due
    if late == 0.0:
        return (1.0, *(0.0 for _ in range(rest)))
    steps = (
        math.log(late * (rest - k) * (a + up + k) / ((k + 1) * (b + rest - k - 1)))
        for k in range(rest)
    )
    logs = list(accumulate(steps, initial=0.0))
    top = max(logs)
    weights = [math.exp(log - top) for log in logs]
    total = math.fsum(weights)
    return tuple(weight / total for weight in weights)


def expected_final_uncertain(n: int, up: int, a: float, b: float, due: float) -> float:
    """Return the expected final count after y of n are up, germination Beta(a, b)."""
    more = final_count_chances(n, up, a, b, due)
    return up + math.fsum(k * p for k, p in enumerate(more))


def chance_final_at_least(n: int, up: int, a: float, b: float, due: float, want: int) -> float:
    """Return the chance that at least `want` seedlings come up in the end."""
    whole("plants wanted", want, 0)
    more = final_count_chances(n, up, a, b, due)
    return min(1.0, math.fsum(more[max(0, want - up) :]))


def expected_final(n: int, up: int, germination: float, due: float) -> float:
    """Return the expected final count with known germination: y + (n-y) g(1-F)/(1-gF)."""
    share("germination share", germination)
    _check(n, up, 1.0, 1.0, due)
    still = germination * (1.0 - due)
    if still == 0.0:
        return float(up)
    return up + (n - up) * still / (1.0 - germination * due)


def _check(n: int, up: int, a: float, b: float, due: float) -> None:
    """Refuse counts and shares that cannot be."""
    whole("seeds sown", n, 1)
    whole("seeds up", up, 0)
    if up > n:
        raise OutOfRangeError(f"{up} are up of {n} sown: correct the count or the number sown.")
    within("germination parameter a", a, 0.0, low_open=True)
    within("germination parameter b", b, 0.0, low_open=True)
    within("share that should be up by now", due, 0.0, 1.0)
