"""A crop's row of days at temperatures, and all that bounds the temperatures behind it."""

from __future__ import annotations

from collections.abc import Sequence

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import require_air_temp, within

FOOT_SHARE = 0.10
"""Days at the cold end slower than this share of the best rate are left out of the line.

Close above the base the rate creeps up in a curve (lettuce 49 days at 0 C, onion 136); a
straight line drawn through that foot is wrong at 5 and 10 C.
"""

TEST_STEP_C = 5.6
"""Spacing of the tests behind a printed least or greatest temperature: about 10 F."""

# Loose expectations (mean, standard deviation) of base, optimum and ceiling of any crop, and
# of the same relative to printed least, best and greatest germination temperatures. Chosen by
# leaving single columns of the Harrington & Minges table out; our figures.
ANY_CROP = ((5.0, 6.0), (27.0, 6.0), (39.0, 5.0))
BASE_PER_LEAST, BASE_SD = 0.6, 2.0
OPTIMUM_SD = 3.0
CEILING_ABOVE_GREATEST, CEILING_SD = 2.0, 2.0

Point = tuple[float, float | None]
Corner = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Row:
    """A crop's row and everything that bounds its three temperatures.

    Attributes:
        days: (temperature C, days), cold to warm, without the foot.
        beliefs: (which temperature, mean, standard deviation) of what is believed beforehand.
        lowest: Least base, optimum and ceiling.
        highest: Greatest base, optimum and ceiling.
    """

    days: tuple[tuple[float, float], ...]
    beliefs: tuple[tuple[int, float, float], ...]
    lowest: Corner
    highest: Corner


def row_of(
    points: Sequence[Point],
    least_c: float | None,
    best_c: float | None,
    greatest_c: float | None,
) -> Row:
    """Check a row and collect what bounds and steers its temperatures."""
    for temp_c in (*(t for t, _ in points), least_c, best_c, greatest_c):
        if temp_c is not None:
            require_air_temp("a temperature of the row", temp_c)
    every = sorted((t, d) for t, d in points if d is not None)
    for _, count in every:
        within("days to emergence", count, 0.0, 400.0, low_open=True)
    days = _without_foot(every)
    if len({t for t, _ in days}) < 2:
        raise InputError(
            f"a crop's row gives usable days at {len(days)} temperature(s): give at least two."
        )
    coldest, warmest = days[0][0], days[-1][0]
    nothing = [t for t, d in points if d is None]
    if any(coldest <= t <= warmest for t in nothing):
        raise InputError(
            f"nothing came up at a temperature between {coldest:g} and {warmest:g} C, where it "
            "did: correct the row."
        )
    base_low = max([t for t in nothing if t < coldest], default=-10.0)
    if least_c is not None:
        base_low = max(base_low, least_c - TEST_STEP_C)
    ceiling_high = min([t for t in nothing if t > warmest], default=50.0)
    if greatest_c is not None:
        ceiling_high = min(ceiling_high, greatest_c + TEST_STEP_C)
    return Row(
        days=days,
        beliefs=_beliefs(least_c, best_c, greatest_c),
        lowest=(round(min(base_low, coldest - 0.5), 2), coldest + 0.5, warmest + 0.3),
        highest=(coldest - 0.5, 40.0, round(max(ceiling_high, warmest + 0.5), 2)),
    )


def _without_foot(days: list[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    """Drop the slow foot: the coldest days, as long as they are below a tenth of the best rate."""
    quickest = min((count for _, count in days), default=0.0)
    first = 0
    while first < len(days) and quickest < FOOT_SHARE * days[first][1]:
        first += 1
    return tuple(days[first:])


def _beliefs(
    least_c: float | None, best_c: float | None, greatest_c: float | None
) -> tuple[tuple[int, float, float], ...]:
    """Return (which temperature, mean, standard deviation) of everything believed."""
    beliefs = [(index, mean, sd) for index, (mean, sd) in enumerate(ANY_CROP)]
    if least_c is not None:
        beliefs.append((0, BASE_PER_LEAST * least_c, BASE_SD))
    if best_c is not None:
        beliefs.append((1, best_c, OPTIMUM_SD))
    if greatest_c is not None:
        beliefs.append((2, greatest_c + CEILING_ABOVE_GREATEST, CEILING_SD))
    return tuple(beliefs)
