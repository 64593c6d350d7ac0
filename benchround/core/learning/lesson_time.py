"""The heat a sowing had when its first seedling came up, where its records tell."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, timedelta
from itertools import islice
from typing import NamedTuple

from benchround.core.batch.batch import Batch, Sowing
from benchround.core.batch.nouns import Moves
from benchround.core.dates import say_day
from benchround.core.learning.days import middle_of_look
from benchround.core.record import Kind, Record
from benchround.core.seed.heat import WarmthOf, felt_since, heat_felt, places_of
from benchround.core.seed.looks_of import FirstUp, first_up_in
from benchround.core.seed.stall import COLD_DAYS, cold_up_to_c
from benchround.core.seed.thermal_model import ThermalModel
from benchround.core.units import degrees

WIDEST_LOOK_DAYS = 7
"""First seedlings found after longer than this without a look tell no time (our proposal)."""

MOST_APART = 5.0
"""Heat this many times more or less than the library's is a wrong day or place (our proposal)."""


class Timed(NamedTuple):
    """Heat and days to the first seedling, or why there are none; `stall` where it was a stall."""

    heat: float | None
    because: str = ""
    days: float | None = None
    stall: str = ""


Alike = tuple[ThermalModel, Moves, date, float, float]
"""What two sowings that took the same heat have in common: crop, places, day, days to come up."""
Times = dict[Alike, Timed]
"""What was found, for the sowings of one crop that were sown and stood together."""


def time_of(
    batch: Batch,
    sowing: Sowing,
    story: Iterable[Record],
    model: ThermalModel,
    warmth_of: WarmthOf,
    times: Times,
) -> Timed:
    """The heat its first seedling took, unless the records tell none or it sulked.

    Args:
        batch: the batch.
        sowing: how it was sown.
        story: its records after the sowing.
        model: the crop's thermal time.
        warmth_of: gives the warmth of a place by its days.
        times: what was found under this warmth before; it is added to.
    """
    first, moves = first_up_in(story, sowing.day), places_of(batch, batch.main)
    because = _no_time(batch, sowing, first, moves)
    if because or first is None:
        return Timed(None, because)
    alike = (model, moves, sowing.day, first.after, first.by)
    found = times.get(alike)
    if found is None:
        found = times[alike] = _reckoned(model, moves, sowing.day, first, warmth_of)
    return found


def _reckoned(
    model: ThermalModel, moves: Moves, sown: date, first: FirstUp, warmth_of: WarmthOf
) -> Timed:
    total, cold, middle = 0.0, 0, middle_of_look(first.after, first.by)
    cold_c, hot_c = cold_up_to_c(model), model.ceiling_c
    days = islice(felt_since(moves, sown, warmth_of), int(first.by))
    for number, warm in enumerate(days):
        cold = cold + 1 if warm.mean_c <= cold_c else 0
        if cold >= COLD_DAYS or warm.max_c > hot_c:
            day = say_day(sown + timedelta(days=number))
            stall = f"stalled by cold up to {day}"
            if warm.max_c > hot_c:
                stall = f"stalled by heat: {degrees(warm.max_c)} C on {day}"
            return Timed(None, stall, stall=stall)
        share = middle - number
        if share > 0.0:
            heat = heat_felt(model, warm.mean_c)
            total += heat if share >= 1.0 else heat * share
    if not model.theta50 / MOST_APART <= total <= model.theta50 * MOST_APART:
        odd = f"{total:.0f} degree-days where {model.theta50:.0f} are usual: a wrong day or place?"
        return Timed(None, odd)
    return Timed(total, days=middle)


def _no_time(batch: Batch, sowing: Sowing, first: FirstUp | None, moves: Moves) -> str:
    """Why the records tell no time; empty where they do."""
    chilled = batch.main.last_day(Kind.CHILLED)
    if chilled is not None and chilled >= sowing.day:
        return "it was chilled after sowing"
    if not any(place for _, place in moves):
        return "where it stood was not said"
    if first is None:
        return "the day of the first seedling is not on record"
    if first.by - first.after > WIDEST_LOOK_DAYS:
        return f"nobody looked for {first.by - first.after:.0f} days before it was up"
    return ""
