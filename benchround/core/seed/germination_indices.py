"""Germination indices: single figures for how many came up, how fast and how evenly.

Symbols throughout: n_i newly up at look i, t_i days from sowing to look i, Ng = sum n_i up in
all, N sown, k number of looks. Formulas as collected by Aravind et al. 2026 (documentation of
germinationmetrics 0.1.10.9000, names of the first authors beside each); an index that its data
do not define is None. Days of finding are late by half an interval on average: pass
`middle=True` to use the middle of each interval instead (published values use the look day).
"""

from __future__ import annotations

import math

from benchround.core.seed.looks import Looks


def final_percent(looks: Looks) -> float:
    """Return the final germination percentage, 100 Ng / N."""
    return 100.0 * looks.up / looks.sown


def peak_percent(looks: Looks) -> float:
    """Return the largest count of one look in per cent of seeds sown, 100 max(n_i) / N."""
    return 100.0 * max((step.newly_up for step in looks.steps), default=0) / looks.sown


def first_day(looks: Looks) -> float | None:
    """Return the day of the first look with seedlings, None if nothing is up."""
    return next((step.this_look_day for step in looks.steps if step.newly_up), None)


def last_day(looks: Looks) -> float | None:
    """Return the day of the last look with new seedlings, None if nothing is up."""
    return next((step.this_look_day for step in reversed(looks.steps) if step.newly_up), None)


def mean_days(looks: Looks, *, middle: bool = False) -> float | None:
    """Return the mean germination time, sum n t / Ng (Labouriau 1983), None if Ng = 0."""
    if looks.up == 0:
        return None
    return math.fsum(n * t for n, t in _weighted(looks, middle)) / looks.up


def variance_days(looks: Looks, *, middle: bool = False) -> float | None:
    """Return the variance of time, sum n (t - mean)^2 / (Ng - 1), None if Ng < 2."""
    squares = _squares(looks, middle)
    return None if squares is None or looks.up < 2 else squares / (looks.up - 1)


def standard_error_days(looks: Looks) -> float | None:
    """Return the standard error of the mean time, sqrt(s^2 / Ng), None if Ng < 2."""
    variance = variance_days(looks)
    return None if variance is None else math.sqrt(variance / looks.up)


def variation_of_days(looks: Looks) -> float | None:
    """Return the coefficient of variation of time, s / mean, None if Ng < 2."""
    mean, variance = mean_days(looks), variance_days(looks)
    return None if mean is None or variance is None else math.sqrt(variance) / mean


def mean_rate(looks: Looks) -> float | None:
    """Return the mean germination rate, 1 / mean time (Labouriau & Valadares 1976)."""
    mean = mean_days(looks)
    return None if mean is None else 1.0 / mean


def kotowski_velocity(looks: Looks) -> float | None:
    """Return the coefficient of velocity, 100 / mean time (Kotowski 1926)."""
    rate = mean_rate(looks)
    return None if rate is None else 100.0 * rate


def rate_variance(looks: Looks) -> float | None:
    """Return the variance of the mean rate, s^2 / mean^4, None if Ng < 2."""
    mean, variance = mean_days(looks), variance_days(looks)
    return None if mean is None or variance is None else variance / mean**4


def rate_standard_error(looks: Looks) -> float | None:
    """Return the standard error of the mean rate, sqrt(s^2 / mean^4 / Ng)."""
    variance = rate_variance(looks)
    return None if variance is None else math.sqrt(variance / looks.up)


def speed(looks: Looks) -> float | None:
    """Return the speed of germination, sum n_i / t_i (Maguire 1962), None if Ng = 0."""
    if looks.up == 0:
        return None
    return math.fsum(step.newly_up / step.this_look_day for step in looks.steps)


def percent_speed(looks: Looks) -> float | None:
    """Return Maguire's speed on percentages of seeds sown, 100 speed / N."""
    count = speed(looks)
    return None if count is None else 100.0 * count / looks.sown


def corrected_speed(looks: Looks) -> float | None:
    """Return the percentage speed over the final percentage (Evetts & Burnside 1972)."""
    percent = percent_speed(looks)
    return None if percent is None else percent / final_percent(looks)


def accumulated_speed(looks: Looks) -> float | None:
    """Return sum cumulative_i / t_i (Bradbeer 1988), None if Ng = 0."""
    if looks.up == 0:
        return None
    return math.fsum(c / t for c, t in zip(looks.cumulative, looks.times(), strict=True))


def weighted_percent(looks: Looks) -> float | None:
    """Return 100 sum (k - i + 1) n_i / (k N) (Reddy et al. 1985), None without looks."""
    k = len(looks.steps)
    if k == 0:
        return None
    weighted = sum((k - i) * step.newly_up for i, step in enumerate(looks.steps))
    return 100.0 * weighted / (k * looks.sown)


def germination_index(looks: Looks) -> float | None:
    """Return sum (t_k - t_i) n_i / N (Melville et al. 1980), None without looks."""
    if not looks.steps:
        return None
    end = looks.steps[-1].this_look_day
    return math.fsum((end - s.this_look_day) * s.newly_up for s in looks.steps) / looks.sown


def emergence_rate_index(looks: Looks) -> float | None:
    """Return sum n_i (k - i) (Shmueli & Goldberg 1971), None without looks."""
    k = len(looks.steps)
    if k == 0:
        return None
    return float(sum(step.newly_up * (k - 1 - i) for i, step in enumerate(looks.steps)))


def uniformity(looks: Looks) -> float | None:
    """Return the uniformity CUG = Ng / sum n (t - mean)^2 (Heydecker 1972).

    None if nothing is up or all came up at one look, where it is infinite.
    """
    squares = _squares(looks, middle=False)
    return None if squares is None or squares == 0.0 else looks.up / squares


def synchrony(looks: Looks) -> float | None:
    """Return Z = sum n (n - 1) / (Ng (Ng - 1)) (Primack 1985), None if Ng < 2."""
    if looks.up < 2:
        return None
    pairs = sum(step.newly_up * (step.newly_up - 1) for step in looks.steps)
    return pairs / (looks.up * (looks.up - 1))


def uncertainty_bits(looks: Looks) -> float | None:
    """Return E = -sum f log2 f, f = n_i / Ng (Labouriau & Valadares 1976), None if Ng = 0."""
    if looks.up == 0:
        return None
    shares = [step.newly_up / looks.up for step in looks.steps if step.newly_up]
    return max(0.0, -math.fsum(f * math.log2(f) for f in shares))


def mean_percent_per_day(looks: Looks) -> float | None:
    """Return the final percentage over the day of the last look (Czabator 1962)."""
    return final_percent(looks) / looks.steps[-1].this_look_day if looks.steps else None


def mean_number_per_day(looks: Looks) -> float | None:
    """Return Ng over the day of the last look (Khamassi et al. 2013)."""
    return looks.up / looks.steps[-1].this_look_day if looks.steps else None


def peak_value(looks: Looks) -> float | None:
    """Return the largest cumulative percentage over its day (Czabator 1962)."""
    if not looks.steps:
        return None
    rates = [c / t for c, t in zip(looks.cumulative, looks.times(), strict=True)]
    return 100.0 * max(rates) / looks.sown


def _weighted(looks: Looks, middle: bool) -> list[tuple[int, float]]:
    """Return (count, time) of every look."""
    counts = (step.newly_up for step in looks.steps)
    return list(zip(counts, looks.times(middle=middle), strict=True))


def _squares(looks: Looks, middle: bool) -> float | None:
    """Return sum n (t - mean)^2, None if Ng = 0."""
    mean = mean_days(looks, middle=middle)
    if mean is None:
        return None
    return math.fsum(n * (t - mean) ** 2 for n, t in _weighted(looks, middle))
