"""What a batch will come to, step by step, and on what each day rests.

Two clocks tell the time. Until seedlings are up it is heat, by the emergence forecast; from then on
it is the crop's usual days, from whatever was last recorded. What was recorded always goes before
what was reckoned. The round asks anew every morning; this is the view ahead.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.batch.batch import Batch, Part, apply
from benchround.core.crop.crop import Crop, Raising
from benchround.core.dates import number_of_days, say_day
from benchround.core.lifecycle import BEFORE, WAITING, Stage
from benchround.core.planning.last_sowing import window_span
from benchround.core.planning.planned_time import wished_span
from benchround.core.planning.schedule_later import Young, later_steps
from benchround.core.planning.schedule_step import STAGES_AHEAD, Expected, Step
from benchround.core.record import Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.seed.waiting import Waiting, forecast

__all__ = ["Expected", "Step", "expected_course", "sowing_day", "window_day"]

USUAL_COLD_DAYS = 35.0
"""Days of cold where neither the record nor the crop says (common practice, no source)."""
UP_KINDS = (Kind.FIRST_UP, Kind.COUNTED, Kind.SEED_LEAVES, Kind.TRUE_LEAVES)


def expected_course(season: Season, batch: Batch, crop: Crop, day: date) -> tuple[Expected, ...]:
    """The steps a planned or growing batch still has before it, in order of their days.

    Args:
        season: places, site and weather it stands in.
        batch: the batch; its main part is reckoned.
        crop: its rules.
        day: the day it is reckoned on.

    Returns:
        The coming steps. A step whose day nothing tells is left out, and so is all that rests on
        it; an empty answer means that nothing is known or nothing is to come.
    """
    stage = batch.main.stage
    found = [step for step in _steps(season, batch, crop, day) if stage in STAGES_AHEAD[step.step]]
    return tuple(sorted(found, key=lambda step: step.day))


def sowing_day(season: Season, batch: Batch, crop: Crop, day: date) -> tuple[date, str]:
    """The day a batch was sown or is to be sown, and on what that rests."""
    if batch.sowing is not None:
        return batch.sowing.day, f"sown {say_day(batch.sowing.day)}"
    main = batch.main
    chilled = main.last.get(Kind.CHILLED)
    if chilled is not None and main.stage is Stage.STRATIFYING:
        usual = next((t.days for t in crop.treatments if t.name == "chill"), USUAL_COLD_DAYS)
        days = round(chilled.number("days") or usual)
        return chilled.day + timedelta(days=days), f"{number_of_days(days)} of cold"
    wished = wished_span(season, batch, main, day)
    if wished is not None:
        return wished.opens, "the day you set"
    return window_day(season, crop, day)


def window_day(season: Season, crop: Crop, day: date) -> tuple[date, str]:
    """The day a crop is next sown by its own windows, and on what that rests."""
    year = season.site.year
    found = (window_span(crop, year, window, day) for window in crop.windows)
    spans = (span for span in found if span is not None)
    span = min(spans, key=lambda span: (day not in span, span.opens), default=None)
    if span is None or day in span:
        return day, "as if sown today"
    return span.opens, "its sowing window opens"


def _steps(season: Season, batch: Batch, crop: Crop, day: date) -> Iterator[Expected]:
    sown, why = sowing_day(season, batch, crop, day)
    yield Expected(Step.SOW, sown, None, why)
    sowed = batch if batch.sowing is not None else _as_if_sown(batch, sown)
    part, sowing = sowed.main, sowed.sowing
    raising = (sowing.raising if sowing else "") or str(crop.raising)
    waiting = _waiting(season, sowed, crop, max(day, sown))
    yield from _looking(waiting)
    up = _first_up(part, waiting)
    leaves = _true_leaves(part, crop, up)
    per_cell = (sowing.per_cell if sowing else None) or crop.growing.per_cell
    if leaves is not None:
        yield from _seedlings(crop, raising, per_cell, leaves)
    yield from later_steps(Young(season.site, crop, part, raising, sown, up, leaves))


def _as_if_sown(batch: Batch, sown: date) -> Batch:
    """The batch as it would be once sown; one that cannot be sown (bulbs on the way) as it is."""
    if batch.main.stage not in BEFORE:
        return batch
    figures: dict[str, Figure] = {}
    chilled = batch.main.last.get(Kind.CHILLED)
    if chilled is not None and chilled.text("sow_place"):
        figures["place"] = chilled.text("sow_place")
    return apply(batch, Record("", sown, Kind.SOWN, batch.id, figures), batch.id)


def _waiting(season: Season, batch: Batch, crop: Crop, day: date) -> Waiting | None:
    if batch.main.stage not in WAITING or crop.raising is Raising.BULB:
        return None
    return forecast(season, batch, batch.main, crop, day)


def _first_up(part: Part, waiting: Waiting | None) -> date | None:
    seen = [day for kind in UP_KINDS if (day := part.first_day(kind)) is not None]
    if seen:
        return min(seen)
    return waiting.half_by if waiting else None


def _true_leaves(part: Part, crop: Crop, up: date | None) -> date | None:
    seen = part.first_day(Kind.TRUE_LEAVES)
    if seen is not None or up is None:
        return seen
    return up + timedelta(days=crop.growing.true_leaf_days)


def _looking(waiting: Waiting | None) -> Iterator[Expected]:
    if waiting is None or waiting.look_from is None or waiting.half_by is None:
        return
    early = f"one sowing in ten is up by then ({waiting.basis})"
    yield Expected(Step.LOOK, waiting.look_from, None, early)
    half = f"{waiting.heat_half:.0f} degree-days above its base; after that it is late"
    yield Expected(Step.UP, waiting.half_by, waiting.late_from, half)


def _seedlings(crop: Crop, raising: str, per_cell: int, leaves: date) -> Iterator[Expected]:
    growing = crop.growing
    since = f"first true leaves, {growing.true_leaf_days} days from first up"
    if raising == Raising.TRAY and growing.prick_out:
        yield Expected(Step.PRICK_OUT, leaves, None, since)
    elif raising == Raising.DRILL and growing.thin_to_mm is not None:
        yield Expected(Step.THIN, leaves, None, f"to {growing.thin_to_mm / 10:g} cm")
    elif raising in (Raising.CELLS, Raising.POTS) and per_cell > growing.keep_per_cell:
        left = f"{per_cell} to {growing.keep_per_cell} a cell; {since}"
        yield Expected(Step.THIN, leaves, None, left)
