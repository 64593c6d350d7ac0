"""What a germination picture is drawn from: the looks at a sowing, and a curve beside them."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from itertools import pairwise

from benchround.core.batch.batch import Batch
from benchround.core.crop.crop import Crop
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import SEEDLING, WAITING
from benchround.core.season import Season
from benchround.core.seed.germination_times import t50_farooq
from benchround.core.seed.heat import heat_felt, place_on, places_of, thermal_model
from benchround.core.seed.hill import fit_hill
from benchround.core.seed.looks import Look, Looks
from benchround.core.seed.looks_of import first_up_of, looks_of
from benchround.core.seed.thermal_model import emerged_share

LONGEST_DAYS = 120
NEARLY_ALL = 0.98
FITTED, BY_FIGURES = "curve fitted to the counts", "expected by the crop's figures"

Point = tuple[float, float]
"""Days since sowing, and the share of the seeds sown."""


@dataclass(frozen=True, slots=True)
class GerminationCurve:
    """One sowing's emergence.

    Attributes:
        title: the batch.
        sown: seeds sown; None where nobody said.
        looks: each look with the seedlings newly up at it, since the look before.
        counted: whether any of them was a count; if not, only the first sight is known.
        curve: points of the curve beside the looks.
        curve_name: what that curve is, such as "curve fitted to the counts".
        today: days since sowing; None where the count is over.
        half_day: day by which half of those up were up; None where too little is known.
        because: why there are no counts to draw; empty where there are.
        notes: what was taken for granted.
    """

    title: str
    sown: int | None
    looks: tuple[Look, ...] = ()
    counted: bool = True
    curve: tuple[Point, ...] = ()
    curve_name: str = ""
    today: float | None = None
    half_day: float | None = None
    because: str = ""
    notes: tuple[str, ...] = ()

    @property
    def up(self) -> int:
        """Seedlings up at the last look."""
        return sum(look.newly_up for look in self.looks)

    @property
    def of(self) -> int:
        """What shares are taken of: what was sown, else what is up."""
        return max(1, self.sown or 0, self.up)

    @property
    def last_day(self) -> float:
        """The last day there is anything to say of."""
        looks = [look.this_look_day for look in self.looks]
        return max([1.0, self.today or 0.0, *looks, *(day for day, _ in self.curve[-1:])])


def germination_curve_of(
    season: Season, batch: Batch, crop: Crop, day: date
) -> GerminationCurve | None:
    """The emergence of a batch as its records tell it; None where nothing was sown.

    The curve is fitted to the counts where three or more found seedlings, else it is what the
    crop's own figures expect at the warmth it has had, up to the crop's usual share.
    """
    sowing = batch.sowing
    if sowing is None:
        return None
    found = looks_of(batch)
    steps = found.looks.steps if found.looks is not None else _first_sight(batch)
    over = batch.main.stage not in WAITING | SEEDLING or found.settled
    today = None if over else max(0.0, float((day - sowing.day).days))
    last = max([today or 0.0, *(look.this_look_day for look in steps)])
    curve, name = _curve(season, batch, crop, found.looks, last)
    return GerminationCurve(
        title=f"{batch.id} {crop.name}" + (f" '{batch.variety}'" if batch.variety else ""),
        sown=sowing.seeds,
        looks=steps,
        counted=found.looks is not None,
        curve=curve,
        curve_name=name,
        today=today,
        half_day=t50_farooq(found.looks) if found.looks is not None else None,
        because=found.because,
        notes=found.notes,
    )


def _first_sight(batch: Batch) -> tuple[Look, ...]:
    """The look that found the first seedling, where no count says how many there were."""
    first = first_up_of(batch)
    if first is None or first.by <= first.after:
        return ()
    return (Look(first.after, first.by, 1),)


def _curve(
    season: Season, batch: Batch, crop: Crop, looks: Looks | None, last: float
) -> tuple[tuple[Point, ...], str]:
    fitted = fit_hill(looks) if looks is not None else None
    if fitted is not None:
        days = [0.25 * quarter for quarter in range(int(4.0 * last) + 1)]
        return tuple((at, fitted.percent_at(at) / 100.0) for at in days), FITTED
    expected = tuple(_expected(season, batch, crop, last))
    return expected, BY_FIGURES if expected else ""


def _expected(season: Season, batch: Batch, crop: Crop, least: float) -> Iterator[Point]:
    """The share expected day by day at the warmth of its places, until it hardly rises."""
    if crop.germination is None or batch.sowing is None:
        return
    model, moves = thermal_model(crop.germination), places_of(batch, batch.main)
    heat = 0.0
    for after in range(LONGEST_DAYS):
        share = emerged_share(model, heat)
        yield float(after), share * crop.germination.share
        if share > NEARLY_ALL and after >= least:
            return
        on = batch.sowing.day + timedelta(days=after)
        heat += heat_felt(model, season.warmth_at(place_on(moves, on), on).mean_c)


def share_at(curve: Sequence[Point], day: float) -> float | None:
    """The curve at a day, a straight line between its points; None beyond its ends."""
    for (start, low), (end, high) in pairwise(curve):
        if start <= day <= end and end > start:
            found = low + (high - low) * (day - start) / (end - start)
            return found if math.isfinite(found) else None
    return None
