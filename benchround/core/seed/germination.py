"""One sowing's germination in figures."""

from __future__ import annotations

from collections.abc import Iterable

from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.numbers.shares import wilson
from benchround.core.seed.germination_indices import (
    first_day,
    mean_days,
    speed,
    synchrony,
    uniformity,
)
from benchround.core.seed.germination_times import (
    t50_coolbear,
    t50_farooq,
    uniform_days,
)
from benchround.core.seed.interval_fit import fit_lognormal
from benchround.core.seed.looks import Looks


@dataclass(frozen=True, slots=True)
class GerminationSummary:
    """What the looks at one sowing say; a figure the counts do not define is None.

    Attributes:
        sown: Seeds sown.
        up: Seedlings up at the last look.
        final_share: Share of the seeds sown that is up.
        low: Lower end of its 95 % Wilson interval.
        high: Upper end.
        first_day: Day of the first look with seedlings.
        t50_days: Days until half of those up were up, the figure to show.
        t50_coolbear: The same towards (Ng + 1) / 2.
        t50_farooq: The same towards Ng / 2.
        mean_days: Mean time by the days of the looks, as published values are.
        mean_days_middle: Mean time with each seedling put in the middle of its interval, which
            does not depend on how often one looks.
        speed: Maguire's speed, seedlings per day.
        uniformity: CUG, 1 / day^2.
        synchrony: Z, 0 to 1.
        spread_days: Days between 10 % and 90 % of those up.
        median_fit: Median days of those up by log-normal interval likelihood.
        sigma_fit: Its spread of ln days.
        median_fit_error: Standard error of that median, days.
    """

    sown: int
    up: int
    final_share: float
    low: float
    high: float
    first_day: float | None
    t50_days: float | None
    t50_coolbear: float | None
    t50_farooq: float | None
    mean_days: float | None
    mean_days_middle: float | None
    speed: float | None
    uniformity: float | None
    synchrony: float | None
    spread_days: float | None
    median_fit: float | None
    sigma_fit: float | None
    median_fit_error: float | None


def germination_summary(
    looks: Looks | Iterable[tuple[float, float, int]], sown: int | None = None
) -> GerminationSummary:
    """Return the figures of one sowing.

    Args:
        looks: The looks, or plain (previous day, this day, newly up) tuples.
        sown: Seeds sown; may be left out where `looks` knows it.

    Raises:
        OutOfRangeError: More are up than were sown, or the number sown is missing.
    """
    seen = _seen(looks, sown)
    low, high = wilson(seen.up, seen.sown)
    fit = fit_lognormal(seen, count_never=False)
    median = t50_farooq(seen)
    return GerminationSummary(
        sown=seen.sown,
        up=seen.up,
        final_share=seen.up / seen.sown,
        low=low,
        high=high,
        first_day=first_day(seen),
        t50_days=median,
        t50_coolbear=t50_coolbear(seen),
        t50_farooq=median,
        mean_days=mean_days(seen),
        mean_days_middle=mean_days(seen, middle=True),
        speed=speed(seen),
        uniformity=uniformity(seen),
        synchrony=synchrony(seen),
        spread_days=uniform_days(seen) if seen.up > 1 else None,
        median_fit=None if fit is None else fit.medians[0],
        sigma_fit=None if fit is None else fit.scale,
        median_fit_error=None if fit is None else fit.median_errors[0],
    )


def _seen(looks: Looks | Iterable[tuple[float, float, int]], sown: int | None) -> Looks:
    """Return checked looks, whichever way they were given."""
    if isinstance(looks, Looks):
        return looks if sown is None else Looks(looks.steps, sown)
    if sown is None:
        raise OutOfRangeError("the number sown is missing: give it beside the looks.")
    return Looks.of(looks, sown)
