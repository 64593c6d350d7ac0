"""Binomial, beta and Student distributions on the standard library alone.

All sums run in log-gamma terms: factorials overflow a float near n = 170 and their ratios
lose all digits near n = 1000.
"""

from __future__ import annotations

import math

from benchround.core.numbers.ranges import chance, within


def log_choose(n: float, k: float) -> float:
    """Return ln C(n, k)."""
    return math.lgamma(n + 1.0) - math.lgamma(k + 1.0) - math.lgamma(n - k + 1.0)


def log_beta(a: float, b: float) -> float:
    """Return ln B(a, b)."""
    return math.lgamma(a) + math.lgamma(b) - math.lgamma(a + b)


def binomial_log_pmf(k: int, n: int, p: float) -> float:
    """Return ln P(X = k) for X binomial (n, p), 0 < p < 1."""
    return log_choose(n, k) + k * math.log(p) + (n - k) * math.log1p(-p)


def binomial_at_least(k: int, n: int, p: float) -> float:
    """Return P(X >= k) for X binomial (n, p), summing the shorter side exactly."""
    if k <= 0 or p >= 1.0:
        return 1.0 if k <= n else 0.0
    if k > n or p <= 0.0:
        return 0.0
    if k <= n // 2:
        below = math.fsum(math.exp(binomial_log_pmf(i, n, p)) for i in range(k))
        return min(1.0, max(0.0, 1.0 - below))
    return min(1.0, math.fsum(math.exp(binomial_log_pmf(i, n, p)) for i in range(k, n + 1)))


def beta_binomial_pmf(k: int, n: int, a: float, b: float) -> float:
    """Return P(X = k) for X beta-binomial (n, a, b)."""
    return math.exp(log_choose(n, k) + log_beta(a + k, b + n - k) - log_beta(a, b))


def beta_cdf(x: float, a: float, b: float) -> float:
    """Return the regularised incomplete beta function I_x(a, b).

    Continued fraction, Abramowitz & Stegun 1964, 26.5.8 (from memory), evaluated by the
    modified Lentz method on the side where it converges fast.
    """
    within("beta parameter a", a, 0.0, low_open=True)
    within("beta parameter b", b, 0.0, low_open=True)
    if x <= 0.0:
        return 0.0
    if x >= 1.0:
        return 1.0
    if x > (a + 1.0) / (a + b + 2.0):
        return 1.0 - beta_cdf(1.0 - x, b, a)
    front = math.exp(a * math.log(x) + b * math.log1p(-x) - log_beta(a, b)) / a
    return front * _beta_fraction(x, a, b)


def _beta_fraction(x: float, a: float, b: float) -> float:
    """Return the continued fraction of the incomplete beta function."""
    tiny = 1e-300
    c, d = 1.0, 1.0 / _away_from_zero(1.0 - (a + b) * x / (a + 1.0), tiny)
    value = d
    for m in range(1, 2000):
        even = m * (b - m) * x / ((a + 2 * m - 1.0) * (a + 2 * m))
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1.0))
        for term in (even, odd):
            d = 1.0 / _away_from_zero(1.0 + term * d, tiny)
            c = _away_from_zero(1.0 + term / c, tiny)
            value *= c * d
        if abs(c * d - 1.0) < 1e-15:
            break
    return value


def _away_from_zero(value: float, tiny: float) -> float:
    """Return `value`, or `tiny` where it would divide by zero."""
    return value if abs(value) > tiny else tiny


def beta_quantile(q: float, a: float, b: float) -> float:
    """Return x with I_x(a, b) = q, by bisection."""
    chance("quantile", q)
    low, high = 0.0, 1.0
    for _ in range(1100):
        middle = 0.5 * (low + high)
        if middle in (low, high):
            break
        if beta_cdf(middle, a, b) < q:
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)


def t_quantile(q: float, freedom: float) -> float:
    """Return Student's t with chance q below it.

    From the beta quantile: with x = I^-1(2 min(q, 1-q); v/2, 1/2), t^2 = v (1 - x) / x
    (Abramowitz & Stegun 1964, 26.7.1, from memory). Exact for small degrees of freedom, where
    the usual series (26.7.5) is not.

    Args:
        q: Chance below, between 0 and 1.
        freedom: Degrees of freedom v, above 0.
    """
    chance("quantile", q)
    within("degrees of freedom", freedom, 0.0, low_open=True)
    if q == 0.5:
        return 0.0
    x = beta_quantile(2.0 * min(q, 1.0 - q), 0.5 * freedom, 0.5)
    return math.copysign(math.sqrt(freedom * (1.0 - x) / x), q - 0.5)
