"""How sure a share counted on few seeds is."""

from __future__ import annotations

import math

from benchround.core.errors import OutOfRangeError
from benchround.core.numbers.ranges import chance, whole, within

Z_95 = 1.959964
"""Standard normal deviate of a two-sided 95 % interval."""


def wilson(y: int, n: int, z: float = Z_95) -> tuple[float, float]:
    """Return the score interval of a share, y of n (Wilson 1927, formula from memory).

    (y + z^2/2 +- z sqrt(y (n - y) / n + z^2/4)) / (n + z^2).

    Args:
        y: Number up, 0 to n.
        n: Number sown, at least 1.
        z: Normal deviate of the wanted confidence.
    """
    _check(y, n)
    within("normal deviate z", z, 0.0, low_open=True)
    middle = y + z * z / 2.0
    half = z * math.sqrt(y * (n - y) / n + z * z / 4.0)
    low, high = (middle - half) / (n + z * z), (middle + half) / (n + z * z)
    return (0.0 if y == 0 else low, 1.0 if y == n else high)


def none_up_limit(n: int, doubt: float = 0.05) -> float:
    """Return the greatest share that none of n leaves possible: 1 - doubt^(1/n), about 3/n."""
    whole("seeds sown", n, 1)
    chance("doubt", doubt)
    return -math.expm1(math.log(doubt) / n)


def _check(y: int, n: int) -> None:
    """Refuse counts that cannot be."""
    whole("seeds sown", n, 1)
    whole("seeds up", y, 0)
    if y > n:
        raise OutOfRangeError(f"{y} are up of {n} sown: correct the count or the number sown.")
