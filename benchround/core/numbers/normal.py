"""The standard normal distribution: the share below a deviate, and the deviate of a share.

As `statistics.NormalDist` of the standard library gives them; importing that takes a good part of
the time a start may take, as it brings fractions and decimals along.
"""

from __future__ import annotations

import math

from benchround.core.errors import OutOfRangeError

NEAR_TOP = (
    2509.0809287301227,
    33430.57558358813,
    67265.7709270087,
    45921.95393154987,
    13731.69376550946,
    1971.5909503065513,
    133.14166789178438,
    3.3871328727963665,
)
NEAR_BASE = (
    5226.495278852854,
    28729.085735721943,
    39307.89580009271,
    21213.794301586597,
    5394.196021424751,
    687.1870074920579,
    42.31333070160091,
    1.0,
)
MID_TOP = (
    0.0007745450142783414,
    0.022723844989269184,
    0.2417807251774506,
    1.2704582524523684,
    3.6478483247632045,
    5.769497221460691,
    4.630337846156546,
    1.4234371107496835,
)
MID_BASE = (
    1.0507500716444169e-09,
    0.0005475938084995345,
    0.015198666563616457,
    0.14810397642748008,
    0.6897673349851,
    1.6763848301838038,
    2.053191626637759,
    1.0,
)
FAR_TOP = (
    2.0103343992922881e-07,
    2.7115555687434876e-05,
    0.0012426609473880784,
    0.026532189526576124,
    0.29656057182850487,
    1.7848265399172913,
    5.463784911164114,
    6.657904643501103,
)
FAR_BASE = (
    2.0442631033899397e-15,
    1.421511758316446e-07,
    1.8463183175100548e-05,
    0.0007868691311456133,
    0.014875361290850615,
    0.1369298809227358,
    0.599832206555888,
    1.0,
)
"""Coefficients, highest power first: Wichura 1988, AS 241, PPND16 (see below)."""


class Normal:
    """Mean 0 and standard deviation 1."""

    @staticmethod
    def pdf(z: float) -> float:
        """The density at a deviate."""
        return math.exp(-0.5 * z * z) / math.sqrt(math.tau)

    @staticmethod
    def cdf(z: float) -> float:
        """The share below a deviate."""
        return 0.5 * (1.0 + math.erf(z / math.sqrt(2.0)))

    @staticmethod
    def inv_cdf(share: float) -> float:
        """The deviate with this share below it.

        Wichura 1988, Algorithm AS 241: The percentage points of the normal distribution, Applied
        Statistics 37:477-484, routine PPND16 (relative error about 1e-16).

        Raises:
            OutOfRangeError: the share is not between 0 and 1.
        """
        if not 0.0 < share < 1.0:
            raise OutOfRangeError(f"A share of {share} has no deviate: give one between 0 and 1.")
        q = share - 0.5
        if abs(q) <= 0.425:
            return q * _ratio(0.180625 - q * q, NEAR_TOP, NEAR_BASE)
        r = math.sqrt(-math.log(share if q <= 0.0 else 1.0 - share))
        if r <= 5.0:
            found = _ratio(r - 1.6, MID_TOP, MID_BASE)
        else:
            found = _ratio(r - 5.0, FAR_TOP, FAR_BASE)
        return -found if q < 0.0 else found


def _ratio(x: float, top: tuple[float, ...], base: tuple[float, ...]) -> float:
    return _polynomial(x, top) / _polynomial(x, base)


def _polynomial(x: float, coefficients: tuple[float, ...]) -> float:
    total = 0.0
    for coefficient in coefficients:
        total = total * x + coefficient
    return total


NORMAL = Normal()
"""The one everybody reckons with; it holds nothing."""
