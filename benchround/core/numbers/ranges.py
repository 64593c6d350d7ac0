"""Refusing figures no formula was made for: one check that names the figure and its range."""

from __future__ import annotations

import math

from benchround.core.errors import OutOfRangeError

COLDEST_AIR_C = -60.0
"""Below every air temperature a garden has seen; colder is a slip of the pen."""
WARMEST_AIR_C = 60.0
"""Above the warmest shade temperature ever measured (56.7 degC)."""
MOST_COUNTED = 100_000_000
"""No grower counts more seeds, cells or plants; beyond it the sums only take for ever."""


def within(
    what: str,
    value: float,
    low: float,
    high: float = math.inf,
    unit: str = "",
    *,
    low_open: bool = False,
    high_open: bool = False,
) -> float:
    """Return the value, or refuse it when it is not a number in the range.

    Args:
        what: the figure's name in the grower's words; it opens the message.
        value: the figure given, in the unit named.
        low: least value allowed.
        high: greatest value allowed; infinite means there is none.
        unit: the unit as it is to be printed; empty for a plain number.
        low_open: the least value itself is not allowed.
        high_open: the greatest value itself is not allowed.

    Raises:
        OutOfRangeError: the value is outside the range, infinite, or not a number.
    """
    if low < value < high:  # as nearly all
        return value
    above = value > low if low_open else value >= low
    below = value < high if high_open else value <= high
    if above and below and value not in (math.inf, -math.inf):
        return value
    tail = f" {unit}" if unit else ""
    said = _said(value)
    if low_open or high_open or math.isinf(low) or math.isinf(high):
        words = _range_in_words(low, high, low_open, high_open)
        raise OutOfRangeError(
            f"{what} is {said}{tail}, which cannot be used: give a figure {words}{tail}."
        )
    raise OutOfRangeError(
        f"{what} is {said}{tail}, outside {_said(low)} to {_said(high)}{tail}: check the figure"
    )


def whole(what: str, value: int, low: int, high: int | None = None) -> int:
    """Return the value if it is a whole number in the range, else refuse it.

    Without a greatest value of its own a count may be as large as `MOST_COUNTED`.

    Raises:
        OutOfRangeError: the figure is not whole, or outside the range.
    """
    most = MOST_COUNTED if high is None else high
    if type(value) is int and low <= value <= most:  # as nearly all
        return value
    if high is None:
        within(what, value, low)
    within(what, value, low, most)
    if isinstance(value, bool) or value != math.floor(value):
        raise OutOfRangeError(f"{what} is {value}, which is not a whole number: give a count.")
    return int(value)


def share(what: str, value: float) -> float:
    """Return a share above 0 and up to 1, else raise `OutOfRangeError`."""
    return within(what, value, 0.0, 1.0, low_open=True)


def chance(what: str, value: float) -> float:
    """Return a chance strictly between 0 and 1, else raise `OutOfRangeError`."""
    return within(what, value, 0.0, 1.0, low_open=True, high_open=True)


def require_air_temp(figure: str, temp_c: float) -> float:
    """Return an air temperature (degC), or refuse one no thermometer screen has shown.

    Raises:
        OutOfRangeError: outside -60 to 60 degC, or not a number.
    """
    return within(figure, temp_c, COLDEST_AIR_C, WARMEST_AIR_C, "degC")


def require_min_max(tmin_c: float, tmax_c: float) -> None:
    """Refuse a day's minimum and maximum (degC) that cannot belong together.

    Raises:
        OutOfRangeError: one of them is outside -60 to 60 degC, or the minimum is above the
            maximum.
    """
    require_air_temp("the minimum", tmin_c)
    require_air_temp("the maximum", tmax_c)
    if tmin_c > tmax_c:
        raise OutOfRangeError(
            f"the minimum {tmin_c:g} degC is above the maximum {tmax_c:g} degC, and must lie"
            f" between {COLDEST_AIR_C:g} degC and the maximum: were the two swapped?"
        )


def _said(value: float) -> str:
    """A figure as it is printed; a whole number beyond every float has no shorter form."""
    try:
        return f"{value:.0f}" if 1e5 <= abs(value) < 1e15 else f"{value:g}"
    except OverflowError:
        return "too large a number"


def _range_in_words(low: float, high: float, low_open: bool, high_open: bool) -> str:
    """Say a range in words, without infinities."""
    start = "" if math.isinf(low) else f"{'above' if low_open else 'from'} {low:g}"
    end = "" if math.isinf(high) else f"{'below' if high_open else 'up to'} {high:g}"
    return " and ".join(part for part in (start, end) if part) or "that is finite"
