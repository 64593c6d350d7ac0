"""What a count so far says of the final one, for a batch that is coming up.

How much of the seed should be up by now is reckoned from the batch's own first seedling: of m seeds
that live, the first is expected at the quantile 1 / (m + 1) of the spread between seeds. Seeds of
one tray come up closer together than sowings of a crop do: half the crop's spread is taken (our
proposal; it puts the half-way day of a published sample of 40 within a tenth of a day).
"""

from __future__ import annotations

import math
from datetime import date
from functools import lru_cache

from benchround.core.batch.batch import Batch
from benchround.core.crop.crop import Crop, Raising
from benchround.core.frozen import dataclass
from benchround.core.learning.share import ShareBelief
from benchround.core.numbers.normal import NORMAL
from benchround.core.numbers.ranges import within
from benchround.core.season import Season
from benchround.core.seed.heat import places_of, thermal_model
from benchround.core.seed.looks_of import first_up_of, looks_of
from benchround.core.seed.partial_count import expected_final_uncertain
from benchround.core.seed.thermal_model import LEAST_SIGMA, ThermalModel
from benchround.core.seed.waiting import heat_by

SEED_SPREAD = 0.5
"""Spread of ln heat between the seeds of one tray, as a share of the crop's; our proposal."""
MOST_SEEDS_SUMMED = 2000
"""A sowing of more is reckoned by a sample of it in the same proportions: the sum would be slow."""


@dataclass(frozen=True, slots=True)
class ExpectedCount:
    """A count so far and what it promises.

    Attributes:
        sown, up: seeds sown and seedlings by the last count, those lost since included.
        counted_on: the day of that count.
        due: share of the living seeds that should have been up by then.
        germination: the share reckoned with before the count.
        final: seedlings to expect in the end.
    """

    sown: int
    up: int
    counted_on: date
    due: float
    germination: float
    final: float


def expected_count(season: Season, batch: Batch, crop: Crop) -> ExpectedCount | None:
    """What the last count promises; None where the records do not tell, or emergence is over."""
    sowing = batch.sowing
    if sowing is None or crop.germination is None or sowing.raising == Raising.CLUMPS:
        return None
    found = looks_of(batch)
    if found.looks is None or found.counted_on is None or found.settled:
        return None
    belief = _belief(season, batch, crop)
    if belief is None:
        return None
    model = thermal_model(crop.germination)
    due = _due(season, batch, model, found.counted_on, found.looks.sown * belief.mean)
    if due is None:
        return None
    sown, up = found.looks.sown, found.looks.up
    final = _final(sown, up, belief.a, belief.b, due)
    return ExpectedCount(sown, up, found.counted_on, due, belief.mean, final)


def due_share(model: ThermalModel, heat_first: float, heat: float, living: float) -> float:
    """Return F, the share of the living seeds that should be up.

    F = Phi(ln(h / median) / sigma) with the median put so that the first of m seeds comes at its
    quantile: median = h1 / exp(sigma Phi^-1(1 / (m + 1))). Our proposal, no source.

    Args:
        model: the crop; only its sigma is used, see `SEED_SPREAD`.
        heat_first: h1, degree-days had when the first seedling came, above 0.
        heat: h, degree-days had by now.
        living: m, seeds expected to come up at all; less than 1 counts as 1.
    """
    within("degree-days at the first seedling", heat_first, 0.0, low_open=True)
    within("degree-days by now", heat, 0.0)
    within("seeds that live", living, 0.0)
    first = NORMAL.inv_cdf(1.0 / (max(1.0, living) + 1.0))
    sigma = max(LEAST_SIGMA, SEED_SPREAD * model.sigma)
    return NORMAL.cdf(math.log(heat / heat_first) / sigma + first) if heat > 0.0 else 0.0


def _due(
    season: Season, batch: Batch, model: ThermalModel, on: date, living: float
) -> float | None:
    first, sowing = first_up_of(batch), batch.sowing
    if first is None or sowing is None:
        return None
    moves = places_of(batch, batch.main)
    heat_first = heat_by(season, moves, model, sowing.day, first.middle)
    if heat_first <= 0.0:
        return None
    heat = heat_by(season, moves, model, sowing.day, (on - sowing.day).days)
    return due_share(model, heat_first, heat, living)


def _belief(season: Season, batch: Batch, crop: Crop) -> ShareBelief | None:
    packet = batch.sowing.packet if batch.sowing else ""
    learned = season.learned_of_packet(packet) if packet in season.packets else None
    if learned is None or learned.share is None:
        learned = season.learned(crop.key)
    return learned.share.belief if learned.share else None


@lru_cache(maxsize=1024)
def _final(sown: int, up: int, a: float, b: float, due: float) -> float:
    times = max(1, math.ceil(sown / MOST_SEEDS_SUMMED))
    sample, sample_up = sown // times, up // times
    return up + times * (expected_final_uncertain(sample, sample_up, a, b, due) - sample_up)
