"""Range checks that name the figure, what it was, and what it may be."""

from __future__ import annotations

import math

from benchround.core.errors import OutOfRangeError


def within(
    what: str,
    value: float,
    low: float,
    high: float = math.inf,
    *,
    low_open: bool = False,
    high_open: bool = False,
) -> float:
    """Return `value` if it lies in the range, else raise.

    Args:
        what: The figure's name in the grower's words, for the message.
        value: The figure.
        low: Least allowed value.
        high: Greatest allowed value; infinite means there is none.
        low_open: The least value itself is not allowed.
        high_open: The greatest value itself is not allowed.

    Raises:
        OutOfRangeError: The figure is outside the range, or not a number.
    """
    above = value > low if low_open else value >= low
    below = value < high if high_open else value <= high
    if above and below and not math.isinf(value):
        return value
    raise OutOfRangeError(
        f"{what} is {value:g}, which cannot be used: "
        f"give a figure {_range_in_words(low, high, low_open, high_open)}."
    )


def whole(what: str, value: int, low: int, high: int | None = None) -> int:
    """Return `value` if it is a whole number in the range, else raise.

    Raises:
        OutOfRangeError: The figure is not whole, or outside the range.
    """
    if isinstance(value, bool) or value != value or value != math.floor(value):
        raise OutOfRangeError(f"{what} is {value}, which is not a whole number: give a count.")
    within(what, value, low, math.inf if high is None else high)
    return int(value)


def share(what: str, value: float) -> float:
    """Return a share above 0 and up to 1, else raise `OutOfRangeError`."""
    return within(what, value, 0.0, 1.0, low_open=True)


def chance(what: str, value: float) -> float:
    """Return a chance strictly between 0 and 1, else raise `OutOfRangeError`."""
    return within(what, value, 0.0, 1.0, low_open=True, high_open=True)


def _range_in_words(low: float, high: float, low_open: bool, high_open: bool) -> str:
    """Say a range in words, without infinities."""
    start = "" if math.isinf(low) else f"{'above' if low_open else 'from'} {low:g}"
    end = "" if math.isinf(high) else f"{'below' if high_open else 'up to'} {high:g}"
    return " and ".join(part for part in (start, end) if part) or "that is finite"
