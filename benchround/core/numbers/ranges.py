"""Refusing figures no formula was made for: one check, one wording."""

from benchround.core.errors import OutOfRangeError

COLDEST_AIR_C = -60.0
"""Below every air temperature a garden has seen; colder is a slip of the pen."""
WARMEST_AIR_C = 60.0
"""Above the warmest shade temperature ever measured (56.7 degC)."""


def require_between(figure: str, value: float, low: float, high: float, unit: str) -> float:
    """Return the value, or refuse it when it is not a number between low and high.

    Args:
        figure: what the value is, in the grower's words; it opens the message.
        value: the figure given, in the unit named.
        low: smallest value allowed, itself allowed.
        high: largest value allowed, itself allowed.
        unit: the unit as it is to be printed; empty for a plain number.

    Raises:
        OutOfRangeError: the value is outside the range, or is not a number.
    """
    if low <= value <= high:
        return value
    tail = f" {unit}" if unit else ""
    raise OutOfRangeError(
        f"{figure} is {value:g}{tail}, outside {low:g} to {high:g}{tail}: check the figure"
    )


def require_air_temp(figure: str, temp_c: float) -> float:
    """Return an air temperature (degC), or refuse one no thermometer screen has shown.

    Raises:
        OutOfRangeError: outside -60 to 60 degC, or not a number.
    """
    return require_between(figure, temp_c, COLDEST_AIR_C, WARMEST_AIR_C, "degC")


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
