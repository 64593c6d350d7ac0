"""Reading times off a curve of 24 hourly means: when it passes a limit, to the minute.

Each mean stands at the middle of its hour; between two of them the curve is a straight line, and
before the first and after the last it is level. Times are minutes since midnight.
"""

from collections.abc import Sequence
from datetime import time

MINUTES_A_DAY = 24 * 60


def value_at(curve: Sequence[float], minute: float) -> float:
    """Return the curve at a minute of the day."""
    place = (minute - 30.0) / 60.0
    if place <= 0.0:
        return curve[0]
    index = int(place)
    if index >= len(curve) - 1:
        return curve[-1]
    return curve[index] + (curve[index + 1] - curve[index]) * (place - index)


def rises_above(curve: Sequence[float], limit: float, start: float, end: float) -> float | None:
    """Return the first minute from start to end at which the curve is above a limit, or None.

    A curve above the limit already is so at the start.
    """
    return _first(curve, limit, start, end, 1.0)


def falls_below(curve: Sequence[float], limit: float, start: float, end: float) -> float | None:
    """Return the first minute from start to end at which the curve is below a limit, or None."""
    return _first(curve, limit, start, end, -1.0)


def last_above(curve: Sequence[float], limit: float, start: float, end: float) -> float | None:
    """Return the last minute from start to end at which the curve is above a limit, or None."""
    mirrored = tuple(reversed(curve))
    found = _first(mirrored, limit, MINUTES_A_DAY - end, MINUTES_A_DAY - start, 1.0)
    return None if found is None else MINUTES_A_DAY - found


def _first(
    curve: Sequence[float], limit: float, start: float, end: float, sign: float
) -> float | None:
    if end < start:
        return None
    inner = [60.0 * hour + 30.0 for hour in range(24) if start < 60.0 * hour + 30.0 < end]
    before, over_before = start, sign * (value_at(curve, start) - limit)
    if over_before > 0.0:
        return start
    for minute in (*inner, end):
        over = sign * (value_at(curve, minute) - limit)
        if over > 0.0:
            return before + (minute - before) * -over_before / (over - over_before)
        before, over_before = minute, over
    return None


def minute_of(clock: time) -> float:
    """Return a clock time as minutes since midnight."""
    return clock.hour * 60.0 + clock.minute + clock.second / 60.0


def clock_at(minute: float, step: int = 1) -> time:
    """Return minutes since midnight as a clock time, rounded down to whole steps of minutes."""
    whole = max(0, min(MINUTES_A_DAY - step, int(minute + 1e-6) // step * step))
    return time(whole // 60, whole % 60)
