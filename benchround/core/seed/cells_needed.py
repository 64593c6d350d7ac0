"""How many cells to sow so that enough plants stand ready with a wanted chance.

Symbols: N plants wanted, P chance wanted, g germination share, s seeds in a cell, p chance
that one cell yields a plant. Everything is exact and always steps up: rounding N or ln(1-P) /
ln(1-q) to the nearest plant misses the chance that was asked for.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache

from benchround.core.errors import OutOfRangeError
from benchround.core.numbers.distributions import binomial_at_least, log_beta, log_choose
from benchround.core.numbers.normal import NORMAL
from benchround.core.numbers.ranges import MOST_COUNTED, share, whole, within
from benchround.core.numbers.ranges import chance as check_chance

MOST_CELLS = 5_000_000
MOST_CELLS_UNCERTAIN = 20_000
MOST_PER_CELL = 1000
_FEWER = "ask for fewer, or use seed that comes up better than"
SLACK = 1e-12
"""A chance this little short of the wanted one is a rounding error, not a shortfall."""


def share_with_plant(germination: float, per_cell: int) -> float:
    """Return the share of cells with at least one seedling, 1 - (1 - g)^s."""
    share("germination share", germination)
    whole("seeds in a cell", per_cell, 1, MOST_PER_CELL)
    if germination == 1.0:
        return 1.0
    return -math.expm1(per_cell * math.log1p(-germination))


def blank_share(germination: float, per_cell: int) -> float:
    """Return the share of cells with no seedling, (1 - g)^s."""
    return 1.0 - share_with_plant(germination, per_cell)


def blank_share_uncertain(a: float, b: float, per_cell: int) -> float:
    """Return the expected share of blank cells for g ~ Beta(a, b): prod (b + i) / (a + b + i)."""
    _check_beta(a, b)
    whole("seeds in a cell", per_cell, 1, MOST_PER_CELL)
    return math.prod((b + i) / (a + b + i) for i in range(per_cell))


def seeds_per_cell(filled: float, germination: float) -> int:
    """Return the fewest seeds in a cell so that this share of the cells has a seedling."""
    check_chance("share of cells to fill", filled)
    share("germination share", germination)
    seeds = 1
    while share_with_plant(germination, seeds) < filled - SLACK:
        seeds += 1
    return seeds


def least_germination(filled: float, per_cell: int) -> float:
    """Return the lowest germination that fills this share of the cells: 1 - (1-P)^(1/s)."""
    check_chance("share of cells to fill", filled)
    whole("seeds in a cell", per_cell, 1, MOST_PER_CELL)
    return -math.expm1(math.log1p(-filled) / per_cell)


def chance_enough(cells: int, want: int, p: float) -> float:
    """Return the chance of at least N plants from so many cells, P(Bin(n, p) >= N)."""
    whole("cells", cells, 0)
    whole("plants wanted", want, 1)
    share("chance that a cell yields a plant", p)
    return binomial_at_least(want, cells, p)


def cells_needed(want: int, chance: float, p: float) -> int:
    """Return the fewest cells that give N plants with chance P.

    First guess ((z sqrt(q) + sqrt(z^2 q + 4 (N - 1/2))) / (2 sqrt(p)))^2 with q = 1 - p and
    z = Phi^-1(P), then steps with the exact sum.

    Raises:
        OutOfRangeError: A figure is outside its range, or more than 5 million cells are needed.
    """
    cells = max(want, first_guess(want, chance, p))
    if cells > MOST_CELLS:
        raise OutOfRangeError(
            f"about {cells} cells would be needed for {want} plants: {_FEWER} {p:g}."
        )
    while cells > want and chance_enough(cells - 1, want, p) >= chance - SLACK:
        cells -= 1
    while chance_enough(cells, want, p) < chance - SLACK:
        cells += 1
    return cells


def first_guess(want: int, chance: float, p: float) -> int:
    """Return the closed-form guess `cells_needed` starts from, exact or a few off.

    Raises:
        OutOfRangeError: A figure is outside its range, or more cells are needed than can be told.
    """
    whole("plants wanted", want, 1)
    check_chance("chance wanted", chance)
    share("chance that a cell yields a plant", p)
    z, q = NORMAL.inv_cdf(chance), 1.0 - p
    root = math.sqrt(max(0.0, z * z * q + 4.0 * (want - 0.5)))
    guess = (z * math.sqrt(q) + root) / (2.0 * math.sqrt(p))
    if guess > MOST_COUNTED:
        raise OutOfRangeError(
            f"more cells than can be told would be needed for {want} plants: {_FEWER} {p:g}."
        )
    return math.ceil(guess**2)


def cells_needed_uncertain(
    want: int,
    chance: float,
    a: float,
    b: float,
    per_cell: int = 1,
    survivals: Sequence[float] = (),
) -> int:
    """Return the fewest cells that give N plants with chance P when g ~ Beta(a, b).

    Adds up the negative-binomial terms C(n-1, N-1) p^N (1-p)^(n-N), averaged over g, until
    they reach P; p = (1 - (1 - g)^s) times the survivals. All cells share one unknown g, so
    more are needed than for a known germination of the same mean.

    Raises:
        OutOfRangeError: A figure is outside its range, or more than 20,000 cells are needed.
    """
    whole("plants wanted", want, 1)
    check_chance("chance wanted", chance)
    nodes = _nodes(a, b, per_cell, survivals)
    total, cells = 0.0, want
    while True:
        total += _chance_exactly_now(cells, want, nodes)
        if total >= chance - SLACK:
            return cells
        cells += 1
        if cells > MOST_CELLS_UNCERTAIN:
            raise OutOfRangeError(
                f"more than {MOST_CELLS_UNCERTAIN} cells would be needed for {want} plants with "
                f"chance {chance:g}: ask for fewer, or test the seed first."
            )


def chance_enough_uncertain(
    cells: int, want: int, a: float, b: float, per_cell: int = 1, survivals: Sequence[float] = ()
) -> float:
    """Return the chance of at least N plants from so many cells when g ~ Beta(a, b)."""
    whole("cells", cells, 0)
    whole("plants wanted", want, 1)
    nodes = _nodes(a, b, per_cell, survivals)
    terms = (_chance_exactly_now(n, want, nodes) for n in range(want, cells + 1))
    return min(1.0, math.fsum(terms))


Node = tuple[float, float, float]
"""Weight, ln p and ln(1 - p) at one value of g."""


def _chance_exactly_now(cells: int, want: int, nodes: Sequence[Node]) -> float:
    """Return the chance that the last plant wanted comes from exactly this cell."""
    ways = log_choose(cells - 1, want - 1)
    fails = cells - want
    if fails == 0:
        return math.fsum(w * math.exp(want * log_p) for w, log_p, _ in nodes)
    return math.fsum(w * math.exp(ways + want * yes + fails * no) for w, yes, no in nodes)


def _nodes(a: float, b: float, per_cell: int, survivals: Sequence[float]) -> tuple[Node, ...]:
    """Return the trapezoid nodes of an average over g ~ Beta(a, b).

    On x = logit(mean) + sd sinh(t) the integrand falls off doubly exponentially on both sides,
    also where a or b is below 1 and the density has no bound.
    """
    _check_beta(a, b)
    whole("seeds in a cell", per_cell, 1, MOST_PER_CELL)
    return _nodes_kept(a, b, per_cell, math.prod(share("survival", s) for s in survivals))


@lru_cache(maxsize=64)
def _nodes_kept(a: float, b: float, per_cell: int, kept: float) -> tuple[Node, ...]:
    """Return the nodes where this share of the filled cells is kept: a crop's are often asked."""
    centre, width = math.log(a / b), math.sqrt(1.0 / a + 1.0 / b)
    nodes, step = [], 0.08
    for i in range(-90, 91):
        t = i * step
        x = centre + width * math.sinh(t)
        log_up, log_down = -_log1pexp(-x), -_log1pexp(x)
        log_weight = a * log_up + b * log_down - log_beta(a, b)
        if log_weight > -300.0:
            weight = math.exp(log_weight) * width * math.cosh(t) * step
            filled = -math.expm1(per_cell * log_down)
            p = min(filled * kept, 1.0)
            fails = log_down * per_cell if kept == 1.0 else math.log1p(-p)
            nodes.append((weight, math.log(p) if p > 0.0 else -1e9, fails))
    return tuple(nodes)


def _log1pexp(x: float) -> float:
    """Return ln(1 + e^x) without overflow."""
    return x + math.log1p(math.exp(-x)) if x > 0.0 else math.log1p(math.exp(x))


def _check_beta(a: float, b: float) -> None:
    """Refuse beta parameters that are not above 0."""
    within("germination parameter a", a, 0.0, low_open=True)
    within("germination parameter b", b, 0.0, low_open=True)
