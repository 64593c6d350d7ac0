"""Days until a given count or share is up, by interpolation between looks.

A count that equals the target is the answer: the first day it is reached, also on a plateau.
Between two looks the seedlings are spread evenly, before the first look from day 0. Published
programs differ at such ties (one prints nothing, one prints a later day than for a larger
target), so a rule of our own is used there.
"""

from __future__ import annotations

from benchround.core.numbers.ranges import share, within
from benchround.core.seed.looks import Looks


def day_of_count(looks: Looks, target: float) -> float | None:
    """Return the day on which the cumulative count reaches `target`, None if it never does."""
    within("count to reach", target, 0.0, low_open=True)
    before = 0
    for step, total in zip(looks.steps, looks.cumulative, strict=True):
        if total == target:
            return step.this_look_day
        if total > target:
            part = (target - before) / (total - before)
            wait = step.this_look_day - step.previous_look_day
            return step.previous_look_day + part * wait
        before = total
    return None


def days_to_share_of_up(looks: Looks, wanted: float) -> float | None:
    """Return the days until a share of those that came up is up, None if nothing is up."""
    share("share of those up", wanted)
    return None if looks.up == 0 else day_of_count(looks, wanted * looks.up)


def days_to_share_of_sown(looks: Looks, wanted: float) -> float | None:
    """Return the days until a share of the seeds sown is up, None if it is not reached.

    The quantile of the non-parametric estimate with even spread inside intervals (rule read in
    the documentation of drcte 1.0.65, quantile.drcte).
    """
    share("share of those sown", wanted)
    return day_of_count(looks, wanted * looks.sown)


def t50_farooq(looks: Looks) -> float | None:
    """Return the median time, interpolated to Ng / 2 (Farooq et al. 2005), None if Ng = 0."""
    return days_to_share_of_up(looks, 0.5)


def t50_coolbear(looks: Looks) -> float | None:
    """Return the median time, interpolated to (Ng + 1) / 2 (Coolbear et al. 1984)."""
    return None if looks.up == 0 else day_of_count(looks, (looks.up + 1) / 2.0)


def uniform_days(looks: Looks, early: float = 0.10, late: float = 0.90) -> float | None:
    """Return the days between two shares of those that came up, T90 - T10 by default."""
    first, last = days_to_share_of_up(looks, early), days_to_share_of_up(looks, late)
    return None if first is None or last is None else last - first


def germination_curve(looks: Looks) -> tuple[tuple[float, float], ...]:
    """Return (day, share of the seeds sown that is up), from (0, 0) on, one pair a look."""
    points = [(0.0, 0.0)]
    for step, total in zip(looks.steps, looks.cumulative, strict=True):
        points.append((step.this_look_day, total / looks.sown))
    return tuple(points)
