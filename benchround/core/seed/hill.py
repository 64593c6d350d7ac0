"""The Hill curve through cumulative germination, fitted by least squares.

The fit describes a finished curve and nothing more: cumulative counts depend on each other, so
the uncertainty such a fit would claim is several times too small (0.18 d against 1.10 d for
the Lobelia erinus data of Onofri, Piepho & Kozak). None is computed; use `interval_fit` for one.
"""

from __future__ import annotations

import math

from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import within
from benchround.core.seed.looks import Looks

ROUNDS = 200


@dataclass(frozen=True, slots=True)
class HillCurve:
    """y = a t^b / (c^b + t^b) (El-Kassaby et al. 2008, as documented in germinationmetrics).

    Attributes:
        final_percent: a, per cent of the seeds sown, taken from the counts.
        steepness: b, above 0.
        half_day: c, day on which half of those that come up are up.
    """

    final_percent: float
    steepness: float
    half_day: float

    def __post_init__(self) -> None:
        within("final percentage", self.final_percent, 0.0, 100.0, low_open=True)
        within("steepness (b)", self.steepness, 0.0, low_open=True)
        within("half day (c)", self.half_day, 0.0, low_open=True)

    def percent_at(self, day: float) -> float:
        """Return the percentage up on a day since sowing."""
        within("days since sowing", day, 0.0)
        if day == 0.0:
            return 0.0
        return self.final_percent * _rise(math.log(day), self.steepness, math.log(self.half_day))

    def day_of_percent_sown(self, percent: float) -> float | None:
        """Return the day x % of all seeds is up, c (x / (a - x))^(1/b); None if x >= a."""
        within("percentage", percent, 0.0, 100.0, low_open=True)
        if percent >= self.final_percent:
            return None
        ratio = percent / (self.final_percent - percent)
        return float(self.half_day * ratio ** (1.0 / self.steepness))

    def day_of_percent_up(self, percent: float) -> float:
        """Return the day x % of those that come up is up, c (x / (100 - x))^(1/b)."""
        within("percentage", percent, 0.0, 100.0, low_open=True, high_open=True)
        return float(self.half_day * (percent / (100.0 - percent)) ** (1.0 / self.steepness))

    def uniform_days(self) -> float:
        """Return the days between 10 % and 90 % of those that come up."""
        return self.day_of_percent_up(90.0) - self.day_of_percent_up(10.0)

    def fastest_day(self) -> float:
        """Return the day of fastest germination, c ((b - 1) / (b + 1))^(1/b), 0 if b <= 1."""
        b = self.steepness
        return float(self.half_day * ((b - 1.0) / (b + 1.0)) ** (1.0 / b)) if b > 1.0 else 0.0

    def mean_day(self) -> float | None:
        """Return the mean of the curve, c (pi/b) / sin(pi/b); None if b <= 1 (no mean)."""
        if self.steepness <= 1.0:
            return None
        angle = math.pi / self.steepness
        return self.half_day * angle / math.sin(angle)

    def area_to(self, day: float) -> float:
        """Return the area under the curve from sowing, per cent days (Simpson's rule)."""
        within("days since sowing", day, 0.0, low_open=True)
        pieces = 2000
        width = day / pieces
        inner = math.fsum(
            (4.0 if i % 2 else 2.0) * self.percent_at(i * width) for i in range(1, pieces)
        )
        return (self.percent_at(0.0) + inner + self.percent_at(day)) * width / 3.0


def fit_hill(looks: Looks) -> HillCurve | None:
    """Fit b and c to the cumulative percentages, a being the final one.

    Damped Gauss-Newton on ln b and ln c.

    Returns:
        The curve, or None where fewer than three looks found seedlings, too few to tell b.
    """
    if sum(1 for step in looks.steps if step.newly_up) < 3:
        return None
    final = 100.0 * looks.up / looks.sown
    points = [
        (math.log(t), c / looks.up) for t, c in zip(looks.times(), looks.cumulative, strict=True)
    ]
    log_b, log_c = math.log(5.0), _start(looks)
    damping, error = 1e-3, _error(points, log_b, log_c)
    for _ in range(ROUNDS):
        step_b, step_c = _gauss_newton(points, log_b, log_c, damping)
        tried = _error(points, log_b + step_b, log_c + step_c)
        if tried <= error:
            log_b, log_c, error = log_b + step_b, log_c + step_c, tried
            damping = max(damping / 10.0, 1e-12)
            if abs(step_b) + abs(step_c) < 1e-12:
                break
        else:
            damping *= 10.0
            if damping > 1e12:
                break
    return HillCurve(final, math.exp(log_b), math.exp(log_c))


def _rise(log_t: float, b: float, log_c: float) -> float:
    """Return t^b / (c^b + t^b) without overflow."""
    exponent = b * (log_c - log_t)
    return 1.0 / (1.0 + math.exp(exponent)) if exponent < 700.0 else 0.0


def _start(looks: Looks) -> float:
    """Return the log of the mean look day of those up, a first guess of c."""
    total = math.fsum(s.newly_up * math.log(s.this_look_day) for s in looks.steps)
    return total / looks.up


def _error(points: list[tuple[float, float]], log_b: float, log_c: float) -> float:
    """Return the sum of squared residuals; infinite where b leaves all sense."""
    if not -5.0 < log_b < 8.0:
        return math.inf
    b = math.exp(log_b)
    return math.fsum((y - _rise(x, b, log_c)) ** 2 for x, y in points)


def _gauss_newton(
    points: list[tuple[float, float]], log_b: float, log_c: float, damping: float
) -> tuple[float, float]:
    """Return one damped step in (ln b, ln c)."""
    b = math.exp(log_b)
    bb = bc = cc = gb = gc = 0.0
    for x, y in points:
        rise = _rise(x, b, log_c)
        slope = rise * (1.0 - rise)
        by_b, by_c = slope * b * (x - log_c), -slope * b
        residual = y - rise
        bb, bc, cc = bb + by_b * by_b, bc + by_b * by_c, cc + by_c * by_c
        gb, gc = gb + by_b * residual, gc + by_c * residual
    bb, cc = bb * (1.0 + damping) + 1e-300, cc * (1.0 + damping) + 1e-300
    determinant = bb * cc - bc * bc
    if determinant <= 0.0:
        return 0.0, 0.0
    return (cc * gb - bc * gc) / determinant, (bb * gc - bc * gb) / determinant
